//! The kinds of box that the workshop's settings are made of, each with what is wrong with it beside it.

use yew::prelude::*;

use super::parts::{plain, value_of};
use super::settings::{Wrong, box_of};
use crate::counter::settings::Draft;
use crate::words::say;
use sagwright_core::sorted::Set;

/// The form as it is drawn.
#[derive(Clone, Copy)]
pub struct At<'a> {
    /// The boxes as they stand.
    pub draft: &'a Draft,
    /// Told the boxes as they are to stand.
    pub change: &'a Callback<Draft>,
    /// What is wrong, and where.
    pub wrong: &'a [Wrong],
}

/// What is ticked of some boxes.
pub trait Ticked<T> {
    /// Whether this one is.
    fn has(&self, item: T) -> bool;

    /// Ticks it, or takes the tick away.
    fn turn(&mut self, item: T);
}

impl<T: Ord> Ticked<T> for Set<T> {
    fn has(&self, item: T) -> bool {
        self.contains(&item)
    }

    fn turn(&mut self, item: T) {
        if !self.remove(&item) {
            self.insert(item);
        }
    }
}

/// In the order in which they were ticked.
impl<T: PartialEq> Ticked<T> for Vec<T> {
    fn has(&self, item: T) -> bool {
        self.contains(&item)
    }

    fn turn(&mut self, item: T) {
        match self.iter().position(|one| *one == item) {
            Some(place) => {
                self.remove(place);
            }
            None => self.push(item),
        }
    }
}

impl At<'_> {
    /// Takes a text into the draft.
    pub fn typed(&self, put: impl Fn(&mut Draft, String) + 'static) -> Callback<String> {
        let (draft, change) = (self.draft.clone(), self.change.clone());
        Callback::from(move |text: String| {
            let mut next = draft.clone();
            put(&mut next, text);
            change.emit(next);
        })
    }

    /// Changes the draft at a press.
    pub fn pressed(&self, put: impl Fn(&mut Draft) + 'static) -> Callback<MouseEvent> {
        let (draft, change) = (self.draft.clone(), self.change.clone());
        Callback::from(move |_: MouseEvent| {
            let mut next = draft.clone();
            put(&mut next);
            change.emit(next);
        })
    }

    /// What is wrong at a place of the document, drawn, and the id that describes it.
    pub fn trouble(&self, place: &str) -> (Html, Option<String>) {
        let found = self.wrong.iter().find(|(at, _)| at == place);
        match found {
            None => (Html::default(), None),
            Some((_, text)) => {
                let id = [&box_of(place), "-error"].concat();
                let drawn = html! {
                    <p class="error" id={id.clone()}>
                        <span class="vh">{ say("input.error") }</span>{ plain(text) }
                    </p>
                };
                (drawn, Some(id))
            }
        }
    }

    /// A line to type in.
    pub fn line(&self, place: &str, label: String, value: &str, typed: Callback<String>) -> Html {
        let (trouble, described_by) = self.trouble(place);
        let id = box_of(place);
        let oninput = input(typed);
        let invalid = described_by.is_some().then_some("true");
        html! {
            <div class="choose">
                <label for={id.clone()}>{ label }</label>
                { trouble }
                <input
                    {id}
                    class="box"
                    type="text"
                    autocomplete="off"
                    aria-invalid={invalid}
                    aria-describedby={described_by}
                    value={value.to_owned()}
                    {oninput}
                />
            </div>
        }
    }

    /// Room for a few lines.
    pub fn lines(&self, place: &str, label: String, value: &str, typed: Callback<String>) -> Html {
        let (trouble, described_by) = self.trouble(place);
        let id = box_of(place);
        let oninput = input(typed);
        let invalid = described_by.is_some().then_some("true");
        html! {
            <div class="choose">
                <label for={id.clone()}>{ label }</label>
                { trouble }
                <textarea
                    {id}
                    class="paste"
                    rows="3"
                    aria-invalid={invalid}
                    aria-describedby={described_by}
                    value={value.to_owned()}
                    {oninput}
                />
            </div>
        }
    }

    /// Boxes to tick, under one heading.
    pub fn ticks<T: Copy + 'static, C: Ticked<T> + 'static>(
        &self,
        place: &str,
        legend: &str,
        all: &[T],
        name: impl Fn(T) -> String,
        ticked: &C,
        of: fn(&mut Draft) -> &mut C,
    ) -> Html {
        let (trouble, described_by) = self.trouble(place);
        let rows = all.iter().enumerate().map(|(number, item)| {
            let item = *item;
            let on = ticked.has(item);
            let onchange = self.pressed(move |draft| of(draft).turn(item));
            let id = (number == 0).then(|| box_of(place));
            html! {
                <label class="row">
                    <input type="checkbox" {id} checked={on} onclick={onchange} />
                    <span class="row-text">{ name(item) }</span>
                </label>
            }
        });
        html! {
            <fieldset class="group" aria-describedby={described_by}>
                <legend>{ say(legend) }</legend>
                { trouble }
                <div class="rows rows-close">{ for rows }</div>
            </fieldset>
        }
    }
}

/// A list to choose one of; the first says nothing.
pub fn list(
    place: &str,
    label: String,
    options: &[(String, String)],
    chosen: &str,
    picked: Callback<String>,
) -> Html {
    let id = box_of(place);
    let rows = options.iter().map(|(word, name)| {
        html! { <option value={word.clone()} selected={word == chosen}>{ name }</option> }
    });
    let onchange = Callback::from(move |event: Event| {
        if let Some(word) = value_of(&event) {
            picked.emit(word);
        }
    });
    html! {
        <div class="choose">
            <label for={id.clone()}>{ label }</label>
            <select {id} {onchange}>{ for rows }</select>
        </div>
    }
}

fn input(typed: Callback<String>) -> Callback<InputEvent> {
    Callback::from(move |event: InputEvent| {
        if let Some(text) = value_of(&event) {
            typed.emit(text);
        }
    })
}
