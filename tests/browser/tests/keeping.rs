//! Answers between visits, between tabs, and where there is no room for them.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, browse};

const OVERTAKEN: &str = "Other answers were given on another page";
const NOT_KEPT: &str = "does not let Sagwright keep your answers";

async fn weighs(page: &Page, text: &str) -> Result<()> {
    let found = page.value("Rider weight").await?;
    ensure!(found == text, "{found} stands there instead of {text}");
    Ok(())
}

#[test]
fn half_a_number_survives_a_reload() {
    browse("half-a-number", PHONE, async |page| {
        page.open("#/rider-weight").await?;
        page.fill("Rider weight", "8,").await?;
        page.reload().await?;
        weighs(page, "8,").await
    });
}

#[test]
fn of_two_tabs_the_rider_chooses_whose_answers_stand() {
    browse("two-tabs", DESKTOP, async |page| {
        page.open("#/rider-weight").await?;
        page.fill("Rider weight", "80").await?;
        page.open_tab("#/rider-weight").await?;
        weighs(page, "80").await?;
        page.fill("Rider weight", "90").await?;

        page.turn_to(0).await?;
        page.sees(OVERTAKEN).await?;
        page.accessible().await?;
        page.picture("overtaken").await?;
        // Typing on does not overwrite what the other tab has kept.
        page.fill("Rider weight", "81").await?;
        page.sees(OVERTAKEN).await?;
        page.open_tab("#/rider-weight").await?;
        weighs(page, "90").await?;

        page.turn_to(0).await?;
        page.click("Go on with the other page's").await?;
        weighs(page, "90").await?;
        ensure!(!page.text().await?.contains(OVERTAKEN));
        page.fill("Rider weight", "92").await?;

        page.turn_to(1).await?;
        page.sees(OVERTAKEN).await?;
        page.click("Go on with these").await?;
        weighs(page, "90").await?;
        page.turn_to(0).await?;
        page.sees(OVERTAKEN).await
    });
}

#[test]
fn a_full_device_is_told_and_costs_no_answer() {
    browse("full", PHONE, async |page| {
        page.open("#/rider-weight").await?;
        // Takes all the room there is, down to the last letter.
        page.evaluate(
            "(() => { let size = 1 << 22; let count = 0; \
             while (size >= 1) { try { localStorage.setItem('x' + count, 'x'.repeat(size)); count += 1; } \
             catch { size >>= 1; } } return count; })()",
        )
        .await?;
        page.fill("Rider weight", "80,123456").await?;
        page.sees(NOT_KEPT).await?;
        page.continue_().await?;
        page.arrives_at("Is that weight").await?;
        page.back().await?;
        weighs(page, "80,123456").await?;
        // Once there is room again, the next answer is kept and the notice goes.
        page.evaluate("Object.keys(localStorage).filter((key) => key.startsWith('x')).forEach((key) => localStorage.removeItem(key))")
            .await?;
        page.fill("Rider weight", "80,5").await?;
        page.is_true(&format!("!document.body.innerText.includes('{NOT_KEPT}')"))
            .await?;
        page.reload().await?;
        weighs(page, "80,5").await
    });
}
