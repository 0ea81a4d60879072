//! Advice in one column or two: the sentence, the settings, the causes and the remedy that leads.

use std::rc::Rc;

use sagwright_core::advice::{Advice, SetUpAdvice, Setting, SettingId};
use sagwright_core::cause::Cause;
use sagwright_core::intake::{End, Intake};
use sagwright_core::quantity::{Dimension, Unit};
use sagwright_core::words::Text;
use yew::prelude::*;

use super::different::Different;
use crate::advice_page::{Voice, cautions, chance, moved_bar, range, unit_switches, worth};
use crate::advising::{Outcome, Stand};
use crate::counter::asking::use_answered;
use crate::counter::shell::use_counter;
use crate::words::{book, say};

/// One column.
#[derive(Debug, Clone, PartialEq)]
pub struct Pane {
    /// What stands above it.
    pub name: String,
    /// The answers it is about.
    pub intake: Intake,
}

/// Causes told per column, the most likely first.
const CAUSES: usize = 4;

/// Kinds of number that are read in more than one unit.
const SWITCHED: [Dimension; 3] = [Dimension::Rate, Dimension::Pressure, Dimension::Length];

/// The columns to show.
#[derive(PartialEq, Properties)]
pub struct Props {
    /// One or two of them; of two, the second is the later one.
    pub panes: Rc<Vec<Pane>>,
    /// Whether the answers that differ are listed too.
    pub answers: bool,
}

/// Advice on one or two sets of answers.
#[component]
pub fn Columns(props: &Props) -> Html {
    let counter = use_counter();
    let intakes = use_memo(Rc::clone(&props.panes), |panes| {
        panes
            .iter()
            .map(|pane| pane.intake.clone())
            .collect::<Vec<Intake>>()
    });
    let answered = use_answered(&counter.rider, &intakes, counter.workshop.as_ref());
    let voice = Voice::new(book(), (*counter.units).clone());
    let columns: Vec<Column> = props
        .panes
        .iter()
        .enumerate()
        .map(|(at, pane)| Column {
            pane,
            outcome: answered.outcomes.get(at).and_then(Option::as_ref),
        })
        .collect();
    let settings = settings_of(&columns);
    let shown: Vec<Dimension> = SWITCHED
        .into_iter()
        .filter(|kind| {
            settings
                .iter()
                .any(|(_, one)| one.advised.dimension == *kind)
        })
        .collect();
    let on_unit = {
        let counter = counter.clone();
        Callback::from(move |(dimension, unit): (Dimension, Unit)| {
            let mut units = (*counter.units).clone();
            units.choose(dimension, unit);
            counter.choose.emit(units);
        })
    };
    html! {
        <div class={classes!("columns", (columns.len() > 1).then_some("columns-two"))}>
            <p class="hint" role="status">
                if answered.busy { { say("counter.columns.busy") } }
            </p>
            <div class="column-heads">{ for columns.iter().map(|column| sentence(&voice, column)) }</div>
            if props.answers { <Different panes={Rc::clone(&props.panes)} /> }
            if !settings.is_empty() {
                <h3>{ say("advice.part.settings") }</h3>
                { unit_switches(&voice, &shown, &on_unit) }
                { settings_table(&voice, &columns, &settings) }
            }
            { causes_table(&voice, &columns) }
            { remedies(&voice, &columns) }
        </div>
    }
}

struct Column<'a> {
    pane: &'a Pane,
    outcome: Option<&'a Outcome>,
}

impl<'a> Column<'a> {
    fn set_up(&self) -> Option<&'a SetUpAdvice> {
        match self.outcome? {
            Outcome::Advice(advice, _) => match advice.as_ref() {
                Advice::SetUp(set_up) => Some(set_up),
                Advice::StopRiding(_) => None,
            },
            Outcome::Refused(_) => None,
        }
    }
}

/// What stands above a column: whose it is and the answer in one sentence.
fn sentence(voice: &Voice, column: &Column) -> Html {
    let inside = match column.outcome {
        None => html! { <p>{ say("advice.working") }</p> },
        Some(Outcome::Refused(error)) => {
            let problems = error.problems.iter();
            html! { <ul>{ for problems.map(|one| html! { <li>{ voice.say(&one.text) }</li> }) }</ul> }
        }
        Some(Outcome::Advice(advice, stand)) => match advice.as_ref() {
            Advice::StopRiding(stop) => html! {
                <>
                    <p class="column-sentence">{ voice.say(&stop.sentence) }</p>
                    <ul>{ for stop.signs.iter().map(|sign| html! { <li>{ voice.say(&sign.instead) }</li> }) }</ul>
                    { cautions(voice, &stop.cautions) }
                </>
            },
            Advice::SetUp(set_up) => html! {
                <>
                    <p class="column-sentence">{ voice.say(&set_up.sentence) }</p>
                    if *stand == Stand::Still { <p class="hint">{ say("counter.columns.still") }</p> }
                </>
            },
        },
    };
    html! {
        <div class="column-head">
            <h3>{ column.pane.name.clone() }</h3>
            { inside }
        </div>
    }
}

/// Every setting of any column once, in the order of the card.
fn settings_of<'a>(columns: &[Column<'a>]) -> Vec<(SettingId, &'a Setting)> {
    let mut all: Vec<(SettingId, &Setting)> = Vec::new();
    for column in columns {
        for setting in column
            .set_up()
            .map(|set_up| &set_up.settings)
            .into_iter()
            .flatten()
        {
            if !all.iter().any(|(id, _)| *id == setting.id) {
                all.push((setting.id, setting));
            }
        }
    }
    all.sort_by_key(|(id, setting)| (setting.end == End::Rear, *id));
    all
}

fn settings_table(voice: &Voice, columns: &[Column], settings: &[(SettingId, &Setting)]) -> Html {
    let two = columns.len() > 1;
    let names = columns.iter().map(|column| {
        html! { <th scope="colgroup" colspan="2">{ column.pane.name.clone() }</th> }
    });
    let heads = columns.iter().map(|_| {
        html! {
            <>
                <th scope="col">{ say("advice.setting.now") }</th>
                <th scope="col">{ say("advice.setting.advised") }</th>
            </>
        }
    });
    let rows = settings.iter().map(|(id, setting)| {
        let of = |column: &Column| {
            let settings = column.set_up().map(|set_up| &set_up.settings);
            settings
                .into_iter()
                .flatten()
                .find(|one| one.id == *id)
                .cloned()
        };
        let cells: Vec<Option<Setting>> = columns.iter().map(of).collect();
        let shown = |one: &Option<Setting>| {
            one.as_ref()
                .map(|one| voice.quantity(one.advised.value, one.advised.dimension))
        };
        let moved = two && cells.first().map(shown) != cells.last().map(shown);
        html! {
            <tr class={classes!(moved.then_some("moved-row"))}>
                <th scope="row">
                    { voice.say(&setting.label) }
                    if moved { <span class="moved-mark">{ say("counter.columns.moved") }</span> }
                </th>
                { for cells.iter().map(|cell| setting_cells(voice, cell.as_ref())) }
            </tr>
        }
    });
    html! {
        <div class="wide-table" role="region" tabindex="0" aria-label={say("advice.part.settings")}>
            <table class="side-table">
                <thead>
                    if two { <tr><td />{ for names }</tr> }
                    <tr><th scope="col">{ say("advice.setting") }</th>{ for heads }</tr>
                </thead>
                <tbody>{ for rows }</tbody>
            </table>
        </div>
    }
}

fn setting_cells(voice: &Voice, setting: Option<&Setting>) -> Html {
    let Some(setting) = setting else {
        return html! { <><td>{ "–" }</td><td>{ "–" }</td></> };
    };
    let advised = &setting.advised;
    let show = |si: f64| voice.quantity(si, advised.dimension);
    html! {
        <>
            <td>{ setting.now.map_or_else(|| say("advice.setting.unknown"), show) }</td>
            <td>
                <strong>{ show(advised.value) }</strong>
                if let Some(range) = range(voice, advised) {
                    <span class="hint block">{ say("advice.setting.range") }{ range }</span>
                }
            </td>
        </>
    }
}

/// The causes that lead in any column, in the order of the last one.
fn causes_table(voice: &Voice, columns: &[Column]) -> Html {
    let mut told: Vec<(Cause, &Text)> = Vec::new();
    for column in columns.iter().rev() {
        let causes = column
            .set_up()
            .map(|set_up| &set_up.causes)
            .into_iter()
            .flatten();
        for cause in causes.take(CAUSES) {
            if !told.iter().any(|(known, _)| *known == cause.cause) {
                told.push((cause.cause, &cause.name));
            }
        }
    }
    if told.is_empty() {
        return Html::default();
    }
    let names = columns
        .iter()
        .map(|column| html! { <th scope="col">{ column.pane.name.clone() }</th> });
    let rows = told.iter().map(|(cause, name)| {
        let chances: Vec<Option<f64>> = columns
            .iter()
            .map(|column| {
                let mut causes = column.set_up()?.causes.iter();
                causes
                    .find(|one| one.cause == *cause)
                    .map(|one| one.probability)
            })
            .collect();
        let cells = chances.iter().enumerate().map(|(at, share)| {
            let before = if at > 0 {
                chances.first().copied().flatten()
            } else {
                None
            };
            html! {
                <td>
                    if let Some(share) = share {
                        <strong>{ chance(voice, *share) }</strong>
                        { moved_bar(before, *share) }
                    } else {
                        { "–" }
                    }
                </td>
            }
        });
        html! { <tr><th scope="row">{ voice.say(name) }</th>{ for cells }</tr> }
    });
    html! {
        <>
            <h3>{ say("advice.part.causes") }</h3>
            <div class="wide-table" role="region" tabindex="0" aria-label={say("advice.part.causes")}>
                <table class="side-table">
                    <thead><tr><th scope="col">{ say("counter.columns.cause") }</th>{ for names }</tr></thead>
                    <tbody>{ for rows }</tbody>
                </table>
            </div>
        </>
    }
}

/// The remedy that leads in each column.
fn remedies(voice: &Voice, columns: &[Column]) -> Html {
    if columns.iter().all(|column| column.set_up().is_none()) {
        return Html::default();
    }
    let cells = columns.iter().map(|column| {
        let remedies = column
            .set_up()
            .map(|set_up| &set_up.remedies)
            .into_iter()
            .flatten();
        let leading = remedies.into_iter().find(|remedy| remedy.leads);
        html! {
            <div class="column-head">
                if columns.len() > 1 { <h4>{ column.pane.name.clone() }</h4> }
                if let Some(remedy) = leading {
                    <p><strong>{ voice.say(&remedy.name) }</strong></p>
                    <p>{ worth(voice, remedy) }</p>
                    { cautions(voice, &remedy.cautions) }
                }
            </div>
        }
    });
    html! {
        <>
            <h3>{ say("advice.remedies.first") }</h3>
            <div class="column-heads">{ for cells }</div>
        </>
    }
}
