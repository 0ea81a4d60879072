//! A rider who thinks in pounds, inches and psi, but has one spring marked in kgf/mm.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{DESKTOP, DONT_KNOW, NOT_MEASURED, Page, browse};

use crate::advice::sees_whole_advice;

/// Switches a unit back and forth: the letters typed come back.
async fn switches_back_and_forth(page: &Page, label: &str, away: &str, back: &str) -> Result<()> {
    let typed = page.value(label).await?;
    for _ in 0..3 {
        page.click(away).await?;
        ensure!(page.value(label).await? != typed, "{away} shows the same");
        page.click(back).await?;
        let now = page.value(label).await?;
        ensure!(now == typed, "{label}: {typed} came back as {now}");
    }
    Ok(())
}

/// Types a spring rate under the wrong unit and is asked what was meant.
async fn is_asked_for_the_unit(page: &Page) -> Result<()> {
    page.arrives_at("Which fork springs are in it?").await?;
    page.fill("Fork spring rate", "0.48").await?;
    page.continue_().await?;
    let asked = page.complaint("Fork spring rate").await?;
    ensure!(
        asked.contains("Did you mean 0.48 kgf/mm?"),
        "asked otherwise: {asked}"
    );
    page.accessible().await?;
    page.picture("fork-spring-unit").await?;
    page.click("Yes, kgf/mm").await?;
    ensure!(
        page.value("Fork spring rate").await? == "0.48",
        "the number changed"
    );
    switches_back_and_forth(page, "Fork spring rate", "lbf/in", "kgf/mm").await?;
    page.click("in").await?;
    page.fill("Fork spring preload", "0.25").await?;
    page.continue_().await
}

async fn goes_back_and_forward(page: &Page) -> Result<()> {
    page.arrives_at("How does the shock").await?;
    page.back().await?;
    page.arrives_at("Which fork springs are in it?").await?;
    ensure!(
        page.value("Fork spring rate").await? == "0.48",
        "the rate was lost on the way back"
    );
    page.back().await?;
    page.arrives_at("What carries the front").await?;
    ensure!(
        page.is_chosen("Steel springs in both legs").await?,
        "the fork was lost on the way back"
    );
    page.forward().await?;
    page.forward().await?;
    page.arrives_at("How does the shock").await
}

/// From the ground to the stop-riding signs.
async fn tells_of_the_ride(page: &Page) -> Result<()> {
    page.answer_each("What ground", &[("Sand", "A lot")])
        .await?;
    page.arrives_at("What are the usual").await?;
    page.click("°F").await?;
    page.click("ft").await?;
    page.measure(
        "What are the usual",
        &[("Usual temperature", "72"), ("Usual altitude", "3500")],
    )
    .await?;
    page.passes("And today?", DONT_KNOW).await?;
    page.arrives_at("What is wrong?").await?;
    page.choose("It bottoms out with a bang").await?;
    page.choose("The front dives when I brake").await?;
    page.continue_().await?;
    page.answer_each(
        "The front dives when I brake: tell",
        &[("Which end is it, if you can tell?", "Front")],
    )
    .await?;
    page.passes("It bottoms out with a bang: tell", "I can't say")
        .await?;
    page.measure(
        "What is the sag at the front?",
        &[("Front free sag", "1.6"), ("Front rider sag", "3.25")],
    )
    .await?;
    page.measure(
        "What is the sag at the rear?",
        &[("Rear free sag", "1.4"), ("Rear rider sag", "4.7")],
    )
    .await?;
    page.passes("How much of the fork's travel", NOT_MEASURED)
        .await?;
    page.arrives_at("tyre pressures?").await?;
    page.click("psi").await?;
    page.measure("tyre pressures?", &[("Front tyre pressure", "12.5")])
        .await?;
    page.passes("What does a slow push", "I haven't tried it")
        .await?;
    page.answer("Have you seen any of these?", "None of these")
        .await
}

/// All rates are read over in the unit chosen last; chosen again, each unit shows what was typed in it.
async fn reads_the_rate_in_both_units(page: &Page) -> Result<()> {
    // 0.48 kgf/mm = 0.48 x 9.80665 / 4.4482216 x 25.4 = 26.88 lbf/in.
    page.sees("27 lbf/in").await?;
    page.click("Change : Which fork springs are in it?").await?;
    page.arrives_at("Which fork springs are in it?").await?;
    page.click("kgf/mm").await?;
    ensure!(
        page.value("Fork spring rate").await? == "0.48",
        "the rate drifted"
    );
    page.click("lbf/in").await?;
    page.continue_().await?;
    page.arrives_at("Check your answers").await
}

#[test]
fn a_rider_in_pounds_inches_and_psi() {
    browse("rider-imperial", DESKTOP, async |page| {
        page.open("").await?;
        page.click("Start").await?;
        page.arrives_at("How much do you weigh?").await?;
        page.click("lb").await?;
        page.fill("Rider weight", "187.5").await?;
        switches_back_and_forth(page, "Rider weight", "kg", "lb").await?;
        page.continue_().await?;
        page.answer("riding gear on?", "No, without gear").await?;
        page.answer("How fast do you ride?", "Learning").await?;
        page.answer("most of a ride?", "About half and half")
            .await?;
        page.arrives_at("How tall are you?").await?;
        page.click("in").await?;
        page.fill("Rider height", "70.5").await?;
        page.continue_().await?;
        page.answer("What kind of bike is it?", "Enduro, no linkage")
            .await?;
        page.measure("What does the bike weigh", &[("Bike weight", "243")])
            .await?;
        page.answer("How much fuel", "Full").await?;
        page.answer("What carries the front", "Steel springs in both legs")
            .await?;
        is_asked_for_the_unit(page).await?;
        goes_back_and_forward(page).await?;
        page.answer("How does the shock", "Straight to the swingarm")
            .await?;
        page.arrives_at("Which shock spring").await?;
        page.click("lbf/in").await?;
        page.fill("Shock spring rate", "345").await?;
        switches_back_and_forth(page, "Shock spring rate", "N/mm", "lbf/in").await?;
        page.fill("Shock spring preload", "0.3").await?;
        page.continue_().await?;
        page.passes("Where do the fork clickers", DONT_KNOW).await?;
        page.measure(
            "Where do the shock clickers",
            &[
                ("Shock high-speed compression: quarter turns in all", "8"),
                ("Shock high-speed compression: quarter turns out now", "3"),
            ],
        )
        .await?;
        page.passes("How long ago", DONT_KNOW).await?;
        tells_of_the_ride(page).await?;
        page.arrives_at("Check your answers").await?;
        reads_the_rate_in_both_units(page).await?;
        for said in [
            "187.5 lb",
            "3 quarter turns",
            "345 lbf/in",
            "3.25 in",
            "12.5 psi",
        ] {
            page.sees(said).await?;
        }
        page.click("Get my advice").await?;
        sees_whole_advice(page).await?;
        let numbers = page
            .evaluate(
                "[...document.querySelectorAll('.card-number')].map((n) => n.innerText).join('; ')",
            )
            .await?;
        let numbers = numbers.as_str().unwrap_or_default();
        ensure!(
            ["lbf/in", "psi"].iter().all(|unit| numbers.contains(unit))
                && !["N/mm", "bar", "mm"]
                    .iter()
                    .any(|unit| numbers.contains(unit)),
            "not in the rider's units: {numbers}"
        );
        Ok(())
    });
}
