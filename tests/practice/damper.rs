//! Dampers sized from the damping of practice.

use sagwright_core::bike::Machine;
use sagwright_core::bike::damping::damper::WANTED_MARGIN;
use sagwright_core::bike::damping::design::USUAL_OIL;
use sagwright_core::bike::damping::shims::{Shims, Stack};
use sagwright_core::bike::damping::{Damper, DamperLaw, Hardware, Oil, Wanted};
use sagwright_core::bike::gas::Law;
use sagwright_core::bike::shock::Shock;
use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::stance::Pitch;
use sagwright_core::stance::clickers::{CLICK, Clickers, Ranges, clickers};
use sagwright_core::units::{celsius, mm};

use crate::reference::{Reference, between};

/// The dampers of a class's usual bike for its usual rider at club pace: fork and shock.
pub fn dampers(class: BikeClass, fork: ForkKind) -> (Damper, Damper, Clickers) {
    let bike = Reference::usual(class, fork);
    let found = clickers(
        &bike.case(Pitch::OtherAsSet),
        Pace::Club,
        &[],
        &Ranges::default(),
    )
    .expect("the usual bike settles");
    let machine: &Machine = &bike.machine;
    let shock = Shock::build(machine, &bike.set_up.shock, &bike.surroundings);
    let leg = Hardware::fork_leg(machine, bike.surroundings.riding.ambient);
    let rear = Hardware::shock(machine, &shock, machine.class.rear_sag.value);
    let front = Wanted {
        compression: found.fork_compression.each_damper,
        rebound: found.fork_rebound.each_damper,
        compression_clicks: found.fork_compression.clicks.middle,
        rebound_clicks: found.fork_rebound.clicks.middle,
    };
    let back = Wanted {
        compression: found.shock_compression.each_damper,
        rebound: found.shock_rebound.each_damper,
        compression_clicks: found.shock_compression.clicks.middle,
        rebound_clicks: found.shock_rebound.clicks.middle,
    };
    let sized = |hardware: &Hardware, wanted: &Wanted| {
        Damper::for_targets(hardware, wanted).expect("practice is within reach")
    };
    (sized(&leg, &front), sized(&rear, &back), found)
}

/// What a ride computes with, with oil as warm as usual.
pub fn law(damper: &Damper) -> DamperLaw {
    damper.law(USUAL_OIL).expect("a sound damper")
}

/// Forces once the mid-valve has arrived where the speed sends it, as in a stroke that is under way.
fn steady_n(law: &DamperLaw, velocity: f64) -> f64 {
    let float = if velocity > 0.0 { law.float_m } else { 0.0 };
    law.force_n(velocity, float)
}

/// Speeds at the axle up to which damping counts as low-speed, m/s.
const LOW: [f64; 3] = [0.1, 0.2, 0.3];

/// The damping coefficient that fits the forces at low speed best (least squares), N s/m; `share` is the speed of the
/// damper over that of the axle, below zero for rebound.
fn low_speed(law: &DamperLaw, share: f64) -> f64 {
    let (mut above, mut below) = (0.0, 0.0);
    for speed in LOW {
        let velocity = speed * share;
        above += steady_n(law, velocity) * velocity;
        below += velocity * velocity;
    }
    above / below
}

/// Speed of a class's damper over that of the axle, as its design has it.
pub fn share(damper: &Damper) -> f64 {
    damper.top_speed / 3.0
}

/// The fork of a 450 as a whole: around 500 N s/m in compression at low speed, 350 to 600 N at 1 m/s, 800 to 1400 N at
/// 3 m/s, and digressive above 0.5 m/s. Only the first is aimed at.
#[test]
fn fork_of_a_450() {
    let (fork, ..) = dampers(BikeClass::Motocross450, ForkKind::CoilBothLegs);
    let law = law(&fork);
    between("at 0.3 m/s", steady_n(&law, 0.3) / 0.3, 400.0, 600.0);
    between("at 1 m/s", steady_n(&law, 1.0), 350.0, 600.0);
    between("at 3 m/s", steady_n(&law, 3.0), 800.0, 1400.0);
    let coefficients = [0.5, 1.0, 2.0, 3.0].map(|speed| steady_n(&law, speed) / speed);
    assert!(coefficients.is_sorted_by(|a, b| a > b), "{coefficients:?}");
}

/// Every class has at both ends the low-speed damping it was sized for, in both directions, and less of it per speed
/// in a hard hit.
#[test]
fn low_speed_is_as_wanted() {
    for &kind in BikeClass::ALL {
        for &legs in ForkKind::ALL {
            let (fork, shock, found) = dampers(kind, legs);
            for (what, damper, compression, rebound) in [
                ("fork", fork, found.fork_compression, found.fork_rebound),
                ("shock", shock, found.shock_compression, found.shock_rebound),
            ] {
                let (law, share) = (law(&damper), share(&damper));
                let what = format!("{} {} {what}", kind.word(), legs.word());
                for (share, wanted) in [(share, compression), (-share, rebound)] {
                    let wanted = wanted.at_part.value;
                    between(&what, low_speed(&law, share) / wanted, 0.9, 1.1);
                    let hard = steady_n(&law, 3.0 * share) / (3.0 * share);
                    between(&what, hard / wanted, 0.4, 0.9);
                }
            }
        }
    }
}

/// One click is worth 3 to 8 % of low-speed force (practice) from three to twenty clicks out, at both ends and in both directions.
#[test]
fn one_click() {
    for &kind in BikeClass::ALL {
        let (fork, shock, _) = dampers(kind, ForkKind::CoilBothLegs);
        for damper in [fork, shock] {
            for clicks in 3_u8..=20 {
                let at = |clicks: u8| {
                    let mut turned = damper;
                    turned.base.clicks = f64::from(clicks);
                    turned.rebound.clicks = f64::from(clicks);
                    law(&turned)
                };
                let (firm, soft) = (at(clicks), at(clicks + 1));
                for share in [share(&damper), -share(&damper)] {
                    let worth = low_speed(&firm, share) / low_speed(&soft, share) - 1.0;
                    between("one click", worth, CLICK.low, CLICK.high);
                }
            }
        }
    }
}

/// A mid-valve without float shrinks the cavitation margin of a fork at any speed, and one that also carries far
/// too stiff shims spends it: the mid-valve must not dominate.
#[test]
fn solid_mid_valve_shrinks_the_margin() {
    for kind in [
        BikeClass::Motocross125,
        BikeClass::Motocross450,
        BikeClass::EnduroLinkage,
        BikeClass::Adventure,
    ] {
        let (fork, ..) = dampers(kind, ForkKind::CoilBothLegs);
        let margin = |damper: &Damper, speed: f64| {
            let law = law(damper);
            damper
                .cavitation_margin(&law, 0.06, speed, law.float_m, Law::Slow)
                .value
        };
        let solid = fork.without_float();
        for speed in [0.3, 1.0, 3.0] {
            let lost_pa = margin(&fork, speed) - margin(&solid, speed);
            assert!(
                lost_pa > 0.5e5,
                "{} at {speed} m/s: {lost_pa} Pa",
                kind.word()
            );
            assert!(margin(&fork, speed) > WANTED_MARGIN.value);
        }
        let mut dominating = solid;
        dominating.mid.shims.stack_n_per_m *= 12.0;
        assert!(margin(&dominating, 1.0) < WANTED_MARGIN.value);
    }
}

/// One damping leg is built for twice the force of one of a pair, and the forks then damp alike.
#[test]
fn one_leg_does_the_work_of_two() {
    for kind in [
        BikeClass::Motocross250,
        BikeClass::EnduroLinkage,
        BikeClass::Trail,
    ] {
        let pair = dampers(kind, ForkKind::CoilBothLegs).0;
        let mut alone = dampers(kind, ForkKind::CoilOneLeg).0;
        assert_eq!((pair.count, alone.count), (2, 1));
        for speed in [0.2, 0.5, 1.0, -0.2, -1.0] {
            let ratio = steady_n(&law(&alone), speed) / steady_n(&law(&pair), speed);
            between("as a whole", ratio, 0.9, 1.1);
        }
        let as_in_pair = Damper { count: 1, ..pair };
        let needed = steady_n(&law(&alone), 0.3) / steady_n(&law(&as_in_pair), 0.3);
        between("per leg", needed, 1.9, 2.1);
        alone.count = 3;
        assert!(alone.law(USUAL_OIL).is_err());
    }
}

/// Hot oil damps less and cold oil more, at low speed by more than density alone could; thicker oil damps more.
#[test]
fn oil_by_temperature() {
    for &kind in BikeClass::ALL {
        let (fork, shock, _) = dampers(kind, ForkKind::CoilBothLegs);
        for damper in [fork, shock] {
            for share in [share(&damper), -share(&damper)] {
                let at = |celsius_degrees: f64, speed: f64| {
                    let law = damper.law(celsius(celsius_degrees)).expect("in range");
                    steady_n(&law, speed * share)
                };
                let hot = at(80.0, 0.1) / at(40.0, 0.1);
                between("80 °C over 40 °C at 0.1 m/s", hot, 0.8, 0.96);
                between("at 1 m/s", at(80.0, 1.0) / at(40.0, 1.0), hot, 0.99);
                between(
                    "0 °C over 40 °C at 0.1 m/s",
                    at(0.0, 0.1) / at(40.0, 0.1),
                    1.05,
                    2.0,
                );
            }
            let thick = Damper {
                oil: Oil::medium(),
                ..damper
            };
            assert!(steady_n(&law(&thick), 0.05) > 1.05 * steady_n(&law(&damper), 0.05));
            assert!(damper.law(celsius(200.0)).is_err());
        }
    }
}

/// The high-speed adjuster leaves low speed alone below the crack and stiffens what is above.
#[test]
fn high_speed_adjuster() {
    let (_, shock, _) = dampers(BikeClass::Motocross250, ForkKind::CoilBothLegs);
    let mut turned = shock;
    turned.base.shims.adjuster_n =
        0.6 * shock.base.shims.crack_pa() * shock.base.shims.seat.lifting_m2;
    let gain = |speed: f64| {
        steady_n(&law(&turned), speed * share(&shock))
            / steady_n(&law(&shock), speed * share(&shock))
    };
    between("below the crack", gain(0.1), 1.0, 1.0);
    between("at 1 m/s", gain(1.0), 1.02, 1.3);
}

/// The force opposes the speed wherever the float stands, and there is none at rest, so no damper makes energy.
#[test]
fn force_opposes_speed() {
    for &kind in BikeClass::ALL {
        let (fork, shock, _) = dampers(kind, ForkKind::GasOneLeg);
        for law in [law(&fork), law(&shock), law(&fork.without_float())] {
            for part in 0_u8..=4 {
                let float = law.float_m * 0.25 * f64::from(part);
                assert_eq!(law.force_n(0.0, float).abs().to_bits(), 0);
                for step in 1_u8..=200 {
                    let speed = 0.05 * f64::from(step);
                    assert!(law.force_n(speed, float) > 0.0);
                    let rebound = law.force_n(-speed, float);
                    assert!(rebound < 0.0, "{rebound} at {speed} with {float}");
                }
            }
        }
    }
}

/// The float lets a stroke begin softly, takes its lift to close, and is back at the end of a stroke the other way.
#[test]
fn float_of_the_mid_valve() {
    let law = law(&dampers(BikeClass::Motocross450, ForkKind::CoilBothLegs).0);
    between("stroke of the plate in mm", law.float_m * 1e3, 0.02, 0.5);
    assert!(law.force_n(1.0, 0.0) < 0.9 * law.force_n(1.0, law.float_m));
    let half = law.float_after(0.0, 1.0, 0.5 * law.float_m);
    between("half way", half / law.float_m, 0.499, 0.501);
    between(
        "on its stop",
        law.float_after(half, 1.0, 1e-3),
        law.float_m,
        law.float_m,
    );
    between("on its seat", law.float_after(half, -1.0, 1e-3), 0.0, 0.0);
}

/// "15 % stiffer" in workshop terms: some shims in, some out, within 3 % of what was asked for, with few parts moved.
#[test]
fn stiffer_by_shims() {
    let face = Shims {
        count: 12,
        thickness: mm(0.15),
        outer: mm(21.0),
    };
    let smaller = [18.0, 15.0, 12.0].map(|outer| Shims {
        count: 1,
        thickness: mm(0.15),
        outer: mm(outer),
    });
    let stack = Stack::new([&[face][..], &smaller[..]].concat(), mm(9.5)).expect("a usual stack");
    let alone = Stack::new(vec![face], mm(9.5)).expect("a usual stack");
    let rate = |stack: &Stack| stack.rate().expect("a rate").value;
    // The taper helps, and each of its shims less than one on the seat.
    between("taper", rate(&stack) / rate(&alone), 1.01, 1.25);
    for ratio in [0.85, 1.15, 1.3] {
        let swap = stack.swap_for(ratio).expect("within reach");
        between("reached", swap.reached / ratio, 0.97, 1.03);
        assert!(swap.out + swap.put <= 5, "{swap:?}");
        assert_eq!(swap.reached > 1.0, ratio > 1.0);
        let left = Shims {
            count: face.count - swap.out,
            ..face
        };
        let put = Shims {
            count: swap.put,
            thickness: swap.thickness,
            ..face
        };
        let some = [left, put].into_iter().filter(|some| some.count > 0);
        let after = Stack::new(some.chain(smaller).collect(), mm(9.5)).expect("a usual stack");
        between(
            "built",
            rate(&after) / rate(&stack) / swap.reached,
            0.999,
            1.001,
        );
    }
    assert!(stack.swap_for(3.0).is_err());
    assert!(
        Stack::new(
            vec![Shims {
                outer: mm(9.0),
                ..face
            }],
            mm(9.5)
        )
        .is_err()
    );
    assert!(Stack::new(vec![], mm(9.5)).is_err());
}
