//! The log on the device: reloaded, in two tabs, without room, and beside other logs.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, browse};
use serde_json::json;

use crate::handling::{JUDGING, LOGS, PACKS, RIDDEN, RIDER, at_the_track, is_kept};

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
