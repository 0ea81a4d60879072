//! The answers read over, by section.

use sagwright_core::words::Text;
use yew::prelude::*;

use super::frame::heading;
use crate::desk::{Desk, use_desk};
use crate::route::Route;
use crate::state::{Line, Page, Section, Value, lines};
use crate::words::say;

/// How the answers are shown.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// Whether each can be changed from here.
    pub changeable: bool,
}

/// Every answer that applies, under the names of the sections.
#[component]
pub fn Answers(props: &Props) -> Html {
    let desk = use_desk();
    let pages = Page::all(&desk.wizard.intake);
    let sections = Section::ALL.iter().map(|section| {
        let rows = pages.iter().filter(|page| page.section() == *section);
        let rows = rows.map(|page| row(&desk, *page, props.changeable));
        html! {
            <section class="answers">
                <h2>{ say(&format!("section.{}", section.word())) }</h2>
                <dl>{ for rows }</dl>
            </section>
        }
    });
    html! { <>{ for sections }</> }
}

fn row(desk: &Desk, page: Page, changeable: bool) -> Html {
    let value = lines(&desk.wizard, page);
    let missing = value == Value::NotAnswered;
    let verb = if missing {
        "answers.answer"
    } else {
        "answers.change"
    };
    html! {
        <div class={classes!("given", missing.then_some("missing"))}>
            <dt>{ name(desk, page) }</dt>
            <dd>{ said(desk, value) }</dd>
            if changeable {
                <dd class="given-change">
                    <a href={Route::change(page).fragment()}>
                        { say(verb) }
                        <span class="vh">{ format!(": {}", heading(desk, page)) }</span>
                    </a>
                </dd>
            }
        </div>
    }
}

/// What a page is about, shorter than its question.
fn name(desk: &Desk, page: Page) -> String {
    match page {
        Page::Detail(feeling) => desk.tell(&Text::new(format!("complaint.{}", feeling.word()))),
        Page::Ask(question) => say(&format!("answers.{}", question.word())),
    }
}

fn said(desk: &Desk, value: Value) -> Html {
    match value {
        Value::NotAnswered => html! { { say("answers.not-answered") } },
        Value::DontKnow => html! { { say("choice.dont-know") } },
        Value::Said(lines) => html! { { for lines.iter().map(|l| line(desk, l)) } },
    }
}

fn line(desk: &Desk, line: &Line) -> Html {
    let said = desk.tell(&line.said);
    match &line.name {
        Some(name) => html! {
            <p class="line"><span class="line-name">{ desk.tell(name) }</span>{ " " }<span>{ said }</span></p>
        },
        None => html! { <p class="line">{ said }</p> },
    }
}
