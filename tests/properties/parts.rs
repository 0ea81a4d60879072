//! Laws of single parts, most of them exact.

use proptest::prelude::*;
use sagwright_core::bike::atmosphere::{gauge_after, gauge_to_set};
use sagwright_core::bike::fork::{Fork, Spring};
use sagwright_core::bike::gas::{GasSpring, Law, Negative};
use sagwright_core::bike::leverage::Leverage;
use sagwright_core::bike::shock::Shock;
use sagwright_core::bike::{Air, Machine, SetUp, Surroundings};
use sagwright_core::intake::{BikeClass, ForkKind, ShockKind};
use sagwright_core::stance::Load;
use sagwright_core::stance::equivalent::energy_to_full_stroke;
use sagwright_core::stance::settle;
use sagwright_core::units::{bar, celsius, metre, newton};

/// The usual bike of a class.
fn usual(class: BikeClass, fork: ForkKind) -> (Machine, SetUp) {
    let machine = Machine::of(class, fork, Machine::usual_shock(class));
    (machine, SetUp::usual(&machine))
}

fn slope(f: impl Fn(f64) -> f64, at: f64) -> f64 {
    let step = 1e-5;
    (f(at + step) - f(at - step)) / (2.0 * step)
}

#[track_caller]
fn near(got: f64, wanted: f64, relative: f64) {
    assert!(
        (got - wanted).abs() <= relative * wanted.abs(),
        "{got} instead of {wanted}"
    );
}

proptest! {
    #![proptest_config(crate::config())]

    /// The shock's stroke is the integral of the ratio, and the ratio's slope its derivative; the mean ratio does not
    /// depend on how late it rises.
    #[test]
    fn leverage_is_consistent(top in 0.25..0.4, more in 0.0..0.2, late in 0.0..1.0, at in 0.0..1.0) {
        let leverage = Leverage { top, bottom: top + more, late, travel_m: 0.3 };
        let z_m = at * leverage.travel_m;
        near(slope(|z| leverage.shock_stroke_m(z), z_m), leverage.ratio(z_m), 1e-8);
        prop_assert!((slope(|z| leverage.ratio(z), z_m) - leverage.slope_per_m(z_m)).abs() < 1e-8);
        near(leverage.shock_stroke_m(leverage.travel_m) / leverage.travel_m, top + more / 2.0, 1e-12);
        prop_assert!(leverage.slope_per_m(z_m) >= 0.0);
    }

    /// What is set for another air reads as wanted there.
    #[test]
    fn pressure_set_for_elsewhere_reads_as_wanted(
        wanted in 2.0..15.0, altitude in 0.0..4000.0, filling_c in -10.0..40.0, riding_c in -10.0..60.0,
    ) {
        let filling = Air { temperature: celsius(filling_c), ..Air::WORKSHOP };
        let riding = Air::at(metre(altitude), celsius(riding_c)).expect("within range");
        let set = gauge_to_set(bar(wanted), filling, riding);
        near(gauge_after(set, filling, riding).value, bar(wanted).value, 1e-12);
    }

    /// No figures, however wild, make a panic or a sag that is not a number.
    #[test]
    fn wild_figures_are_answered_or_refused(
        rider in proptest::num::f64::ANY, rate in proptest::num::f64::ANY, preload in proptest::num::f64::ANY,
        mass in 0.0..500.0, share in -1.0..2.0, clean_rider in any::<bool>(), clean_rate in any::<bool>(),
    ) {
        let (mut machine, mut set_up) = usual(BikeClass::Motocross250, ForkKind::CoilBothLegs);
        machine.wet_mass.value = mass;
        machine.front_share = share;
        let mut load = Load::usual(machine.class);
        if !clean_rider {
            load.rider.value = rider;
        }
        if !clean_rate {
            set_up.shock.rate.value = rate;
            set_up.shock.preload.value = preload;
        }
        if let Ok(stance) = settle(&machine, &load, &set_up, &Surroundings::USUAL) {
            prop_assert!(stance.ridden.fork.middle.value.is_finite() && stance.ridden.rear.middle.value.is_finite());
        }
    }
}

/// Rate at the rear axle: r² k + F dr/dz (exact for spring without gas), against the slope of the wheel force.
#[test]
fn wheel_rate_of_the_rear() {
    let (machine, mut set_up) = usual(BikeClass::EnduroLinkage, ForkKind::CoilBothLegs);
    set_up.shock.reservoir = bar(0.0);
    let shock = Shock::build(&machine, &set_up.shock, &Surroundings::USUAL);
    for z_m in [0.05, 0.1, 0.2] {
        let (r, x_m) = (
            shock.leverage.ratio(z_m),
            shock.leverage.shock_stroke_m(z_m),
        );
        let exact = r * r * shock.coil.rate_n_per_m
            + shock.coil.force_n(x_m) * shock.leverage.slope_per_m(z_m);
        // The gas shut in at ambient pressure still adds a little as the shaft goes in.
        near(slope(|z| shock.wheel_n(z, Law::Slow), z_m), exact, 2e-3);
    }
}

/// Vertical rate of a raked fork: k / cos² (statics, wheel free to roll).
#[test]
fn vertical_rate_of_a_raked_fork() {
    let (machine, set_up) = usual(BikeClass::Motocross450, ForkKind::CoilBothLegs);
    let fork = Fork::build(&machine, &set_up.fork, &Surroundings::USUAL);
    let vertical_n = |drop_m: f64| fork.spring_n(drop_m / fork.cos_rake, Law::Slow) / fork.cos_rake;
    let cos = libm::cos(machine.class.rake.value);
    let along = slope(|s| fork.spring_n(s, Law::Slow), 0.06);
    near(
        slope(vertical_n, fork.drop_m(0.06)),
        along / (cos * cos),
        1e-8,
    );
}

/// Energy of a quick stroke of a coil fork: k (S²/2 + S p) for the coil and, for the air, p₀ A L ((L/(L−S))^(n−1) − 1)/(n−1)
/// less the ambient pressure's share (both exact).
#[test]
fn energy_of_a_coil_fork() {
    let (machine, set_up) = usual(BikeClass::Motocross250, ForkKind::CoilBothLegs);
    let fork = Fork::build(&machine, &set_up.fork, &Surroundings::USUAL);
    let Spring::Coil(coil) = fork.spring else {
        panic!("this fork has coils")
    };
    let (stroke_m, air) = (fork.stops.stroke_m, fork.air);
    let (length_m, n) = (air.column.length_m, air.column.quick_exponent);
    let coil_j = coil.rate_n_per_m * (stroke_m * stroke_m / 2.0 + stroke_m * coil.preload_m);
    let squeezed = libm::pow(length_m / (length_m - stroke_m), n - 1.0);
    let air_j = air.column.area_m2
        * (air.extended_pa * length_m * (squeezed - 1.0) / (n - 1.0) - air.ambient_pa * stroke_m);
    near(energy_to_full_stroke(&fork).value, coil_j + air_j, 1e-7);
}

/// The kink at the port of a gas fork costs Simpson's rule next to nothing.
#[test]
fn energy_of_a_gas_fork() {
    let (machine, set_up) = usual(BikeClass::Motocross250, ForkKind::GasOneLeg);
    let fork = Fork::build(&machine, &set_up.fork, &Surroundings::USUAL);
    let intervals = 400_000;
    let step_m = fork.stops.stroke_m / f64::from(intervals);
    let fine_j: f64 = (0..intervals)
        .map(|i| fork.spring_n((f64::from(i) + 0.5) * step_m, Law::Quick { from_m: 0.0 }) * step_m)
        .sum();
    near(energy_to_full_stroke(&fork).value, fine_j, 2e-5);
}

/// A negative coil pushes over its length and is gone beyond it.
#[test]
fn negative_coil() {
    let (machine, _) = usual(BikeClass::Motocross250, ForkKind::GasOneLeg);
    let with = GasSpring {
        negative: Negative::Coil {
            rate_n_per_m: 10e3,
            length_m: 0.03,
        },
        ..machine.gas
    };
    let without = GasSpring {
        negative: Negative::Absent,
        ..machine.gas
    };
    let apart_n =
        |s| without.force_n(9e5, 1e5, s, Law::Slow) - with.force_n(9e5, 1e5, s, Law::Slow);
    near(apart_n(0.0), 300.0, 1e-9);
    near(apart_n(0.01), 200.0, 1e-9);
    assert!(apart_n(0.05).abs() < 1e-9);
}

/// The quick law meets the slow one where it starts, and is stiffer from there.
#[test]
fn quick_strokes_start_from_rest() {
    let (machine, set_up) = usual(BikeClass::Motocross250, ForkKind::GasOneLeg);
    let fork = Fork::build(&machine, &set_up.fork, &Surroundings::USUAL);
    for from_m in [0.004, 0.03, 0.06, 0.1] {
        let quick = Law::Quick { from_m };
        near(
            fork.force_n(from_m, quick),
            fork.force_n(from_m, Law::Slow),
            1e-12,
        );
        assert!(fork.force_n(from_m + 0.05, quick) > fork.force_n(from_m + 0.05, Law::Slow));
    }
}

/// Stops do nothing between the ends and push back at both.
#[test]
fn stops_work_at_the_ends_only() {
    let (machine, set_up) = usual(BikeClass::Trail, ForkKind::CoilBothLegs);
    let stops = Fork::build(&machine, &set_up.fork, &Surroundings::USUAL).stops;
    let at = |share: f64| stops.force_n(share * stops.stroke_m);
    assert!(at(0.0).abs() < 1e-12 && at(0.5).abs() < 1e-12 && at(0.899).abs() < 1e-12);
    assert!(at(-0.02) < 0.0 && at(0.95) > 0.0 && at(1.0) > 7.0 * at(0.95));
}

/// Neglect doubles the base friction in its hours and stops there; thin oil helps only a leg without damper; a twist
/// adds what it is.
#[test]
fn friction_by_state() {
    let friction_n = |fork: ForkKind, change: &dyn Fn(&mut SetUp)| {
        let (machine, mut set_up) = usual(BikeClass::Motocross250, fork);
        change(&mut set_up);
        Fork::build(&machine, &set_up.fork, &Surroundings::USUAL).friction_n(0.0, 0.0)
    };
    let both = ForkKind::CoilBothLegs;
    let fresh_n = friction_n(both, &|_| {});
    near(
        friction_n(both, &|set| set.fork.wear.hours = 80.0),
        2.0 * fresh_n,
        1e-9,
    );
    near(
        friction_n(both, &|set| set.fork.wear.hours = 3000.0),
        3.0 * fresh_n,
        1e-9,
    );
    near(
        friction_n(both, &|set| set.fork.wear.slippery = true),
        fresh_n,
        1e-12,
    );
    near(
        friction_n(both, &|set| set.fork.wear.binding = newton(90.0)),
        fresh_n + 90.0,
        1e-9,
    );
    let slippery_n = friction_n(ForkKind::CoilOneLeg, &|set| set.fork.wear.slippery = true);
    assert!(slippery_n < 0.9 * fresh_n && slippery_n > 0.8 * fresh_n);
}

/// A shock mounted unlike its class's gets a spring that is about as stiff at the wheel.
#[test]
fn a_shock_mounted_otherwise_gets_another_spring() {
    for (class, other) in [
        (BikeClass::EnduroLinkless, ShockKind::Linkage),
        (BikeClass::Motocross250, ShockKind::Linkless),
    ] {
        let rest = |shock| {
            let machine = Machine::of(class, ForkKind::CoilBothLegs, shock);
            let stance = settle(
                &machine,
                &Load::usual(machine.class),
                &SetUp::usual(&machine),
                &Surroundings::USUAL,
            );
            stance.expect("holds").ridden.rear.middle.value
        };
        near(rest(other), rest(Machine::usual_shock(class)), 0.1);
    }
}
