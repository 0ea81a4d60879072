//! The rides: advice at once, progress while they go on, a way to stop them, whatever befalls their worker.

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, browse};

const STATUS: &str = ".rides-status";
const DONE: &str = "times over your ground";

async fn to_advice(page: &Page) -> Result<()> {
    page.advice_of("Freshly serviced gas fork").await?;
    page.is_shown(".advice").await
}

async fn text_of(page: &Page, selector: &str) -> Result<String> {
    let text = page
        .evaluate(&format!(
            "document.querySelector('{selector}')?.innerText ?? ''"
        ))
        .await?;
    Ok(text.as_str().context("text is a string")?.to_owned())
}

#[test]
fn advice_stands_at_once_and_rides_refine_it() {
    browse("rides-refine", PHONE, async |page| {
        to_advice(page).await?;
        // The card is there while the rides still go on.
        page.is_shown(".card-number").await?;
        ensure!(
            !page.text().await?.contains(DONE),
            "the card waited for the rides"
        );
        page.is_shown(".rides progress").await?;
        page.accessible().await?;
        page.fits().await?;
        page.sees(DONE).await?;
        page.sees("See it ride").await?;
        page.is_shown(".ride-figures canvas").await?;
        page.accessible().await?;
        page.fits().await?;
        page.picture("advice-ridden").await?;

        // The same answers are not ridden twice.
        page.open("#/check").await?;
        page.click("Get my advice").await?;
        page.sees(DONE).await
    });
}

#[test]
fn rides_can_be_stopped_and_ridden_again() {
    browse("rides-stopped", DESKTOP, async |page| {
        to_advice(page).await?;
        page.click("Stop the rides").await?;
        page.sees("Rides stopped").await?;
        ensure!(
            page.evaluate("document.activeElement?.innerText").await? == "Ride again",
            "whoever pressed the button lost the focus"
        );
        ensure!(
            !page.text().await?.contains("See it ride"),
            "a ride is shown that was stopped"
        );
        page.accessible().await?;
        page.click("Ride again").await?;
        page.sees(DONE).await?;
        ensure!(
            text_of(page, STATUS).await?.contains(DONE),
            "the end is not announced"
        );
        Ok(())
    });
}

#[test]
fn the_worker_runs_the_program_the_page_downloaded() {
    browse("rides-one-download", PHONE, async |page| {
        to_advice(page).await?;
        page.sees(DONE).await?;
        let programs: Vec<String> = page
            .requests()
            .await?
            .into_iter()
            .filter(|url| url.ends_with("_bg.wasm"))
            .collect();
        // The questions' and the advice's.
        ensure!(programs.len() == 2, "asked for {programs:?}");
        Ok(())
    });
}

#[test]
fn leaving_the_page_ends_the_rides() {
    browse("rides-left", PHONE, async |page| {
        to_advice(page).await?;
        page.is_shown(".rides progress").await?;
        page.open("#/check").await?;
        page.arrives_at("Check your answers").await?;
        page.click("Get my advice").await?;
        page.sees(DONE).await
    });
}

#[test]
fn a_worker_that_breaks_is_replaced() {
    browse("rides-broken-worker", PHONE, async |page| {
        page.open_example("Freshly serviced gas fork").await?;
        page.evaluate(
            "(() => { const real = window.Worker; window.Worker = function () { \
               window.Worker = real; const broken = new EventTarget(); \
               broken.postMessage = () => setTimeout(() => broken.dispatchEvent(new Event('error'))); \
               broken.terminate = () => { window.ended = true; }; return broken; }; return true; })()",
        )
        .await?;
        page.click("Get my advice").await?;
        page.sees("The rides broke off").await?;
        page.is_true("window.ended === true").await?;
        page.is_shown(".card-number").await?;
        page.click("Ride again").await?;
        page.sees(DONE).await
    });
}

#[test]
fn without_workers_the_advice_from_statics_stays() {
    browse("rides-no-worker", PHONE, async |page| {
        page.open_example("Freshly serviced gas fork").await?;
        page.evaluate("delete window.Worker").await?;
        page.click("Get my advice").await?;
        page.sees("This browser cannot ride in the background")
            .await?;
        page.is_shown(".card-number").await
    });
}
