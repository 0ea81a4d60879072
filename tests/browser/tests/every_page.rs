//! What holds on every page: it breaks no accessibility rule, fits the screen, can be pressed in gloves and shows its
//! focus, in every theme; and its picture.

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{
    DESKTOP, LARGE_TEXT, LYING, NARROW, PHONE, Page, Place, Theme, browse,
};

async fn check(page: &Page) -> Result<()> {
    page.each(async |place| {
        page.fits().await?;
        page.picture(place.name).await?;
        page.targets_are_large().await?;
        page.focus_is_seen().await?;
        page.accessible().await
    })
    .await
}

/// What can change with the theme: its colours, and its weight and width of letters.
async fn check_colours(page: &Page, theme: Theme) -> Result<()> {
    page.wear(theme).await?;
    page.each(async |place| {
        page.picture(&format!("{}-{}", place.name, theme.name()))
            .await?;
        if draws_charts(place) {
            page.charts_stand_out().await?;
        }
        page.fits().await?;
        page.accessible().await
    })
    .await
}

fn draws_charts(place: &Place) -> bool {
    ["advice-gas", "advice-coil"].contains(&place.name)
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
fn every_page_on_the_narrowest_screen() {
    browse("every-page", NARROW, check);
}

#[test]
fn every_page_on_a_phone_lying_on_its_side() {
    browse("every-page", LYING, async |page| {
        page.each(async |place| {
            page.picture(place.name).await?;
            page.fits().await?;
            page.focus_is_seen().await
        })
        .await
    });
}

#[test]
fn every_page_in_text_of_twice_the_size() {
    browse("every-page", LARGE_TEXT, async |page| {
        page.each(async |place| {
            page.picture(place.name).await?;
            page.fits().await?;
            page.focus_is_seen().await
        })
        .await
    });
}

#[test]
fn every_page_in_the_light() {
    browse("every-page-light", DESKTOP, async |page| {
        check_colours(page, Theme::Light).await
    });
}

#[test]
fn every_page_in_the_dark() {
    browse("every-page-dark", PHONE, async |page| {
        check_colours(page, Theme::Dark).await
    });
}

#[test]
fn every_page_in_the_sun() {
    browse("every-page-sun", PHONE, async |page| {
        check_colours(page, Theme::Sun).await
    });
}

#[test]
fn every_page_in_the_browsers_own_colours() {
    browse("every-page-forced", PHONE, async |page| {
        page.device_asks(&[("forced-colors", "active")]).await?;
        page.each(async |place| {
            page.picture(&format!("{}-forced", place.name)).await?;
            page.fits().await
        })
        .await
    });
}

/// Not a check: `tests/run pictures` runs it, to look at.
#[test]
#[ignore = "only takes pictures: every page at both sizes in every theme and language"]
fn pictures_of_every_page() {
    for screen in [PHONE, DESKTOP] {
        for theme in Theme::ALL {
            for language in ["en", "de", "es", "fr"] {
                browse("pictures", screen, async |page| {
                    page.wear(theme).await?;
                    page.each_in(language, async |place| {
                        page.picture(&format!("{}-{language}-{}", place.name, theme.name()))
                            .await
                    })
                    .await
                    .context(theme.name())
                });
            }
        }
    }
}

/// A page in another language: longer words break nothing, and none is left in brackets for want of a sentence.
async fn check_spoken(page: &Page, language: &str) -> Result<()> {
    page.each_in(language, async |place| {
        ensure!(
            !page.heading().await?.contains('['),
            "a sentence is missing"
        );
        page.accessible().await?;
        page.fits().await?;
        page.picture(&format!("{}-{language}", place.name)).await
    })
    .await
}

#[test]
fn every_page_in_german() {
    browse("every-page-german", PHONE, async |page| {
        check_spoken(page, "de").await
    });
}

#[test]
fn every_page_in_spanish() {
    browse("every-page-spanish", PHONE, async |page| {
        check_spoken(page, "es").await
    });
}

#[test]
fn every_page_in_french() {
    browse("every-page-french", PHONE, async |page| {
        check_spoken(page, "fr").await
    });
}

/// Not a check: `tests/run picture` runs it when the look of the advice has changed.
#[test]
#[ignore = "writes docs/advice.png, which the README shows"]
fn the_picture_of_the_readme() {
    browse("readme", DESKTOP, async |page| {
        page.advice_of("Freshly serviced gas fork").await?;
        page.is_shown(".ride-figures").await?;
        let picture = page.top(1500).await?;
        ensure!(
            picture.len() < 300_000,
            "a README should not take {} bytes to show",
            picture.len()
        );
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs");
        std::fs::create_dir_all(folder)?;
        Ok(std::fs::write(format!("{folder}/advice.png"), picture)?)
    });
}
