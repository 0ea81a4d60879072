//! The counter as the tests handle it.

use std::path::Path;

use anyhow::{Context as _, Result};
use sagwright_tests_browser::Page;
use thirtyfour::By;

/// The page of the counter, before the `#`.
pub const COUNTER: &str = "workshop.html";

/// Opens a page of the counter, such as `#/bring-in`.
pub async fn open(page: &Page, fragment: &str) -> Result<()> {
    page.open(&format!("{COUNTER}{fragment}")).await
}

/// Chooses files as if from the browser's own window.
pub async fn choose_files(page: &Page, files: &[&Path]) -> Result<()> {
    let field = page.browser().find(By::Id("bring-files")).await?;
    let files: Vec<String> = files
        .iter()
        .map(|file| file.display().to_string())
        .collect();
    Ok(field.send_keys(files.join("\n")).await?)
}

/// Writes texts to files and takes them in.
pub async fn take_in(page: &Page, texts: &[&str]) -> Result<()> {
    let folder = tempfile::tempdir()?;
    let mut files = Vec::new();
    for (number, text) in texts.iter().enumerate() {
        let file = folder.path().join(format!("file-{number}.json"));
        std::fs::write(&file, text)?;
        files.push(file);
    }
    let files: Vec<&Path> = files.iter().map(std::path::PathBuf::as_path).collect();
    open(page, "#/bring-in").await?;
    page.is_shown("#bring-files").await?;
    choose_files(page, &files).await?;
    page.is_true("document.querySelector('.brought p, .brought h2') !== null && !document.querySelector('.brought').innerText.includes('Taking in')")
        .await
}

/// What the list says of its rows, once all of the desk has been read.
pub async fn rows_told(page: &Page) -> Result<String> {
    page.is_true("document.querySelector('.desk-empty') !== null || /found|[0-9]/i.test(document.querySelector('#desk-rows')?.innerText ?? '')")
        .await?;
    let told = page
        .evaluate("(document.querySelector('#desk-rows') ?? document.querySelector('.desk-empty')).innerText")
        .await?;
    told.as_str().map(str::to_owned).context("no text")
}

/// How many jobs the device keeps, asked of its database.
pub const KEPT: &str = "new Promise((told, lost) => { const open = indexedDB.open('sagwright'); \
    open.onerror = lost; open.onsuccess = () => { const asked = open.result.transaction('intakes') \
    .objectStore('intakes').count(); asked.onsuccess = () => { told(asked.result); open.result.close(); }; }; })";

/// Keeps the text of every file handed to the user.
pub const CATCH_FILES: &str = "const make = URL.createObjectURL; window.files = []; \
    URL.createObjectURL = (blob) => { blob.text().then((text) => window.files.push(text)); return make(blob); };";

/// The text of the file handed over last.
pub async fn last_file(page: &Page) -> Result<String> {
    page.is_true("window.files.length > 0").await?;
    let file = page.evaluate("window.files.pop()").await?;
    file.as_str().map(str::to_owned).context("no text")
}
