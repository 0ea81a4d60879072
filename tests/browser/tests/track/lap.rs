//! A lap: proposed, ridden, judged and undone, in gloves and sun or by keyboard.

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{DESKTOP, NARROW, PHONE, Page, browse};
use thirtyfour::Key;

use crate::handling::{JOLTS, JUDGING, PACKS, RIDDEN, RIDER, at_the_track, tap};

/// Asserts that what is pressed here is as large as it is meant for gloves, with room between, and what is read as large
/// as for the sun: black on white, whatever the device asks.
async fn made_for_gloves_and_sun(page: &Page) -> Result<()> {
    let measured = page
        .evaluate(
            "(() => { \
               const boxes = [...document.querySelectorAll('.track button, .track a.button, .track label')] \
                 .map((node) => ({ name: node.innerText, box: node.getBoundingClientRect() })); \
               const small = boxes.filter(({ box }) => box.height < 71.5 || box.width < 71.5).map(({ name }) => name); \
               const near = boxes.flatMap((one, place) => boxes.slice(place + 1).filter(({ box }) => { \
                 const apart = (a, b) => Math.max(b.left - a.right, a.left - b.right, b.top - a.bottom, a.top - b.bottom); \
                 return apart(one.box, box) < 7.5; }).map(({ name }) => `${one.name} / ${name}`)); \
               const faint = [...document.querySelectorAll('.track *')].filter((node) => \
                 node.innerText?.trim() && node.children.length === 0 && parseFloat(getComputedStyle(node).fontSize) < 18) \
                 .map((node) => node.outerHTML.slice(0, 90)); \
               const values = [...document.querySelectorAll('.lap-numbers')] \
                 .map((node) => parseFloat(getComputedStyle(node).fontSize)); \
               const body = getComputedStyle(document.body); \
               return { count: boxes.length, small, near, faint, values, paper: body.backgroundColor, ink: body.color }; })()",
        )
        .await?;
    ensure!(measured["count"].as_u64() > Some(1), "{measured:#}");
    for wrong in ["small", "near", "faint"] {
        let list = measured[wrong].as_array().context("a list")?;
        ensure!(list.is_empty(), "{wrong}: {measured:#}");
    }
    let values = measured["values"].as_array().into_iter().flatten();
    ensure!(
        values.into_iter().all(|size| size.as_f64() >= Some(28.0)),
        "{measured:#}"
    );
    ensure!(measured["paper"] == "rgb(255, 255, 255)", "{measured:#}");
    ensure!(measured["ink"] == "rgb(0, 0, 0)", "{measured:#}");
    Ok(())
}

#[test]
fn five_taps_lead_from_opening_to_the_next_change() {
    browse("track-taps", PHONE, async |page| {
        page.device_asks(&[("prefers-color-scheme", "dark")])
            .await?;
        page.open_example(RIDER).await?;
        page.open("#/").await?;
        let taps = [
            ("At the track", 0),
            (RIDDEN, 0),
            ("Better", 0),
            ("No different", 1),
            ("Keep it", 0),
        ];
        for (text, place) in taps {
            tap(page, text, place).await.context(text)?;
        }
        page.sees("Lap 2: change this one thing").await?;
        page.sees("That makes this likelier").await?;
        page.is_shown(".moved-causes").await?;
        page.sees("Lap 1. Shock rebound: four clicks out").await?;
        // From where the bike stands now, after the change that stayed.
        page.is_true("document.querySelector('.lap-numbers').innerText.startsWith('9')")
            .await?;
        page.picture("track-second-lap").await
    });
}

/// Every step, on the screens it is made for.
async fn every_step(page: &Page) -> Result<()> {
    page.device_asks(&[("prefers-color-scheme", "dark")])
        .await?;
    at_the_track(page).await?;
    let check = async |name: &str| -> Result<()> {
        page.picture(name).await?;
        made_for_gloves_and_sun(page).await?;
        page.fits().await?;
        page.accessible().await
    };
    check("track-proposal").await?;
    page.click(RIDDEN).await?;
    page.sees(JUDGING).await?;
    page.choose_in(PACKS, "Worse").await?;
    page.choose_in(JOLTS, "Can't tell").await?;
    check("track-judging").await?;
    page.click("Put it back").await?;
    page.sees("First put this back").await?;
    page.sees("The change was put back").await?;
    check("track-put-back").await
}

#[test]
fn every_step_is_made_for_gloves_and_sun() {
    for screen in [PHONE, DESKTOP, NARROW] {
        browse("track-steps", screen, every_step);
    }
}

#[test]
fn other_colours_are_left_as_they_were_chosen() {
    browse("track-colours", PHONE, async |page| {
        page.wear(sagwright_tests_browser::Theme::Dark).await?;
        at_the_track(page).await?;
        let paper = page.property("--paper").await?;
        ensure!(paper != "rgb(255, 255, 255)", "dark was chosen: {paper}");
        page.pick("Colours of the page", "Auto").await?;
        page.open("#/").await?;
        page.open("#/track").await?;
        page.is_true("document.documentElement.dataset.theme === 'sun'")
            .await?;
        page.click("Back to the advice").await?;
        page.is_true("document.documentElement.dataset.theme === undefined")
            .await
    });
}

#[test]
fn a_lap_can_be_ridden_judged_and_undone_by_keyboard_alone() {
    browse("track-keyboard", DESKTOP, async |page| {
        at_the_track(page).await?;
        page.tab_to(RIDDEN).await?;
        page.press(Key::Enter).await?;
        page.sees(JUDGING).await?;
        ensure!(page.focused().await? == "At the track");
        page.tab_to("Better").await?;
        page.press(Key::Space).await?;
        page.tab_to("Better").await?;
        page.press(Key::Down).await?;
        page.tab_to("Keep it").await?;
        page.press(Key::Enter).await?;
        page.sees("Lap 2: change this one thing").await?;
        page.sees("Rocks and square edges jolt through: no different")
            .await?;
        page.tab_to("Take back the last lap").await?;
        page.press(Key::Enter).await?;
        page.sees(JUDGING).await?;
        // What was picked before is picked still.
        page.tab_to("Better").await?;
        page.tab_to("Not ridden yet").await?;
        page.press(Key::Enter).await?;
        page.sees("Lap 1: change this one thing").await
    });
}
