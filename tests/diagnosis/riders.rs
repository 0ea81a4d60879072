//! Riders who say and measure things, on the usual bike of their class.

use std::sync::OnceLock;

use sagwright_core::advice::rehearsed;
use sagwright_core::bench::{Bench, grounds};
use sagwright_core::cause::{
    Belief, Cause, Numbers, Rehearsal, checks, hypotheses, observations, possible,
};
use sagwright_core::intake::{
    BikeClass, Complaint, End, Feeling, Field, ForkKind, Intake, Severity, Share, Since, Terrain,
};
use sagwright_core::quantity::{Typed, Unit};
use sagwright_core::stance::{Baseline, Situation, baseline};

/// Clearly felt at one end.
pub fn feels(feeling: Feeling, end: End) -> Complaint {
    Complaint {
        feeling,
        end: Some(end),
        phases: [].into(),
        severity: Some(Severity::Clear),
        since: None,
    }
}

/// The same with how it came on.
pub fn since(complaint: Complaint, since: Since) -> Complaint {
    Complaint {
        since: Some(since),
        ..complaint
    }
}

/// A rider of a coil fork who says this.
pub fn coil(complaints: Vec<Complaint>) -> Intake {
    rider(ForkKind::CoilBothLegs, complaints)
}

/// A rider of a gas fork who says this.
pub fn gas(complaints: Vec<Complaint>) -> Intake {
    rider(ForkKind::GasOneLeg, complaints)
}

fn rider(fork: ForkKind, complaints: Vec<Complaint>) -> Intake {
    let mut intake = Intake {
        complaints: Some(complaints),
        stop_signs: Some([].into()),
        ..Intake::default()
    };
    intake.bike.class = Some(BikeClass::Motocross450);
    intake.bike.fork = Some(fork);
    intake.ground.mix = Some(
        [
            (Terrain::RootsRocks, Share::Some),
            (Terrain::BrakingBumps, Share::Lot),
            (Terrain::Whoops, Share::Some),
            (Terrain::Jumps, Share::Some),
        ]
        .into(),
    );
    intake
}

/// The same rider who also measured something.
pub fn measured(mut intake: Intake, numbers: &[(Field, f64, Unit)]) -> Intake {
    for (field, value, unit) in numbers {
        let typed = Typed {
            value: *value,
            unit: *unit,
            how: None,
        };
        field.set(&mut intake, Some(typed));
    }
    intake
}

struct Ridden {
    situation: Situation,
    suits: Baseline,
    rehearsal: Rehearsal,
}

fn ride(fork: ForkKind) -> Ridden {
    let intake = rider(fork, Vec::new());
    let situation = Situation::of(&intake);
    let suits = baseline(&situation);
    let bench = Bench::of(&situation, &suits).expect("the usual bike of a class");
    let showing = grounds::showing(&bench, &[]).expect("usual ground");
    let (rehearsal, _) = rehearsed(&intake, &situation, &suits, &showing, &mut |_, _| true)
        .expect("the usual bike can be ridden");
    Ridden {
        situation,
        suits,
        rehearsal,
    }
}

/// What is believed of one of these riders' bikes.
pub fn belief(intake: &Intake) -> Belief {
    case(intake, |case| case.belief.clone())
}

/// Hands over the case of one of these riders. All ride the same ground, so that each kind of fork is ridden once.
pub fn case<T>(intake: &Intake, see: impl FnOnce(&checks::Case) -> T) -> T {
    static COIL: OnceLock<Ridden> = OnceLock::new();
    static GAS: OnceLock<Ridden> = OnceLock::new();
    let fork = intake.bike.fork.expect("said by all of them");
    let ridden = match fork {
        ForkKind::GasOneLeg => GAS.get_or_init(|| ride(fork)),
        _ => COIL.get_or_init(|| ride(fork)),
    };
    let Ridden {
        situation,
        suits,
        rehearsal,
    } = ridden;
    let numbers = &Numbers::USUAL;
    let can = |cause: Cause| possible(intake, cause);
    let ways = hypotheses(rehearsal, numbers, can, true);
    let seen = observations(intake, situation, suits, rehearsal, &ways, numbers);
    see(&checks::Case {
        intake,
        situation,
        baseline: suits,
        rehearsal,
        hypotheses: &ways,
        numbers,
        belief: &Belief::from(&ways, numbers, seen),
    })
}
