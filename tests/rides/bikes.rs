//! Bikes ready to ride: the usual rider of a class on the usual bike, its clickers where the baseline puts them.

#[path = "../practice/reference.rs"]
mod reference;

use sagwright_core::bike::damping::design::{Hardware, USUAL_OIL, Wanted};
use sagwright_core::bike::damping::{Damper, DamperLaw};
use sagwright_core::bike::shock::Shock;
use sagwright_core::bike::{Surroundings, Tyre};
use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::ride::ground::Feature;
use sagwright_core::ride::{Candidate, Course, Rider, Tyres};
use sagwright_core::stance::clickers as start;
use sagwright_core::stance::{Pitch, Ranges, clickers, settle};
use sagwright_core::units::{BAR_IN_PA, pascal};

pub use reference::Reference;

/// A bike with its rider, dampers and tyres.
pub struct Ridden {
    pub bike: Reference,
    pub fork: Damper,
    pub shock: Damper,
    pub tyres: Tyres,
    pub rider: Rider,
}

impl Ridden {
    /// The usual bike of a class with springs that give both sag targets and the dampers of club pace.
    pub fn usual(class: BikeClass, fork: ForkKind) -> Self {
        Self::of(Reference::on_target(class, fork))
    }

    /// A bike with the dampers of club pace on mixed ground.
    pub fn of(bike: Reference) -> Self {
        let case = bike.case(Pitch::OtherAsSet);
        let starts = clickers(&case, Pace::Club, &[], &Ranges::default()).expect("within reach");
        let shock = Shock::build(&bike.machine, &bike.set_up.shock, &bike.surroundings);
        let stance = settle(&bike.machine, &bike.load, &bike.set_up, &bike.surroundings)
            .expect("it holds its rider");
        let rear_m = stance.ridden.rear.middle.value;
        let wanted = |compression: &start::Baseline, rebound: &start::Baseline| Wanted {
            compression: compression.each_damper,
            rebound: rebound.each_damper,
            compression_clicks: compression.clicks.middle,
            rebound_clicks: rebound.clicks.middle,
        };
        let fork = Damper::for_targets(
            &Hardware::fork_leg(&bike.machine, Surroundings::USUAL.riding.ambient),
            &wanted(&starts.fork_compression, &starts.fork_rebound),
        )
        .expect("a usual damper");
        let shock = Damper::for_targets(
            &Hardware::shock(&bike.machine, &shock, rear_m),
            &wanted(&starts.shock_compression, &starts.shock_rebound),
        )
        .expect("a usual damper");
        let kind = bike.machine.class.kind;
        let pressure = pascal(match kind {
            BikeClass::Adventure => 1.9 * BAR_IN_PA,
            BikeClass::Trail => 1.35 * BAR_IN_PA,
            _ => 0.85 * BAR_IN_PA,
        });
        Self {
            tyres: Tyres {
                front: Tyre::front(kind, pressure).expect("a usual pressure"),
                rear: Tyre::rear(kind, pressure).expect("a usual pressure"),
            },
            rider: Rider::of(bike.load.posture),
            bike,
            fork,
            shock,
        }
    }

    /// As it would be ridden.
    pub fn candidate(&self) -> Candidate<'_> {
        Candidate {
            machine: &self.bike.machine,
            load: &self.bike.load,
            set_up: &self.bike.set_up,
            surroundings: &self.bike.surroundings,
            fork_damper: law(&self.fork),
            shock_damper: law(&self.shock),
            tyres: self.tyres,
            rider: self.rider,
        }
    }

    /// A piece of ground for this bike.
    pub fn course(&self, feature: Feature, pace: Pace, seed: u64) -> Course {
        Course::new(
            feature,
            pace,
            self.bike.machine.class.wheelbase.value,
            self.tyres.front.radius.value,
            seed,
        )
    }
}

/// A damper with its oil as warm as usual.
pub fn law(damper: &Damper) -> DamperLaw {
    damper.law(USUAL_OIL).expect("a usual damper")
}

/// A damper that does nothing.
pub fn no_damper(like: &Damper) -> DamperLaw {
    DamperLaw {
        dampers: 0.0,
        ..law(like)
    }
}
