//! The log beyond the page: in what is taken along, and where there is no signal.

use anyhow::ensure;
use sagwright_tests_browser::{DESKTOP, PHONE, browse};

use crate::handling::{PACKS, RIDDEN, at_the_track, is_kept};

#[test]
fn what_was_tried_goes_with_the_file_the_text_and_the_paper() {
    browse("track-export", DESKTOP, async |page| {
        page.before_every_page(
            "window.saved = []; const make = URL.createObjectURL; \
             URL.createObjectURL = (blob) => { blob.text().then((text) => saved.push(text)); return make.call(URL, blob); };",
        )
        .await?;
        at_the_track(page).await?;
        page.click(RIDDEN).await?;
        page.choose_in(PACKS, "Better").await?;
        page.click("Keep it").await?;
        page.sees("Lap 2: change this one thing").await?;
        page.click("Save the log as a file").await?;
        page.is_true("saved.length === 1 && JSON.parse(saved[0]).tried[0].kept === true")
            .await?;
        page.click("Back to the advice").await?;
        page.is_true(
            "document.querySelector('.paper')?.textContent.includes('Lap 1. Shock rebound: four clicks out.') === true",
        )
        .await
    });
}

#[test]
fn without_a_signal_a_lap_is_proposed_judged_and_kept() {
    browse("track-offline", PHONE, async |page| {
        page.is_kept_on_the_device().await?;
        page.lose_signal();
        page.reload().await?;
        at_the_track(page).await?;
        page.click(RIDDEN).await?;
        page.choose_in(PACKS, "Better").await?;
        page.click("Keep it").await?;
        page.sees("Lap 2: change this one thing").await?;
        is_kept(page, r#""kept":true"#).await?;
        page.reload().await?;
        page.sees("Lap 2: change this one thing").await?;
        // Looking for a newer build fails without a network, and the browser says so in the console.
        let console = page.take_console().await?;
        let other: Vec<_> = console
            .iter()
            .filter(|line| !line.contains("sw.js"))
            .collect();
        ensure!(other.is_empty(), "{other:?}");
        Ok(())
    });
}
