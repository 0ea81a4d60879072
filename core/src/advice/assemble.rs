//! The whole answer, put together.

use std::pin::pin;
use std::task::{Context, Poll, Waker};

use super::answer::{Advice, Assumption, CauseFinding, Caution, SetUpAdvice};
use super::at_workshop;
use super::causes;
use super::cautions::caution;
use super::caveats::caveats;
use super::damping::damping;
use super::draw::pictures;
use super::keep::ridden_part;
use super::laps::next_laps;
use super::next_checks::next_checks;
use super::ranges::Ranges;
use super::remedies;
use super::remedy_finding::RemedyFinding;
use super::ridden::{Progress, Ridden};
use super::rides::{self, shown_ground};
use super::settings::settings;
use super::sheet::Sheet;
use super::still::{Still, stand_still};
use super::stop::stop_riding;
use crate::cause::rounds;
use crate::cause::{
    Belief, Cause, Numbers, Rehearsal, checks, hypotheses, laps, observations, possible,
};
use crate::intake::{Feeling, Intake, IntakeError, Question, check};
use crate::quantity::Dimension;
use crate::remedy::relief;
use crate::remedy::remedied::Remedied;
use crate::stance::{Situation, baseline};
use crate::units::newton_per_m;
use crate::words::{Arg, Text};
use crate::workshop::Workshop;

/// What is not the rider's: a workshop's prices.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Options {
    /// The workshop whose prices are used; common practice where there is none.
    pub workshop: Option<Workshop>,
}

/// From an intake to the advice: the main job.
///
/// The same intake gives the same advice to the bit on every target.
///
/// # Errors
/// [`IntakeError`] with every problem, when the intake does not pass its checks. Any intake that does gets advice.
pub fn advise(intake: &Intake, options: &Options) -> Result<Advice, IntakeError> {
    let ridden = ride_out(intake, &mut |_| true)?;
    advise_with(intake, options, ridden.as_ref())
}

/// Rides many set-ups over the rider's ground and finds what does best inside hard limits.
///
/// `progress` is told how far it has come and answers whether to go on. `None` when it says no, when a stop-riding
/// sign was seen, or when no set-up of this bike can be ridden.
///
/// # Errors
/// As [`advise`].
pub fn ride_out(
    intake: &Intake,
    progress: &mut dyn FnMut(&Progress) -> bool,
) -> Result<Option<Ridden>, IntakeError> {
    check(intake)?;
    if intake
        .stop_signs
        .as_ref()
        .is_some_and(|signs| !signs.is_empty())
    {
        return Ok(None);
    }
    let situation = Situation::of(&ridden_part(intake));
    let suits = baseline(&situation);
    Ok(rides::ridden(intake, &situation, &suits, progress))
}

/// The advice from what rides found, or from statics alone where there were none: quick enough for a page.
///
/// # Errors
/// As [`advise`].
pub fn advise_with(
    intake: &Intake,
    options: &Options,
    ridden: Option<&Ridden>,
) -> Result<Advice, IntakeError> {
    if let Some(ridden) = ridden {
        return advise_from(intake, options, Seen::Ridden(ridden));
    }
    // The check comes first: what it refuses may not be fit to stand.
    check(intake)?;
    advise_from(intake, options, Seen::Still(&stand_still(intake)))
}

/// The advice from what was seen before.
///
/// # Errors
/// As [`advise`].
pub fn advise_from(intake: &Intake, options: &Options, seen: Seen) -> Result<Advice, IntakeError> {
    at_once(advise_between(intake, options, seen, async || ()))
}

/// What every fault and every remedy was seen to change.
#[derive(Debug, Clone, Copy)]
pub enum Seen<'a> {
    /// Standing still: nothing was ridden.
    Still(&'a Still),
    /// Riding.
    Ridden(&'a Ridden),
}

impl<'a> Seen<'a> {
    fn ridden(self) -> Option<&'a Ridden> {
        match self {
            Self::Still(_) => None,
            Self::Ridden(ridden) => Some(ridden),
        }
    }

    fn changes(self) -> (&'a Rehearsal, &'a Remedied) {
        match self {
            Self::Still(still) => (&still.rehearsal, &still.remedied),
            Self::Ridden(ridden) => (&ridden.rehearsal, &ridden.remedied),
        }
    }
}

/// The advice in seven parts of some ten milliseconds each, for a page that has to answer its rider in the meantime:
/// `pause` is waited for between them.
///
/// # Errors
/// As [`advise`].
pub async fn advise_between(
    intake: &Intake,
    options: &Options,
    seen: Seen<'_>,
    pause: impl AsyncFn(),
) -> Result<Advice, IntakeError> {
    check(intake)?;
    if let Some(signs) = intake.stop_signs.as_ref().filter(|signs| !signs.is_empty()) {
        return Ok(Advice::StopRiding(stop_riding(signs)));
    }
    let ridden = seen.ridden();
    let (rehearsal, remedied) = seen.changes();
    let situation = Situation::of(intake);
    let mut suits = baseline(&situation);
    if let Some(ridden) = ridden {
        let fork = ridden.fork_rate.map(newton_per_m);
        suits = suits.with_springs(&situation, fork, newton_per_m(ridden.shock_rate));
    }
    let ranges = Ranges::of(&situation, &suits);
    let sheet = Sheet {
        intake,
        situation: &situation,
        baseline: &suits,
        ridden,
        ranges: &ranges,
    };
    pause().await;
    let numbers = Numbers::USUAL;
    let ways = hypotheses(rehearsal, &numbers, |cause| possible(intake, cause), true);
    let told = observations(intake, &situation, &suits, rehearsal, &ways, &numbers);
    pause().await;
    let belief = Belief::from(&ways, &numbers, told);
    pause().await;
    let case = checks::Case {
        intake,
        situation: &situation,
        baseline: &suits,
        rehearsal,
        hypotheses: &ways,
        numbers: &numbers,
        belief: &belief,
    };
    let workshop = options.workshop.as_ref();
    let mut settings = settings(&sheet);
    if let Some(workshop) = workshop {
        at_workshop::add_to(&mut settings, &sheet, workshop);
    }
    let causes = causes::findings(&belief);
    let rounds = rounds::ranked(&case);
    pause().await;
    let remedies = remedies::findings(
        &sheet,
        &relief::Case {
            hypotheses: &ways,
            rehearsal,
            belief: &belief,
            complaints: intake.complaints.as_deref().unwrap_or_default(),
            remedied,
            numbers: &numbers,
        },
        rounds.first().map(|round| &round.checks[0]),
        &settings,
        workshop,
    );
    pause().await;
    let caveats = caveats(&sheet, &case, workshop);
    pause().await;
    let next_laps = next_laps(&case, &laps::ranked(&case));
    let (force_picture, breakaway) = pictures(&sheet);
    Ok(Advice::SetUp(Box::new(SetUpAdvice {
        sentence: sentence(intake, &causes, &remedies),
        caveats,
        counting: workshop.and_then(|one| at_workshop::counting(&settings, one)),
        settings,
        next_checks: next_checks(&case, &rounds),
        next_laps,
        causes,
        remedies,
        force_picture,
        breakaway,
        damping: damping(&sheet),
        rides: ridden.map(|ridden| ridden.showing(shown_ground(intake).as_ref())),
        assumptions: assumptions(&situation),
        narrows_most: ranges.narrows_most(&situation),
        cautions: general_cautions(&sheet),
    })))
}

/// What comes of work that waits for nothing.
fn at_once<T>(work: impl Future<Output = T>) -> T {
    let mut work = pin!(work);
    let mut context = Context::from_waker(Waker::noop());
    loop {
        if let Poll::Ready(done) = work.as_mut().poll(&mut context) {
            return done;
        }
    }
}

fn sentence(intake: &Intake, causes: &[CauseFinding], remedies: &[RemedyFinding]) -> Text {
    let nothing_said = intake.complaints.is_none();
    let baseline_only = intake.complaints.as_ref().is_some_and(Vec::is_empty);
    match (causes.first(), remedies.first()) {
        (Some(cause), Some(remedy)) => {
            let key = match cause.cause {
                _ if nothing_said => "sentence.nothing-said",
                Cause::NothingWrong => "sentence.nothing-wrong",
                _ if baseline_only => "sentence.baseline",
                _ => "sentence.cause",
            };
            Text::new(key)
                .with("cause", cause.name.clone().into())
                .with("chance", cause.chance.clone().into())
                .with("remedy", remedy.name.clone().into())
        }
        _ => Text::new("sentence.open"),
    }
}

/// The best check, and those to do instead where it cannot be done now.
fn assumptions(situation: &Situation) -> Vec<Assumption> {
    let machine = &situation.machine;
    let quantity = |question: Question| match question {
        Question::RiderWeight => Some(Arg::Quantity(situation.load.rider.value, Dimension::Mass)),
        Question::RiderGear => Some(Arg::Quantity(
            machine.class.rider_gear.value,
            Dimension::Mass,
        )),
        Question::BikeWeight => Some(Arg::Quantity(machine.wet_mass.value, Dimension::Mass)),
        Question::BikeClass => {
            Some(Text::new(format!("class.{}", machine.class.kind.word())).into())
        }
        Question::BikeFork => Some(Text::new(format!("fork.{}", machine.fork.word())).into()),
        Question::BikeShock => Some(Text::new(format!("shock.{}", machine.shock.word())).into()),
        _ => None,
    };
    let assumed = situation.assumed().into_iter().map(|question| {
        let text = Text::new(format!("assumed.{}", question.word()));
        Assumption {
            text: match quantity(question) {
                Some(value) => text.with("value", value),
                None => text,
            },
            question: Some(question),
        }
    });
    assumed.collect()
}

/// Cautions that hold for any change, and those this bike and rider call for.
fn general_cautions(sheet: &Sheet) -> Vec<Caution> {
    let mut all = vec![
        caution("first-ride"),
        caution("clearance"),
        caution("axle-clamps"),
        caution("spring-preload"),
    ];
    if sheet.situation.gas() {
        all.push(caution("gas-fork"));
        all.push(caution("marked-maximum"));
    }
    all.push(caution("shock-gas"));
    let numb = [Feeling::HarshSmallBumps, Feeling::HarshBigHits];
    if sheet
        .intake
        .complaints
        .iter()
        .flatten()
        .any(|c| numb.contains(&c.feeling))
    {
        all.push(caution("numb-hands"));
    }
    all.push(caution("one-change"));
    all.push(caution("manual-first"));
    all.sort_by_key(|caution| caution.signal);
    all
}
