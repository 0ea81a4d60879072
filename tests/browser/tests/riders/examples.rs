//! The invented riders on the first page: each opens and gets advice.

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{DESKTOP, Page, browse};

/// How many documents of riders stand in `demo-data/`.
fn documents() -> Result<usize> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-data");
    let mut riders = 0;
    for entry in std::fs::read_dir(folder)? {
        // The workshop stands there too, and its page in a folder of its own.
        let text = std::fs::read_to_string(entry?.path()).unwrap_or_default();
        if text.contains("\"rider\"") {
            riders += 1;
        }
    }
    Ok(riders)
}

async fn names(page: &Page) -> Result<Vec<String>> {
    page.open("#/").await?;
    page.arrives_at("Find out what your suspension needs")
        .await?;
    let names = page
        .evaluate("[...document.querySelectorAll('.examples button')].map((b) => b.textContent)")
        .await?;
    let names = names.as_array().context("no list")?;
    Ok(names
        .iter()
        .filter_map(|name| name.as_str().map(str::to_owned))
        .collect())
}

#[test]
fn every_example_rider_gets_advice() {
    browse("examples", DESKTOP, async |page| {
        let names = names(page).await?;
        ensure!(
            names.len() == documents()?,
            "{} riders are offered: {names:?}",
            names.len()
        );
        for name in &names {
            page.advice_of(name).await?;
            page.arrives_at("Your advice").await?;
            page.is_shown(".verdict-sentence")
                .await
                .context(name.clone())?;
            let console = page.take_console().await?;
            ensure!(console.is_empty(), "{name}: {console:?}");
        }
        Ok(())
    });
}
