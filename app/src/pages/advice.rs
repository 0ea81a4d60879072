//! The advice page: working it out, showing it, taking it along.

use std::rc::Rc;

use gloo::timers::future::TimeoutFuture;
use sagwright_core::advice::Advice;
use sagwright_core::advice::what_if::Workbench;
use sagwright_core::intake::{Intake, Question};
use yew::prelude::*;

use crate::advice_page::{AdviceView, Voice};
use crate::advising::{Adviser, Outcome, Stand};
use crate::browser;
use crate::calm::use_calm;
use crate::checking::{CheckSection, Course, Moved, checks_of};
use crate::counsel::use_counsel;
use crate::desk::{use_desk, use_title};
use crate::hosted::to_send;
use crate::later::Later;
use crate::riding::RideProgress;
use crate::route::Route;
use crate::shell::HEADING;
use crate::state::{Action, Page};
use crate::taking::{TakeAlong, paper_code};
use crate::tasks::{begin, breath};
use crate::track::laps_on_paper;
use crate::what_if::WhatIfSection;
use crate::words::{book, say};

/// Long enough for the browser to show that something is going on, too short to be felt.
const BREATH_MS: u32 = 30;

/// The advice on the answers given; first the stop-riding signs, if they were not looked at.
#[component]
pub fn AdvicePage() -> Html {
    let desk = use_desk();
    let intake = use_memo(Rc::clone(&desk.wizard), |wizard| wizard.document());
    let counsel = use_counsel();
    let (outcome, on_refined) = use_outcome(&counsel.adviser, &intake);
    let settled = use_settled(&counsel.adviser, &intake, outcome.as_ref());
    let corner = use_memo(settled.clone(), |settled| {
        settled.as_deref().map(paper_code).unwrap_or_default()
    });
    use_title(&say("advice.heading"), false);
    let signs = Page::Ask(Question::StopSigns);
    let inside = match outcome {
        _ if !desk.wizard.is_answered(signs) => ask_first(signs),
        None => html! { <p role="status">{ say("advice.working") }</p> },
        Some(Outcome::Refused(_)) => to_answers(),
        Some(Outcome::Advice(advice, stand)) => {
            let corner = (*corner).clone();
            let settled = settled.unwrap_or_else(|| Rc::clone(&intake));
            html! {
                <>
                    <Told
                        {intake}
                        settled={Rc::clone(&settled)}
                        advice={Rc::clone(&advice)}
                        {stand}
                        {on_refined}
                        {corner}
                    />
                    { to_send() }
                    <TakeAlong intake={settled} {advice} />
                </>
            }
        }
    };
    html! {
        <>
            <p class="back"><a href={Route::Check.fragment()}>{ say("advice.back") }</a></p>
            <div class="question advised">
                <h1 id={HEADING} tabindex="-1">{ say("advice.heading") }</h1>
                { inside }
            </div>
        </>
    }
}

/// An advice to tell.
#[derive(Properties)]
struct ToldProps {
    /// The answers as they stand.
    intake: Rc<Intake>,
    /// The last advice worked out; for a moment after an answer it is still that of before.
    advice: Rc<Advice>,
    /// The answers that it is on.
    settled: Rc<Intake>,
    /// What it rests on.
    stand: Stand,
    /// Told the advice that rides refined.
    on_refined: Callback<Outcome>,
    /// What stands in the corner of the paper.
    corner: Html,
}

impl PartialEq for ToldProps {
    /// All three are made once and shared, so pointers say enough.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.intake, &other.intake)
            && Rc::ptr_eq(&self.settled, &other.settled)
            && Rc::ptr_eq(&self.advice, &other.advice)
            && self.stand == other.stand
            && self.on_refined == other.on_refined
            && self.corner == other.corner
    }
}

/// The advice with its rides and its next check.
#[component]
fn Told(props: &ToldProps) -> Html {
    let desk = use_desk();
    let ToldProps {
        intake,
        advice,
        settled,
        stand,
        on_refined,
        corner,
    } = props;
    let course = use_reducer_eq(Course::default);
    let busy = use_state_eq(|| false);
    let counsel = use_counsel();
    let moved = use_moved(
        &counsel.adviser,
        intake,
        &course,
        &Outcome::Advice(Rc::clone(advice), *stand),
    );
    let voice = Voice::new(book(), desk.units().clone());
    let tried = laps_on_paper(&voice, settled);
    let check = match advice.as_ref() {
        Advice::SetUp(set_up) => html! {
            <>
                <CheckSection
                    checks={checks_of(set_up)}
                    {voice}
                    {course}
                    moved={moved.clone()}
                />
                <p class="to-track"><a class="button" href={Route::Track.fragment()}>{ say("landing.track") }</a></p>
            </>
        },
        Advice::StopRiding(_) => Html::default(),
    };
    let workbench = use_memo(Rc::clone(settled), |settled| {
        Workbench::of(settled).map(Rc::new)
    });
    let what_if = match (advice.as_ref(), workbench.as_ref()) {
        (Advice::SetUp(set_up), Some(workbench)) => Some(html! {
            <Later>
                <WhatIfSection
                    intake={Rc::clone(settled)}
                    {workbench}
                    settings={Rc::new(set_up.settings.clone())}
                    voice={Voice::new(book(), desk.units().clone())}
                />
            </Later>
        }),
        (Advice::SetUp(_), None) | (Advice::StopRiding(_), _) => None,
    };
    let to_page = use_callback((), |question, ()| browser::go(route_to(question)));
    let on_unit = use_callback(desk.change.clone(), |(dimension, unit), change| {
        change.emit(Action::Show(dimension, unit));
    });
    let set_busy = busy.setter();
    html! {
        <AdviceView
            advice={Rc::clone(advice)}
            book={book()}
            units={desk.units().clone()}
            on_question={to_page}
            {on_unit}
            stand={*stand}
            busy={*busy}
            {moved}
            {check}
            {what_if}
            corner={corner.clone()}
            {tried}
        >
            <RideProgress
                intake={Rc::clone(intake)}
                on_refined={on_refined.clone()}
                on_busy={Callback::from(move |busy| set_busy.set(busy))}
                again={*stand == Stand::RiddenBefore}
            />
        </AdviceView>
    }
}

/// The answers that the advice shown is on; `None` before the first. What hangs on them, such as the code for the paper, is
/// worked out with the advice and not while a finger waits for its answer to be taken.
#[hook]
fn use_settled(
    adviser: &Adviser,
    intake: &Rc<Intake>,
    outcome: Option<&Outcome>,
) -> Option<Rc<Intake>> {
    let settled = use_mut_ref(|| None);
    if outcome.is_some() && adviser.known(intake).as_ref() == outcome {
        settled.replace(Some(Rc::clone(intake)));
    }
    settled.borrow().clone()
}

/// What the last answer to a check moved: the causes with it against the causes without it, both from the same rides.
/// `None` until the advice shown is the one on these answers.
#[hook]
fn use_moved(
    adviser: &Adviser,
    intake: &Rc<Intake>,
    course: &Course,
    outcome: &Outcome,
) -> Option<Rc<Moved>> {
    let fresh = adviser.known(intake).as_ref() == Some(outcome);
    let last = course.last().filter(|_| fresh).cloned();
    let adviser = adviser.clone();
    let moved = use_memo((last, outcome.clone()), move |(last, outcome)| {
        let last = last.as_ref()?;
        let before = adviser.beside(&last.before.document());
        let moved = Moved::between(last.subject, last.back, before.causes(), outcome.causes());
        Some(Rc::new(moved))
    });
    (*moved).clone()
}

/// Where a question raised by the advice is answered.
fn route_to(question: Question) -> Route {
    match question {
        // There is one such page per complaint; the list of answers leads to each.
        Question::ComplaintDetail => Route::Check,
        question => Route::change(Page::Ask(question)),
    }
}

/// The advice, worked out after the page has shown itself, so that no press of a button hangs; and the way to put in what
/// rides made of it, at a moment when no finger is on what would move.
///
/// It is worked out in tasks of a few milliseconds, and drawing it is one more, so that none holds the page up for long.
#[hook]
pub fn use_outcome(adviser: &Adviser, intake: &Rc<Intake>) -> (Option<Outcome>, Callback<Outcome>) {
    let outcome = use_state_eq(|| adviser.known(intake));
    let calm = use_calm();
    {
        let (set, adviser) = (outcome.setter(), adviser.clone());
        let calm = calm.clone();
        use_effect_with(Rc::clone(intake), move |intake| {
            // What rides found for the answers of before comes with these.
            calm.forget();
            let intake = Rc::clone(intake);
            let work = begin(async move {
                TimeoutFuture::new(BREATH_MS).await;
                let outcome = adviser.ask(&intake, breath).await;
                breath().await;
                set.set(Some(outcome));
            });
            // Leaving the page, or another answer, ends it.
            move || work.abort()
        });
    }
    let set = outcome.setter();
    let put_in = Callback::from(move |refined: Outcome| {
        let set = set.clone();
        calm.when_calm(move || set.set(Some(refined)));
    });
    ((*outcome).clone(), put_in)
}

fn ask_first(signs: Page) -> Html {
    html! {
        <>
            <p>{ say("advice.signs-first") }</p>
            <p><a class="button button-main" href={Route::change(signs).fragment()}>{ say("advice.signs-open") }</a></p>
        </>
    }
}

fn to_answers() -> Html {
    html! {
        <>
            <p>{ say("advice.refused") }</p>
            <p><a class="button button-main" href={Route::Check.fragment()}>{ say("not-asked.answers") }</a></p>
        </>
    }
}
