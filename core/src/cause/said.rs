//! What the rider's words say about each cause.

use super::Cause;
use super::belief::{Observation, PerCause};
use super::signature::{self, LEAK};
use crate::intake::{Complaint, End, Feeling, Intake, Phase, Severity, Since};
use crate::words::Text;

/// A feeling not mentioned counts half: riders do not tell everything. Common practice.
const SILENCE: f64 = 0.5;

/// The second and later complaints of one group count less, since one thing is felt in several ways.
const SAME_GROUP: f64 = 0.6;

/// Feelings that tend to be one thing said twice.
const GROUPS: &[&[Feeling]] = &[
    &[Feeling::HarshSmallBumps, Feeling::Sticks, Feeling::Skips],
    &[Feeling::HarshBigHits, Feeling::RampsUp],
    &[Feeling::Dives, Feeling::Bottoms, Feeling::Squats],
    &[Feeling::Springs, Feeling::Kicks, Feeling::Wallows],
    &[Feeling::Pushes, Feeling::Headshake, Feeling::SitsWrong],
];

/// Everything said, as observations. Nothing said ("I don't know") is no observation.
pub fn observations(intake: &Intake) -> Vec<Observation> {
    let Some(complaints) = &intake.complaints else {
        return Vec::new();
    };
    let mut found = Vec::new();
    let mut met = vec![false; GROUPS.len()];
    // In the order of the list of feelings, so that the order in which they were said does not matter.
    let mut in_order: Vec<&Complaint> = complaints.iter().collect();
    in_order.sort_by_key(|complaint| complaint.feeling);
    for complaint in in_order {
        let group = GROUPS
            .iter()
            .position(|group| group.contains(&complaint.feeling));
        let seen_before = group.is_some_and(|g| std::mem::replace(&mut met[g], true));
        let weight =
            severity_weight(complaint.severity) * if seen_before { SAME_GROUP } else { 1.0 };
        found.push(mention(complaint, weight));
        found.extend(moments(complaint));
        found.extend(history(complaint));
    }
    if complaints.is_empty() {
        found.push(all_quiet());
    } else {
        let silent = Feeling::ALL
            .iter()
            .filter(|f| complaints.iter().all(|c| c.feeling != **f));
        found.extend(silent.map(|feeling| silence(*feeling)));
    }
    found
}

/// A bad complaint is surer than a slight one: exponent on its likelihood. Common practice.
fn severity_weight(severity: Option<Severity>) -> f64 {
    match severity {
        Some(Severity::Slight) => 0.6,
        Some(Severity::Clear) | None => 1.0,
        Some(Severity::Bad) => 1.2,
    }
}

/// Chance that a rider places a feeling at `said` when its cause sits at `real`.
fn placed(said: Option<End>, real: End) -> f64 {
    match (said, real) {
        (None, _) => 1.0,
        (Some(End::Both), End::Both) => 0.5,
        (Some(End::Both), _) => 0.12,
        (Some(_), End::Both) => 0.25,
        (Some(said), real) if said == real => 0.82,
        _ => 0.06,
    }
}

/// Chance that a rider mentions `feeling` at `end` under `cause`: noisy-or of the cause and a leak.
fn chance(cause: Cause, feeling: Feeling, end: Option<End>) -> f64 {
    let leak = LEAK * if end.is_some() { 1.0 / 3.0 } else { 1.0 };
    let mut quiet = 1.0 - leak;
    for (shown, at, strength) in signature::of(cause).feelings {
        if *shown == feeling {
            quiet *= 1.0 - strength * placed(end, *at);
        }
    }
    1.0 - quiet
}

fn per_cause(value: impl Fn(Cause) -> f64) -> PerCause {
    let mut all = [0.0; Cause::COUNT];
    for cause in Cause::ALL {
        all[cause.index()] = value(*cause);
    }
    all
}

fn mention(complaint: &Complaint, weight: f64) -> Observation {
    let end = complaint.end;
    let key = match end {
        Some(End::Front) => "evidence.said-front",
        Some(End::Rear) => "evidence.said-rear",
        Some(End::Both) => "evidence.said-both",
        None => "evidence.said",
    };
    Observation {
        text: Text::new(key).with("feeling", feeling_text(complaint.feeling).into()),
        log_likelihood: per_cause(|c| weight * libm::log(chance(c, complaint.feeling, end))),
    }
}

fn feeling_text(feeling: Feeling) -> Text {
    Text::new(format!("feeling.{}", feeling.word()))
}

/// When it happens: a cause that shows in that moment is likelier, one that does not is not ruled out.
fn moments(complaint: &Complaint) -> Option<Observation> {
    const FITS: f64 = 0.7;
    const FITS_NOT: f64 = 0.4;
    const NEITHER: f64 = 0.55;
    if complaint.phases.is_empty() {
        return None;
    }
    let fit = |phases: &[Phase]| {
        let hits = complaint
            .phases
            .iter()
            .filter(|p| phases.contains(p))
            .count();
        if hits > 0 { FITS } else { FITS_NOT }
    };
    Some(Observation {
        text: Text::new("evidence.moment").with("feeling", feeling_text(complaint.feeling).into()),
        log_likelihood: per_cause(|cause| {
            let signature = signature::of(cause);
            let shows = signature
                .feelings
                .iter()
                .any(|(f, ..)| *f == complaint.feeling);
            // A cause that does not show in this feeling at all is neither helped nor hurt by its moment.
            libm::log(if shows {
                fit(signature.phases)
            } else {
                NEITHER
            })
        }),
    })
}

/// How it came on.
fn history(complaint: &Complaint) -> Option<Observation> {
    const FITS: f64 = 0.6;
    const FITS_NOT: f64 = 0.2;
    const NEITHER: f64 = 0.4;
    let since = complaint.since?;
    Some(Observation {
        text: Text::new(match since {
            Since::Always => "evidence.since-always",
            Since::Slowly => "evidence.since-slowly",
            Since::Suddenly => "evidence.since-suddenly",
            Since::SinceWork => "evidence.since-work",
        })
        .with("feeling", feeling_text(complaint.feeling).into()),
        log_likelihood: per_cause(|cause| {
            let onset = signature::of(cause).onset;
            libm::log(if onset.is_empty() {
                NEITHER
            } else if onset.contains(&since) {
                FITS
            } else {
                FITS_NOT
            })
        }),
    })
}

fn silence(feeling: Feeling) -> Observation {
    Observation {
        text: Text::new("evidence.not-said").with("feeling", feeling_text(feeling).into()),
        log_likelihood: per_cause(|c| SILENCE * libm::log(1.0 - chance(c, feeling, None))),
    }
}

/// Saying outright that nothing is wrong tells more than leaving things unsaid. Hand-set.
const DENIAL: f64 = 2.0;

/// "Nothing is wrong": every feeling denied at once.
fn all_quiet() -> Observation {
    Observation {
        text: Text::new("evidence.nothing-wrong"),
        log_likelihood: per_cause(|c| {
            let quiet = Feeling::ALL
                .iter()
                .map(|f| libm::log(1.0 - chance(c, *f, None)));
            DENIAL * quiet.sum::<f64>()
        }),
    }
}
