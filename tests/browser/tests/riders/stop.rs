//! A rider who saw a stop-riding sign gets no set-up, by whatever way.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{PHONE, Page, browse};

/// Numbers with the unit of a setting, anywhere in the text: clicks, rates, pressures, sag.
const SETTINGS: &str = "document.body.innerText.match(/\\d\\s*(clicks?|quarter|N\\/mm|kgf|lbf|bar\\b|psi|kPa|mm\\b)/gi) ?? []";
/// What only an advice with a set-up has.
const PARTS: [&str; 5] = [
    "Settings card",
    "Set to",
    "What is likely behind it",
    "Start here",
    "See it",
];

async fn gives_no_set_up(page: &Page, fragment: &str) -> Result<()> {
    page.open(fragment).await?;
    // Loaded anew, so that nothing is left of the page before.
    page.reload().await?;
    let text = page.text().await?;
    for part in PARTS {
        ensure!(!text.contains(part), "{fragment} shows \"{part}\"");
    }
    ensure!(
        page.evaluate("document.querySelector('.card, canvas') === null")
            .await?
            == true,
        "{fragment} shows a card or a picture"
    );
    Ok(())
}

#[test]
fn one_sign_is_enough_to_stop() {
    browse("rider-stopped", PHONE, async |page| {
        // This rider had a full set-up a moment ago.
        page.advice_of("Freshly serviced gas fork").await?;
        page.is_shown(".card-number").await?;
        ensure!(
            page.evaluate(SETTINGS).await?.as_array().map(Vec::len) > Some(20),
            "the pattern for settings finds none where there are many"
        );

        page.open("#/stop-signs/change").await?;
        page.arrives_at("Have you seen any of these?").await?;
        page.choose("Oil on a brake disc").await?;
        ensure!(
            !page.is_chosen("None of these").await?,
            "none and one at once"
        );
        page.continue_().await?;
        page.arrives_at("Check your answers").await?;
        page.click("Get my advice").await?;
        page.arrives_at("Your advice").await?;
        page.sees("Do not ride").await?;
        page.sees("Push the bike, do not ride it.").await?;
        let settings = page.evaluate(SETTINGS).await?;
        ensure!(
            settings.as_array().is_some_and(Vec::is_empty),
            "settings in spite of the sign: {settings}"
        );
        for fragment in [
            "#/advice",
            "#/sheet",
            "#/check",
            "#/",
            "#/advice/settings",
            "#/settings",
        ] {
            gives_no_set_up(page, fragment).await?;
        }
        page.open("#/advice").await?;
        page.sees("Do not ride").await
    });
}
