//! A rider with a gas fork who writes decimal commas, mistypes, reloads, and changes an answer.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{DONT_KNOW, NOT_MEASURED, PHONE, Page, browse};

use crate::advice::sees_whole_advice;

/// A weight nobody has: the error stands at the field and on top, takes the focus, and leaves the text alone.
async fn mistypes_the_weight(page: &Page) -> Result<()> {
    page.arrives_at("How much do you weigh?").await?;
    page.fill("Rider weight", "8500").await?;
    page.continue_().await?;
    let at_field = page.complaint("Rider weight").await?;
    ensure!(
        at_field.contains("20 kg to 200 kg"),
        "it does not say what is allowed: {at_field}"
    );
    let summary = page
        .evaluate("document.querySelector('.problems').innerText")
        .await?;
    let summary = summary.as_str().unwrap_or_default();
    ensure!(
        summary.contains("There is a problem") && summary.contains("20 kg to 200 kg"),
        "on top stands: {summary}"
    );
    ensure!(
        page.evaluate("document.activeElement.className").await? == "problems",
        "the focus is elsewhere"
    );
    ensure!(
        page.value("Rider weight").await? == "8500",
        "the text is gone"
    );
    let title = page.evaluate("document.title").await?;
    ensure!(
        title.as_str().is_some_and(|t| t.starts_with("Error: ")),
        "the tab is called {title}"
    );
    page.accessible().await?;
    page.picture("rider-weight-wrong").await?;
    // The message leads to the field.
    page.click("Rider weight: 8").await?;
    ensure!(
        page.evaluate("document.activeElement.name").await? == "rider.weight",
        "the message leads elsewhere"
    );
    page.fill("Rider weight", "84,5").await?;
    page.continue_().await
}

async fn tells_of_a_gas_fork(page: &Page) -> Result<()> {
    page.answer("riding gear on?", "Yes, with gear").await?;
    page.answer("How fast do you ride?", "Club pace").await?;
    page.answer("most of a ride?", "Mostly standing").await?;
    page.measure("How tall are you?", &[("Rider height", "178,5")])
        .await?;
    page.answer("What kind of bike is it?", "Motocross 450")
        .await?;
    page.passes("What does the bike weigh", DONT_KNOW).await?;
    page.answer("How much fuel", "About half").await?;
    page.answer("What carries the front", "A gas spring in one leg")
        .await?;
    page.measure(
        "What is the gas pressure",
        &[
            ("Fork gas pressure", "10,8"),
            ("Fork temperature when the pressure was set", "19"),
            ("Highest pressure marked on the fork", "15"),
        ],
    )
    .await?;
    page.answer("How does the shock", "Through a linkage")
        .await?;
    page.arrives_at("Which shock spring").await?;
    page.fill("Shock spring rate", "5,4").await?;
    // The spring is marked in the older unit.
    page.click("kgf/mm").await?;
    ensure!(
        page.value("Shock spring rate").await? != "5,4",
        "the number was typed in the other unit and has to be shown converted"
    );
    page.fill("Shock spring rate", "5,4").await?;
    page.fill("Shock spring preload", "8,5").await?;
    page.choose_in("How do you know the rate?", "Read off the part")
        .await?;
    page.continue_().await
}

/// Closes and opens the browser in the middle of a page, then looks at earlier ones.
async fn reloads_midway(page: &Page) -> Result<()> {
    page.arrives_at("Where do the fork clickers stand?").await?;
    page.fill("Fork compression: clicks in all", "24").await?;
    page.fill("Fork compression: clicks out now", "13").await?;
    page.reload().await?;
    page.arrives_at("Where do the fork clickers stand?").await?;
    ensure!(
        page.value("Fork compression: clicks out now").await? == "13",
        "what was typed before the reload is gone"
    );
    page.click("Back").await?;
    page.arrives_at("Which shock spring").await?;
    ensure!(
        page.value("Shock spring rate").await? == "5,4",
        "the number is shown otherwise than typed"
    );
    ensure!(
        page.is_chosen("Read off the part").await?,
        "how it is known is gone"
    );
    page.continue_().await?;
    page.measure(
        "Where do the fork clickers stand?",
        &[
            ("Fork rebound: clicks in all", "24"),
            ("Fork rebound: clicks out now", "12"),
        ],
    )
    .await
}

async fn tells_the_rest(page: &Page) -> Result<()> {
    page.passes("Where do the shock clickers stand?", DONT_KNOW)
        .await?;
    page.measure(
        "How long ago",
        &[
            ("Hours since the fork was serviced", "6"),
            ("Hours since the shock was serviced", "30"),
        ],
    )
    .await?;
    page.answer_each(
        "What ground do you ride on?",
        &[("Roots and rocks", "Some"), ("Braking bumps", "A lot")],
    )
    .await?;
    page.passes("What are the usual temperature", DONT_KNOW)
        .await?;
    page.measure("And today?", &[("Today's temperature", "19")])
        .await?;
    page.arrives_at("What is wrong?").await?;
    page.choose("It beats up my hands on small bumps").await?;
    page.choose_in("How bad is it?", "I ride around it").await?;
    page.continue_().await?;
    page.arrives_at("It beats up my hands on small bumps: tell us more")
        .await?;
    ensure!(
        page.is_chosen("I ride around it").await?,
        "how bad it is was said on the page before"
    );
    page.choose_in("Which end is it, if you can tell?", "Front")
        .await?;
    page.choose("Braking for a turn").await?;
    page.choose("Along a straight").await?;
    page.choose_in("Since when?", "As long as I have had the bike")
        .await?;
    page.continue_().await?;
    page.measure(
        "What is the sag at the front?",
        &[("Front free sag", "20"), ("Front rider sag", "57,5")],
    )
    .await?;
    page.passes("What is the sag at the rear?", NOT_MEASURED)
        .await?;
    page.passes("How much of the fork's travel", NOT_MEASURED)
        .await?;
    page.measure("tyre pressures?", &[("Front tyre pressure", "0,85")])
        .await?;
    page.answer_each(
        "What does a slow push feel like?",
        &[
            ("Front", "Needs a shove before it moves"),
            ("Rear", "Moves at once"),
        ],
    )
    .await?;
    page.answer("Have you seen any of these?", "None of these")
        .await
}

#[test]
fn a_rider_with_a_gas_fork_and_decimal_commas() {
    browse("rider-gas", PHONE, async |page| {
        page.open("").await?;
        page.click("Start").await?;
        mistypes_the_weight(page).await?;
        tells_of_a_gas_fork(page).await?;
        reloads_midway(page).await?;
        tells_the_rest(page).await?;

        page.arrives_at("Check your answers").await?;
        for said in ["84,5 kg", "5,4 kgf/mm", "10,8 bar", "57,5 mm", "Club pace"] {
            page.sees(said).await?;
        }
        page.click("Change : How fast do you ride?").await?;
        page.answer("How fast do you ride?", "Fast").await?;
        page.arrives_at("Check your answers").await?;
        page.click("Get my advice").await?;
        sees_whole_advice(page).await?;
        page.sees("Fork gas pressure (gauge)").await
    });
}
