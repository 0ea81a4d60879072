//! The part of the page: move, see, ride, undo, take.

use std::rc::Rc;

use sagwright_core::advice::Setting;
use sagwright_core::advice::what_if::{Trying, Workbench};
use sagwright_core::intake::{Field, Intake};
use sagwright_core::quantity::Unit;
use sagwright_core::words::number;
use yew::prelude::*;

use super::course::{Course, Step};
use super::levers::{Remedies, levers};
use super::rode::{Rode, tried};
use super::seen::seen;
use crate::advice_page::{Part, Voice, heading};
use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::state::{Action, Page, Subject, Wizard};

/// A bike to try things on.
#[derive(Debug, PartialEq, Properties)]
pub struct Props {
    /// The answers as they stand.
    pub intake: Rc<Intake>,
    /// The bike they tell of.
    pub workbench: Rc<Workbench>,
    /// The settings card, for what is advised.
    pub settings: Rc<Vec<Setting>>,
    /// Words and units.
    pub voice: Voice,
}

/// What was taken as the rider's own: the answers before, the pages it stands on, and whether they say all of it.
#[derive(Clone, PartialEq)]
struct Taken {
    before: Rc<Wizard>,
    pages: Vec<Page>,
    whole: bool,
}

/// The section.
#[component]
pub fn WhatIfSection(props: &Props) -> Html {
    let desk = use_desk();
    let Props {
        intake,
        workbench,
        settings,
        voice,
    } = props;
    let course = use_reducer_eq(Course::default);
    let taken = use_state_eq(|| None::<Taken>);
    let trying = course.trying();
    let looked = use_memo(
        (Rc::clone(workbench), trying.clone()),
        |(workbench, trying)| (!trying.is_nothing()).then(|| workbench.look(trying)),
    );
    let can = use_memo(Rc::clone(workbench), |workbench| {
        (workbench.movable(), workbench.remedies())
    });
    let (all, cures) = can.as_ref();
    let act = {
        let course = course.dispatcher();
        let taken = taken.setter();
        Callback::from(move |step: Step| {
            taken.set(None);
            course.dispatch(step);
        })
    };
    let press = |step: Step| act.reform(move |_: MouseEvent| step);
    let on_take = {
        let (desk, course, taken) = (desk.clone(), course.dispatcher(), taken.setter());
        let (workbench, trying) = (Rc::clone(workbench), trying.clone());
        Callback::from(move |_: MouseEvent| {
            let (answers, whole) = workbench.answers(&trying);
            let before = Rc::clone(&desk.wizard);
            let pages = take(&desk, &answers);
            taken.set(Some(Taken {
                before,
                pages,
                whole,
            }));
            course.dispatch(Step::Reset);
            // The button cannot be pressed after this and would lose the focus; the heading stays.
            browser::focus(Part::WhatIf.id());
        })
    };
    let status = match looked.as_ref() {
        None if taken.is_some() => String::new(),
        None => voice.words("what-if.nothing"),
        Some(Ok(_)) => voice.with(
            "what-if.tried",
            "tried",
            sagwright_core::words::Arg::Raw(tried(voice, &trying)),
        ),
        Some(Err(_)) => voice.words("what-if.cannot"),
    };
    html! {
        <section class="part what-if">
            { heading(voice, Part::WhatIf) }
            <p>{ voice.words("what-if.lead") }</p>
            { levers(voice, all, &trying.levers, settings, &act) }
            <Remedies voice={voice.clone()} all={cures.clone()} done={trying.remedy} act={act.clone()} />
            <div class="what-if-steer">
                <button type="button" class="button" disabled={!course.can_undo()} onclick={press(Step::Undo)}>
                    { voice.words("what-if.undo") }
                </button>
                <button
                    type="button"
                    class="button quiet"
                    disabled={trying.is_nothing()}
                    onclick={press(Step::Reset)}
                >
                    { voice.words("what-if.reset") }
                </button>
                <button
                    type="button"
                    class="button button-main"
                    disabled={trying.is_nothing()}
                    onclick={on_take}
                >
                    { voice.words("what-if.take") }
                </button>
            </div>
            <p class="what-if-said" role="status">{ status }</p>
            if let Some(taken_now) = taken.as_ref() {
                { was_taken(&desk, voice, taken_now, Callback::from({ let taken = taken.setter(); move |()| taken.set(None) })) }
            }
            if let Some(Ok(what_if)) = looked.as_ref() {
                { seen(voice, what_if) }
                { ride(voice, intake, &trying) }
            }
        </section>
    }
}

fn ride(voice: &Voice, intake: &Rc<Intake>, trying: &Trying) -> Html {
    html! {
        <>
            <h3>{ voice.words("what-if.rides") }</h3>
            <Rode intake={Rc::clone(intake)} trying={trying.clone()} voice={voice.clone()} />
        </>
    }
}

/// What was taken, what could not be, and the way back.
fn was_taken(desk: &Desk, voice: &Voice, taken: &Taken, done: Callback<()>) -> Html {
    let key = if taken.whole {
        "what-if.taken"
    } else {
        "what-if.taken-part"
    };
    let (desk, taken) = (desk.clone(), taken.clone());
    let onclick = Callback::from(move |_: MouseEvent| {
        for page in &taken.pages {
            desk.act(Action::Adopt(
                Subject::Page(*page),
                Rc::clone(&taken.before),
            ));
        }
        done.emit(());
        browser::focus(Part::WhatIf.id());
    });
    html! {
        <div class="what-if-taken" role="status">
            <p>{ voice.words(key) }</p>
            <button type="button" class="button" {onclick}>{ voice.words("what-if.take-back") }</button>
        </div>
    }
}

/// Writes what is tried into the answers, as if it had been typed in the units shown; the pages it stands on.
fn take(desk: &Desk, answers: &[(Field, f64)]) -> Vec<Page> {
    let mut pages: Vec<Page> = Vec::new();
    for (field, si) in answers {
        let text = written(*field, *si, desk.wizard.unit_of(*field));
        desk.act(Action::Type(*field, text));
        let page = Page::Ask(field.question());
        if !pages.contains(&page) {
            pages.push(page);
        }
    }
    pages
}

/// A figure as it is typed: one digit finer than is told, so that rounding moves nothing that can be felt, and never above
/// what was tried, which may be the most that a part takes. Only where that falls short of what an answer may be is it above.
fn written(field: Field, si: f64, unit: Unit) -> String {
    /// Far below the last digit: what only the sums of a machine keep from a round figure.
    const HAIR: f64 = 1e-6;
    if unit == Unit::Click {
        return number(si.round(), 0);
    }
    let digits = unit.decimals() + 1;
    let of_one: f64 = (0..digits).map(|_| 10.0).product();
    let last_digits = unit.from_si(si) * of_one;
    let below = (last_digits + HAIR).floor() / of_one;
    let figure = if field.allowed().holds(unit.to_si(below)) {
        below
    } else {
        (last_digits - HAIR).ceil() / of_one
    };
    number(figure, digits)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_never_above_what_was_tried() {
        let psi = Unit::Psi;
        assert_eq!(written(Field::ForkPressure, 15e5, psi), "217.5");
        assert_eq!(written(Field::ForkPressure, 15e5, Unit::Bar), "15.00");
        let sums = 12e5 + 30.0 * (0.1 * 1e5);
        assert_eq!(
            written(Field::ForkPressure, sums - 1e-4, Unit::Bar),
            "15.00"
        );
        for step in 1..190 {
            let si = 1e5 + f64::from(step) * 1e4;
            for unit in [psi, Unit::Bar] {
                let text = written(Field::ForkPressure, si, unit);
                let read = unit.to_si(text.parse().expect("a number"));
                assert!(read <= si + 0.1 && si - read < 1e3, "{si} {text}");
            }
        }
    }

    #[test]
    fn what_is_written_is_always_taken() {
        let may = Field::ForkPressure.allowed();
        let psi = Unit::Psi;
        for si in [may.low, may.high] {
            let text = written(Field::ForkPressure, si, psi);
            let read = psi.to_si(text.parse().expect("a number"));
            assert!(may.holds(read), "{text}");
        }
    }

    #[test]
    fn clicks_are_whole() {
        assert_eq!(written(Field::ForkReboundNow, 14.0, Unit::Click), "14");
    }
}
