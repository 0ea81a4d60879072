//! What a workshop wears, has in stock and how it counts, on the riders' page.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, Theme, browse};

use crate::receiver::Receiver;
use crate::{at, done};

const DEMO: &str = include_str!("../../../../demo-data/workshop.json");
const WHITE: &str = "rgb(255, 255, 255)";
/// The accent where no workshop has its own, in light.
const HOUSE: &str = "rgb(135, 42, 8)";
const OWN: &str = "rgb(29, 77, 43)";

async fn wear(page: &Page, theme: &str) -> Result<()> {
    page.pick("Colours of the page", theme).await
}

#[test]
fn the_page_wears_the_workshop_s_colour_in_every_theme() {
    browse("sending-look", PHONE, async |page| {
        let document = DEMO.replace(
            "\"corner\": 6, \"text\": 100",
            "\"corner\": 12, \"text\": 110",
        );
        let receiver = Receiver::start(page.address(), &document)?;
        for theme in Theme::ALL {
            at(page, &receiver, "#/bike-class").await?;
            wear(page, theme.label()).await?;
            let accent = page.property("--accent").await?;
            match theme {
                Theme::Dark => ensure!(![OWN, HOUSE, "rgb(255, 176, 138)"].contains(&&*accent)),
                Theme::Light | Theme::Sun => ensure!(accent == OWN, "{accent}"),
            }
            ensure!(page.property("--danger").await? == "#b3001b");
            page.choose("Motocross 250").await?;
            page.accessible().await?;
            page.targets_are_large().await?;
            page.picture(&format!("workshop-look-{}", theme.name()))
                .await?;
        }
        ensure!(page.property("--corner").await? == "12px");
        page.is_true("getComputedStyle(document.documentElement).fontSize === '17.6px'")
            .await?;

        receiver.state().document = document.replace("\"device\"", "\"dark\"");
        page.reload().await?;
        wear(page, "Auto").await?;
        ensure!(
            page.property("--paper").await? != WHITE,
            "the workshop's is dark"
        );
        wear(page, "Light").await?;
        ensure!(
            page.property("--paper").await? == WHITE,
            "the rider's choice comes first"
        );

        receiver.state().document = document.replace("#1d4d2b", "#eeeeee");
        page.reload().await?;
        page.sees("theme.accent").await?;
        ensure!(page.property("--accent").await? == HOUSE);
        done(page, &receiver).await
    });
}

#[test]
fn the_advice_tells_what_is_in_stock_and_counts_clicks_as_the_workshop_does() {
    for screen in [PHONE, DESKTOP] {
        browse("sending-stock", screen, async |page| {
            let receiver = Receiver::start(page.address(), DEMO)?;
            at(page, &receiver, "#/").await?;
            page.click("Try an example rider").await?;
            page.click("Heavy, on the springs").await?;
            page.arrives_at("Check your answers").await?;
            at(page, &receiver, "#/fork-clickers").await?;
            page.sees("Count from fully closed here").await?;
            page.picture("workshop-clickers").await?;

            at(page, &receiver, "#/check").await?;
            page.click("Get my advice").await?;
            page.is_shown(".settings").await?;
            page.sees("In stock at Demonstration workshop (invented), within the advised range: 27 lbf/in")
                .await?;
            page.sees("counts clicks from fully open").await?;
            let rows = page
                .evaluate("[...document.querySelectorAll('.card-values')].map(row => row.innerText.replaceAll(/\\s+/g, ' ')).join('\\n')")
                .await?;
            let rows = rows.as_str().unwrap_or_default();
            let rebound = rows.lines().find(|row| row.starts_with("Fork rebound"));
            let rebound = rebound.unwrap_or_default();
            ensure!(
                rebound.starts_with("Fork rebound, clicks 10 from open 10 from closed"),
                "{rows}"
            );
            // Nobody counted this one.
            ensure!(rows.contains("quarter turns from closed"), "{rows}");
            page.accessible().await?;
            page.fits().await?;
            page.picture("workshop-stock").await?;
            done(page, &receiver).await
        });
    }
}
