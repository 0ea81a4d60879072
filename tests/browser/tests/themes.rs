//! The colours of the page: by the device, by choice, and kept.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{PHONE, Page, Theme, browse};

const WHITE: &str = "rgb(255, 255, 255)";

async fn paper(page: &Page) -> Result<String> {
    page.property("--paper").await
}

#[test]
fn the_device_decides_until_the_rider_does() {
    browse("themes-device", PHONE, async |page| {
        page.open("#/").await?;
        ensure!(paper(page).await? == WHITE, "light comes first");
        page.device_asks(&[("prefers-color-scheme", "dark")])
            .await?;
        let dark = paper(page).await?;
        ensure!(dark != WHITE, "a dark device has a dark page");
        page.device_asks(&[("prefers-contrast", "more")]).await?;
        ensure!(paper(page).await? == WHITE);
        ensure!(
            page.property("--heavy").await? == "1.5",
            "a device that asks for contrast has heavier strokes"
        );

        page.device_asks(&[("prefers-color-scheme", "dark")])
            .await?;
        page.wear(Theme::Light).await?;
        ensure!(paper(page).await? == WHITE, "light was chosen");
        page.device_asks(&[]).await?;
        page.wear(Theme::Dark).await?;
        ensure!(paper(page).await? == dark, "dark was chosen");
        let bar = "document.querySelector('meta[name=theme-color]').content";
        ensure!(
            page.evaluate(bar).await? == dark.as_str(),
            "the browser's own bars follow"
        );
        page.pick("Colours of the page", "Auto").await?;
        ensure!(paper(page).await? == WHITE, "it is the device's again");
        Ok(())
    });
}

#[test]
fn a_choice_is_kept_and_worn_before_the_program_runs() {
    browse("themes-kept", PHONE, async |page| {
        page.wear(Theme::Sun).await?;
        page.reload().await?;
        ensure!(page.property("--heavy").await? == "1.5");
        ensure!(page.value("Colours of the page").await? == "sun");
        // Without the program, as long as it is on its way, the first script alone has to put them on.
        page.browser()
            .cdp()
            .send_raw("Network.enable", serde_json::json!({}))
            .await?;
        page.browser()
            .cdp()
            .send_raw(
                "Network.setBlockedURLs",
                serde_json::json!({ "urls": ["*.wasm"] }),
            )
            .await?;
        page.browser().goto(page.address()).await?;
        page.is_true("document.documentElement.dataset.theme === 'sun'")
            .await?;
        // The page says that it could not start, which is what the console says too.
        page.is_true("!document.getElementById('questions-failed').hidden")
            .await?;
        page.take_console().await.map(drop)
    });
}

#[test]
fn charts_follow_the_theme_at_once() {
    browse("themes-charts", PHONE, async |page| {
        page.advice_of("Freshly serviced gas fork").await?;
        page.is_shown("canvas.picture-canvas").await?;
        for theme in [Theme::Dark, Theme::Sun, Theme::Light] {
            page.pick("Colours of the page", theme.label()).await?;
            let mut outcome = page.charts_stand_out().await;
            // A chart is drawn again in the browser's own time.
            for _ in 0..20 {
                if outcome.is_ok() {
                    break;
                }
                tokio::time::sleep(std::time::Duration::from_millis(50)).await;
                outcome = page.charts_stand_out().await;
            }
            outcome?;
        }
        Ok(())
    });
}

#[test]
fn a_word_of_the_trade_is_explained_on_tap() {
    browse("terms", PHONE, async |page| {
        page.open("#/sag-front").await?;
        page.click("sag?").await?;
        page.sees("How far the bike sinks").await?;
        page.targets_are_large().await?;
        page.accessible().await?;
        page.picture("term").await?;
        page.click("Close").await?;
        let open = page
            .evaluate("document.querySelectorAll(':popover-open').length")
            .await?;
        ensure!(open == 0, "it was closed");
        page.click("sag?").await?;
        page.press(thirtyfour::Key::Escape).await?;
        page.is_true("document.querySelectorAll(':popover-open').length === 0")
            .await
    });
}
