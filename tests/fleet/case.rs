//! A case: one bike with what is hidden in it, and what its rider says.

use crate::luck::Luck;
use crate::rider::Rider;
use crate::stable::Stable;
use crate::truth::{Found, TrueBike, drawn_fault};
use sagwright_core::cause::fault::Fault;
use sagwright_core::cause::felt::Felt;
use sagwright_core::cause::{Cause, Numbers, possible};
use sagwright_core::intake::{Complaint, Field, Intake};
use sagwright_core::quantity::{Typed, Unit};

/// Draws of a fault, and of its riders, until one complains of something the fault makes worse: that is why a bike is brought
/// in. A fault that no rider feels in all draws is left out.
const DRAWS: usize = 12;
const RIDERS: usize = 3;
/// Steps by which a fault makes worse what a rider complains of because of it.
const BECAUSE: f64 = 0.5;
/// Chance that a rider knows the hours since service without looking them up.
const KNOWS_HOURS: f64 = 0.5;

/// A bike brought in.
pub struct Case {
    /// What is amiss; nothing where it is the ground or the expectation.
    pub faults: Vec<Fault>,
    /// What was told and said.
    pub intake: Intake,
    /// The bike behind it.
    pub bike: TrueBike,
    /// The bike as it should be, and as it is.
    pub sound: Found,
    /// As it is.
    pub found: Found,
    /// What the rider feels.
    pub felt: Felt,
    /// The rider.
    pub rider: Rider,
    /// Hours since service, fork and shock.
    pub hours: [f64; 2],
    /// Seed of its checks.
    pub seed: u64,
}

impl Case {
    /// The causes to be found.
    pub fn causes(&self) -> Vec<Cause> {
        if self.faults.is_empty() {
            vec![Cause::NothingWrong]
        } else {
            self.faults.iter().map(|fault| fault.cause).collect()
        }
    }

    /// Draws a bike with so many faults out of the odds of the table; one fault may be none.
    pub fn draw(stable: &Stable, many: usize, luck: &mut Luck) -> Option<Self> {
        let causes = causes(stable, many, luck);
        for _ in 0..DRAWS {
            let bike = TrueBike::draw(&stable.situation, luck)?;
            let faults: Vec<Fault> = causes
                .iter()
                .map(|cause| drawn_fault(*cause, luck))
                .collect();
            let Ok([reference, faulty]) = bike.with(&faults) else {
                continue;
            };
            let (Ok(sound), Ok(found)) = (bike.ride(reference), bike.ride(faulty)) else {
                continue;
            };
            let felt = found.against(&sound, &bike.grounds);
            let asked = (0..RIDERS).find_map(|_| {
                let rider = Rider::draw(luck);
                let complaints = rider.complaints(&felt, &causes, luck);
                let because = |said: &Complaint| felt.worse(said.feeling) >= BECAUSE;
                let brought_in = faults.is_empty() || complaints.iter().any(because);
                brought_in.then_some((rider, complaints))
            });
            let Some((rider, complaints)) = asked else {
                continue;
            };
            let hours = hours(&faults, luck);
            let mut intake = stable.told.clone();
            intake.complaints = Some(complaints);
            if luck.happens(KNOWS_HOURS) {
                tell_hours(&mut intake, hours);
            }
            return Some(Self {
                faults,
                intake,
                bike,
                sound,
                found,
                felt,
                rider,
                hours,
                seed: luck.bits(),
            });
        }
        None
    }
}

/// Tells the hours since service.
pub fn tell_hours(intake: &mut Intake, hours: [f64; 2]) {
    for (field, hours) in [Field::ForkHours, Field::ShockHours].into_iter().zip(hours) {
        let typed = Typed {
            value: hours.round(),
            unit: Unit::Hour,
            how: None,
        };
        field.set(intake, Some(typed));
    }
}

/// Different causes that this bike can have.
fn causes(stable: &Stable, many: usize, luck: &mut Luck) -> Vec<Cause> {
    let mut weights: Vec<f64> = Cause::ALL
        .iter()
        .map(|cause| possible(&stable.told, *cause) * Numbers::USUAL.prior[cause.index()])
        .collect();
    let nothing = Cause::NothingWrong.index();
    if many > 1 {
        weights[nothing] = 0.0;
    }
    let mut all = Vec::new();
    for _ in 0..many {
        let place = luck.weighted(&weights);
        if place != nothing {
            all.push(Cause::ALL[place]);
        }
        weights[place] = 0.0;
    }
    all
}

/// Hours since service: half a service interval in the middle, more where something wore out, and those of dry seals are their
/// fault's own degree.
fn hours(faults: &[Fault], luck: &mut Luck) -> [f64; 2] {
    let mut hours = [16.0 * luck.factor(0.9), 20.0 * luck.factor(0.9)];
    for fault in faults {
        match fault.cause {
            Cause::ForkFriction => hours[0] = fault.degree,
            Cause::ForkOilWorn | Cause::ForkReservoir => hours[0] = 55.0 * luck.factor(0.6),
            Cause::ShockGasLost | Cause::LinkageDry => hours[1] = 75.0 * luck.factor(0.6),
            _ => {}
        }
    }
    hours.map(|hours| hours.min(1000.0))
}
