//! All jobs: searched as it is typed, sorted, leaf by leaf.

use std::rc::Rc;

use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::parts::{choose, count, counted, heading, job_link, plain, stages, value_of};
use crate::browser;
use crate::counter::find::{
    Brief, LEAF, Order, Shown, Wanted, class_name, feeling_name, find, leaves, stage_name,
    tags_in_use,
};
use crate::counter::job::Stage;
use crate::counter::route::Place;
use crate::counter::shell::use_counter;
use crate::desk::use_title;
use crate::words::say;

/// Words of the choice "which jobs" that name no stage.
const OPEN: &str = "open";
const ALL: &str = "all";

/// The line that says which rows are shown; the focus goes there when a leaf is turned.
const ROWS: &str = "desk-rows";

thread_local! {
    /// What was looked for last, to come back to from a job.
    static LAST: std::cell::RefCell<(Wanted, usize)> = std::cell::RefCell::default();
}

/// The list.
#[component]
pub fn DeskPage() -> Html {
    let counter = use_counter();
    use_title(&say("counter.desk"), false);
    let wanted = use_state_eq(|| LAST.with_borrow(|last| last.0.clone()));
    let leaf = use_state_eq(|| LAST.with_borrow(|last| last.1));
    let sight = counter.sight.clone();
    let found = use_memo(
        ((*wanted).clone(), Rc::clone(&sight.briefs)),
        |(wanted, briefs)| find(briefs, wanted),
    );
    let at = (*leaf).min(leaves(found.len()) - 1);
    LAST.with_borrow_mut(|last| *last = ((*wanted).clone(), at));
    let want = {
        let (wanted, leaf) = (wanted.setter(), leaf.setter());
        Callback::from(move |next: Wanted| {
            wanted.set(next);
            leaf.set(0);
        })
    };
    let turn = {
        let leaf = leaf.setter();
        Callback::from(move |to: usize| {
            leaf.set(to);
            browser::focus(ROWS);
        })
    };
    let shown = found.iter().skip(at * LEAF).take(LEAF);
    html! {
        <>
            <div class="counter-head">
                { heading(say("counter.desk")) }
                <a class="button button-main" href={Place::BringIn.fragment()}>{ say("counter.bring-in") }</a>
            </div>
            if sight.complete && sight.briefs.is_empty() {
                { nothing_yet() }
            } else {
                { looking(&wanted, &want, &tags_in_use(&sight.briefs)) }
                <p id={ROWS} class="desk-rows" role="status" tabindex="-1">
                    { rows_told(sight.complete, at, found.len()) }
                </p>
                if !found.is_empty() { { table(shown) } }
                { leaves_nav(at, found.len(), &turn) }
            }
        </>
    }
}

fn nothing_yet() -> Html {
    html! {
        <div class="desk-empty">
            <p class="lead">{ say("counter.empty") }</p>
            <p>{ say("counter.empty.how") }</p>
        </div>
    }
}

fn looking(wanted: &Wanted, want: &Callback<Wanted>, tags: &[String]) -> Html {
    let with = |change: fn(&mut Wanted, String)| {
        let (wanted, want) = (wanted.clone(), want.clone());
        Callback::from(move |word: String| {
            let mut next = wanted.clone();
            change(&mut next, word);
            want.emit(next);
        })
    };
    let words = with(|wanted, words| wanted.words = words);
    let oninput = Callback::from(move |event: InputEvent| {
        if let Some(text) = value_of(&event) {
            words.emit(text);
        }
    });
    let mut shown = vec![
        (OPEN.to_owned(), say("counter.shown.open")),
        (ALL.to_owned(), say("counter.shown.all")),
    ];
    shown.extend(stages());
    let chosen = match wanted.shown {
        Shown::Open => OPEN,
        Shown::All => ALL,
        Shown::At(stage) => stage.word(),
    };
    let orders = Order::ALL.iter().map(|order| {
        let word = order.word();
        (word.to_owned(), say(&format!("counter.order.{word}")))
    });
    let orders: Vec<(String, String)> = orders.collect();
    let mut with_tag = vec![(String::new(), say("counter.tag.any"))];
    with_tag.extend(tags.iter().map(|tag| (tag.clone(), tag.clone())));
    html! {
        <search class="looking">
            <div class="choose looking-words">
                <label for="desk-search">{ say("counter.search") }</label>
                <input
                    id="desk-search"
                    class="box"
                    type="text"
                    autocomplete="off"
                    spellcheck="false"
                    value={wanted.words.clone()}
                    {oninput}
                />
            </div>
            { choose("desk-shown", "counter.shown", &shown, chosen, with(|wanted, word| {
                wanted.shown = match word.as_str() {
                    OPEN => Shown::Open,
                    word => Stage::of(word).map_or(Shown::All, Shown::At),
                };
            })) }
            if !tags.is_empty() {
                { choose("desk-tag", "counter.tag", &with_tag, wanted.tag.as_deref().unwrap_or_default(), with(|wanted, tag| {
                    wanted.tag = (!tag.is_empty()).then_some(tag);
                })) }
            }
            { choose("desk-order", "counter.order", &orders, wanted.order.word(), with(|wanted, word| {
                let order = Order::ALL.iter().find(|order| order.word() == word);
                wanted.order = order.copied().unwrap_or_default();
            })) }
        </search>
    }
}

/// Which rows are shown, of how many.
fn rows_told(complete: bool, at: usize, found: usize) -> String {
    if !complete {
        return say("counter.reading");
    }
    if found == 0 {
        return say("counter.found.none");
    }
    if found <= LEAF {
        return counted("counter.found", found);
    }
    let text = Text::new("counter.found.leaf")
        .with("from", count(at * LEAF + 1))
        .with("to", count(found.min((at + 1) * LEAF)))
        .with("n", count(found));
    plain(&text)
}

fn table<'a>(shown: impl Iterator<Item = &'a Rc<Brief>>) -> Html {
    let columns = [
        "counter.column.name",
        "counter.column.class",
        "counter.column.complaints",
        "counter.column.stage",
        "counter.column.tags",
    ];
    let names = columns.map(|key| html! { <th scope="col" role="columnheader">{ say(key) }</th> });
    // The roles are those the elements have anyway, said again for where the style makes them blocks.
    html! {
        <table class="desk" role="table" aria-label={say("counter.desk")}>
            <thead role="rowgroup"><tr role="row">{ for names }</tr></thead>
            <tbody role="rowgroup">{ for shown.map(|brief| row(brief)) }</tbody>
        </table>
    }
}

fn row(brief: &Brief) -> Html {
    let feelings = brief.feelings.iter();
    let feelings = feelings.map(|feeling| html! { <li>{ plain(&feeling_name(*feeling)) }</li> });
    let tags = brief.tags.iter();
    let tags = tags.map(|tag| html! { <li class="tag">{ tag }</li> });
    html! {
        <tr role="row" key={brief.id.clone()}>
            <th scope="row" role="rowheader">{ job_link(brief) }</th>
            <td role="cell">{ brief.class.map(|class| plain(&class_name(class))) }</td>
            <td role="cell">if !brief.feelings.is_empty() { <ul>{ for feelings }</ul> }</td>
            <td role="cell">
                <span class={classes!("stage", format!("stage-{}", brief.stage.word()))}>
                    { plain(&stage_name(brief.stage)) }
                </span>
            </td>
            <td role="cell">if !brief.tags.is_empty() { <ul class="tags">{ for tags }</ul> }</td>
        </tr>
    }
}

/// The way to the other leaves; nothing where there is only one.
fn leaves_nav(at: usize, found: usize, turn: &Callback<usize>) -> Html {
    let all = leaves(found);
    if all < 2 {
        return Html::default();
    }
    let to = |leaf: Option<usize>, key: &str| {
        let turn = turn.clone();
        let onclick = Callback::from(move |_: MouseEvent| {
            if let Some(leaf) = leaf {
                turn.emit(leaf);
            }
        });
        // Stays where it is when there is nowhere to go, so that whoever pressed it keeps the focus.
        let off = leaf.is_none().then_some("true");
        html! { <button type="button" class="button" aria-disabled={off} {onclick}>{ say(key) }</button> }
    };
    let place = Text::new("counter.leaf")
        .with("at", Arg::Count(i64::try_from(at + 1).unwrap_or(i64::MAX)))
        .with("of", count(all));
    html! {
        <nav class="leaves" aria-label={say("counter.leaves")}>
            { to((at > 0).then_some(0), "counter.leaf.first") }
            { to(at.checked_sub(1), "counter.leaf.back") }
            <span>{ plain(&place) }</span>
            { to((at + 1 < all).then_some(at + 1), "counter.leaf.on") }
            { to((at + 1 < all).then_some(all - 1), "counter.leaf.last") }
        </nav>
    }
}
