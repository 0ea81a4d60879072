//! The law of a damper as numbers: how exactly it is solved, and that rows of dampers go in lockstep.

use sagwright_core::bike::damping::{DamperLaw, ValveLaw};
use sagwright_core::intake::{BikeClass, ForkKind};
use sagwright_core::units::celsius;
use wide::f64x2;

use crate::damper::{dampers, law, share};

/// How far the two steps of the law are from the root of its cubic, relative in speed.
fn miss(valve: &ValveLaw, speed: f64) -> f64 {
    let force_n = valve.force_n(speed) - valve.port * speed * speed;
    let x = (force_n + valve.viscous * valve.viscous).sqrt();
    let cubic = x * x * x + valve.cubic_linear * x - valve.cubic_constant;
    (cubic / valve.cubic_slope / speed - 1.0).abs()
}

/// Two steps are enough from the crack up to 10 m/s at the axle, in every class, from closed to open and cold to hot.
#[test]
fn two_steps_are_enough() {
    let mut worst: f64 = 0.0;
    for &kind in BikeClass::ALL {
        let (fork, shock, _) = dampers(kind, ForkKind::CoilOneLeg);
        for mut damper in [fork, shock, fork.without_float()] {
            for (clicks, degrees) in [
                (0.0, 40.0),
                (12.0, 40.0),
                (30.0, 40.0),
                (12.0, -20.0),
                (12.0, 120.0),
            ] {
                damper.base.clicks = clicks;
                damper.rebound.clicks = clicks;
                let law = damper.law(celsius(degrees)).expect("in range");
                for valve in [law.base, law.mid, law.rebound] {
                    for step in 1_u16..=500 {
                        let speed = valve.crack_speed + 0.02 * f64::from(step) * share(&damper);
                        worst = worst.max(miss(&valve, speed));
                    }
                }
            }
        }
    }
    assert!(worst < 1e-8, "{worst:e}");
}

/// A row gives to the bit what its numbers give alone, also when one is compressed and the other rebounds.
#[test]
fn a_row_equals_its_numbers() {
    let (fork, shock, _) = dampers(BikeClass::Motocross450, ForkKind::CoilBothLegs);
    let alone = [law(&fork), law(&shock)];
    let row = DamperLaw::<f64x2>::row(|i| alone[i]);
    for step in -40_i8..=40 {
        let speed = 0.1 * f64::from(step);
        let speeds = [speed, -0.3 * speed];
        let floats = [0.5 * alone[0].float_m, 0.0];
        let got = row
            .force_n(f64x2::new(speeds), f64x2::new(floats))
            .to_array();
        let low = row
            .lowest_over_reservoir_pa(f64x2::new(speeds), f64x2::new(floats))
            .to_array();
        for i in [0, 1] {
            assert_eq!(
                got[i].to_bits(),
                alone[i].force_n(speeds[i], floats[i]).to_bits()
            );
            let pressure = alone[i].lowest_over_reservoir_pa(speeds[i], floats[i]);
            assert_eq!(low[i].to_bits(), pressure.to_bits());
        }
    }
}
