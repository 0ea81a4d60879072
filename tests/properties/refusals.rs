//! What cannot be is refused by name, with the limits.

use sagwright_core::bike::{ForkSpring, Machine, SetUp, Surroundings};
use sagwright_core::intake::{BikeClass, End, ForkKind, FuelLoad, Posture};
use sagwright_core::solve::{NoRoot, root};
use sagwright_core::stance::{
    Asked, Case, Load, Pitch, StanceError, fork_preload_for, fork_rate_for, settle,
};
use sagwright_core::units::{kg, mm, newton_per_mm};

fn usual(fork: ForkKind) -> (Machine, Load, SetUp) {
    let class = BikeClass::Motocross250;
    let machine = Machine::of(class, fork, Machine::usual_shock(class));
    (machine, Load::usual(machine.class), SetUp::usual(&machine))
}

fn case((machine, load, set_up): &(Machine, Load, SetUp)) -> Case<'_> {
    Case {
        machine,
        load,
        set_up,
        surroundings: &Surroundings::USUAL,
        pitch: Pitch::OtherAsSet,
    }
}

#[test]
fn a_spring_too_soft_to_hold_the_rider() {
    let class = BikeClass::Adventure;
    let mut machine = Machine::of(class, ForkKind::CoilBothLegs, Machine::usual_shock(class));
    machine.wet_mass = kg(350.0);
    let load = Load::of(kg(220.0), Posture::Seated, FuelLoad::Full);
    let mut set_up = SetUp::usual(&machine);
    set_up.shock.rate = newton_per_mm(10.0);
    let found = settle(&machine, &load, &set_up, &Surroundings::USUAL);
    let Err(StanceError::Bottoms {
        end: End::Rear,
        load,
        most,
    }) = found
    else {
        panic!("{found:?}");
    };
    assert!(load > most);
}

#[test]
fn a_sag_out_of_reach_names_the_limits() {
    let mut bike = usual(ForkKind::CoilBothLegs);
    bike.1.rider = kg(150.0);
    let found = fork_preload_for(&case(&bike), mm(40.0));
    let Err(
        problem @ StanceError::OutOfReach {
            asked: Asked::ForkPreload,
            too_much: false,
            ..
        },
    ) = found
    else {
        panic!("{found:?}");
    };
    let message = problem.to_string();
    assert!(
        message.contains("from 0 to 40") && message.contains("too little"),
        "{message}"
    );
}

#[test]
fn a_coil_asked_of_a_gas_fork() {
    let bike = usual(ForkKind::GasOneLeg);
    assert_eq!(
        fork_rate_for(&case(&bike), mm(60.0)),
        Err(StanceError::WrongSpring(Asked::ForkRate))
    );
}

#[test]
fn figures_out_of_range_are_named() {
    let mut bike = usual(ForkKind::GasOneLeg);
    bike.2.fork.spring = ForkSpring::Gas {
        charge: sagwright_core::units::bar(40.0),
    };
    let problem =
        settle(&bike.0, &bike.1, &bike.2, &Surroundings::USUAL).expect_err("40 bar is no fork");
    assert!(
        problem.to_string().contains("fork gas pressure"),
        "{problem}"
    );
    let sag = fork_rate_for(&case(&usual(ForkKind::CoilBothLegs)), mm(f64::NAN));
    assert!(matches!(sag, Err(StanceError::Input(_))), "{sag:?}");
}

#[test]
fn a_search_without_an_answer_says_so() {
    let found = root(|x| x * x + 1.0, -1.0, 1.0, 1e-9);
    assert!(matches!(found, Err(NoRoot::SameSign { .. })));
}
