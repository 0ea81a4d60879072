//! The usual rider of each class on the usual bike.

use sagwright_core::bike::{ForkSpring, Machine, SetUp, Surroundings};
use sagwright_core::intake::{BikeClass, ForkKind};
use sagwright_core::stance::{Case, Load, Pitch, fork_rate_for, gas_pressure_for, shock_rate_for};
use sagwright_core::units::to_mm;

/// A bike, its usual rider and a set-up.
pub struct Reference {
    pub machine: Machine,
    pub load: Load,
    pub set_up: SetUp,
    pub surroundings: Surroundings,
}

impl Reference {
    /// As it leaves the shop.
    pub fn usual(class: BikeClass, fork: ForkKind) -> Self {
        let machine = Machine::of(class, fork, Machine::usual_shock(class));
        Self {
            load: Load::usual(machine.class),
            set_up: SetUp::usual(&machine),
            surroundings: Surroundings::USUAL,
            machine,
        }
    }

    /// With the springs or the gas that give both sag targets.
    pub fn on_target(class: BikeClass, fork: ForkKind) -> Self {
        let mut bike = Self::usual(class, fork);
        let class = bike.machine.class;
        let (front, rear) = (
            Pitch::OtherAt(class.rear_sag),
            Pitch::OtherAt(class.fork_sag),
        );
        bike.set_up.shock.rate =
            shock_rate_for(&bike.case(rear), class.rear_sag).expect("within reach");
        bike.set_up.fork.spring = match bike.set_up.fork.spring {
            ForkSpring::Coil {
                springs, preload, ..
            } => ForkSpring::Coil {
                rate: fork_rate_for(&bike.case(front), class.fork_sag).expect("within reach"),
                springs,
                preload,
            },
            ForkSpring::Gas { .. } => ForkSpring::Gas {
                charge: gas_pressure_for(&bike.case(front), class.fork_sag).expect("within reach"),
            },
        };
        bike
    }

    pub fn case(&self, pitch: Pitch) -> Case<'_> {
        Case {
            machine: &self.machine,
            load: &self.load,
            set_up: &self.set_up,
            surroundings: &self.surroundings,
            pitch,
        }
    }

    /// Rider sag in mm: fork along the leg, rear at the axle.
    pub fn sags_mm(&self) -> (f64, f64) {
        let stance = sagwright_core::stance::settle(
            &self.machine,
            &self.load,
            &self.set_up,
            &self.surroundings,
        )
        .expect("the usual bike holds its usual rider");
        (
            to_mm(stance.ridden.fork.middle),
            to_mm(stance.ridden.rear.middle),
        )
    }
}

/// Fails unless `got` lies between `low` and `high`.
#[track_caller]
pub fn between(what: &str, got: f64, low: f64, high: f64) {
    assert!(
        (low..=high).contains(&got),
        "{what}: {got} is not within {low} to {high}"
    );
}
