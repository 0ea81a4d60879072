//! Riders who walk through every page to their advice, by clicking and typing.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, browse};

const DONT_KNOW: &str = "I don't know";
const NOT_MEASURED: &str = "I haven't measured it";

// --- the rider with a gas fork -------------------------------------------------------------------

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
    page.answer("What is wrong?", "It beats up my hands on small bumps")
        .await?;
    page.arrives_at("It beats up my hands on small bumps: tell us more")
        .await?;
    page.choose_in("Which end is it?", "Front").await?;
    page.choose("Braking for a turn").await?;
    page.choose("Along a straight").await?;
    page.choose_in("How bad is it?", "I ride around it").await?;
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

// --- what every advice shows ---------------------------------------------------------------------

/// The sentence, the card, causes, remedies, the picture with its table, and the cautions.
async fn sees_whole_advice(page: &Page) -> Result<()> {
    page.arrives_at("Your advice").await?;
    page.is_shown(".verdict-sentence").await?;
    for part in [
        "Settings card",
        "What is likely behind it",
        "What to do, cheapest first",
        "Start here",
        "See it",
        "Cautions",
    ] {
        page.sees(part).await?;
    }
    let empty = page
        .evaluate(
            "[...document.querySelectorAll('.card-number, .cause-chance, .signal-texts, .verdict-sentence')] \
             .filter((node) => node.textContent.trim() === '').length",
        )
        .await?;
    ensure!(empty == 0, "{empty} things have no text");
    let cards = page
        .evaluate("document.querySelectorAll('.card-number').length")
        .await?;
    ensure!(cards.as_u64() >= Some(12), "only {cards} settings");
    ensure!(
        page.evaluate("document.querySelectorAll('.signal').length > 0")
            .await?
            == true,
        "no cautions"
    );
    sees_picture(page).await
}

/// Lines are drawn on the canvas at the density of the screen, and a table says the same.
async fn sees_picture(page: &Page) -> Result<()> {
    let drawn = page
        .evaluate(
            "(() => { const canvas = document.querySelector('canvas.picture-canvas'); \
             const { width, height } = canvas; \
             const dots = canvas.getContext('2d').getImageData(0, 0, width, height).data; \
             const colours = new Set(new Uint32Array(dots.buffer)); \
             return { colours: colours.size, sharp: width >= canvas.clientWidth * devicePixelRatio - 1, \
                      name: canvas.getAttribute('aria-label') }; })()",
        )
        .await?;
    ensure!(
        drawn["colours"].as_u64() > Some(10),
        "nothing is drawn: {drawn}"
    );
    ensure!(drawn["sharp"] == true, "the picture is blurred: {drawn}");
    ensure!(
        drawn["name"].as_str().is_some_and(|name| name.len() > 20),
        "the picture says nothing to those who hear it: {drawn}"
    );
    page.click("The same as a table").await?;
    let rows = page
        .evaluate(
            "[...document.querySelectorAll('.picture table tbody tr')] \
             .filter((row) => /\\d\\s(N|lbf)/.test(row.innerText)).length",
        )
        .await?;
    ensure!(
        rows.as_u64() >= Some(11),
        "only {rows} rows of the table hold forces"
    );
    Ok(())
}

// --- the rider who thinks in pounds and inches ---------------------------------------------------

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
        for clickers in ["Where do the fork clickers", "Where do the shock clickers"] {
            page.passes(clickers, DONT_KNOW).await?;
        }
        page.passes("How long ago", DONT_KNOW).await?;
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
            &[("Which end is it?", "Front")],
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
            .await?;
        page.arrives_at("Check your answers").await?;
        for said in [
            "187.5 lb",
            "0.48 kgf/mm",
            "345 lbf/in",
            "3.25 in",
            "12.5 psi",
        ] {
            page.sees(said).await?;
        }
        page.click("Get my advice").await?;
        sees_whole_advice(page).await?;
        page.sees("psi").await?;
        page.sees("lbf/in").await
    });
}

// --- the rider who knows nothing -----------------------------------------------------------------

#[test]
fn a_rider_who_knows_nothing() {
    browse("rider-unknowing", PHONE, async |page| {
        page.open("").await?;
        page.click("Start").await?;
        page.passes("How much do you weigh?", DONT_KNOW).await?;
        page.does_not_know("riding gear on?").await?;
        page.does_not_know("How fast do you ride?").await?;
        page.does_not_know("most of a ride?").await?;
        page.passes("How tall are you?", DONT_KNOW).await?;
        page.does_not_know("What kind of bike is it?").await?;
        page.passes("What does the bike weigh", DONT_KNOW).await?;
        page.does_not_know("How much fuel").await?;
        page.does_not_know("What carries the front").await?;
        page.passes("Which fork springs are in it?", DONT_KNOW)
            .await?;
        page.does_not_know("How does the shock").await?;
        for question in [
            "Which shock spring",
            "Where do the fork clickers",
            "Where do the shock clickers",
            "How long ago",
            "What ground",
            "What are the usual",
            "And today?",
        ] {
            page.passes(question, DONT_KNOW).await?;
        }
        page.answer("What is wrong?", "I don't know how to put it")
            .await?;
        for question in [
            "What is the sag at the front?",
            "What is the sag at the rear?",
            "How much of the fork's travel",
            "tyre pressures?",
        ] {
            page.passes(question, NOT_MEASURED).await?;
        }
        page.passes("What does a slow push", "I haven't tried it")
            .await?;
        page.does_not_know("Have you seen any of these?").await?;
        page.arrives_at("Check your answers").await?;
        page.click("Get my advice").await?;
        sees_whole_advice(page).await?;
        page.sees("the ranges span every kind").await?;
        page.sees("You have not said whether you saw any stop-riding sign")
            .await?;
        page.sees("What was assumed").await?;
        // Nothing that depends on the bike may look as if it were known.
        let narrow = page
            .evaluate(
                "[...document.querySelectorAll('.card-values')] \
                 .filter((row) => !row.innerText.includes('range')).map((row) => row.innerText)",
            )
            .await?;
        ensure!(
            narrow.as_array().is_some_and(Vec::is_empty),
            "without a range: {narrow}"
        );
        page.picture("advice-unknowing").await
    });
}
