//! The site starts, under the policy it is served with, from one download of each program.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, browse};

async fn starts(page: &Page) -> Result<()> {
    page.open("").await?;
    page.sees("Sagwright").await?;
    page.fits().await
}

#[test]
fn it_starts_on_a_phone() {
    browse("starts", PHONE, starts);
}

#[test]
fn it_starts_on_a_desktop() {
    browse("starts", DESKTOP, starts);
}

#[test]
fn each_program_is_downloaded_once() {
    browse("downloaded-once", PHONE, async |page| {
        page.open("").await?;
        // The advice's program comes once the page has nothing else to do.
        page.is_true("document.querySelector('script[data-rides]') !== null")
            .await?;
        page.open("#/advice").await?;
        page.arrives_at("Your advice").await?;
        page.is_true("document.getElementById('stage')?.hasChildNodes() === true")
            .await?;
        let asked = page.requests().await?;
        let programs: Vec<_> = asked
            .iter()
            .filter(|url| url.ends_with("_bg.wasm"))
            .collect();
        ensure!(programs.len() == 2, "asked for {programs:?}");
        let doubled = asked
            .iter()
            .find(|url| asked.iter().filter(|u| u == url).count() > 1);
        ensure!(doubled.is_none(), "asked twice for {doubled:?}");
        Ok(())
    });
}

#[test]
fn a_script_that_slipped_in_does_not_run() {
    browse("inline-script", DESKTOP, async |page| {
        page.open("").await?;
        let ran = page
            .evaluate(
                "(() => { const script = document.createElement('script'); \
                 script.textContent = 'window.slippedIn = true'; \
                 document.head.append(script); return window.slippedIn === true; })()",
            )
            .await?;
        ensure!(ran == false, "the inline script ran");
        let console = page.take_console().await?;
        ensure!(
            console
                .iter()
                .any(|line| line.contains("Content Security Policy")),
            "the refusal is not in the console, so the console is not read: {console:?}"
        );
        Ok(())
    });
}

#[test]
fn a_picture_from_elsewhere_is_refused() {
    browse("foreign-picture", DESKTOP, async |page| {
        page.open("").await?;
        page.evaluate(
            "new Promise((done) => { const picture = new Image(); picture.onerror = done; \
                       picture.src = 'http://127.0.0.1:9/x.png'; }).then(() => true)",
        )
        .await?;
        let console = page.take_console().await?;
        ensure!(
            console.iter().any(|line| line.contains("img-src")),
            "nothing refused it: {console:?}"
        );
        // The refused address is in the log of requests too; it is not one the page asks for itself.
        page.requests().await.map(drop)
    });
}
