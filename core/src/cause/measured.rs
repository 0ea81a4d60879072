//! What measurements say about each cause: how far a number stands from where it should, against how far
//! each cause would push it.

use super::Cause;
use super::belief::{Observation, PerCause};
use crate::intake::{Intake, PushFeel};
use crate::words::Text;

/// A number as found against the number that would suit, in the number's own SI unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// What was found and what would suit, in words.
    pub text: Text,
    /// Found minus suited, SI.
    pub off_by: f64,
    /// Standard deviation of `off_by` from measuring and from what is not known, SI, above 0.
    pub sigma: f64,
    /// Half-width of what counts as right, SI, 0 or more.
    pub right_within: f64,
    /// Causes that make the number too low.
    pub low_means: &'static [Cause],
    /// Causes that make the number too high.
    pub high_means: &'static [Cause],
}

impl Reading {
    /// The reading as likelihoods: a Gaussian of the distance to the nearest value each cause would explain.
    ///
    /// A cause that explains low readings explains any beyond `right_within`; all other causes, and
    /// "nothing is wrong" among them, explain readings that are right.
    pub fn observation(self) -> Observation {
        let Self {
            text,
            off_by,
            sigma,
            right_within,
            low_means,
            high_means,
        } = self;
        let distance = |cause: &Cause| {
            let below = low_means.contains(cause);
            let above = high_means.contains(cause);
            let to_low = (off_by + right_within).max(0.0);
            let to_high = (right_within - off_by).max(0.0);
            let to_right = (off_by.abs() - right_within).max(0.0);
            match (below, above) {
                (true, true) => to_low.min(to_high),
                (true, false) => to_low,
                (false, true) => to_high,
                (false, false) => to_right,
            }
        };
        let mut log_likelihood: PerCause = [0.0; Cause::COUNT];
        for cause in Cause::ALL {
            let z = distance(cause) / sigma;
            log_likelihood[cause.index()] = -0.5 * z * z;
        }
        Observation {
            text,
            log_likelihood,
        }
    }
}

/// Growth of a wear cause with hours since service: odds relative to the others grow by 1 per so many hours.
///
/// Fork seals and oil about 20 to 40 h, shock and linkage about 40 to 50 h between services (common practice).
const WEAR: &[(Cause, bool, f64)] = &[
    (Cause::ForkFriction, true, 25.0),
    (Cause::ForkOilWorn, true, 30.0),
    (Cause::ForkReservoir, true, 60.0),
    (Cause::ShockGasLost, false, 50.0),
    (Cause::LinkageDry, false, 40.0),
];

/// Hours since service as evidence; `hours` in h, 0 or more, `fork` or shock.
///
/// More hours never lower a wear cause: the factor is `(1 + hours / span) / 2`, one half when fresh,
/// one at one service interval, and growing from there.
pub fn hours(hours: f64, fork: bool) -> Observation {
    let mut log_likelihood = [0.0; Cause::COUNT];
    for (cause, at_fork, span) in WEAR {
        if *at_fork == fork {
            log_likelihood[cause.index()] = libm::log(0.5 + 0.5 * hours / span);
        }
    }
    let key = if fork {
        "evidence.fork-hours"
    } else {
        "evidence.shock-hours"
    };
    Observation {
        text: Text::new(key).with("hours", crate::words::Arg::Plain(hours, 0)),
        log_likelihood,
    }
}

/// Push tests as evidence.
pub fn pushes(intake: &Intake) -> Vec<Observation> {
    let measured = &intake.measured;
    let front = measured.push_front.map(|feel| push(feel, true));
    let rear = measured.push_rear.map(|feel| push(feel, false));
    front.into_iter().chain(rear).collect()
}

/// Chance of a push-test answer under a cause that shows in it, and under one that does not. Common practice.
const SHOWS: f64 = 0.7;
const SHOWS_NOT: f64 = 0.12;

/// The causes that a push test of this feel points to, front or rear.
pub const fn push_means(feel: PushFeel, front: bool) -> &'static [Cause] {
    match (feel, front) {
        (PushFeel::SticksFirst, true) => &[
            Cause::ForkFriction,
            Cause::ForkBound,
            Cause::GasDrag,
            Cause::GasHigh,
            Cause::GasNegative,
        ],
        (PushFeel::SticksFirst | PushFeel::Judders, false) => &[Cause::LinkageDry],
        (PushFeel::Judders, true) => &[Cause::ForkBound, Cause::ForkFriction],
        (PushFeel::SlowReturn, true) => &[Cause::ForkReboundSlow, Cause::ForkBound],
        (PushFeel::SlowReturn, false) => &[Cause::ShockReboundSlow, Cause::LinkageDry],
        (PushFeel::FastReturn, true) => &[
            Cause::ForkReboundFast,
            Cause::ForkReservoir,
            Cause::ForkOilWorn,
        ],
        (PushFeel::FastReturn, false) => &[Cause::ShockReboundFast, Cause::ShockGasLost],
        (PushFeel::Smooth, _) => &[],
    }
}

fn push(feel: PushFeel, front: bool) -> Observation {
    let mut log_likelihood = [libm::log(SHOWS_NOT); Cause::COUNT];
    if feel == PushFeel::Smooth {
        // A smooth push speaks against every cause that some other feel would have shown.
        log_likelihood = [libm::log(SHOWS); Cause::COUNT];
        let others = PushFeel::ALL
            .iter()
            .flat_map(|feel| push_means(*feel, front));
        others.for_each(|cause| log_likelihood[cause.index()] = libm::log(1.0 - SHOWS));
    } else {
        for cause in push_means(feel, front) {
            log_likelihood[cause.index()] = libm::log(SHOWS);
        }
    }
    let end = if front { "front" } else { "rear" };
    Observation {
        text: Text::new(format!("evidence.push-{end}-{}", feel.word())),
        log_likelihood,
    }
}
