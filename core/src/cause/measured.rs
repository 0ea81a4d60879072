//! What measurements say: how far each number stands from where it should, against how far each fault would push it.

use std::rc::Rc;

use super::Cause;
use super::belief::Observation;
use super::hypotheses::Hypothesis;
use super::numbers::Numbers;
use super::rehearsal::Rehearsed;
use crate::intake::{Intake, PushFeel, Question};
use crate::words::{Arg, Text};

/// How far a fault pushes a number, in the number's own SI unit.
pub type Push = Rc<dyn Fn(&Rehearsed) -> f64>;

/// A number that a reading says something on top of.
#[derive(Clone)]
pub struct Beside {
    /// Found minus suited, in standard deviations.
    pub off_by: f64,
    /// Standard deviation, SI, above 0.
    pub sigma: f64,
    /// How far a fault pushes it.
    pub pushed: Push,
}

/// A number as found against the number that would suit, in the number's own SI unit.
pub struct Reading {
    /// The page that takes it.
    pub question: Question,
    /// What was found and what would suit, in words.
    pub text: Text,
    /// Found minus suited, SI.
    pub off_by: f64,
    /// Standard deviation of `off_by` from measuring and from what is not known, SI, above 0.
    pub sigma: f64,
    /// How far a fault pushes it.
    pub pushed: Push,
    /// Chance that a fault does push it: the rest stands elsewhere.
    pub shows: fn(&Numbers) -> f64,
    /// What was read of the same end before: it tells how large a fault is, if there is one.
    pub beside: Vec<Beside>,
}

/// What a fault pushes whenever it is there.
pub(super) const ALWAYS: fn(&Numbers) -> f64 = |_| 1.0;

/// A blunder is spread over this many standard deviations.
const BLUNDER_SIGMAS: f64 = 6.0;

impl Reading {
    /// The reading as likelihoods: a Gaussian about what the faults make of the number, wider for faults that make more of
    /// it, with room for a blunder.
    pub fn observation(&self, hypotheses: &[Hypothesis], numbers: &Numbers) -> Observation {
        Observation::of(self.text.clone(), hypotheses, |hypothesis| {
            libm::log(self.density(hypothesis, numbers, self.off_by))
        })
    }

    /// Density of an offset under a hypothesis, per SI unit.
    pub fn density(&self, hypothesis: &Hypothesis, numbers: &Numbers, off_by: f64) -> f64 {
        let [here, elsewhere] = self.by_place(hypothesis, numbers, off_by);
        let blunder = about(off_by, 0.0, BLUNDER_SIGMAS * self.sigma);
        (1.0 - numbers.blunder) * (here + elsewhere) + numbers.blunder * blunder
    }

    /// Chance that a fault which pushes this number does not show in it, now that it was read.
    pub fn elsewhere(&self, hypothesis: &Hypothesis, numbers: &Numbers) -> f64 {
        let [here, elsewhere] = self.by_place(hypothesis, numbers, self.off_by);
        elsewhere / (here + elsewhere).max(f64::MIN_POSITIVE)
    }

    /// Whether a fault pushes it.
    pub fn is_pushed_by(&self, fault: &Rehearsed) -> bool {
        (self.pushed)(fault).abs() > 0.0
    }

    /// Density of an offset together with the chance that the faults show in it, and that they do not.
    fn by_place(&self, hypothesis: &Hypothesis, numbers: &Numbers, off_by: f64) -> [f64; 2] {
        let by = |push: &Push| -> f64 { hypothesis.faults.iter().map(|f| push(f)).sum() };
        // The size of a fault against its degree is 1, give or take its vagueness; each number read before narrows it.
        let mut size = (1.0, numbers.vagueness * numbers.vagueness);
        for before in &self.beside {
            let pushed = by(&before.pushed) / before.sigma;
            let gain = size.1 * pushed / (1.0 + size.1 * pushed * pushed);
            size.0 += gain * (before.off_by - size.0 * pushed);
            size.1 *= 1.0 - gain * pushed;
        }
        let pushed = by(&self.pushed);
        let vague = size.1.sqrt() * pushed;
        let pushed = size.0 * pushed;
        let width = (self.sigma * self.sigma + vague * vague).sqrt();
        let shows = (self.shows)(numbers);
        [
            shows * about(off_by, pushed, width),
            (1.0 - shows) * about(off_by, 0.0, self.sigma),
        ]
    }
}

/// The Gaussian bell of a width without its constant, which is common to all hypotheses.
fn about(off_by: f64, middle: f64, width: f64) -> f64 {
    let z = (off_by - middle) / width;
    libm::exp(-0.5 * z * z) / width
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
/// More hours never lower a wear cause: the factor is `(1 + 3 hours / span) / 4`, a quarter when fresh, one at one service
/// interval, and growing from there.
pub fn hours(hours: f64, fork: bool, hypotheses: &[Hypothesis]) -> Observation {
    let key = if fork {
        "evidence.fork-hours"
    } else {
        "evidence.shock-hours"
    };
    let text = Text::new(key).with("hours", Arg::Plain(hours, 0));
    Observation::of(text, hypotheses, |hypothesis| {
        libm::log(hours_factor(hours, fork, hypothesis))
    })
}

/// Factor on the odds of a bike with these faults by hours since the service of one end. Hours that wore two of them out
/// are the same hours and count once, by what wears quickest.
pub fn hours_factor(hours: f64, fork: bool, hypothesis: &Hypothesis) -> f64 {
    let worn = |cause: Cause| {
        let row = WEAR
            .iter()
            .find(|(of, at_fork, _)| *of == cause && *at_fork == fork);
        row.map(|(_, _, span)| 0.25 + 0.75 * hours / span)
    };
    let each = hypothesis
        .faults
        .iter()
        .filter_map(|fault| worn(fault.cause));
    each.reduce(f64::max).unwrap_or(1.0)
}

/// Push tests as evidence.
pub fn pushes(intake: &Intake, hypotheses: &[Hypothesis], numbers: &Numbers) -> Vec<Observation> {
    let measured = &intake.measured;
    let one = |feel: Option<PushFeel>, front: bool| {
        let feel = feel?;
        let end = if front { "front" } else { "rear" };
        let text = Text::new(format!("evidence.push-{end}-{}", feel.word()));
        Some(Observation::of(text, hypotheses, |hypothesis| {
            libm::log(push_chance(hypothesis, numbers, feel, front))
        }))
    };
    let front = one(measured.push_front, true);
    let rear = one(measured.push_rear, false);
    front.into_iter().chain(rear).collect()
}

/// Friction that is just noticed in a slow push, N at the part, and damping, natural logarithm. Common practice.
const PUSH_FRICTION_N: f64 = 22.0;
const PUSH_DAMPING: f64 = 0.2;
const PUSH_VOID_M: f64 = 0.0015;

/// Chance that a slow push feels so on a bike with these faults: the smooth push of a sound bike is as likely as all other
/// feels together are not; each other grows with what makes it.
pub fn push_chance(hypothesis: &Hypothesis, numbers: &Numbers, feel: PushFeel, front: bool) -> f64 {
    let shown = &hypothesis.shown;
    let end = usize::from(!front);
    let friction = shown.breakaway_n[end] / PUSH_FRICTION_N;
    let slow = shown.damping[2 * end + 1] / PUSH_DAMPING;
    let void = shown.void_m[end] / PUSH_VOID_M;
    let binds = hypothesis
        .faults
        .iter()
        .any(|fault| matches!(fault.cause, Cause::ForkBound | Cause::LinkageDry));
    let odds = |feel: PushFeel| {
        let (base, steps) = match feel {
            PushFeel::Smooth => return 1.0,
            PushFeel::SticksFirst => (0.10, friction),
            PushFeel::Judders if binds => (0.06, friction),
            PushFeel::Judders => (0.04, 0.5 * friction),
            PushFeel::SlowReturn => (0.06, slow + 0.3 * friction),
            PushFeel::FastReturn => (0.06, 0.5 * void - slow),
        };
        base * libm::exp((numbers.push * steps).clamp(-3.0, 5.0))
    };
    let all: f64 = PushFeel::ALL.iter().map(|feel| odds(*feel)).sum();
    odds(feel) / all
}
