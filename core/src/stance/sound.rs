//! How sound bikes of one description differ, and how what is read of one end hangs together.
//!
//! A bike that is set up well may still carry a stiffer spring than another under the same rider: its linkage differs, or its
//! rider stands further back. Then it needs less preload, or has more free sag, for the same rider sag. So a number that is
//! off says little by itself, and four numbers of one end that go together say that nothing is amiss.
//!
//! **The method.** Each input of [`super::unknowns`] is put to a few of its values with all others at their likeliest, and each
//! such bike is set up well; what that moves, number by number, adds up to a matrix of covariances. That the inputs act
//! independently and nearly in a straight line is what [`super::unknowns`] takes them to do for its shares as well.

use super::baseline::{as_if_made, fork_preload, fork_step, shock_preload};
use super::error::StanceError;
use super::settle::Stance;
use super::situation::Situation;
use super::unknowns::{Input, around};
use crate::bike::{Class, ForkSpring, SetUp};

/// What is read of one end, in the order of the rows of its covariances.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// Rate of the spring, N/m, or gauge pressure of the gas, Pa.
    Spring,
    /// Preload, m.
    Preload,
    /// Rider sag, m.
    RiderSag,
    /// Free sag, m.
    FreeSag,
}

impl Part {
    /// All of them.
    pub const ALL: [Self; PARTS] = [Self::Spring, Self::Preload, Self::RiderSag, Self::FreeSag];
}

/// How many parts there are.
pub const PARTS: usize = 4;

/// One number for each [`Part`].
pub type Parts = [f64; PARTS];

/// Sound bikes of one description, front and rear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sound {
    /// What is read of the likeliest of them.
    pub usual: [Parts; 2],
    /// Covariances about that, in the products of the parts' SI units.
    pub covariances: [[Parts; PARTS]; 2],
}

/// Springs are sold in steps: what is fitted is up to half a step off, evenly, so by this part of a step as a standard deviation:
/// 1/√12.
const OF_A_STEP: f64 = 0.288_675_134_594_812_9;

/// The inputs that move springs and sags; those of damping, tyres and ground do not.
const INPUTS: [Input; 14] = [
    Input::Class,
    Input::Rider,
    Input::Gear,
    Input::Posture,
    Input::RiderShare,
    Input::Bike,
    Input::Fuel,
    Input::FrontShare,
    Input::ForkSag,
    Input::RearSag,
    Input::ForkPreload,
    Input::AirGap,
    Input::MotionRatio,
    Input::ShockPreload,
];

/// How sound bikes of this description differ.
///
/// # Errors
/// When the likeliest of them cannot come to rest.
pub fn sound(situation: &Situation) -> Result<Sound, StanceError> {
    let mut sound = Sound {
        usual: read(situation)?,
        covariances: [[[0.0; PARTS]; PARTS]; 2],
    };
    for input in INPUTS {
        let around = around(situation, input);
        let all: f64 = around.iter().map(|(_, weight)| weight).sum();
        for (draw, weight) in &around {
            // One that cannot come to rest says nothing.
            if let Ok(moved) = read(&draw.situation) {
                sound.add(&moved, weight / all);
            }
        }
    }
    for sign in [-1.0, 1.0] {
        if let Ok(moved) = between_steps(situation, sign) {
            sound.add(&moved, 0.5);
        }
    }
    Ok(sound)
}

impl Sound {
    fn add(&mut self, moved: &[Parts; 2], weight: f64) {
        let ends = self.usual.iter().zip(moved);
        for (of_end, (usual, moved)) in self.covariances.iter_mut().zip(ends) {
            for (row, one) in of_end.iter_mut().enumerate() {
                for (column, sum) in one.iter_mut().enumerate() {
                    let off = |place: usize| moved[place] - usual[place];
                    *sum += weight * off(row) * off(column);
                }
            }
        }
    }
}

/// What is read of a bike that is set up well.
fn read(situation: &Situation) -> Result<[Parts; 2], StanceError> {
    let (set_up, stance) = as_if_made(situation, |_, _| {})?;
    Ok(parts(&set_up, &stance))
}

/// The same with springs part of a step stiffer or softer, and preload to match.
fn between_steps(situation: &Situation, sign: f64) -> Result<[Parts; 2], StanceError> {
    let (set_up, stance) = as_if_made(situation, |situation, set_up| {
        if let ForkSpring::Coil { rate, preload, .. } = &mut set_up.fork.spring {
            *rate += fork_step(&situation.machine) * (sign * OF_A_STEP);
            *preload = fork_preload(situation, *rate).unwrap_or(*preload);
        }
        let shock = &mut set_up.shock;
        shock.rate += Class::SHOCK_RATE_STEP * (sign * OF_A_STEP);
        shock.preload = shock_preload(situation, shock.rate).unwrap_or(shock.preload);
    })?;
    Ok(parts(&set_up, &stance))
}

fn parts(set_up: &SetUp, stance: &Stance) -> [Parts; 2] {
    let (free, ridden) = (&stance.free, &stance.ridden);
    let [spring, preload] = match set_up.fork.spring {
        ForkSpring::Coil { rate, preload, .. } => [rate.value, preload.value],
        ForkSpring::Gas { charge } => [charge.value, 0.0],
    };
    [
        [
            spring,
            preload,
            ridden.fork.middle.value,
            free.fork.middle.value,
        ],
        [
            set_up.shock.rate.value,
            set_up.shock.preload.value,
            ridden.rear.middle.value,
            free.rear.middle.value,
        ],
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::intake::{BikeClass, Field, ForkKind, FuelLoad, Intake, Posture, YesNo};
    use crate::quantity::{Typed, Unit};
    use crate::stance::unknowns::draws;

    fn situation(fork: ForkKind) -> Situation {
        let mut intake = Intake::default();
        intake.bike.class = Some(BikeClass::EnduroLinkage);
        intake.bike.fork = Some(fork);
        let weight = Typed {
            value: 82.0,
            unit: Unit::Kilogram,
            how: None,
        };
        Field::RiderWeight.set(&mut intake, Some(weight));
        intake.rider.weight_in_gear = Some(YesNo::Yes);
        intake.rider.posture = Some(Posture::Standing);
        intake.bike.fuel = Some(FuelLoad::Half);
        Situation::of(&intake)
    }

    /// All inputs drawn at once, against one at a time.
    #[test]
    fn they_spread_as_far_as_bikes_that_are_drawn() {
        const DRAWS: u32 = 512;
        for fork in [ForkKind::CoilBothLegs, ForkKind::GasOneLeg] {
            let situation = situation(fork);
            let sound = sound(&situation).expect("a usual bike");
            let drawn: Vec<[Parts; 2]> = draws(&situation, DRAWS, 7)
                .iter()
                .filter_map(|draw| read(&draw.situation).ok())
                .collect();
            for end in [0, 1] {
                for part in Part::ALL.map(|part| part as usize) {
                    let off = |parts: &[Parts; 2]| parts[end][part] - sound.usual[end][part];
                    let square = |parts: &[Parts; 2]| off(parts) * off(parts);
                    let mean = drawn.iter().map(square).sum::<f64>() / f64::from(DRAWS);
                    let told = sound.covariances[end][part][part];
                    // Steps of springs are not in the draws, and straight lines fit to a fifth or so.
                    assert!(
                        mean <= 1.3 * told && told <= 1.5 * mean + 1e-6,
                        "{fork:?} {end} {part}: {mean} drawn, {told} told"
                    );
                }
            }
        }
    }

    #[test]
    fn under_one_rider_a_stiffer_spring_goes_with_less_preload_and_more_free_sag() {
        let sound = sound(&situation(ForkKind::CoilBothLegs)).expect("a usual bike");
        let rear = sound.covariances[1];
        let together = |a: Part, b: Part| {
            let [a, b] = [a as usize, b as usize];
            rear[a][b] / (rear[a][a] * rear[b][b]).sqrt()
        };
        assert!(together(Part::Spring, Part::Preload) < -0.3);
        assert!(together(Part::Spring, Part::FreeSag) > 0.2);
        assert!(together(Part::Preload, Part::FreeSag) < -0.3);
    }
}
