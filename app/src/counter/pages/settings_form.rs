//! The workshop's settings, section by section.

use sagwright_core::intake::{BikeClass, MOST_EXTRA};
use sagwright_core::quantity::{RateUnit, UnitSet};
use sagwright_core::remedy::RemedyId;
use sagwright_core::words::{Language, Text};
use sagwright_core::workshop::{AnswerKind, ColourScheme, Counting, Delivery, Units};
use yew::prelude::*;

use super::parts::{counted, plain};
use super::settings::{Wrong, box_of};
use super::settings_boxes::{At, list};
use crate::counter::find::class_name;
use crate::counter::settings::{AskDraft, Draft, PRICES, high_of};
use crate::words::say;

/// The form's boxes.
pub fn form(draft: &Draft, change: &Callback<Draft>, wrong: &[Wrong]) -> Html {
    let at = At {
        draft,
        change,
        wrong,
    };
    html! {
        <>
            { who(&at) }
            { languages_and_units(&at) }
            { money(&at) }
            { offer(&at) }
            { stock(&at) }
            { questions(&at) }
            { look(&at) }
            { delivery(&at) }
        </>
    }
}

fn who(at: &At) -> Html {
    let contact = &at.draft.contact;
    html! {
        <section class="part lines">
            <h2>{ say("counter.settings.who") }</h2>
            { at.line("name", say("counter.settings.name"), &at.draft.name, at.typed(|draft, text| draft.name = text)) }
            { at.line("contact.phone", say("counter.settings.phone"), &contact.phone, at.typed(|draft, text| draft.contact.phone = text)) }
            { at.line("contact.email", say("counter.settings.email"), &contact.email, at.typed(|draft, text| draft.contact.email = text)) }
            { at.line("contact.address", say("counter.settings.address"), &contact.address, at.typed(|draft, text| draft.contact.address = text)) }
            { at.line("contact.website", say("counter.settings.website"), &contact.website, at.typed(|draft, text| draft.contact.website = text)) }
        </section>
    }
}

fn languages_and_units(at: &At) -> Html {
    let name = |language: Language| language.own_name().to_owned();
    let units = &at.draft.units;
    let countings: Vec<(String, String)> = Counting::ALL
        .iter()
        .map(|one| {
            let word = one.word();
            let name = say(&format!("counter.settings.counting.{word}"));
            (word.to_owned(), name)
        })
        .collect();
    let counting = at.draft.counting.unwrap_or(Counting::FromClosed);
    let counted = at.typed(|draft, word| {
        draft.counting = Counting::ALL.iter().copied().find(|one| one.word() == word);
    });
    html! {
        <section class="part lines">
            <h2>{ say("counter.settings.languages-units") }</h2>
            { at.ticks("languages", "counter.settings.languages", Language::ALL, name, &at.draft.languages, |draft| &mut draft.languages) }
            <div class="line-pair">
                { unit_list(at, "mass", units.mass, &["kg", "lb"], |units, unit| units.mass = unit) }
                { unit_list(at, "length", units.length, &["mm", "in"], |units, unit| units.length = unit) }
                { unit_list(at, "rate", units.rate, &["N/mm", "kgf/mm", "lbf/in"], |units, unit| units.rate = unit) }
                { unit_list(at, "pressure", units.pressure, &["bar", "psi", "kPa"], |units, unit| units.pressure = unit) }
                { unit_list(at, "height", units.height, &["cm", "in"], |units, unit| units.height = unit) }
                { unit_list(at, "temperature", units.temperature, &["C", "F"], |units, unit| units.temperature = unit) }
                { unit_list(at, "altitude", units.altitude, &["m", "ft"], |units, unit| units.altitude = unit) }
            </div>
            <p class="hint">{ say("counter.settings.not-met") }</p>
            { list("counting", say("counter.settings.counting"), &countings, counting.word(), counted) }
        </section>
    }
}

/// The unit one kind of number begins in.
fn unit_list<U: UnitSet + Copy + 'static>(
    at: &At,
    kind: &'static str,
    chosen: Option<U>,
    words: &[&'static str],
    put: fn(&mut Units, Option<U>),
) -> Html {
    let units: Vec<U> = U::DIMENSION
        .units()
        .iter()
        .filter_map(|unit| U::of(*unit))
        .collect();
    let mut options = vec![(String::new(), say("counter.settings.unit.any"))];
    options.extend(
        words
            .iter()
            .map(|word| ((*word).to_owned(), (*word).to_owned())),
    );
    let place = |unit: U| units.iter().position(|one| one.unit() == unit.unit());
    let chosen = chosen
        .and_then(place)
        .and_then(|place| words.get(place))
        .copied();
    let words: Vec<&'static str> = words.to_vec();
    let picked = {
        let units = units.clone();
        at.typed(move |draft, word| {
            let place = words.iter().position(|known| *known == word);
            put(
                &mut draft.units,
                place.and_then(|place| units.get(place)).copied(),
            );
        })
    };
    let label = say(&format!("counter.settings.unit.{kind}"));
    list(
        &format!("units.{kind}"),
        label,
        &options,
        chosen.unwrap_or_default(),
        picked,
    )
}

fn money(at: &At) -> Html {
    let (low, high) = &at.draft.labour;
    html! {
        <section class="part lines">
            <h2>{ say("counter.settings.money") }</h2>
            { at.line("currency", say("counter.settings.currency"), &at.draft.currency, at.typed(|draft, text| draft.currency = text)) }
            <div class="line-pair">
                { at.line("labour_per_hour", say("counter.settings.labour-low"), low, at.typed(|draft, text| draft.labour.0 = text)) }
                { at.line(&high_of("labour_per_hour"), say("counter.settings.labour-high"), high, at.typed(|draft, text| draft.labour.1 = text)) }
            </div>
        </section>
    }
}

/// The remedies, each ticked where it is offered, with room for a price of the workshop's own.
fn offer(at: &At) -> Html {
    let (trouble, described_by) = at.trouble("remedies");
    let mut places = at.wrong.iter().map(|(place, _)| place);
    let wrong_inside = places.any(|place| place == "remedies" || place.starts_with(PRICES));
    let rows = RemedyId::ALL
        .iter()
        .enumerate()
        .map(|(number, id)| remedy(at, number, *id));
    let class = |class: BikeClass| plain(&class_name(class));
    html! {
        <section class="part lines">
            <h2>{ say("counter.settings.offer") }</h2>
            { at.ticks("classes", "counter.settings.classes", BikeClass::ALL, class, &at.draft.classes, |draft| &mut draft.classes) }
            // Whoever is led to a box has to see it.
            <details class="more" open={wrong_inside}>
                <summary>{ say("counter.settings.remedies") }</summary>
                <p class="hint">{ say("counter.settings.remedies.why") }</p>
                <fieldset class="group" aria-describedby={described_by}>
                    <legend class="vh">{ say("counter.settings.remedies") }</legend>
                    { trouble }
                    <div class="remedy-prices">{ for rows }</div>
                </fieldset>
            </details>
        </section>
    }
}

fn remedy(at: &At, number: usize, id: RemedyId) -> Html {
    let offered = at.draft.remedies.contains(&id);
    let name = plain(&Text::new(format!("remedy.{}.name", id.word())));
    let tick = at.pressed(move |draft| {
        if !draft.remedies.remove(&id) {
            draft.remedies.insert(id);
        }
    });
    let first = (number == 0).then(|| box_of("remedies"));
    let (low, high) = at.draft.prices.get(&id).cloned().unwrap_or_default();
    let place = [PRICES, id.word()].concat();
    let high_place = high_of(&place);
    let mut places = at.wrong.iter().map(|(wrong, _)| wrong);
    // A price stays in the file where its remedy is not offered, and then has to be put right all the same.
    let wrong = places.any(|wrong| *wrong == place || *wrong == high_place);
    let label = |key: &'static str| {
        let text = Text::new(key).with(
            "name",
            Text::new(format!("remedy.{}.name", id.word())).into(),
        );
        plain(&text)
    };
    let type_low = at.typed(move |draft, text| draft.prices.entry(id).or_default().0 = text);
    let type_high = at.typed(move |draft, text| draft.prices.entry(id).or_default().1 = text);
    html! {
        <div class="remedy-price" key={id.word()}>
            <label class="row">
                <input type="checkbox" id={first} checked={offered} onclick={tick} />
                <span class="row-text">{ name }</span>
            </label>
            if offered || wrong {
                <div class="line-pair">
                    { at.line(&place, label("counter.settings.price-low"), &low, type_low) }
                    { at.line(&high_place, label("counter.settings.price-high"), &high, type_high) }
                </div>
            }
        </div>
    }
}

fn stock(at: &At) -> Html {
    let (fork, shock) = &at.draft.stock;
    let words = ["N/mm", "kgf/mm", "lbf/in"];
    let units = [
        RateUnit::NewtonPerMillimetre,
        RateUnit::KilogramForcePerMillimetre,
        RateUnit::PoundForcePerInch,
    ];
    let place = units.iter().position(|unit| *unit == at.draft.stock_unit);
    let chosen = place
        .and_then(|place| words.get(place))
        .copied()
        .unwrap_or_default();
    let options: Vec<(String, String)> = words
        .iter()
        .map(|word| ((*word).to_owned(), (*word).to_owned()))
        .collect();
    let picked = at.typed(move |draft, word| {
        let place = words.iter().position(|known| *known == word);
        if let Some(unit) = place.and_then(|place| units.get(place)) {
            draft.stock_unit = *unit;
        }
    });
    html! {
        <section class="part lines">
            <h2>{ say("counter.settings.stock") }</h2>
            <p class="hint">{ say("counter.settings.not-met") }</p>
            <p class="hint">{ say("counter.settings.stock.why") }</p>
            { list("stock", say("counter.settings.stock.unit"), &options, chosen, picked) }
            { at.lines("stock.fork", say("counter.settings.stock.fork"), fork, at.typed(|draft, text| draft.stock.0 = text)) }
            { at.lines("stock.shock", say("counter.settings.stock.shock"), shock, at.typed(|draft, text| draft.stock.1 = text)) }
        </section>
    }
}

fn questions(at: &At) -> Html {
    let all = at.draft.questions.iter().enumerate();
    let add = at.pressed(|draft| draft.questions.push(AskDraft::default()));
    html! {
        <section class="part lines">
            <h2>{ say("counter.settings.questions") }</h2>
            <p class="hint">{ say("counter.settings.questions.why") }</p>
            { for all.map(|(number, one)| question(at, number, one)) }
            if at.draft.questions.len() < MOST_EXTRA {
                <button type="button" class="button" onclick={add}>{ say("counter.settings.question.add") }</button>
            }
        </section>
    }
}

fn question(at: &At, number: usize, one: &AskDraft) -> Html {
    let place = |part: &str| format!("questions[{number}].{part}");
    let with = |put: fn(&mut AskDraft, String)| {
        at.typed(move |draft, text| {
            if let Some(question) = draft.questions.get_mut(number) {
                put(question, text);
            }
        })
    };
    let kinds = AnswerKind::ALL.iter().map(|kind| {
        let word = kind.word();
        (
            word.to_owned(),
            say(&format!("counter.settings.kind.{word}")),
        )
    });
    let kinds: Vec<(String, String)> = kinds.collect();
    let kind = one.kind.unwrap_or(AnswerKind::Text);
    let required = at.pressed(move |draft| {
        if let Some(question) = draft.questions.get_mut(number) {
            question.required = !question.required;
        }
    });
    let take_out = at.pressed(move |draft| {
        draft.questions.remove(number);
    });
    let name = counted("counter.settings.question", number + 1);
    html! {
        <fieldset class="group extra">
            <legend>{ name }</legend>
            <div class="lines">
                { at.line(&place("text"), say("counter.settings.question.text"), &one.text, with(|question, text| question.text = text)) }
                { at.line(&place("id"), say("counter.settings.question.id"), &one.id, with(|question, text| question.id = text)) }
                { list(&place("kind"), say("counter.settings.question.kind"), &kinds, kind.word(), with(|question, word| {
                    question.kind = AnswerKind::ALL.iter().copied().find(|kind| kind.word() == word);
                })) }
                if kind == AnswerKind::Choice {
                    { at.lines(&place("choices"), say("counter.settings.question.choices"), &one.choices, with(|question, text| question.choices = text)) }
                }
                <label class="row">
                    <input type="checkbox" checked={one.required} onclick={required} />
                    <span class="row-text">{ say("counter.settings.question.required") }</span>
                </label>
                <button type="button" class="button quiet" onclick={take_out}>{ say("counter.settings.question.take-out") }</button>
            </div>
        </fieldset>
    }
}

fn look(at: &At) -> Html {
    let draft = at.draft;
    let schemes = ColourScheme::ALL.iter().map(|scheme| {
        let word = scheme.word();
        (
            word.to_owned(),
            say(&format!("counter.settings.colours.{word}")),
        )
    });
    let schemes: Vec<(String, String)> = schemes.collect();
    let chosen = draft.colours.unwrap_or(ColourScheme::Device);
    html! {
        <section class="part lines">
            <h2>{ say("counter.settings.look") }</h2>
            <p class="hint">{ say("counter.settings.not-met") }</p>
            <p class="hint">{ say("counter.settings.look.why") }</p>
            { at.line("theme.accent", say("counter.settings.accent"), &draft.accent, at.typed(|draft, text| draft.accent = text)) }
            <div class="line-pair">
                { at.line("theme.corner", say("counter.settings.corner"), &draft.corner, at.typed(|draft, text| draft.corner = text)) }
                { at.line("theme.text", say("counter.settings.text"), &draft.text, at.typed(|draft, text| draft.text = text)) }
            </div>
            { list("theme.colours", say("counter.settings.colours"), &schemes, chosen.word(), at.typed(|draft, word| {
                draft.colours = ColourScheme::ALL.iter().copied().find(|scheme| scheme.word() == word);
            })) }
        </section>
    }
}

fn delivery(at: &At) -> Html {
    let draft = at.draft;
    let way = |word: &'static str| say(&format!("counter.settings.way.{word}"));
    // The places in the document follow the order of the ways ticked.
    let place = |word: &str, part: &str| {
        let mut before = draft.ways.iter();
        let number = before.position(|known| *known == word).unwrap_or_default();
        format!("delivery[{number}].{part}")
    };
    html! {
        <section class="part lines">
            <h2>{ say("counter.settings.delivery") }</h2>
            { at.ticks("delivery", "counter.settings.ways", Delivery::WORDS, way, &draft.ways, |draft| &mut draft.ways) }
            if draft.ways.contains(&"email") {
                { at.line(&place("email", "address"), say("counter.settings.mail"), &draft.mail, at.typed(|draft, text| draft.mail = text)) }
            }
            if draft.ways.contains(&"endpoint") {
                { at.line(&place("endpoint", "url"), say("counter.settings.endpoint"), &draft.endpoint, at.typed(|draft, text| draft.endpoint = text)) }
            }
            { at.lines("consent", say("counter.settings.consent"), &draft.consent, at.typed(|draft, text| draft.consent = text)) }
        </section>
    }
}
