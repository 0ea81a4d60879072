//! The workshop's own questions, all on one page, and what was answered.

use sagwright_core::intake::{ExtraAnswer, LONGEST_EXTRA};
use sagwright_core::words::{Arg, Text, UnitChoice};
use sagwright_core::workshop::{AnswerKind, ExtraQuestion};
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

use super::look::with_name;
use super::settings::workshop;
use crate::browser;
use crate::desk::{Desk, use_desk, use_title};
use crate::pages::{SUMMARY, problem_list};
use crate::pieces::{link_button, page_heading, submit_button, way_back};
use crate::route::Route;
use crate::state::{Action, Page};
use crate::words::{say, tell};

/// What an answer by yes or no is kept as, and the key of its word.
const YES_NO: [(&str, &str); 2] = [("yes", "hosted.yes"), ("no", "hosted.no")];

/// Whether the workshop asks something besides.
pub fn has_questions() -> bool {
    workshop().is_some_and(|workshop| !workshop.questions.is_empty())
}

/// The questions that have to be answered and are not, and those answered at too great length.
pub fn open_questions(desk: &Desk) -> Vec<(ExtraQuestion, Text)> {
    let asked = workshop().map_or_else(Vec::new, |workshop| workshop.questions.clone());
    let trouble = |question: &ExtraQuestion| {
        let answer = answer_to(desk, question);
        let letters = answer.trim().chars().count();
        if letters > LONGEST_EXTRA {
            let most = i64::try_from(LONGEST_EXTRA).unwrap_or(i64::MAX);
            return Some(Text::new("hosted.too-long").with("most", Arg::Count(most)));
        }
        (question.required && letters == 0).then(|| Text::new("hosted.required"))
    };
    let open = asked.into_iter().filter_map(|question| {
        let text = trouble(&question)?;
        Some((question, text))
    });
    open.collect()
}

fn answer_to(desk: &Desk, question: &ExtraQuestion) -> String {
    let answers = &desk.wizard.intake.extra;
    let answer = answers.iter().find(|one| answers_it(one, question));
    answer.map(|one| one.answer.clone()).unwrap_or_default()
}

/// Whether an answer is to this very question: another workshop may have given its own the same short name.
fn answers_it(one: &ExtraAnswer, question: &ExtraQuestion) -> bool {
    one.id == question.id && one.question == question.text
}

/// The element of a question's first answer.
fn element(id: &str) -> String {
    ["extra-", id].concat()
}

/// The page with the questions.
#[component]
pub fn QuestionsPage() -> Html {
    let desk = use_desk();
    // Whether the rider has tried to go on: only then is anything wrong.
    let attempts = use_state_eq(|| 0_u32);
    let wrong = if *attempts > 0 {
        open_questions(&desk)
    } else {
        Vec::new()
    };
    let asked = workshop().filter(|workshop| !workshop.questions.is_empty());
    let heading = asked.as_ref().map_or_else(
        || say("hosted.nobody"),
        |workshop| with_name("hosted.asks", &workshop.name),
    );
    use_title(&heading, !wrong.is_empty());
    use_effect_with(*attempts, |attempts| {
        if *attempts > 0 {
            browser::focus(SUMMARY);
        }
    });
    let onsubmit = {
        let (desk, attempts) = (desk.clone(), attempts.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            if open_questions(&desk).is_empty() {
                browser::go(Route::Check);
            } else {
                attempts.set(*attempts + 1);
            }
        })
    };
    let last = Page::all(&desk.wizard.intake).last().copied();
    let back = last.map_or(Route::Check, Route::ask);
    let Some(workshop) = asked else {
        return html! {
            <div class="question">
                { page_heading(heading) }
                <p>{ link_button(Route::Check, "not-asked.answers") }</p>
            </div>
        };
    };
    let groups = workshop.questions.iter().map(|question| {
        let trouble = wrong.iter().find(|(one, _)| one.id == question.id);
        group(&desk, question, trouble.map(|(_, text)| text))
    });
    html! {
        <>
            { way_back(back) }
            <div class="question">
                { summary(&wrong) }
                { page_heading(heading) }
                <p class="why">{ say("hosted.asks-why") }</p>
                <form novalidate=true class="extras" {onsubmit}>
                    { for groups }
                    <div class="onward">
                        { submit_button("frame.continue") }
                    </div>
                </form>
            </div>
        </>
    }
}

/// What is to be put right, each leading to its question.
fn summary(wrong: &[(ExtraQuestion, Text)]) -> Html {
    problem_list(wrong.iter().map(|(question, text)| {
        let said = Text::new("hosted.at")
            .with("question", Arg::Raw(question.text.clone()))
            .with("problem", text.clone().into());
        (element(&question.id), tell(&said, &UnitChoice::default()))
    }))
}

/// One question with its answers.
fn group(desk: &Desk, question: &ExtraQuestion, trouble: Option<&Text>) -> Html {
    let id = element(&question.id);
    let error = format!("{id}-error");
    let told = trouble.map(|text| {
        html! {
            <p class="error" id={error.clone()}>
                <span class="vh">{ say("input.error") }</span>{ tell(text, &UnitChoice::default()) }
            </p>
        }
    });
    let described_by = trouble.is_some().then_some(error.clone());
    let invalid = trouble.is_some().then_some("true");
    let optional = (!question.required).then(|| {
        html! { <span class="row-hint">{ say("hosted.optional") }</span> }
    });
    let put = {
        let (desk, question) = (desk.clone(), question.clone());
        Callback::from(move |answer: String| {
            desk.act(Action::Extra(ExtraAnswer {
                id: question.id.clone(),
                question: question.text.clone(),
                answer,
            }));
        })
    };
    let given = answer_to(desk, question);
    let rows = match question.kind {
        AnswerKind::Text => {
            let oninput = put.reform(|event: InputEvent| {
                let target = event.target();
                let input = target.and_then(|t| t.dyn_into::<HtmlInputElement>().ok());
                input.map(|input| input.value()).unwrap_or_default()
            });
            return html! {
                <div class={classes!("extra-question", trouble.map(|_| "wrong"))}>
                    <label class="number-label" for={id.clone()}>{ question.text.clone() }{ for optional }</label>
                    { for told }
                    <input
                        {id}
                        class="box link"
                        type="text"
                        autocomplete="off"
                        aria-invalid={invalid}
                        aria-describedby={described_by}
                        value={given}
                        {oninput}
                    />
                </div>
            };
        }
        AnswerKind::Choice => question
            .choices
            .iter()
            .map(|choice| (choice.clone(), choice.clone()))
            .collect(),
        AnswerKind::YesNo => YES_NO
            .map(|(kept, key)| (kept.to_owned(), say(key)))
            .to_vec(),
    };
    let rows: Vec<(String, String)> = rows;
    let rows = rows.into_iter().enumerate().map(|(at, (kept, shown))| {
        let checked = given == kept;
        let onchange = put.reform(move |_: Event| kept.clone());
        let id = (at == 0).then(|| id.clone());
        html! {
            <label class="row">
                <input type="radio" {id} name={element(&question.id)} {checked} {onchange} />
                <span class="row-text">{ shown }</span>
            </label>
        }
    });
    html! {
        <fieldset
            class={classes!("group", trouble.map(|_| "wrong"))}
            role="radiogroup"
            aria-invalid={invalid}
            aria-describedby={described_by}
        >
            <legend>{ question.text.clone() }{ for optional }</legend>
            { for told }
            <div class="rows">{ for rows }</div>
        </fieldset>
    }
}

/// A question with its answer, as they stand in a list.
#[derive(Debug, PartialEq)]
struct Row<'a> {
    id: &'a str,
    question: &'a str,
    /// `None` where it is open.
    answer: Option<&'a str>,
    /// How it is answered; `None` where it is not asked here.
    kind: Option<AnswerKind>,
}

/// What was answered, to this workshop or another, and then what is still open.
fn rows<'a>(given: &'a [ExtraAnswer], asked: &'a [ExtraQuestion]) -> Vec<Row<'a>> {
    let answered = given.iter().map(|one| Row {
        id: &one.id,
        question: &one.question,
        answer: Some(&one.answer),
        kind: asked
            .iter()
            .find(|question| answers_it(one, question))
            .map(|question| question.kind),
    });
    let open = asked
        .iter()
        .filter(|question| given.iter().all(|one| !answers_it(one, question)));
    let open = open.map(|question| Row {
        id: &question.id,
        question: &question.text,
        answer: None,
        kind: Some(question.kind),
    });
    answered.chain(open).collect()
}

/// What was answered to a workshop's questions, as a list of answers; `None` where nothing was asked. `changeable` where
/// each leads to its question, or can be taken out where it is not asked here.
pub fn extra_rows(desk: &Desk, changeable: bool) -> Option<Html> {
    let asked = workshop().map_or_else(Vec::new, |workshop| workshop.questions.clone());
    let rows = rows(&desk.wizard.intake.extra, &asked);
    if rows.is_empty() {
        return None;
    }
    let rows = rows.into_iter().map(|row| {
        let name = html! { <span class="vh">{ format!(": {}", row.question) }</span> };
        let change = if row.kind.is_some() {
            let verb = match row.answer {
                Some(_) => "answers.change",
                None => "answers.answer",
            };
            html! { <a href={Route::Extra.fragment()}>{ say(verb) }{ name }</a> }
        } else {
            let onclick = take_out(desk, &row);
            html! {
                <button type="button" class="button quiet" {onclick}>{ say("answers.take-out") }{ name }</button>
            }
        };
        let said = row.answer.map(|answer| shown(row.kind, answer));
        html! {
            <div class={classes!("given", said.is_none().then_some("missing"))}>
                <dt>{ row.question.to_owned() }</dt>
                <dd>{ said.unwrap_or_else(|| say("answers.not-answered")) }</dd>
                if changeable { <dd class="given-change">{ change }</dd> }
            </div>
        }
    });
    Some(html! { <dl>{ for rows }</dl> })
}

/// Forgets an answer: an empty one is none.
fn take_out(desk: &Desk, row: &Row) -> Callback<MouseEvent> {
    let desk = desk.clone();
    let (id, question) = (row.id.to_owned(), row.question.to_owned());
    Callback::from(move |_: MouseEvent| {
        desk.act(Action::Extra(ExtraAnswer {
            id: id.clone(),
            question: question.clone(),
            answer: String::new(),
        }));
    })
}

/// What stands above them.
pub fn extra_heading() -> String {
    say("hosted.answers")
}

/// An answer as people read it. Where the question is not known here, as at a counter that has other settings, what is
/// kept for yes and no is taken for them.
fn shown(kind: Option<AnswerKind>, answer: &str) -> String {
    let word = YES_NO.iter().find(|(kept, _)| *kept == answer);
    match (kind, word) {
        (None | Some(AnswerKind::YesNo), Some((_, key))) => say(key),
        _ => answer.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn yes_and_no_are_said_in_words_wherever_they_are_not_typed() {
        crate::counter::speak();
        for kind in [None, Some(AnswerKind::YesNo)] {
            assert_eq!(shown(kind, "no"), "No");
            assert_eq!(shown(kind, "No idea"), "No idea");
        }
        assert_eq!(shown(Some(AnswerKind::Text), "no"), "no");
    }

    #[test]
    fn an_answer_counts_only_for_the_question_it_was_given_to() {
        let given = |id: &str, question: &str| ExtraAnswer {
            id: id.to_owned(),
            question: question.to_owned(),
            answer: "yes".to_owned(),
        };
        let asked = |id: &str, text: &str| ExtraQuestion {
            id: id.to_owned(),
            text: text.to_owned(),
            kind: AnswerKind::YesNo,
            choices: Vec::new(),
            required: true,
        };
        let answers = [
            given("loan", "A loan bike?"),
            given("day", "This Monday?"),
            given("towel", "Own towel?"),
        ];
        let questions = [asked("loan", "A loan bike?"), asked("day", "Next Monday?")];
        let told: Vec<_> = rows(&answers, &questions)
            .iter()
            .map(|row| (row.question, row.answer.is_some(), row.kind.is_some()))
            .collect();
        assert_eq!(
            told,
            [
                ("A loan bike?", true, true),
                // Asked by another workshop: not to be answered here, so to be taken out.
                ("This Monday?", true, false),
                ("Own towel?", true, false),
                ("Next Monday?", false, true),
            ]
        );
    }
}
