//! Taking the result along: link, code, text, paper; and opening what somebody handed on.

use anyhow::{Context as _, Result, ensure};
use sagwright_core::intake::{Intake, from_link};
use sagwright_tests_browser::{DESKTOP, PAPERS, PHONE, Page, browse, pages_of};

const LINK: &str = "Link to these answers";

async fn to_advice(page: &Page, rider: &str) -> Result<()> {
    page.advice_of(rider).await?;
    page.is_shown(".take-along").await
}

/// The part of a link that makes the site open a page.
fn fragment(link: &str) -> Result<&str> {
    let at = link.find("#/link/").context("no link of ours")?;
    Ok(&link[at..])
}

fn opened(link: &str) -> Result<Intake> {
    let word = fragment(link)?.trim_start_matches("#/link/");
    from_link(word).map_err(|error| anyhow::anyhow!("{error}"))
}

#[test]
fn a_link_carries_the_answers_and_asks_before_it_replaces_others() {
    browse("link", PHONE, async |page| {
        to_advice(page, "Freshly serviced gas fork").await?;
        let link = page.value(LINK).await?;
        ensure!(link.starts_with(page.address()), "{link}");
        ensure!(link.len() < 800, "{} letters", link.len());
        page.fits().await?;
        let answers = page.evaluate("localStorage['sagwright.answers']").await?;

        page.open(fragment(&link)?).await?;
        page.arrives_at("Answers from a link").await?;
        page.sees("the answers you have here already").await?;

        page.open_example("Enduro without linkage").await?;
        page.open(fragment(&link)?).await?;
        page.sees("Opening these takes their place").await?;
        page.sees("A gas spring in one leg").await?;
        page.accessible().await?;
        page.fits().await?;
        page.click("Keep mine").await?;
        page.arrives_at("Check your answers").await?;
        ensure!(!page.text().await?.contains("A gas spring in one leg"));

        page.open(fragment(&link)?).await?;
        page.click("Replace mine with these").await?;
        page.arrives_at("Check your answers").await?;
        page.sees("A gas spring in one leg").await?;
        let now = page.evaluate("localStorage['sagwright.answers']").await?;
        ensure!(now == answers, "{now}\nis not\n{answers}");
        // The link is no page to come back to.
        ensure!(
            !page
                .evaluate("location.hash")
                .await?
                .to_string()
                .contains("link")
        );
        Ok(())
    });
}

#[test]
fn a_link_on_a_fresh_device_opens_with_one_press() {
    let intake = include_str!("../../../demo-data/enduro-that-packs-down.json");
    let intake = sagwright_core::intake::read(intake).expect("an invented rider");
    let word = sagwright_core::intake::to_link(&intake).expect("plain data");
    browse("link-fresh", DESKTOP, async |page| {
        page.open(&format!("#/link/{word}")).await?;
        page.sees("so nothing is replaced").await?;
        page.accessible().await?;
        page.click("Open these answers").await?;
        page.arrives_at("Check your answers").await?;
        page.click("Get my advice").await?;
        page.is_shown(".card-number").await
    });
}

#[test]
fn junk_in_a_link_is_refused_with_words_and_changes_nothing() {
    browse("link-junk", PHONE, async |page| {
        page.open("#/rider-weight").await?;
        page.fill("Rider weight", "80").await?;
        for (junk, said) in [
            ("#/link", "nothing in this link"),
            ("#/link/", "nothing in this link"),
            ("#/link/hello", "no answers of Sagwright"),
            ("#/link/2.AAAA", "newer Sagwright"),
            ("#/link/1.AAAA", "not whole"),
            ("#/link/1.%3Cscript%3E", "not whole"),
            ("#/link/1.u9ZxHKXZ/change", "not whole"),
        ] {
            page.open(junk).await?;
            page.sees(said).await.context(junk)?;
            page.sees("Nothing on this device was changed").await?;
            page.arrives_at("This link cannot be opened").await?;
            let title = page.evaluate("document.title").await?.to_string();
            ensure!(title.contains("Error: "), "{junk}: {title}");
        }
        page.accessible().await?;
        page.fits().await?;
        page.open("#/rider-weight").await?;
        ensure!(page.value("Rider weight").await? == "80");
        Ok(())
    });
}

#[test]
fn link_and_settings_are_copied_with_a_word_about_it() {
    browse("copied", DESKTOP, async |page| {
        let allowed =
            serde_json::json!({ "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
        page.browser()
            .cdp()
            .send_raw("Browser.grantPermissions", allowed)
            .await?;
        to_advice(page, "Freshly serviced gas fork").await?;
        let link = page.value(LINK).await?;
        page.click("Copy the link").await?;
        page.sees("The link is on the clipboard").await?;
        ensure!(page.evaluate("navigator.clipboard.readText()").await? == link.as_str());
        page.click("Copy the settings as text").await?;
        page.sees("The settings are on the clipboard").await?;
        let text = page.evaluate("navigator.clipboard.readText()").await?;
        let text = text.as_str().context("a text")?;
        ensure!(text.lines().count() > 10 && text.ends_with(&link), "{text}");
        page.accessible().await
    });
}

#[test]
fn where_the_clipboard_is_closed_the_link_is_selected() {
    browse("not-copied", DESKTOP, async |page| {
        page.before_every_page(
            "Object.defineProperty(Navigator.prototype, 'clipboard', { get: () => undefined });",
        )
        .await?;
        to_advice(page, "Freshly serviced gas fork").await?;
        page.click("Copy the link").await?;
        page.sees("does not let the page copy").await?;
        let selected = page.evaluate("getSelection().toString()").await?;
        ensure!(selected == page.value(LINK).await?.as_str(), "{selected}");
        Ok(())
    });
}

#[test]
fn another_library_reads_the_code_and_finds_no_words_in_it() {
    browse("code", PHONE, async |page| {
        to_advice(page, "Freshly serviced gas fork").await?;
        page.click("Show as a code to scan").await?;
        page.accessible().await?;
        let section = page
            .browser()
            .find(thirtyfour::By::Css(".take-along"))
            .await?;
        save("take-along.png", &section.screenshot_as_png().await?)?;
        let code = page
            .browser()
            .find(thirtyfour::By::Css(".take-along .code"))
            .await?;
        let shot = code.screenshot_as_png().await?;
        let text = scanned(&shot)?;
        let (bare, whole) = (opened(&text)?, opened(&page.value(LINK).await?)?);
        ensure!(bare.note.is_empty() && !whole.note.is_empty());
        ensure!(
            bare == Intake {
                note: String::new(),
                ..whole
            }
        );
        ensure!(text.len() <= 331, "{} letters", text.len());
        let width = code.rect().await?.width;
        // 60 mm at 96 dots to the inch.
        ensure!((width - 226.8).abs() < 1.0, "{width} wide");
        Ok(())
    });
}

/// What a camera would read in a picture.
fn scanned(png: &[u8]) -> Result<String> {
    let mut reader = png::Decoder::new(std::io::Cursor::new(png)).read_info()?;
    let mut bytes = vec![0; reader.output_buffer_size().context("too large")?];
    let info = reader.next_frame(&mut bytes)?;
    let (width, height) = (usize::try_from(info.width)?, usize::try_from(info.height)?);
    let dot = info.color_type.samples();
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| {
        bytes[(y * width + x) * dot]
    });
    let grids = picture.detect_grids();
    let grid = grids.first().context("no code in the picture")?;
    Ok(grid.decode()?.1)
}

/// One page to set the bike by and one of reasons; the signs that end the ride on one.
#[test]
fn the_advice_prints_on_two_pages_of_either_paper() {
    browse("paper", DESKTOP, async |page| {
        page.open("#/").await?;
        let names = page
            .evaluate(
                "[...document.querySelectorAll('.examples button')].map((b) => b.textContent)",
            )
            .await?;
        for name in names.as_array().context("a list")? {
            let name = name.as_str().context("a name")?;
            page.advice_of(name).await?;
            page.is_shown(".take-along").await?;
            for paper in PAPERS {
                let pdf = page.print(paper).await?;
                let word: String = name
                    .chars()
                    .filter(char::is_ascii_alphanumeric)
                    .take(16)
                    .collect();
                save(&format!("paper-{word}-{}.pdf", paper.0), &pdf)?;
                let stopped = page
                    .evaluate("document.querySelector('.stop') !== null")
                    .await?
                    == true;
                let pages = pages_of(&pdf);
                ensure!(
                    pages == if stopped { 1 } else { 2 },
                    "{name} takes {pages} pages of {}",
                    paper.0
                );
            }
        }
        page.open_example("Freshly serviced gas fork").await?;
        page.open("#/sheet").await?;
        for paper in PAPERS {
            let pdf = page.print(paper).await?;
            save(&format!("paper-answers-{}.pdf", paper.0), &pdf)?;
            let pages = pages_of(&pdf);
            ensure!(pages == 1, "the answers take {pages} pages of {}", paper.0);
        }
        Ok(())
    });
}

/// Somebody who answers everything and complains of everything: too much for a code, but not for the paper.
#[test]
fn the_fullest_answers_still_fit_on_paper() {
    let intake = include_str!("../../links/fullest.json");
    let intake = sagwright_core::intake::read(intake).expect("a valid intake");
    let word = sagwright_core::intake::to_link(&intake).expect("plain data");
    browse("paper-fullest", PHONE, async |page| {
        page.open(&format!("#/link/{word}")).await?;
        page.click("Open these answers").await?;
        page.click("Get my advice").await?;
        page.is_shown(".take-along").await?;
        page.sees("too long for a code").await?;
        page.fits().await?;
        ensure!(page.value(LINK).await?.len() < 800);
        for paper in PAPERS {
            let pdf = page.print(paper).await?;
            save(&format!("paper-fullest-{}.pdf", paper.0), &pdf)?;
            let pages = pages_of(&pdf);
            ensure!(pages == 2, "{pages} pages of {}", paper.0);
        }
        Ok(())
    });
}

/// Every caution of the advice is on the paper.
#[test]
fn no_caution_is_lost_on_paper() {
    browse("paper-cautions", DESKTOP, async |page| {
        to_advice(page, "Freshly serviced gas fork").await?;
        let lost = page
            .evaluate(
                "(() => { const texts = (place) => [...document.querySelectorAll(place + ' .signal-texts > p')] \
                 .map((p) => p.textContent); const paper = texts('.paper'); \
                 const screen = [...document.querySelectorAll('.unprinted > section:last-of-type .signal-texts > p')] \
                 .map((p) => p.textContent); \
                 return { shown: screen.length, lost: screen.filter((text) => !paper.includes(text)) }; })()",
            )
            .await?;
        ensure!(lost["shown"].as_u64() >= Some(5), "{lost}");
        ensure!(lost["lost"].as_array().is_some_and(Vec::is_empty), "{lost}");
        Ok(())
    });
}

fn save(name: &str, content: &[u8]) -> Result<()> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../screenshots");
    std::fs::create_dir_all(folder)?;
    Ok(std::fs::write(format!("{folder}/{name}"), content)?)
}
