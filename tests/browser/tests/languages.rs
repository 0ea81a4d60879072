//! Languages: chosen at the foot of any page, kept, asked for by the device, and whole on every page.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{NARROW, PAGES, PHONE, Page, Rider, browse};
use serde_json::Value;

/// Sentences in brackets, two fifths longer.
const PSEUDO: &str = include_str!("../src/pseudo.js");
/// Finds what is not in brackets.
const UNBRACKETED: &str = include_str!("../src/unbracketed.js");

const GERMAN_FIRST: &str = "Finde heraus, was dein Fahrwerk braucht";

async fn spoken(page: &Page) -> Result<Value> {
    page.evaluate("document.documentElement.lang").await
}

/// What is looked for in a language.
struct Told {
    name: &'static str,
    tag: &'static str,
    /// What calls the list of languages, on its pages.
    chooser: &'static str,
    weigh: &'static str,
    weight: &'static str,
    unreviewed: &'static str,
    likeliest: &'static str,
}

async fn chosen_half_way(page: &Page, told: &Told) -> Result<()> {
    page.open_example("Freshly serviced gas fork").await?;
    ensure!(spoken(page).await? == "en");
    page.open("#/rider-weight").await?;
    page.pick("Language", told.name).await?;
    page.arrives_at(told.weigh).await?;
    ensure!(spoken(page).await? == told.tag);
    ensure!(page.value(told.weight).await? == "89");
    page.sees(told.unreviewed).await?;
    page.accessible().await?;
    page.fits().await?;
    page.picture("question").await?;
    page.open("#/advice").await?;
    page.is_shown(".ride-figures").await?;
    let text = page.text().await?;
    ensure!(
        text.contains(told.likeliest),
        "the answer is in another language"
    );
    ensure!(text.contains("10,6"), "numbers have no decimal comma");
    ensure!(!text.contains("10.6"), "a number has a decimal point");
    ensure!(!text.contains('['), "a sentence is missing");
    page.accessible().await?;
    page.fits().await?;
    page.picture("advice").await?;
    page.reload().await?;
    page.is_true(&format!("document.documentElement.lang === '{}'", told.tag))
        .await?;
    page.pick(told.chooser, "English").await?;
    page.arrives_at("Your advice").await?;
    ensure!(spoken(page).await? == "en");
    Ok(())
}

#[test]
fn german_is_chosen_half_way_and_keeps_answers_place_and_itself() {
    let told = Told {
        name: "Deutsch",
        tag: "de",
        chooser: "Sprache",
        weigh: "Wie viel wiegst du?",
        weight: "Gewicht des Fahrers",
        unreviewed: "ohne dass jemand mit deutscher Muttersprache",
        likeliest: "Am wahrscheinlichsten",
    };
    browse("languages-german", PHONE, async |page| {
        chosen_half_way(page, &told).await
    });
}

#[test]
fn french_is_chosen_half_way_and_keeps_answers_place_and_itself() {
    let told = Told {
        name: "Français",
        tag: "fr",
        chooser: "Langue",
        weigh: "Combien pesez-vous",
        weight: "Poids du pilote",
        unreviewed: "sans relecture",
        likeliest: "Le plus probable",
    };
    browse("languages-french", PHONE, async |page| {
        chosen_half_way(page, &told).await
    });
}

#[test]
fn spanish_is_chosen_half_way_and_keeps_answers_place_and_itself() {
    let told = Told {
        name: "Español",
        tag: "es",
        chooser: "Idioma",
        weigh: "¿Cuánto pesas?",
        weight: "Peso del piloto",
        unreviewed: "sin revisión",
        likeliest: "Lo más probable",
    };
    browse("languages-spanish", PHONE, async |page| {
        chosen_half_way(page, &told).await
    });
}

#[test]
fn the_device_decides_until_the_rider_does() {
    browse("languages-device", PHONE, async |page| {
        page.before_every_page(
            "Object.defineProperty(navigator, 'languages', { get: () => ['pt-BR', 'de-AT', 'en'] });",
        )
        .await?;
        page.open("#/").await?;
        page.reload().await?;
        page.arrives_at(GERMAN_FIRST).await?;
        page.pick("Sprache", "English").await?;
        page.reload().await?;
        page.arrives_at("Find out what your suspension needs").await
    });
}

#[test]
fn nothing_on_any_page_is_said_but_from_the_table_and_longer_words_fit() {
    browse("languages-pseudo", NARROW, async |page| {
        page.before_every_page(PSEUDO).await?;
        page.open_example("Freshly serviced gas fork").await?;
        page.pick("Language", "Deutsch").await?;
        page.is_true("document.querySelector('h1')?.textContent.startsWith('⟦')")
            .await?;
        let mut wrong = Vec::new();
        for place in PAGES.iter().filter(|place| place.rider == Rider::Gas) {
            page.open(place.fragment).await?;
            page.is_true("document.querySelector('h1')?.textContent.startsWith('⟦')")
                .await?;
            if place.fragment == "#/advice" {
                page.is_shown(".ride-figures").await?;
            }
            page.fits().await?;
            let found = page
                .evaluate(&format!("(() => {{ {UNBRACKETED} }})()"))
                .await?;
            let found = found.as_array().cloned().unwrap_or_default();
            wrong.extend(
                found
                    .into_iter()
                    .map(|text| format!("{}: {text}", place.name)),
            );
        }
        page.picture("pseudo").await?;
        ensure!(
            wrong.is_empty(),
            "not from the table:\n{}",
            wrong.join("\n")
        );
        Ok(())
    });
}
