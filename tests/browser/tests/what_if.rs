//! What if: a setting moved shows at once, is ridden, is taken back, and becomes the rider's own.

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, Theme, browse, browse_alone};

const SAG: &str = "document.querySelectorAll('.what-if-rows tbody tr')[1].cells[2].textContent";

/// Where the first slider says that the setting stands.
const STANDS: &str =
    "document.querySelector('.what-if-lever .hint').textContent.match(/^Now [\\d.]+/)[0]";
/// What the list of remedies shows as chosen.
const REMEDY: &str = "document.querySelector('.what-if-remedy select').selectedOptions[0].text";
const FINISH: &str = "A slippery finish and thin oil in the spring leg";
const SEALS: &str = "Clean and grease the fork seals and bushings";

/// Moves the first slider by so many steps and gives the milliseconds until the figures on the page have changed: the least
/// of several moves, because the machine has other work too.
const QUICK: &str = "(async () => { \
    const slider = document.querySelector('.what-if-lever input'); \
    const move = (value) => { slider.value = value; slider.dispatchEvent(new Event('input', { bubbles: true })); }; \
    const shown = () => document.querySelector('.what-if-rows')?.textContent; \
    const waits = []; \
    for (const value of [1, 3, 5, 7, 9]) { \
      const before = shown(); const from = performance.now(); move(value); \
      while (shown() === before && performance.now() - from < 5000) { \
        await new Promise((done) => { const line = new MessageChannel(); line.port1.onmessage = done; line.port2.postMessage(0); }); } \
      waits.push(performance.now() - from); } \
    return Math.min(...waits); })()";

/// Within this a change follows the finger, ms.
const AT_ONCE_MS: f64 = 100.0;

/// Moves a slider to its least.
fn to_least(place: usize) -> String {
    format!(
        "(() => {{ const slider = document.querySelectorAll('.what-if-lever input')[{place}]; slider.value = slider.min; \
         slider.dispatchEvent(new Event('input', {{ bubbles: true }})); return true; }})()"
    )
}

async fn to_what_if(page: &Page, rider: &str) -> Result<()> {
    page.advice_of(rider).await?;
    page.is_shown(".what-if-lever input").await
}

#[test]
fn a_setting_moved_shows_at_once_is_undone_and_taken() {
    browse_alone("what-if", PHONE, async |page| {
        to_what_if(page, "Freshly serviced gas fork").await?;
        page.is_shown(".ride-figures").await?;
        page.sees("Nothing is moved yet.").await?;
        let waited = page.evaluate(QUICK).await?;
        println!("shown after {waited} ms at best");
        ensure!(
            waited.as_f64().context("a time")? < AT_ONCE_MS,
            "{waited} ms"
        );
        page.sees("Tried: Fork gas pressure (gauge)").await?;
        page.sees("What you would feel").await?;
        let tried = page.evaluate(SAG).await?;
        let before = page.evaluate(STANDS).await?;
        let before = before.as_str().context("a hint")?;
        ensure!(before != "Now 11.5", "{before}");

        // A finger that moves on is one step; the way back is one press, by keyboard as well.
        page.tab_to("Undo").await?;
        page.click("Undo").await?;
        page.sees("Nothing is moved yet.").await?;
        page.pick("Or do one of these", FINISH).await?;
        page.sees(&format!("Tried: {FINISH}")).await?;
        // The list follows the way back, though a hand has chosen in it.
        page.pick("Or do one of these", SEALS).await?;
        page.sees(&format!("Tried: {SEALS}")).await?;
        page.click("Undo").await?;
        page.sees(&format!("Tried: {FINISH}")).await?;
        page.is_true(&format!("{REMEDY} === '{FINISH}'")).await?;
        page.accessible().await?;
        page.targets_are_large().await?;
        page.fits().await?;
        page.click("Put everything back").await?;
        page.sees("Nothing is moved yet.").await?;

        page.evaluate(QUICK).await?;
        ensure!(page.evaluate(SAG).await? == tried);
        for theme in Theme::ALL {
            page.pick("Colours of the page", theme.label()).await?;
            page.picture(&format!("what-if-{}", theme.name())).await?;
        }
        page.click("Take this as my set-up").await?;
        page.sees("This is your set-up now").await?;
        page.is_true(&format!("{STANDS} === 'Now 11.5'")).await?;
        page.click("Take my old set-up back").await?;
        page.is_true("!document.querySelector('.what-if-taken')")
            .await?;
        page.is_true(&format!("{STANDS} === '{before}'")).await
    });
}

#[test]
fn a_setting_moved_is_ridden_over_the_riders_own_ground() {
    browse("what-if-ridden", DESKTOP, async |page| {
        to_what_if(page, "Enduro without linkage").await?;
        page.evaluate(&to_least(3)).await?;
        page.click("Ride it over my ground").await?;
        page.is_shown(".what-if-rode .film-canvas").await?;
        page.sees("over your ground, as it is and as tried").await?;
        page.accessible().await?;
        page.fits().await?;
        page.picture("what-if").await?;
        // Another change is another ride: what was ridden goes, and the button is there again.
        page.evaluate(&to_least(4)).await?;
        page.is_true("document.querySelector('.what-if-rode .film-canvas') === null")
            .await?;
        page.is_true(
            "document.querySelector('.what-if-rode .button').textContent === 'Ride it over my ground'",
        )
        .await
    });
}
