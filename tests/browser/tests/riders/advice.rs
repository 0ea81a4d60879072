//! What every advice shows.

use anyhow::{Result, ensure};
use sagwright_tests_browser::Page;

/// The sentence, the card, causes, remedies, the picture with its table, and the cautions.
pub async fn sees_whole_advice(page: &Page) -> Result<()> {
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
