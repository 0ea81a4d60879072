//! A stable: one rider's told answers, with the library's own rehearsal of all that could be wrong.

use crate::luck::Luck;
use sagwright_core::advice::rehearsed;
use sagwright_core::bench::{Bench, grounds};
use sagwright_core::bike::Class;
use sagwright_core::cause::{
    Belief, Cause, Hypothesis, Numbers, Observation, Rehearsal, hypotheses, observations, possible,
};
use sagwright_core::intake::{
    BikeClass, ForkKind, FuelLoad, Intake, Pace, Posture, Share, Terrain, YesNo,
};
use sagwright_core::quantity::{Entry, MassUnit};
use sagwright_core::sorted::Map;
use sagwright_core::stance::{Baseline, Situation, baseline};

/// What a rider told of themselves, their bike and their ground, and what the library makes of it.
pub struct Stable {
    /// Answers that all cases of the stable share.
    pub told: Intake,
    /// The bike as the library sees it.
    pub situation: Situation,
    /// What suits it, as the library finds it.
    pub suits: Baseline,
    /// Every fault, ridden by the library.
    pub rehearsal: Rehearsal,
}

impl Stable {
    /// Draws a rider, a bike and a ground, and has the library ride it.
    pub fn draw(luck: &mut Luck) -> Self {
        let told = told(luck);
        let situation = Situation::of(&told);
        let suits = baseline(&situation);
        let bench = Bench::of(&situation, &suits).expect("a usual rider on a usual bike");
        let showing = grounds::showing(&bench, &[]).expect("ground that can be ridden");
        let (rehearsal, _) = rehearsed(&told, &situation, &suits, &showing, &mut |_, _| true)
            .expect("a bike that can be ridden");
        Self {
            told,
            situation,
            suits,
            rehearsal,
        }
    }

    /// Every way the bike could be, as the library has it.
    pub fn hypotheses(&self, numbers: &Numbers, pairs: bool) -> Vec<Hypothesis<'_>> {
        let can = |cause: Cause| possible(&self.told, cause);
        hypotheses(&self.rehearsal, numbers, can, pairs)
    }

    /// What the library believes after these answers.
    pub fn belief(&self, intake: &Intake, ways: &[Hypothesis], numbers: &Numbers) -> Belief {
        Belief::from(ways, numbers, self.observations(intake, ways, numbers))
    }

    /// What the library takes from these answers.
    pub fn observations(
        &self,
        intake: &Intake,
        ways: &[Hypothesis],
        numbers: &Numbers,
    ) -> Vec<Observation> {
        let situation = self.situation(intake);
        observations(
            intake,
            &situation,
            &self.suits,
            &self.rehearsal,
            ways,
            numbers,
        )
    }

    /// The bike as the library sees it after these answers: air told later is air.
    pub fn situation(&self, intake: &Intake) -> Situation {
        Situation {
            surroundings: Situation::of(intake).surroundings,
            ..self.situation.clone()
        }
    }
}

/// Riders differ in weight by so much, relative.
const RIDERS_DIFFER: f64 = 0.12;

fn told(luck: &mut Luck) -> Intake {
    let mut intake = Intake::default();
    let class = luck.one_of(BikeClass::ALL);
    let body_kg = Class::of(class).rider_body.value * luck.factor(RIDERS_DIFFER);
    intake.rider.weight = Some(Entry {
        value: body_kg.round(),
        unit: MassUnit::Kilogram,
        how: None,
    });
    intake.rider.weight_in_gear = Some(YesNo::No);
    intake.rider.pace = Some(luck.one_of(Pace::ALL));
    intake.rider.posture = Some(luck.one_of(Posture::ALL));
    intake.bike.class = Some(class);
    intake.bike.fuel = Some(luck.one_of(FuelLoad::ALL));
    let forks = [0.4, 0.25, 0.35];
    intake.bike.fork = Some(ForkKind::ALL[luck.weighted(&forks)]);
    intake.bike.shock = Some(sagwright_core::bike::Machine::usual_shock(class));
    let mut mix: Map<Terrain, Share> = Terrain::ALL
        .iter()
        .map(|terrain| {
            let shares = [Share::None, Share::Some, Share::Lot];
            (*terrain, shares[luck.weighted(&[0.45, 0.30, 0.25])])
        })
        .collect();
    mix.insert(luck.one_of(Terrain::ALL), Share::Lot);
    intake.ground.mix = Some(mix);
    intake
}
