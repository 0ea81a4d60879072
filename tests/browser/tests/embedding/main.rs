//! The site in a frame on a workshop's own page, at another origin and under a strict policy.

mod around;
mod messages;
mod places;

use anyhow::{Context as _, Result, ensure};
use sagwright_core::workshop::Parcel;
use sagwright_tests_browser::{DESKTOP, PHONE, Page, browse};

use around::Around;

#[test]
fn the_page_around_is_told_what_happens_and_the_frame_grows_with_its_content() {
    for screen in [PHONE, DESKTOP] {
        browse("embedding-told", screen, async |page| {
            let around = Around::open(page, "").await?;
            page.sees("Ready, in the language en.").await?;
            page.sees("The rider is at: start.").await?;
            around.fits_its_content().await?;
            page.accessible().await?;
            page.picture("embedding-start").await?;

            around.inside(0).await?;
            // What stands around the questions elsewhere is the host's here; language and scope stay.
            page.is_true("[...document.querySelectorAll('.wordmark, .ruler, .tagline')].every((e) => !e.checkVisibility())").await?;
            page.sees("Sagwright cannot see cracks or leaks").await?;
            page.is_shown(".language select").await?;
            page.accessible().await?;
            page.targets_are_large().await?;
            let before = around.height_inside().await?;
            page.click("Try an example rider").await?;
            page.is_shown(".try[open]").await?;
            ensure!(around.height_inside().await? > before + 100.0);
            page.click("Freshly serviced gas fork").await?;
            page.arrives_at("Check your answers").await?;
            page.click("Get my advice").await?;
            page.sees("Keep safe")
                .await
                .or(page.is_shown(".cause").await)?;
            around.outside().await?;
            page.sees("The rider is at: check.").await?;
            page.sees("The rider is at: advice.").await?;
            around.fits_its_content().await?;
            // Each new page begins at its top, although it is this page that scrolls.
            let top = page.evaluate("Math.abs(document.querySelector('sagwright-intake').getBoundingClientRect().top)").await?;
            ensure!(top.as_f64().is_some_and(|top| top < 900.0), "{top}");
            page.picture("embedding-advice").await?;
            // What looks for faults of accessibility asks every frame, by messages for its own origin.
            around.done_but("Failed to execute 'postMessage'").await
        });
    }
}

#[test]
fn the_frame_wears_the_look_of_the_page_around_and_refuses_what_could_not_be_read() {
    browse("embedding-look", PHONE, async |page| {
        let around = Around::open(page, "").await?;
        page.sees("Ready, in the language en.").await?;
        around.inside(0).await?;
        worn(page, "--accent", "rgb(29, 77, 43)").await?;
        worn(page, "--corner", "10px").await?;
        page.is_true("getComputedStyle(document.body).fontFamily.startsWith('serif')")
            .await?;
        let danger = "getComputedStyle(document.documentElement).getPropertyValue('--danger')";
        ensure!(page.evaluate(danger).await? == "#b3001b");

        around.outside().await?;
        around.style("--sagwright-accent", "#ff8200").await?;
        around.style("--sagwright-corner", "2px").await?;
        around.style("--sagwright-danger", "#00ff00").await?;
        page.evaluate("document.querySelector('sagwright-intake').wear()")
            .await?;
        around.inside(0).await?;
        worn(page, "--corner", "2px").await?;
        worn(page, "--accent", "rgb(29, 77, 43)").await?;
        ensure!(page.evaluate(danger).await? == "#b3001b");
        around
            .logged("does not wear `accent`: text in it would have a contrast below 7 to 1")
            .await?;

        // What the rider chose comes first: black on white in bright light.
        page.pick("Colours of the page", "Sun").await?;
        worn(page, "--ink-soft", "rgb(0, 0, 0)").await?;
        worn(page, "--accent", "rgb(29, 77, 43)").await?;
        page.picture("embedding-sun").await?;
        around.outside().await?;
        around.style("--sagwright-colours", "dark").await?;
        page.evaluate("document.querySelector('sagwright-intake').wear()")
            .await?;
        around.inside(0).await?;
        page.is_true("document.documentElement.style.getPropertyValue('--own-scheme') === 'dark'")
            .await?;
        worn(page, "--paper", "rgb(255, 255, 255)").await?;
        page.pick("Colours of the page", "Auto").await?;
        // The same green, as light as it has to be there.
        worn(page, "--accent", "rgb(196, 209, 200)").await?;
        page.accessible().await?;
        around.outside().await?;
        page.picture("embedding-dark").await?;
        around.done().await
    });
}

#[test]
fn answers_reach_the_page_around_once_the_rider_agrees_and_it_says_whether_it_has_them() {
    browse("embedding-finished", PHONE, async |page| {
        let around = Around::open(page, "").await?;
        page.sees("Ready, in the language en.").await?;
        around.inside(0).await?;
        to_the_ways(page).await?;
        around.outside().await?;
        page.sees("The rider is at: send.").await?;
        let told = page
            .evaluate("document.querySelector('#told').innerText")
            .await?;
        ensure!(
            !told.as_str().context("a text")?.contains("Answers"),
            "{told}"
        );
        around.inside(0).await?;
        page.choose("I agree to this").await?;
        page.sees(around.host.address.trim_end_matches('/')).await?;
        page.accessible().await?;
        page.targets_are_large().await?;
        let shown = page
            .evaluate("document.querySelector('.going').innerText")
            .await?;
        page.click("And this advice on it").await?;
        page.accessible().await?;
        page.click("Hand it over now").await?;
        page.sees("Demonstration workshop (invented) has your answers.")
            .await?;
        around.outside().await?;
        page.sees("for Demonstration workshop (invented): ").await?;
        page.sees("advice: set-up.").await?;
        page.picture("embedding-finished").await?;

        // A page that does not answer, then does not take them, then does.
        around.remove_first().await?;
        around
            .put("mute", &[("workshop", "demo-workshop.json")])
            .await?;
        around.told("mute", "ready", "lang", "en").await?;
        around.inside(0).await?;
        page.evaluate("location.hash = '#/send'").await?;
        page.is_shown("#agree").await?;
        page.choose("I agree to this").await?;
        page.sees("And this advice on it").await?;
        let advice = page
            .evaluate("document.querySelectorAll('.going')[1].textContent")
            .await?;
        page.click("Hand it over now").await?;
        page.sees("The page around this one did not answer").await?;
        around.outside().await?;
        let finished = "told.mute.find(({ type }) => type === 'finished')";
        page.evaluate(&format!("{finished}.refused()")).await?;
        around.inside(0).await?;
        page.sees("The page around this one did not take it")
            .await?;
        around.outside().await?;
        page.evaluate(&format!("{finished}.taken()")).await?;
        let parcel = page
            .evaluate(&format!("JSON.stringify({finished}.parcel)"))
            .await?;
        let parcel = parcel.as_str().context("a text")?;
        let read = Parcel::read(parcel).map_err(|error| anyhow::anyhow!("{error}"))?;
        ensure!(read.agreed.starts_with("The workshop keeps my answers"));
        let one: Parcel = serde_json::from_str(shown.as_str().context("a text")?)?;
        ensure!(one.intake == read.intake && one.id != read.id);
        let settings = page
            .evaluate(&format!("{finished}.advice.settings.length"))
            .await?;
        ensure!(settings.as_u64().is_some_and(|many| many > 3), "{settings}");
        let same =
            format!("JSON.stringify(JSON.parse({advice})) === JSON.stringify({finished}.advice)");
        ensure!(
            page.evaluate(&same).await? == true,
            "what went is not what was shown"
        );
        around.inside(0).await?;
        page.sees("has your answers").await?;
        around.done().await
    });
}

/// From the first page to the consent.
async fn to_the_ways(page: &Page) -> Result<()> {
    page.click("Try an example rider").await?;
    page.click("Freshly serviced gas fork").await?;
    page.arrives_at("Check your answers").await?;
    page.click("Get my advice").await?;
    page.click("See what goes").await?;
    page.is_shown("#agree").await
}

async fn worn(page: &Page, property: &str, value: &str) -> Result<()> {
    let style =
        format!("getComputedStyle(document.documentElement).getPropertyValue('{property}')");
    page.is_true(&format!("{style} === '{value}'")).await
}

#[test]
fn two_on_one_page_know_nothing_of_each_other_and_each_begins_in_its_own_language() {
    browse("embedding-two", DESKTOP, async |page| {
        let around = Around::open(page, "").await?;
        page.sees("Ready, in the language en.").await?;
        around
            .put(
                "second",
                &[("lang", "de"), ("workshop", "demo-workshop.json")],
            )
            .await?;
        around.told("second", "ready", "lang", "de").await?;
        around.inside(1).await?;
        page.sees("Sprache").await?;
        page.is_true("document.documentElement.lang === 'de'")
            .await?;
        page.evaluate("location.hash = '#/check'").await?;
        around.outside().await?;
        around.told("second", "step", "step", "check").await?;
        let first = page
            .evaluate("document.querySelector('#told').innerText")
            .await?;
        ensure!(
            !first.as_str().context("a text")?.contains("check"),
            "{first}"
        );
        around.fits_its_content().await?;
        page.picture("embedding-two").await?;

        // A workshop's file that is not there is told, and the page goes on.
        around.put("third", &[("workshop", "nowhere.json")]).await?;
        around
            .told("third", "error", "reason", "workshop-missing")
            .await?;
        around.done().await
    });
}
