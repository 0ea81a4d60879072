//! The truth about one bike: a simulation of its own, with a hidden fault.
//!
//! It shares the equations of motion with the library, and the meaning of each fault and each feeling; everything
//! else is drawn anew and never told: masses, shares, leverage, travel, friction, tyres, rider, valves of another
//! shape, other ground, half the step, one bike at a time instead of four in step.

use crate::luck::Luck;
use sagwright_core::bench::grounds::{Ground, showing};
use sagwright_core::bench::{Bench, Outcome, Still, Trial};
use sagwright_core::bike::damping::design::USUAL_OIL;
use sagwright_core::bike::damping::{Damper, DamperLaw};
use sagwright_core::bike::{Class, Tyre};
use sagwright_core::cause::Cause;
use sagwright_core::cause::fault::Fault;
use sagwright_core::cause::felt::{Felt, Seen, felt};
use sagwright_core::feel::{Feel, Metrics};
use sagwright_core::ride::ground::Feature;
use sagwright_core::ride::run::Ride;
use sagwright_core::ride::{Bike, Candidate, Course, RideError, Rider, Tyres};
use sagwright_core::stance::tyres::tyres;
use sagwright_core::stance::{Baseline, Situation, baseline};
use sagwright_core::units::{Length, Pressure, kg, metre, mm, pascal};

/// Step of the true rides, s.
const STEP_S: f64 = 0.5e-3;
/// Random ground is ridden over so many pieces.
const PIECES: usize = 2;

/// A bike as it really is, without its fault.
pub struct TrueBike {
    /// The bike and its rider.
    pub situation: Situation,
    /// What really suits them.
    pub suits: Baseline,
    /// Nothing amiss.
    pub healthy: Trial,
    /// What both tyres are run at, gauge.
    pub pressures: [Pressure; 2],
    /// The ground ridden.
    pub grounds: Vec<Ground>,
    valves: [Shape; 2],
    tyres: [[f64; 2]; 2],
    rider: Rider,
}

/// How the valves of one damper differ from those the library would fit.
#[derive(Clone, Copy)]
struct Shape {
    crack: f64,
    stack: f64,
    port: f64,
}

/// What a bike did and how it stands.
pub struct Found {
    /// The bike.
    pub trial: Trial,
    /// Standing still.
    pub still: Still,
    /// Ridden over the grounds.
    pub ridden: Vec<Outcome>,
}

impl Found {
    /// What the rider feels of it against another.
    pub fn against(&self, other: &Self, grounds: &[Ground]) -> Felt {
        felt(&self.seen(), &other.seen(), grounds)
    }

    const fn seen(&self) -> Seen<'_> {
        Seen {
            trial: &self.trial,
            still: self.still,
            ridden: self.ridden.as_slice(),
        }
    }

    /// Deepest use of the fork's travel on the hardest ground, share.
    pub fn fork_used(&self) -> f64 {
        let deepest = self
            .ridden
            .iter()
            .map(|one| one.metrics.travel_deepest.front);
        deepest.fold(0.0, f64::max)
    }
}

impl TrueBike {
    /// Draws the bike behind what was told. `None` where the draw cannot be ridden.
    pub fn draw(told: &Situation, luck: &mut Luck) -> Option<Self> {
        let situation = off(told, luck);
        let suits = baseline(&situation);
        let bench = Bench::of(&situation, &suits).ok()?;
        let mut healthy = bench.advised();
        healthy.set_up.fork.wear.hours = luck.between(0.0, 40.0);
        healthy.set_up.fork.wear.gas_seals = luck.factor(0.25);
        healthy.set_up.shock.wear.hours = luck.between(0.0, 30.0);
        let grounds = ground(&bench, luck).ok()?;
        let usual = tyres(&situation);
        let pressures = [usual.front, usual.rear]
            .map(|band| band.middle + (band.high - band.low) * luck.normal(0.25));
        let mut shape = || Shape {
            crack: luck.factor(0.35),
            stack: luck.factor(0.25),
            port: luck.factor(0.2),
        };
        let valves = [shape(), shape()];
        let tyres = [0, 1].map(|_| [luck.factor(0.10), luck.factor(0.25)]);
        let mut rider = Rider::of(situation.load.posture);
        rider.leg_hz *= luck.factor(0.12);
        rider.leg_ratio *= luck.factor(0.15);
        rider.arm_n_per_m *= luck.factor(0.25);
        rider.arm_n_s_per_m *= luck.factor(0.25);
        rider.most_pitch_n_m *= luck.factor(0.15);
        Some(Self {
            situation,
            suits,
            healthy,
            pressures,
            grounds,
            valves,
            tyres,
            rider,
        })
    }

    /// The bench of the true bike.
    pub fn bench(&self) -> Bench<'_> {
        Bench::of(&self.situation, &self.suits).expect("drawn with a bench")
    }

    /// What the faults are held against, and the bike with all of them.
    pub fn with(&self, faults: &[Fault]) -> Result<[Trial; 2], RideError> {
        let bench = self.bench();
        let mut faulty = self.healthy.clone();
        let mut reference = self.healthy.clone();
        for fault in faults {
            faulty = fault.put_on(&faulty);
            if fault.cause == Cause::GasDrag {
                reference = fault.reference(&bench, &reference)?;
            }
        }
        Ok([reference, faulty])
    }

    /// Rides a trial over all of the ground and looks at it standing.
    pub fn ride(&self, trial: Trial) -> Result<Found, RideError> {
        let bench = self.bench();
        let candidate = self.candidate(&bench, &trial)?;
        let bike = Bike::<f64>::of(&[candidate])?;
        let ridden = self.grounds.iter().map(|ground| {
            let pieces: Vec<(Metrics<f64>, f64)> = ground
                .pieces
                .iter()
                .map(|piece| feel(&bike, piece))
                .collect();
            let metrics: Vec<Metrics<f64>> = pieces.iter().map(|(metrics, _)| *metrics).collect();
            Some(Outcome {
                metrics: Metrics::mean(&metrics)?,
                falls: pieces.iter().map(|(_, rode)| 1.0 - rode).sum(),
            })
        });
        let ridden = ridden
            .collect::<Option<Vec<_>>>()
            .ok_or(RideError::Nothing)?;
        let still = Still::of(&bench, &trial)?;
        Ok(Found {
            trial,
            still,
            ridden,
        })
    }

    fn candidate<'a>(
        &'a self,
        bench: &Bench,
        trial: &'a Trial,
    ) -> Result<Candidate<'a>, RideError> {
        let dampers = bench.dampers(trial)?;
        let voids = bench.voids_m(trial)?;
        let law = |mut damper: Damper, shape: Shape, void: f64| -> Result<DamperLaw, RideError> {
            for shims in [&mut damper.base.shims, &mut damper.rebound.shims] {
                shims.dish_m = (shims.dish_m * shape.crack).min(1.9e-3);
                shims.stack_n_per_m *= shape.stack;
            }
            damper.base.port_m2 *= shape.port;
            damper.rebound.port_m2 *= shape.port;
            Ok(damper.law(USUAL_OIL)?.with_void(void))
        };
        let kind = trial.machine.class.kind;
        let share = trial.condition.tyres;
        let at =
            |pressure: Pressure, share: f64| pascal((pressure.value * share).clamp(0.2e5, 3.5e5));
        let felt = |mut tyre: Tyre, [rate, damping]: [f64; 2]| {
            tyre.rate *= rate;
            tyre.damping *= damping;
            tyre
        };
        let front = Tyre::front(kind, at(self.pressures[0], share.front))?;
        let rear = Tyre::rear(kind, at(self.pressures[1], share.rear))?;
        Ok(Candidate {
            machine: &trial.machine,
            load: &self.situation.load,
            set_up: &trial.set_up,
            surroundings: &trial.air,
            fork_damper: law(dampers.front, self.valves[0], voids.front)?,
            shock_damper: law(dampers.rear, self.valves[1], voids.rear)?,
            tyres: Tyres {
                front: felt(front, self.tyres[0]),
                rear: felt(rear, self.tyres[1]),
            },
            rider: self.rider,
        })
    }
}

/// A bike as far from its class as bikes sold under one name are, and its rider as far from what scales and habits tell.
fn off(told: &Situation, luck: &mut Luck) -> Situation {
    let spread = Class::SPREAD;
    let mut off = told.clone();
    off.load.rider += kg(luck.normal(spread.gear.value));
    off.load.rider_front_share += luck.normal(spread.rider_share);
    let mut metres = |length: &mut Length, deviation: Length| {
        *length = (*length + metre(luck.normal(deviation.value))).max(metre(0.0));
    };
    metres(&mut off.machine.fork_stroke, 0.75 * spread.travel);
    metres(&mut off.fork_sag, mm(3.0));
    metres(&mut off.rear_sag, mm(3.0));
    metres(&mut off.fork_preload, spread.preload);
    metres(&mut off.shock_preload, spread.preload);
    metres(&mut off.now.fork.air_gap, 0.5 * spread.air_gap);
    let machine = &mut off.machine;
    machine.wet_mass *= luck.factor(spread.wet_mass);
    machine.front_share += luck.normal(spread.front_share);
    let ratio = luck.factor(spread.motion_ratio);
    machine.leverage.top *= ratio;
    machine.leverage.bottom *= ratio;
    machine.leverage.late = luck.between(0.0, 0.4);
    machine.leverage.travel_m += luck.normal(0.75 * spread.travel.value);
    off
}

/// The rider's ground, made of other pieces than the library rides: as hard as the true bike can take, give or take, and mixed
/// not quite as told.
fn ground(bench: &Bench, luck: &mut Luck) -> Result<Vec<Ground>, RideError> {
    let situation = bench.situation();
    let mut grounds = showing(bench, &[])?;
    for ground in &mut grounds {
        let fitted = ground.pieces.first().map_or(1.0, |piece| piece.size);
        let size = fitted * luck.factor(0.06);
        let pieces = match ground.feature {
            Feature::JumpToSlope | Feature::JumpToFlat | Feature::Braking => 1,
            _ => PIECES,
        };
        let radius_m = 0.5
            * (Tyre::front(situation.machine.class.kind, pascal(1e5))?.radius
                + Tyre::rear(situation.machine.class.kind, pascal(1e5))?.radius)
                .value;
        let wheelbase_m = situation.machine.class.wheelbase.value;
        ground.pieces = (0..pieces)
            .map(|_| {
                let seed = luck.bits();
                let mut piece =
                    Course::new(ground.feature, situation.pace, wheelbase_m, radius_m, seed);
                piece.size = size;
                piece
            })
            .collect();
        ground.weight *= luck.factor(0.4);
    }
    let sum: f64 = grounds.iter().map(|ground| ground.weight).sum();
    for ground in &mut grounds {
        ground.weight /= sum;
    }
    Ok(grounds)
}

fn feel(bike: &Bike<f64>, course: &Course) -> (Metrics<f64>, f64) {
    let mut feel = Feel::new(&course.clock(STEP_S), &bike.resting());
    let mut ride = Ride::start(bike, course, STEP_S);
    while !ride.over() {
        ride.step();
        feel.step(&ride.sample());
    }
    (feel.metrics(), ride.rides())
}

/// A fault of this cause, one of the ways it can be off, its size drawn evenly from 0.7 of mild to 1.3 of plain.
pub fn drawn_fault(cause: Cause, luck: &mut Luck) -> Fault {
    let [mild, plain] = luck.one_of(Fault::degrees(cause));
    let sound = sound(cause);
    let at = |size: f64, share: f64| sound + (size - sound) * share;
    let degree = luck.between(at(mild, 0.7), at(plain, 1.3));
    let degree = match cause {
        Cause::ForkReservoir | Cause::ShockGasLost => degree.max(0.02),
        _ => degree,
    };
    Fault {
        cause,
        degree,
        plain: luck.happens(0.5),
    }
}

/// The degree at which there is no fault.
pub const fn sound(cause: Cause) -> f64 {
    match cause {
        Cause::ForkReservoir | Cause::ShockGasLost | Cause::GasNegative => 1.0,
        // A gas leg has its own drag whatever its state: from a little below usual to worn.
        Cause::GasDrag => 0.8,
        Cause::MidValve => 0.2,
        _ => 0.0,
    }
}
