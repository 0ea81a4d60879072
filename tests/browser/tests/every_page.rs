//! What holds on every page: it breaks no accessibility rule and fits the screen; and its picture.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{DESKTOP, NARROW, PHONE, Page, browse};

async fn check(page: &Page) -> Result<()> {
    page.each(async |place| {
        page.fits().await?;
        page.picture(place.name).await?;
        page.accessible().await
    })
    .await
}

#[test]
fn every_page_on_a_phone() {
    browse("every-page", PHONE, check);
}

#[test]
fn every_page_on_a_desktop() {
    browse("every-page", DESKTOP, check);
}

#[test]
fn every_page_on_the_narrowest_screen() {
    browse("every-page", NARROW, check);
}

#[test]
fn every_page_in_the_dark() {
    browse("every-page-dark", PHONE, async |page| {
        page.dark(true).await?;
        page.each(async |place| {
            page.picture(&format!("{}-dark", place.name)).await?;
            page.accessible().await
        })
        .await
    });
}

/// Not a check: `tests/run picture` runs it when the look of the advice has changed.
#[test]
#[ignore = "writes docs/advice.png, which the README shows"]
fn the_picture_of_the_readme() {
    browse("readme", DESKTOP, async |page| {
        page.open_example("Freshly serviced gas fork").await?;
        page.click("Get my advice").await?;
        page.is_shown(".card-number").await?;
        let picture = page.top(1500).await?;
        ensure!(
            picture.len() < 300_000,
            "a README should not take {} bytes to show",
            picture.len()
        );
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs");
        std::fs::create_dir_all(folder)?;
        Ok(std::fs::write(format!("{folder}/advice.png"), picture)?)
    });
}
