//! What holds on every page: it has a heading, breaks no accessibility rule, fits the screen; and its picture.

use anyhow::{Context as _, Result};
use sagwright_tests_browser::{DESKTOP, NARROW, PAGES, PHONE, Page, browse};

/// Visits every page and does something there; an error says on which.
async fn each(page: &Page, check: impl AsyncFn(&str) -> Result<()>) -> Result<()> {
    for (name, fragment) in PAGES {
        page.open(fragment).await.context(name)?;
        check(name).await.context(name)?;
    }
    Ok(())
}

async fn check(page: &Page) -> Result<()> {
    each(page, async |name| {
        page.fits().await?;
        page.picture(name).await?;
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
fn every_page_in_the_dark() {
    browse("every-page-dark", PHONE, async |page| {
        page.dark(true).await?;
        each(page, async |name| {
            page.picture(&format!("{name}-dark")).await?;
            page.accessible().await
        })
        .await
    });
}

#[test]
fn every_page_on_the_narrowest_screen() {
    browse("every-page", NARROW, async |page| {
        each(page, async |_| page.fits().await).await
    });
}
