//! The workshop's settings: filled in, judged, kept, saved and opened again.

use anyhow::{Context as _, Result, ensure};
use sagwright_core::workshop;
use sagwright_tests_browser::{DESKTOP, NARROW, PHONE, Page, browse};
use thirtyfour::By;

use crate::desk::{desk_of, name_of};
use crate::handling::{CATCH_FILES, last_file, open, take_in};

const DEMO: &str = include_str!("../../../../demo-data/workshop.json");

async fn open_file(page: &Page, text: &str) -> Result<()> {
    let folder = tempfile::tempdir()?;
    let file = folder.path().join("settings.json");
    std::fs::write(&file, text)?;
    let field = page.browser().find(By::Id("settings-file")).await?;
    field.send_keys(file.display().to_string()).await?;
    // The file has to stand there until it has been read.
    page.is_true("document.querySelector('.filing-told').innerText !== '' || document.querySelector('.problems') !== null")
        .await
}

#[test]
fn settings_are_judged_at_their_boxes_kept_and_worn() {
    browse("counter-settings", DESKTOP, async |page| {
        page.before_every_page(CATCH_FILES).await?;
        open(page, "#/settings").await?;
        page.click("Check and keep on this device").await?;
        page.is_shown(".problems").await?;
        ensure!(
            page.complaint("Name of the workshop")
                .await?
                .contains("1 to 100")
        );
        page.fill("Name of the workshop", "Invented <b>workshop</b>")
            .await?;
        page.fill("Currency, three capital letters", "eur").await?;
        page.fill("An hour of labour, lowest price", "60,50")
            .await?;
        page.fill("An hour of labour, highest price", "a lot")
            .await?;
        page.fill("Colour of buttons and links", "#ff8800").await?;
        // A price that is wrong is seen, though its box was folded away.
        page.evaluate("document.querySelector('.settings-page details').open = true")
            .await?;
        page.fill("Highest price: Fresh oil of the right grade", "dear")
            .await?;
        page.evaluate("document.querySelector('.settings-page details').open = false")
            .await?;
        page.click("Check and keep on this device").await?;
        ensure!(page.complaint("Currency").await?.contains("capital"));
        ensure!(
            page.complaint("An hour of labour, highest price")
                .await?
                .contains("plain number")
        );
        page.is_true("document.querySelector('#set-labour_per_hour').getAttribute('aria-invalid') !== 'true'")
            .await?;
        page.is_shown("#set-prices-service-fork-oil-high-error")
            .await?;
        ensure!(
            page.complaint("Colour of buttons and links")
                .await?
                .contains("7 to 1")
        );
        page.accessible().await?;
        page.picture("counter-settings-wrong").await?;
        // What was typed is still there.
        ensure!(page.value("An hour of labour, highest price").await? == "a lot");
        page.fill("Currency, three capital letters", "EUR").await?;
        page.fill("An hour of labour, highest price", "80").await?;
        for (label, price) in [("Lowest", "70"), ("Highest", "90")] {
            let label = format!("{label} price: Fresh oil of the right grade");
            page.fill(&label, price).await?;
        }
        page.fill("Colour of buttons and links", "#1d4d2b").await?;
        page.is_true(
            "document.querySelector('.preview-name').innerText === 'Invented <b>workshop</b>'",
        )
        .await?;
        page.is_true("getComputedStyle(document.querySelector('.preview-button')).backgroundColor === 'rgb(29, 77, 43)'")
            .await?;
        page.click("Check and keep on this device").await?;
        page.sees("All in order, and kept on this device").await?;
        page.reload().await?;
        page.is_true("document.querySelector('#set-name').value.startsWith('Invented')")
            .await?;
        page.click("Check and save as a file").await?;
        let file = last_file(page).await?;
        let workshop = workshop::read(&file)
            .ok()
            .context("it reads its own file")?;
        ensure!(workshop.labour_per_hour == (60.5, 80.0));

        // The counter reckons with it.
        take_in(page, &[&desk_of(1..=1)]).await?;
        open(page, &format!("#/job/{}/card", name_of(1))).await?;
        page.sees("Ready to print").await?;
        page.sees("Invented <b>workshop</b>").await?;
        page.sees("EUR").await?;
        page.is_true("getComputedStyle(document.querySelector('.job-card-head')).borderBottomColor === 'rgb(29, 77, 43)'")
            .await
    });
}

#[test]
fn a_settings_file_is_opened_whole_and_a_bad_one_says_why() {
    for screen in [DESKTOP, PHONE, NARROW] {
        browse("counter-settings-open", screen, async |page| {
            page.before_every_page(CATCH_FILES).await?;
            open(page, "#/settings").await?;
            open_file(page, DEMO).await?;
            page.sees("Opened. Nothing is kept yet").await?;
            page.accessible().await?;
            page.fits().await?;
            page.targets_are_large().await?;
            page.focus_is_seen().await?;
            page.picture("counter-settings").await?;
            page.click("Check and save as a file").await?;
            let saved = workshop::read(&last_file(page).await?);
            ensure!(saved == workshop::read(DEMO), "{saved:?}");
            for (text, told) in [
                ("no settings", "not a whole workshop file"),
                (r#"{"version":7}"#, "version 1 and 2"),
                (
                    &DEMO.replace("#1d4d2b", "#eeeeee"),
                    "too little to read outdoors",
                ),
                (&DEMO.replace("\"name\"", "\"nom\""), "nom"),
                (&"[".repeat(100_000), "too large"),
            ] {
                page.reload().await?;
                page.is_shown("#settings-file").await?;
                open_file(page, text).await?;
                page.sees(told).await?;
            }
            Ok(())
        });
    }
}
