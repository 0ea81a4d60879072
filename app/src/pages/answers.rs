//! The answers read over, by section.

use std::rc::Rc;

use sagwright_core::words::Text;
use yew::prelude::*;

use super::frame::heading;
use crate::desk::Desk;
use crate::hosted::{extra_heading, extra_rows};
use crate::route::Route;
use crate::state::{Action, Line, Page, Section, Value, Wizard, checked_lines, lines};
use crate::words::say;

/// Every answer that applies, under the names of the sections; `changeable` where each can be changed from here.
pub fn answers(desk: &Desk, changeable: bool) -> Html {
    let pages = Page::all(&desk.wizard.intake);
    let sections = Section::ALL.iter().map(|section| {
        let rows = pages.iter().filter(|page| page.section() == *section);
        let rows = rows.map(|page| row(desk, *page, changeable));
        let checked = (*section == Section::Measured).then(|| checked(desk, changeable));
        html! {
            <section class="answers">
                <h2>{ say(&format!("section.{}", section.word())) }</h2>
                <dl>{ for rows }{ checked }</dl>
            </section>
        }
    });
    let extra = extra_rows(desk, changeable).map(|rows| {
        html! { <section class="answers"><h2>{ extra_heading() }</h2>{ rows }</section> }
    });
    html! { <>{ for sections }{ for extra }</> }
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

/// What only checks asked: looks at the bike, and laps with one change. Each can be taken out; the advice asks again.
fn checked(desk: &Desk, changeable: bool) -> Html {
    let rows = checked_lines(&desk.wizard).into_iter().map(|(subject, lines)| {
        let take_out = {
            let desk = desk.clone();
            Callback::from(move |_: MouseEvent| {
                desk.act(Action::Adopt(subject, Rc::new(Wizard::default())));
            })
        };
        html! {
            <div class="given">
                <dt>{ desk.tell(&subject.name()) }</dt>
                <dd>{ said(desk, Value::Said(lines)) }</dd>
                if changeable {
                    <dd class="given-change">
                        <button type="button" class="button quiet" onclick={take_out}>
                            { say("answers.take-out") }
                            <span class="vh">{ format!(": {}", desk.tell(&subject.name())) }</span>
                        </button>
                    </dd>
                }
            </div>
        }
    });
    html! { <>{ for rows }</> }
}

/// What a page is about, shorter than its question.
pub fn name(desk: &Desk, page: Page) -> String {
    match page {
        Page::Detail(feeling) => desk.tell(&Text::new(format!("complaint.{}", feeling.word()))),
        Page::Ask(question) => say(&format!("answers.{}", question.word())),
    }
}

/// What was said on a page.
pub fn said(desk: &Desk, value: Value) -> Html {
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
