//! The page at the track.

use std::rc::Rc;

use sagwright_core::advice::{Advice, NextLap, SetUpAdvice};
use sagwright_core::intake::{Intake, MOST_TRIED, Question};
use yew::prelude::*;

use super::earlier::Earlier;
use super::hold::{Held, Opened, take_over, use_log, use_press};
use super::judging::judging;
use super::keeper::Keeper;
use super::laps::{moved, standing_now, timeline};
use super::log::{Log, Press, Step};
use super::next::{PROPOSAL, back_first, proposal};
use crate::advice_page::Voice;
use crate::advising::{Adviser, Outcome, Stand};
use crate::browser;
use crate::checking::Moved;
use crate::counsel::{Counsel, use_counsel};
use crate::desk::{Desk, use_desk, use_title};
use crate::pages::use_outcome;
use crate::riding::RideProgress;
use crate::route::Route;
use crate::shell::HEADING;
use crate::state::{Page, Subject, to_file};
use crate::store::{Entry, StoreError};
use crate::wear::use_sun;
use crate::words::{book, say};

/// The log at the track.
#[component]
pub fn TrackPage() -> Html {
    let desk = use_desk();
    use_title(&say("track.heading"), false);
    use_sun();
    let Opened {
        held,
        trouble,
        earlier,
        keeper,
    } = use_log(&desk);
    let press = use_press(&desk, &held, &keeper);
    let inside = match &*held {
        Held::Opening => html! { <p role="status">{ say("track.opening") }</p> },
        Held::Open(log) => html! {
            <Lap log={log.as_ref().clone()} {press}>
                { list(&desk, &held, &earlier, &keeper) }
            </Lap>
        },
    };
    html! {
        <>
            <p class="back"><a href={Route::Advice.fragment()}>{ say("track.back") }</a></p>
            <div class="question track">
                <h1 id={HEADING} tabindex="-1">{ say("track.heading") }</h1>
                { about_keeping(&desk, &held, &keeper, trouble.as_ref()) }
                { inside }
            </div>
        </>
    }
}

/// The logs of other answers. The answers of this page become one of them when another is gone on with.
fn list(
    desk: &Desk,
    held: &UseStateHandle<Held>,
    earlier: &UseStateHandle<Vec<Entry<Log>>>,
    keeper: &Keeper,
) -> Html {
    let others = |earlier: &[Entry<Log>], without: &str| -> Vec<Entry<Log>> {
        let kept = earlier.iter().filter(|entry| entry.id != without);
        kept.cloned().collect()
    };
    let go_on = {
        let (desk, held, earlier, keeper) =
            (desk.clone(), held.clone(), earlier.clone(), keeper.clone());
        Callback::from(move |entry: Entry<Log>| {
            if let (Held::Open(log), false) = (&*held, desk.wizard.is_untouched()) {
                keeper.leave(log.as_ref().clone().with(&desk.wizard));
            }
            keeper.go_on(&entry);
            earlier.set(others(&earlier, &entry.id));
            take_over(&desk, &held, &entry.record);
            browser::scroll_to_top();
            browser::focus(HEADING);
        })
    };
    let forget = {
        let (earlier, keeper) = (earlier.clone(), keeper.clone());
        Callback::from(move |entry: Entry<Log>| {
            earlier.set(others(&earlier, &entry.id));
            keeper.forget(entry);
            browser::focus(HEADING);
        })
    };
    html! { <Earlier logs={(**earlier).clone()} {go_on} {forget} /> }
}

/// What keeps the log from being kept, with what to do about it.
fn about_keeping(
    desk: &Desk,
    held: &UseStateHandle<Held>,
    keeper: &Keeper,
    trouble: Option<&StoreError>,
) -> Html {
    let overtaken = matches!(trouble, Some(StoreError::Overtaken(_)));
    let take_over = {
        let keeper = keeper.clone();
        Callback::from(move |_: MouseEvent| keeper.take_over())
    };
    let insist = {
        let (keeper, held) = (keeper.clone(), held.clone());
        Callback::from(move |_: MouseEvent| {
            if let Held::Open(log) = &*held {
                keeper.insist(log.as_ref().clone());
            }
        })
    };
    html! {
        <div role="status" class="notices">
            if let Some(trouble) = trouble {
                <div class="notice">
                    <p>{ desk.tell(&trouble.text()) }</p>
                    <div class="lap-buttons">
                        if overtaken {
                            <button type="button" class="button" onclick={take_over}>{ say("track.theirs") }</button>
                            <button type="button" class="button" onclick={insist}>{ say("track.ours") }</button>
                        } else {
                            { save_button(desk) }
                        }
                    </div>
                </div>
            }
        </div>
    }
}

fn save_button(desk: &Desk) -> Html {
    let wizard = Rc::clone(&desk.wizard);
    let save = Callback::from(move |_: MouseEvent| {
        // A document of plain answers always has a JSON form.
        if let Ok(json) = to_file(&wizard.document()) {
            browser::save_file(&say("taking.file-name"), "application/json", &json);
        }
    });
    html! { <button type="button" class="button" onclick={save}>{ say("track.save") }</button> }
}

/// An open log.
#[derive(PartialEq, Properties)]
struct LapProps {
    log: Log,
    press: Callback<Press>,
    /// What stands after everything else.
    children: Html,
}

/// The lap to ride or to judge, and those before it.
#[component]
fn Lap(props: &LapProps) -> Html {
    let desk = use_desk();
    let LapProps {
        log,
        press,
        children,
    } = props;
    let intake = use_memo(Rc::clone(&desk.wizard), |wizard| wizard.document());
    let Counsel { adviser, .. } = use_counsel();
    let (outcome, on_refined) = use_outcome(&adviser, &intake);
    // Right after a lap it is still the advice of before, with the change that was just ridden.
    let outcome = outcome.filter(|told| adviser.known(&intake).as_ref() == Some(told));
    let shifts = use_moved(&adviser, &intake, outcome.as_ref());
    let voice = Voice::new(book(), desk.units().clone());
    if let Some(first) = first_things_first(&desk, &intake) {
        return html! {
            <>
                <div class="track-now">{ first }</div>
                <div class="track-past">{ children.clone() }</div>
            </>
        };
    }
    let busy = !matches!(
        &outcome,
        Some(Outcome::Advice(_, Stand::Ridden | Stand::RiddenBefore))
    );
    let now = match (&log.step, &outcome) {
        (Step::Judging { change, felt }, _) => judging(&voice, &intake, (*change, felt), press),
        (Step::Choosing, None) => html! { <p role="status">{ say("track.working") }</p> },
        (Step::Choosing, Some(Outcome::Refused(_))) => {
            to_page("advice.refused", Route::Check, "not-asked.answers")
        }
        (Step::Choosing, Some(Outcome::Advice(advice, _))) => match advice.as_ref() {
            Advice::StopRiding(stop) => html! {
                <>
                    <p class="lap-ask">{ voice.say(&stop.sentence) }</p>
                    { to_page("track.stop", Route::Advice, "track.to-advice") }
                </>
            },
            Advice::SetUp(_) if busy => html! { <p role="status">{ say("track.working") }</p> },
            Advice::SetUp(set_up) => html! {
                <>
                    { moved(&voice, shifts.as_deref()) }
                    { offer(&voice, set_up, (&intake, log), press) }
                </>
            },
        },
    };
    html! {
        <>
            <div class="track-now">
                { now }
                if busy {
                    <RideProgress
                        intake={Rc::clone(&intake)}
                        {on_refined}
                        on_busy={Callback::noop()}
                        again=false
                    />
                }
            </div>
            <div class="track-past">
                { standing_now(&voice, &intake) }
                { timeline(&voice, &intake, press) }
                <div class="lap-buttons">{ save_button(&desk) }</div>
                <p class="hint">{ say("track.gloves") }</p>
                { children.clone() }
            </div>
        </>
    }
}

/// What the last lap moved: the causes with it against the causes without it, both from the same rides.
#[hook]
fn use_moved(
    adviser: &Adviser,
    intake: &Rc<Intake>,
    outcome: Option<&Outcome>,
) -> Option<Rc<Moved>> {
    let ridden = outcome.filter(|told| matches!(told, Outcome::Advice(_, Stand::Ridden)));
    let adviser = adviser.clone();
    let intake = Rc::clone(intake);
    let moved = use_memo(ridden.cloned(), move |outcome| {
        let outcome = outcome.as_ref()?;
        let mut before = (*intake).clone();
        let lap = before.tried.pop()?;
        let was = adviser.beside(&before);
        let subject = Subject::Lap(lap.change);
        let moved = Moved::between(subject, false, was.causes(), outcome.causes());
        Some(Rc::new(moved))
    });
    (*moved).clone()
}

/// What has to be said before a lap: the signs to stop, and what bothers.
fn first_things_first(desk: &Desk, intake: &Intake) -> Option<Html> {
    let ask = |question| Route::change(Page::Ask(question));
    if !desk.wizard.is_answered(Page::Ask(Question::StopSigns)) {
        let signs = ask(Question::StopSigns);
        return Some(to_page("advice.signs-first", signs, "advice.signs-open"));
    }
    if intake.complaints.iter().flatten().next().is_none() {
        let complaints = ask(Question::Complaints);
        return Some(to_page("track.no-complaint", complaints, "track.complain"));
    }
    None
}

fn to_page(told: &'static str, route: Route, open: &'static str) -> Html {
    html! {
        <>
            <p>{ say(told) }</p>
            <div class="lap-buttons">
                <a class="button button-main" href={route.fragment()}>{ say(open) }</a>
            </div>
        </>
    }
}

/// The best change that is not put aside, or what to do where there is none.
fn offer(
    voice: &Voice,
    set_up: &SetUpAdvice,
    (intake, log): (&Intake, &Log),
    press: &Callback<Press>,
) -> Html {
    if intake.tried.len() >= MOST_TRIED {
        return to_page("track.full", Route::Advice, "track.to-advice");
    }
    let possible = |lap: &&NextLap| !log.aside.contains(&lap.change);
    if let Some(lap) = set_up.next_laps.iter().find(possible) {
        return proposal(voice, lap, (intake, &log.back), press);
    }
    html! {
        <div id={PROPOSAL} class="lap" tabindex="-1">
            { back_first(voice, intake, &log.back) }
            { to_page("track.none", Route::Advice, "track.to-advice") }
            if !set_up.next_laps.is_empty() {
                <p>{ voice.words("track.aside") }</p>
                <div class="lap-buttons">
                    <button type="button" class="button" onclick={press.reform(|_: MouseEvent| Press::OfferAll)}>
                        { voice.words("track.offer-all") }
                    </button>
                </div>
            }
        </div>
    }
}
