//! What every question has around it: where one is, the errors, the question, the ways on and back.

use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::how_to::HowTo;
use super::terms::terms;
use crate::browser;
use crate::desk::Desk;
use crate::pieces::{button, page_heading, submit_button, way_back};
use crate::route::Route;
use crate::state::{Page, Trouble};
use crate::words::say;

/// The list of errors; the focus goes there when one shows.
pub const SUMMARY: &str = "problems";

/// One question.
pub struct Frame {
    /// Which.
    pub page: Page,
    /// Where "back" leads.
    pub back: Route,
    /// What keeps it from being finished.
    pub troubles: Vec<Trouble>,
    /// Told when the rider goes on.
    pub onward: Callback<()>,
    /// Told when the rider answers the whole page with "I don't know"; absent where that is one of the options.
    pub pass: Option<Callback<()>>,
    /// Whether the page was answered so.
    pub passed: bool,
    /// Told when the rider leaves out the rest of the section; absent where that makes no sense.
    pub leap: Option<Callback<()>>,
    /// The answers.
    pub answers: Html,
}

impl Frame {
    /// The frame with the answers in it.
    pub fn draw(self, desk: &Desk) -> Html {
        let page = self.page;
        let onsubmit = self.onward.reform(|event: SubmitEvent| {
            event.prevent_default();
        });
        let family = page.question().word();
        html! {
            <>
                { way_back(self.back) }
                <div class="question asked">
                    { trouble_list(desk, &self.troubles) }
                    { caption(desk, page) }
                    { page_heading(heading(desk, page)) }
                    <div class="beside">
                        <p class="why">{ say(&format!("ask.{family}.why")) }</p>
                        <p class="unknown">{ say(&format!("ask.{family}.unknown")) }</p>
                        { terms(desk, page.question()) }
                        <HowTo question={page.question()} />
                    </div>
                    <form novalidate=true {onsubmit}>
                        { self.answers }
                        <div class="onward">
                            { submit_button("frame.continue") }
                            if let Some(pass) = &self.pass {
                                <button
                                    type="button"
                                    class="button"
                                    aria-pressed={self.passed.to_string()}
                                    onclick={pass.reform(|_: MouseEvent| ())}
                                >
                                    { say(pass_key(page)) }
                                </button>
                            }
                            if let Some(leap) = &self.leap {
                                { button("frame.nothing-measured", leap.reform(|_: MouseEvent| ())) }
                            }
                        </div>
                    </form>
                </div>
            </>
        }
    }
}

/// The question itself.
pub fn heading(desk: &Desk, page: Page) -> String {
    let mut text = Text::new(format!("ask.{}", page.question().word()));
    if let Page::Detail(feeling) = page {
        let complaint = Text::new(format!("complaint.{}", feeling.word()));
        text = text.with("complaint", complaint.into());
    }
    desk.tell(&text)
}

fn pass_key(page: Page) -> &'static str {
    use crate::state::Section;
    match page.section() {
        Section::Measured if page.question() == sagwright_core::intake::Question::PushTest => {
            "choice.not-tried"
        }
        Section::Measured => "choice.not-measured",
        Section::Complaints => "choice.cannot-say",
        _ => "choice.dont-know",
    }
}

/// "Ground, 1 of 3".
fn caption(desk: &Desk, page: Page) -> Html {
    let section = Text::new(format!("section.{}", page.section().word()));
    let text = match page.step(&desk.wizard.intake) {
        Some(step) => Text::new("frame.step")
            .with("section", section.into())
            .with("at", count(step.at))
            .with("of", count(step.of)),
        None => section,
    };
    html! { <p class="caption">{ desk.tell(&text) }</p> }
}

fn count(number: usize) -> Arg {
    Arg::Count(i64::try_from(number).unwrap_or(i64::MAX))
}

/// What keeps an answer from being used, each leading to its input; nothing where all is well.
pub fn trouble_list(desk: &Desk, troubles: &[Trouble]) -> Html {
    let said = troubles.iter();
    problem_list(said.map(|trouble| (trouble.at.to_owned(), desk.tell(&trouble.text))))
}

/// What has to be put right, each with the element it leads to; nothing where nothing has to.
pub fn problem_list(problems: impl Iterator<Item = (String, String)>) -> Html {
    let items: Vec<Html> = problems
        .map(|(at, said)| {
            let onclick = Callback::from(move |event: MouseEvent| {
                // The fragment is the address of the page, so the jump is made by hand.
                event.prevent_default();
                browser::focus(&at);
            });
            html! { <li><a href={browser::fragment()} {onclick}>{ said }</a></li> }
        })
        .collect();
    if items.is_empty() {
        return Html::default();
    }
    html! {
        <div class="problems" id={SUMMARY} role="alert" tabindex="-1" aria-labelledby="problems-heading">
            <h2 id="problems-heading">{ say("frame.problem") }</h2>
            <ul>{ for items }</ul>
        </div>
    }
}
