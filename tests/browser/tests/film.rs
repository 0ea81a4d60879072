//! The ride from the side: still until asked, then moving, step by step, in words and numbers, and sharp.

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, Theme, browse};
use thirtyfour::Key;

/// A short name for what is drawn now: the same picture has the same one.
const DRAWN: &str = "(() => { let sum = 0; for (const letter of document.querySelector('.film-canvas').toDataURL()) \
    sum = (sum * 31 + letter.charCodeAt(0)) % 4294967296; return sum; })()";

const SAID: &str = "document.querySelector('.film-said').textContent";

async fn keep(page: &Page, name: &str) -> Result<()> {
    let data = "document.querySelector('.film-canvas').toDataURL().split(',')[1]";
    let data = page.evaluate(data).await?;
    page.keep(name, data.as_str().context("letters")?)
}

async fn to_film(page: &Page) -> Result<()> {
    page.advice_of("Freshly serviced gas fork").await?;
    page.is_shown(".film-canvas").await?;
    page.is_true(
        "(document.querySelector('.film-canvas').scrollIntoView({ block: 'center' }), true)",
    )
    .await?;
    page.is_true("document.querySelector('.film-canvas').width > 300")
        .await
}

#[test]
fn a_ride_moves_only_when_asked_and_goes_step_by_step() {
    browse("film", PHONE, async |page| {
        to_film(page).await?;
        let still = page.evaluate(DRAWN).await?;
        let before = page.evaluate(SAID).await?;
        ensure!(page.evaluate(DRAWN).await? == still, "it moves unasked");

        // By keyboard: each step is another moment, and a step back is the one before.
        page.is_true("(document.querySelectorAll('.film-steer button')[2].focus(), true)")
            .await?;
        page.press(Key::Enter).await?;
        page.is_true(&format!("{SAID} !== {before}")).await?;
        let step = page.evaluate(DRAWN).await?;
        ensure!(step != still, "a step shows nothing new");
        page.sees("At 0.10 s: As it is now").await?;
        page.click("Step back").await?;
        page.is_true(&format!("{SAID} === {before}")).await?;
        page.is_true(&format!("{DRAWN} === {still}")).await?;

        // Asked to, it moves, and pausing holds it.
        page.pick("Speed", "A quarter as fast").await?;
        page.click("Play").await?;
        page.is_true(&format!("parseFloat({SAID}.slice(3)) > 0.4"))
            .await?;
        page.click("Pause").await?;
        page.is_shown(".film-steer button").await?;
        let paused = page.evaluate(DRAWN).await?;
        ensure!(paused != still);
        ensure!(page.evaluate(DRAWN).await? == paused, "it does not hold");
        page.accessible().await?;
        page.targets_are_large().await?;
        page.fits().await?;
        for theme in Theme::ALL {
            page.pick("Colours of the page", theme.label()).await?;
            keep(page, &format!("film-{}", theme.name())).await?;
        }
        Ok(())
    });
}

#[test]
fn a_ride_is_as_sharp_as_the_screen_and_says_its_numbers() {
    browse("film-sharp", DESKTOP, async |page| {
        to_film(page).await?;
        let sharp = page
            .evaluate(
                "(() => { const canvas = document.querySelector('.film-canvas'); \
                 const wide = canvas.getBoundingClientRect().width - 2 * canvas.clientLeft; \
                 return Math.abs(canvas.width - Math.round(wide * devicePixelRatio)) <= 1; })()",
            )
            .await?;
        ensure!(sharp == true, "pixels are stretched");
        // The slider reaches the end, where words and the last row of the table say the same.
        page.is_true(
            "(() => { const slider = document.querySelector('.film input[type=range]'); \
             slider.value = slider.max; slider.dispatchEvent(new Event('input', { bubbles: true })); return true; })()",
        )
        .await?;
        page.is_true(&format!("!{SAID}.startsWith('At 0.00')"))
            .await?;
        let told = page.evaluate(SAID).await?;
        let told = told.as_str().context("words")?.to_owned();
        let cells = page
            .evaluate("[...[...document.querySelectorAll('.film .data tr')].at(-1).cells].map((cell) => cell.textContent)")
            .await?;
        let cells = cells.as_array().context("cells")?;
        ensure!(cells.len() == 6, "{cells:?}");
        for cell in cells.iter().enumerate().filter(|(place, _)| *place != 1) {
            let text = cell.1.as_str().unwrap_or_default();
            ensure!(told.contains(text), "{told} has no {text}");
        }
        keep(page, "film-end").await
    });
}
