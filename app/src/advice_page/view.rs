//! The whole advice in its order.

use std::rc::Rc;

use sagwright_core::advice::{Advice, DampingPicture, SetUpAdvice};
use sagwright_core::intake::Question;
use sagwright_core::quantity::{Dimension, Unit};
use sagwright_core::words::{Arg, Book, Text, UnitChoice};
use yew::prelude::*;

use super::contents::{Part, contents, heading};
use super::paper::paper;
use super::reason::why;
use super::units::unit_switches;
use super::{Voice, breakaway, causes, remedies, rides, settings, signal, stop};
use crate::advising::Stand;
use crate::checking::Moved;
use crate::later::Later;
use crate::pictures::{Chart, Figure};

/// The advice and how it is told.
#[derive(Debug, Properties)]
pub struct Props {
    /// What was answered.
    pub advice: Rc<Advice>,
    /// All sentences.
    pub book: Rc<Book>,
    /// The units the reader chose.
    pub units: UnitChoice,
    /// Asked to open the page of a question.
    pub on_question: Callback<Question>,
    /// Asked to show one kind of number in another unit.
    pub on_unit: Callback<(Dimension, Unit)>,
    /// What the advice rests on.
    pub stand: Stand,
    /// Whether rides are under way that will move it.
    pub busy: bool,
    /// What the last check moved.
    pub moved: Option<Rc<Moved>>,
    /// The part about the next check.
    pub check: Html,
    /// The part in which something is tried; `None` where the bike cannot be put together for that.
    pub what_if: Option<Html>,
    /// What stands in the corner of the paper.
    pub corner: Html,
    /// What was tried at the track, for the paper.
    pub tried: Html,
    /// What stands between the answer and its reasons: how far the rides are.
    #[prop_or_default]
    pub children: Html,
}

impl PartialEq for Props {
    /// Advice and book are made once and shared, so pointers say enough.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.advice, &other.advice)
            && Rc::ptr_eq(&self.book, &other.book)
            && self.units == other.units
            && self.on_question == other.on_question
            && self.on_unit == other.on_unit
            && self.stand == other.stand
            && self.busy == other.busy
            && self.moved == other.moved
            && self.check == other.check
            && self.what_if == other.what_if
            && self.corner == other.corner
            && self.tried == other.tried
            && self.children == other.children
    }
}

impl Props {
    /// What the parts that stay the same need.
    fn same(&self, voice: &Voice) -> SameProps {
        SameProps {
            advice: Rc::clone(&self.advice),
            voice: voice.clone(),
            on_question: self.on_question.clone(),
            on_unit: self.on_unit.clone(),
            corner: self.corner.clone(),
            tried: self.tried.clone(),
        }
    }
}

/// The advice, or the reason why there is none.
#[component]
pub fn AdviceView(props: &Props) -> Html {
    let voice = Voice::new(Rc::clone(&props.book), props.units.clone());
    match props.advice.as_ref() {
        Advice::StopRiding(stop) => {
            html! { <div class="advice">{ stop::stop(&voice, stop) }</div> }
        }
        Advice::SetUp(set_up) => html! {
            <>
                <div class="advice unprinted">{ set_up_sections(props, &voice, set_up) }</div>
                <OnPaper ..props.same(&voice) />
            </>
        },
    }
}

fn set_up_sections(props: &Props, voice: &Voice, advice: &SetUpAdvice) -> Html {
    let told = causes::Told {
        advice,
        stand: props.stand,
        busy: props.busy,
        moved: props.moved.as_deref(),
    };
    html! {
        <>
            { answer(voice, advice) }
            { props.children.clone() }
            { contents(voice, &Part::of(advice, props.what_if.is_some())) }
            { settings::settings(voice, &advice.settings, advice.counting.as_ref(), &props.on_unit) }
            { causes::causes(voice, told) }
            { props.check.clone() }
            <AfterCheck ..props.same(voice) />
            { props.what_if.clone() }
            <AtTheEnd ..props.same(voice) />
        </>
    }
}

/// The advice drawn on as long as it is the same, with what each part of it needs besides. A check put aside draws
/// the part about checks anew, and a slow phone is spared the rest.
#[derive(Properties)]
struct SameProps {
    advice: Rc<Advice>,
    voice: Voice,
    on_question: Callback<Question>,
    on_unit: Callback<(Dimension, Unit)>,
    corner: Html,
    tried: Html,
}

impl PartialEq for SameProps {
    /// The advice is made once and shared, so the pointer says enough.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.advice, &other.advice)
            && self.voice == other.voice
            && self.on_question == other.on_question
            && self.on_unit == other.on_unit
            && self.corner == other.corner
            && self.tried == other.tried
    }
}

/// What comes after the checks: remedies and pictures.
#[component]
fn AfterCheck(props: &SameProps) -> Html {
    let SameProps { voice, on_unit, .. } = props;
    let Advice::SetUp(advice) = props.advice.as_ref() else {
        return Html::default();
    };
    html! {
        <>
            { remedies::remedies(voice, &advice.remedies) }
            <section class="part">
                { heading(voice, Part::Picture) }
                { unit_switches(voice, &[Dimension::Length, Dimension::Force], on_unit) }
                <Figure
                    chart={Rc::new(Chart::of_force(&advice.force_picture))}
                    voice={voice.clone()}
                />
                {
                    why(
                        voice,
                        &voice.words("advice.part.picture"),
                        &advice.force_picture.reason,
                        Dimension::Force,
                    )
                }
                { breakaway::breakaway(voice, &advice.breakaway) }
                { damping(voice, &advice.damping) }
            </section>
            if let Some(ridden) = &advice.rides {
                { rides::rides(voice, ridden) }
            }
        </>
    }
}

/// What each clicker does over speed, folded away: four pictures more.
fn damping(voice: &Voice, pictures: &[DampingPicture]) -> Html {
    if pictures.is_empty() {
        return Html::default();
    }
    let figures = pictures.iter().map(|picture| {
        let name = voice.say(&picture.name);
        html! {
            <>
                <h3>{ &name }</h3>
                <Later>
                    <Figure chart={Rc::new(Chart::of_damping(picture))} voice={voice.clone()} />
                </Later>
                { why(voice, &name, &picture.reason, Dimension::Clicks) }
            </>
        }
    });
    html! {
        <details class="more damping">
            <summary>{ voice.words("picture.damping.fold") }</summary>
            <p>{ voice.words("picture.damping.lead") }</p>
            { for figures }
        </details>
    }
}

/// What was taken for granted, and the cautions.
#[component]
fn AtTheEnd(props: &SameProps) -> Html {
    let SameProps {
        voice, on_question, ..
    } = props;
    let Advice::SetUp(advice) = props.advice.as_ref() else {
        return Html::default();
    };
    html! {
        <>
            { assumptions(voice, advice, on_question) }
            if !advice.cautions.is_empty() {
                <section class="part">
                    { heading(voice, Part::Cautions) }
                    { signal::grouped(voice, &advice.cautions) }
                </section>
            }
        </>
    }
}

/// The sheets that are printed.
#[component]
fn OnPaper(props: &SameProps) -> Html {
    match props.advice.as_ref() {
        Advice::SetUp(set_up) => paper(
            &props.voice,
            set_up,
            props.corner.clone(),
            props.tried.clone(),
        ),
        Advice::StopRiding(_) => Html::default(),
    }
}

/// The answer in one sentence, and what has to be said beneath it.
fn answer(voice: &Voice, advice: &SetUpAdvice) -> Html {
    let caveats = advice.caveats.iter();
    let caveats = caveats.filter(|one| !causes::is_of_chances(one));
    let caveats: Vec<Html> = caveats
        .map(|caveat| html! { <li>{ voice.say(caveat) }</li> })
        .collect();
    html! {
        <section class="verdict" aria-label={voice.words("advice.answer")}>
            <p class="verdict-sentence">{ voice.say(&advice.sentence) }</p>
            if !caveats.is_empty() {
                <ul class="verdict-caveats">{ for caveats }</ul>
            }
        </section>
    }
}

/// What was taken for want of an answer, where to give it, and which answer would do most.
fn assumptions(voice: &Voice, advice: &SetUpAdvice, on_question: &Callback<Question>) -> Html {
    if advice.assumptions.is_empty() && advice.narrows_most.is_none() {
        return Html::default();
    }
    let count = Arg::Count(i64::try_from(advice.assumptions.len()).unwrap_or(i64::MAX));
    let items = advice.assumptions.iter().map(|assumption| {
        html! {
            <li>
                <span>{ voice.say(&assumption.text) }</span>
                if let Some(question) = assumption.question {
                    { to_question(voice, question, on_question) }
                }
            </li>
        }
    });
    html! {
        <section class="part">
            { heading(voice, Part::Assumed) }
            if let Some(most) = &advice.narrows_most {
                <p class="narrows-most">
                    <span>{ voice.say(&most.text) }</span>
                    { to_question(voice, most.question, on_question) }
                </p>
            }
            if !advice.assumptions.is_empty() {
                <p>{ voice.words("advice.assumed.lead") }</p>
                <details class="more">
                    <summary>{ voice.with("advice.assumed.fold", "count", count) }</summary>
                    <ul class="assumed">{ for items }</ul>
                </details>
            }
        </section>
    }
}

/// A button to the page of a question, which says where it leads.
fn to_question(voice: &Voice, question: Question, on_question: &Callback<Question>) -> Html {
    let page = Text::new(format!("answers.{}", question.word()));
    html! {
        <button
            type="button"
            class="button quiet"
            onclick={on_question.reform(move |_: MouseEvent| question)}
        >
            { voice.with("advice.assumed.give", "page", page.into()) }
        </button>
    }
}
