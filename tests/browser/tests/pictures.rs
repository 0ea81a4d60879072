//! Pictures taken along: a PNG that is read alone, and the numbers of its table for a spreadsheet.

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, Theme, browse};
use serde_json::Value;

const CATCH: &str = include_str!("../src/saved.js");

/// The last file: its name, type and size as an image, how many colours it has and the share of the commonest, in the whole
/// and in its top fifteenth, which is where the title stands.
const IMAGE: &str = "(async () => { const { name, blob } = window.saved.at(-1); \
    const bitmap = await createImageBitmap(blob); \
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height); \
    const context = canvas.getContext('2d', { willReadFrequently: true }); context.drawImage(bitmap, 0, 0); \
    const counts = (high) => { const seen = new Map(); \
      const pixels = new Uint32Array(context.getImageData(0, 0, bitmap.width, high).data.buffer); \
      for (const pixel of pixels) seen.set(pixel, (seen.get(pixel) ?? 0) + 1); \
      return { colours: seen.size, most: Math.max(...seen.values()) / pixels.length }; }; \
    return { name, type: blob.type, width: bitmap.width, height: bitmap.height, \
      whole: counts(bitmap.height), title: counts(Math.round(bitmap.height / 15)) }; })()";

/// Whether the two pictures saved are the same to the byte.
const SAME: &str = "(async () => { const [one, two] = await Promise.all(window.saved.slice(0, 2).map(async (file) => \
    new Uint8Array(await file.blob.arrayBuffer()))); \
    return one.length === two.length && one.every((byte, at) => byte === two[at]); })()";

const TEXT: &str =
    "window.saved.at(-1).blob.text().then((text) => [window.saved.at(-1).name, text])";

/// The first table on the page as rows of cells, the remark in a head cell as a cell of its own.
const TABLE: &str = "[...document.querySelector('.picture .data').rows].map((row) => [...row.cells].map((cell) => \
    { const hint = cell.querySelector('.hint')?.textContent.trim() ?? ''; \
      const all = cell.textContent; \
      return [hint === '' ? all.trim() : all.slice(0, all.lastIndexOf(hint)).trim(), hint]; }))";

async fn to_advice(page: &Page) -> Result<()> {
    page.advice_of("Freshly serviced gas fork").await?;
    page.is_shown(".advice").await?;
    page.evaluate(CATCH).await.map(drop)
}

async fn saved_picture(page: &Page, count: usize) -> Result<Value> {
    page.is_true(&format!("window.saved.length === {count}"))
        .await?;
    page.evaluate(IMAGE).await
}

fn is_a_picture(image: &Value) -> Result<()> {
    ensure!(image["type"] == "image/png", "{image:#}");
    ensure!(image["width"].as_u64() >= Some(1900), "{image:#}");
    ensure!(image["whole"]["colours"].as_u64() > Some(8), "{image:#}");
    ensure!(image["whole"]["most"].as_f64() < Some(0.98), "{image:#}");
    // Letters leave most of their line free, and some of it not.
    ensure!(image["title"]["colours"].as_u64() > Some(4), "{image:#}");
    ensure!(image["title"]["most"].as_f64() > Some(0.5), "{image:#}");
    Ok(())
}

#[test]
fn a_picture_is_saved_as_one_that_can_be_read_alone() {
    browse("pictures-png", PHONE, async |page| {
        to_advice(page).await?;
        page.click("Save the picture (PNG) Spring force over fork travel")
            .await?;
        let image = saved_picture(page, 1).await?;
        is_a_picture(&image)?;
        ensure!(image["name"] == "sagwright-spring-force.png", "{image:#}");
        let data = page
            .evaluate(
                "window.saved.at(-1).blob.arrayBuffer().then((b) => \
                 btoa([...new Uint8Array(b)].map((c) => String.fromCharCode(c)).join('')))",
            )
            .await?;
        page.keep("picture-saved", data.as_str().context("letters")?)?;
        page.targets_are_large().await?;
        page.accessible().await?;
        page.fits().await?;

        // Fit for paper, whatever the page wears.
        page.pick("Colours of the page", Theme::Dark.label())
            .await?;
        page.click("Save the picture (PNG) Spring force over fork travel")
            .await?;
        is_a_picture(&saved_picture(page, 2).await?)?;
        page.is_true(SAME).await?;

        // A ride is a picture like any other.
        page.sees("times over your ground").await?;
        page.is_shown(".ride-figures canvas").await?;
        page.click("Save the picture (PNG) Fork travel: ").await?;
        let ride = saved_picture(page, 3).await?;
        is_a_picture(&ride)?;
        ensure!(ride["name"] == "sagwright-fork-travel.png", "{ride:#}");
        Ok(())
    });
}

/// "1.38 in" as number and unit; a number without one has none.
fn parted(shown: &str) -> (String, String) {
    let shown = shown.replace(['\u{a0}', '\u{202f}'], " ").replace(',', ".");
    match shown.split_once(' ') {
        Some((number, unit)) => (number.to_owned(), unit.to_owned()),
        None => (shown, String::new()),
    }
}

/// Asserts that the file holds what the table holds.
async fn csv_is_the_table(page: &Page) -> Result<()> {
    let saved = page.evaluate(TEXT).await?;
    ensure!(
        saved[0]
            .as_str()
            .and_then(|name| name.split_once('.'))
            .is_some_and(|name| name.1 == "csv"),
        "{saved:#}"
    );
    let text = saved[1].as_str().context("a text")?;
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(text.as_bytes());
    let file: Vec<csv::StringRecord> = reader.records().collect::<Result<_, _>>()?;
    let table = page.evaluate(TABLE).await?;
    let table = table.as_array().context("rows")?;
    ensure!(table.len() == file.len(), "{text}\n{table:#?}");
    let cell = |row: usize, column: usize, part: usize| {
        table[row][column][part].as_str().unwrap_or_default()
    };
    let columns = table[0].as_array().map_or(0, Vec::len);
    ensure!(file[0].len() == columns + 1, "{text}");
    for (row, record) in file.iter().enumerate().skip(1) {
        ensure!(record[1] == *cell(row, 0, 1), "{record:?}");
        for column in 0..columns {
            let place = if column == 0 { 0 } else { column + 1 };
            let (number, unit) = parted(cell(row, column, 0));
            ensure!(
                record[place] == *number,
                "{record:?} is not {:?}",
                table[row]
            );
            if !number.is_empty() {
                record[place].parse::<f64>()?;
                let head = format!("{} ({unit})", cell(0, column, 0));
                ensure!(file[0][place] == *head, "{:?} is not {head}", file[0]);
            }
        }
    }
    Ok(())
}

#[test]
fn the_numbers_are_those_of_the_table_in_any_unit_and_language() {
    browse("pictures-csv", DESKTOP, async |page| {
        to_advice(page).await?;
        page.click("Save the numbers (CSV) Spring force over fork travel")
            .await?;
        csv_is_the_table(page).await?;
        page.evaluate(
            "document.querySelectorAll('#part-picture ~ .switches button').forEach((button) => \
             ['in', 'lbf'].includes(button.innerText) && button.click())",
        )
        .await?;
        page.is_true("document.querySelector('.picture .data').textContent.includes('lbf')")
            .await?;
        page.click("Save the numbers (CSV) Spring force over fork travel")
            .await?;
        csv_is_the_table(page).await?;

        // A decimal comma on the page is a point in the file.
        page.pick("Language", "Deutsch").await?;
        page.is_true("document.querySelector('.picture .data')?.textContent.includes(',')")
            .await?;
        page.evaluate(CATCH).await?;
        page.click("Zahlen speichern (CSV) Federkraft").await?;
        csv_is_the_table(page).await
    });
}
