//! The log at the track: a lap in five taps, kept press by press, in two tabs, without room and without a signal.

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{DESKTOP, NARROW, PHONE, Page, browse};
use serde_json::json;
use thirtyfour::Key;

/// An invented rider whose bike packs down with the rebound closed too far, and two things to judge a lap by.
const RIDER: &str = "Enduro without linkage";
const PACKS: &str = "It rides lower and lower";
const JOLTS: &str = "Rocks and square edges";
const RIDDEN: &str = "I have ridden it";
const JUDGING: &str = "How was it, against the lap before?";

/// Every log on the device, in the order kept, as text.
const LOGS: &str = "new Promise((done) => { \
    const opening = indexedDB.open('sagwright'); \
    opening.onsuccess = () => { \
        const database = opening.result; \
        const all = database.transaction('logs').objectStore('logs').getAll(); \
        all.onsuccess = () => { done(all.result); database.close(); }; }; \
    opening.onerror = () => done([]); })";

/// Opens the log of the rider, with a change proposed.
async fn at_the_track(page: &Page) -> Result<()> {
    page.open_example(RIDER).await?;
    page.open("#/track").await?;
    page.is_shown(".lap-what").await
}

/// Waits until the log that was kept last holds a text.
async fn is_kept(page: &Page, text: &str) -> Result<()> {
    let text = json!(text);
    // The answers stand in it as they are kept elsewhere: a text within a text.
    page.is_true(&format!(
        "{LOGS}.then((logs) => (logs.at(-1) ?? '').replaceAll('\\\\', '').includes({text}))"
    ))
    .await
}

/// Touches what a rider would: a button, a link or an answer, the last one on the page that is called so.
async fn tap(page: &Page, text: &str, place: usize) -> Result<()> {
    let name = json!(text);
    page.is_true(&format!(
        "(() => {{ const all = [...document.querySelectorAll('main button, main a, main label')] \
           .filter((node) => node.innerText.replace(/\\s+/g, ' ').trim().startsWith({name})); \
         window.toTap = all[{place}]; window.toTap?.scrollIntoView({{ block: 'center', behavior: 'instant' }}); \
         return window.toTap !== undefined; }})()"
    ))
    .await?;
    let middle = page
        .evaluate(
            "(() => { const box = window.toTap.getBoundingClientRect(); \
             return { x: box.x + box.width / 2, y: box.y + box.height / 2 }; })()",
        )
        .await?;
    let cdp = page.browser().cdp();
    let touch =
        |kind: &str, points: serde_json::Value| json!({ "type": kind, "touchPoints": points });
    cdp.send_raw(
        "Input.dispatchTouchEvent",
        touch("touchStart", json!([middle])),
    )
    .await?;
    cdp.send_raw("Input.dispatchTouchEvent", touch("touchEnd", json!([])))
        .await?;
    Ok(())
}

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

#[test]
fn a_log_survives_a_reload_after_every_press() {
    browse("track-reload", PHONE, async |page| {
        at_the_track(page).await?;
        page.click("I can't change this now").await?;
        page.sees("Fork rebound: four clicks out").await?;
        is_kept(page, r#""aside":["shock-rebound-open"]"#).await?;
        page.reload().await?;
        page.sees("Fork rebound: four clicks out").await?;
        page.click(RIDDEN).await?;
        is_kept(page, "judging").await?;
        page.reload().await?;
        page.sees(JUDGING).await?;
        page.choose_in(PACKS, "Better").await?;
        is_kept(page, r#""packs":"better""#).await?;
        page.reload().await?;
        page.sees(JUDGING).await?;
        ensure!(page.is_chosen("Better").await?, "the answer is lost");
        page.click("Keep it").await?;
        is_kept(page, r#""kept":true"#).await?;
        page.reload().await?;
        page.sees("Lap 2: change this one thing").await?;
        page.sees("The change stayed").await?;
        page.click("Put it back").await?;
        page.sees("First put this back").await?;
        is_kept(page, r#""back":["fork-rebound-open"]"#).await?;
        page.reload().await?;
        page.sees("First put this back").await
    });
}

/// A page may go at any moment of a write: then the log is as before the press or as after it, and always whole.
#[test]
fn a_reload_in_the_middle_of_a_write_leaves_a_whole_log() {
    browse("track-mid-write", PHONE, async |page| {
        at_the_track(page).await?;
        page.click(RIDDEN).await?;
        is_kept(page, "judging").await?;
        for place in 0..8 {
            // Pressed and gone within one task, and a little later each time.
            page.evaluate(&format!(
                "(() => {{ document.querySelectorAll('.verdicts input')[{}].click(); \
                 setTimeout(() => location.reload(), {place}); }})()",
                place % 2
            ))
            .await?;
            page.is_true(
                "performance.now() < 3000 && document.querySelector('.verdicts input') !== null",
            )
            .await?;
            page.sees(JUDGING).await?;
            let text = page.text().await?;
            ensure!(!text.contains("could not be read"), "{text}");
        }
        page.click("Keep it").await?;
        page.sees("Lap 2: change this one thing").await
    });
}

#[test]
fn of_two_tabs_the_second_follows_the_first() {
    browse("track-tabs", DESKTOP, async |page| {
        at_the_track(page).await?;
        page.open_tab("#/track").await?;
        page.is_shown(".lap-what").await?;
        page.click(RIDDEN).await?;
        page.turn_to(0).await?;
        page.sees(JUDGING).await?;
        page.choose_in(PACKS, "Better").await?;
        page.click("Keep it").await?;
        page.sees("Lap 2: change this one thing").await?;
        page.turn_to(1).await?;
        page.sees("Lap 2: change this one thing").await?;
        page.is_true("!document.body.innerText.includes('another page')")
            .await
    });
}

#[test]
fn of_two_tabs_that_do_not_hear_each_other_the_rider_chooses() {
    browse("track-deaf-tabs", DESKTOP, async |page| {
        page.before_every_page("BroadcastChannel.prototype.postMessage = () => {};")
            .await?;
        at_the_track(page).await?;
        page.click(RIDDEN).await?;
        page.click("Not ridden yet").await?;
        is_kept(page, "choosing").await?;
        page.open_tab("#/track").await?;
        page.is_shown(".lap-what").await?;
        let deaf = "BroadcastChannel.prototype.postMessage = () => {}";
        page.evaluate(deaf).await?;
        page.click(RIDDEN).await?;
        is_kept(page, "judging").await?;

        page.turn_to(0).await?;
        page.evaluate(deaf).await?;
        page.click("I can't change this now").await?;
        page.sees("This was changed on another page").await?;
        page.accessible().await?;
        page.picture("track-overtaken").await?;
        ensure!(!kept(page).await?.contains("aside"), "it was overwritten");
        page.click("Go on with the other page's").await?;
        page.sees(JUDGING).await?;
        page.click("Not ridden yet").await?;
        is_kept(page, "choosing").await?;

        page.turn_to(1).await?;
        page.choose_in(PACKS, "Better").await?;
        page.sees("This was changed on another page").await?;
        page.click("Go on with this one").await?;
        is_kept(page, r#""packs":"better""#).await
    });
}

async fn kept(page: &Page) -> Result<String> {
    let kept = page
        .evaluate(&format!("{LOGS}.then((logs) => logs.at(-1))"))
        .await?;
    Ok(kept.as_str().unwrap_or_default().to_owned())
}

#[test]
fn a_full_device_is_told_and_the_log_goes_on() {
    const FULL: &str = "This device has no room left";
    browse("track-full", PHONE, async |page| {
        let cdp = page.browser().cdp();
        let origin = page.address().trim_end_matches('/');
        let quota = async |size: Option<u32>| {
            let mut options = json!({ "origin": origin });
            if let Some(size) = size {
                options["quotaSize"] = size.into();
            }
            cdp.send_raw("Storage.overrideQuotaForOrigin", options)
                .await
        };
        page.open_example(RIDER).await?;
        // The browser remembers for a while how much room there was, so it is taken before anything is kept.
        quota(Some(1)).await?;
        page.open("#/track").await?;
        page.is_shown(".lap-what").await?;
        page.click(RIDDEN).await?;
        page.sees(FULL).await?;
        page.accessible().await?;
        page.picture("track-full").await?;
        page.choose_in(PACKS, "Better").await?;
        page.click("Keep it").await?;
        page.sees("Lap 2: change this one thing").await?;
        ensure!(page.text().await?.contains(FULL));
        page.click("Save the log as a file").await?;
        // Once there is room again, the next press is kept and the notice goes.
        quota(None).await?;
        page.click(RIDDEN).await?;
        page.is_true(&format!("!document.body.innerText.includes('{FULL}')"))
            .await?;
        page.reload().await?;
        page.sees(JUDGING).await?;
        page.sees("Lap 1. Shock rebound: four clicks out").await
    });
}

#[test]
fn where_nothing_can_be_kept_the_log_lives_as_long_as_the_page() {
    browse("track-blocked", PHONE, async |page| {
        // As a frame without rights has it.
        page.before_every_page(
            "IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); };",
        )
        .await?;
        at_the_track(page).await?;
        page.sees("lets Sagwright keep nothing here").await?;
        page.accessible().await?;
        page.click(RIDDEN).await?;
        page.choose_in(PACKS, "Better").await?;
        page.click("Keep it").await?;
        page.sees("Lap 2: change this one thing").await?;
        page.sees("lets Sagwright keep nothing here").await
    });
}

#[test]
fn logs_of_other_answers_can_be_gone_on_with_and_forgotten() {
    browse("track-earlier", PHONE, async |page| {
        at_the_track(page).await?;
        page.click(RIDDEN).await?;
        page.choose_in(PACKS, "Better").await?;
        page.click("Keep it").await?;
        page.sees("Lap 2: change this one thing").await?;
        is_kept(page, r#""kept":true"#).await?;

        page.open_example("Light and very fast").await?;
        page.open("#/track").await?;
        page.sees("Lap 1: change this one thing").await?;
        page.sees("Other logs on this device").await?;
        page.sees("It rides lower and lower over a row of bumps, one lap")
            .await?;
        page.accessible().await?;
        page.picture("track-earlier").await?;
        page.click("Go on with it").await?;
        page.sees("Lap 2: change this one thing").await?;
        page.reload().await?;
        page.sees("Lap 2: change this one thing").await?;
        page.sees("The rear kicks up or sideways, no lap yet")
            .await?;
        page.click("Forget it").await?;
        page.click("Press again to forget it for good").await?;
        page.is_true("!document.body.innerText.includes('Other logs')")
            .await?;
        // Forgetting takes its moment, and whoever reloads before it is over finds the log again.
        page.is_true(&format!("{LOGS}.then((logs) => logs.length === 1)"))
            .await?;
        page.reload().await?;
        page.sees("Lap 2: change this one thing").await?;
        page.is_true("!document.body.innerText.includes('Other logs')")
            .await
    });
}

#[test]
fn what_was_tried_goes_with_the_file_the_text_and_the_paper() {
    browse("track-export", DESKTOP, async |page| {
        page.before_every_page(
            "window.saved = []; const make = URL.createObjectURL; \
             URL.createObjectURL = (blob) => { blob.text().then((text) => saved.push(text)); return make.call(URL, blob); };",
        )
        .await?;
        at_the_track(page).await?;
        page.click(RIDDEN).await?;
        page.choose_in(PACKS, "Better").await?;
        page.click("Keep it").await?;
        page.sees("Lap 2: change this one thing").await?;
        page.click("Save the log as a file").await?;
        page.is_true("saved.length === 1 && JSON.parse(saved[0]).tried[0].kept === true")
            .await?;
        page.click("Back to the advice").await?;
        page.is_true(
            "document.querySelector('.paper')?.textContent.includes('Lap 1. Shock rebound: four clicks out.') === true",
        )
        .await
    });
}

#[test]
fn without_a_signal_a_lap_is_proposed_judged_and_kept() {
    browse("track-offline", PHONE, async |page| {
        page.open("#/").await?;
        page.is_true("navigator.serviceWorker.controller !== null")
            .await?;
        page.sees("opens and computes without a signal").await?;
        page.lose_signal();
        page.reload().await?;
        at_the_track(page).await?;
        page.click(RIDDEN).await?;
        page.choose_in(PACKS, "Better").await?;
        page.click("Keep it").await?;
        page.sees("Lap 2: change this one thing").await?;
        is_kept(page, r#""kept":true"#).await?;
        page.reload().await?;
        page.sees("Lap 2: change this one thing").await?;
        // Looking for a newer build fails without a network, and the browser says so in the console.
        let console = page.take_console().await?;
        let other: Vec<_> = console
            .iter()
            .filter(|line| !line.contains("sw.js"))
            .collect();
        ensure!(other.is_empty(), "{other:?}");
        Ok(())
    });
}
