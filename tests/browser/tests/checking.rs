//! The next check, answered where the advice stands: chances move, the next check comes, the answer can be taken back
//! and is kept, and the bike is ridden again only where the answer changes how it rides.

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, Theme, browse};
use thirtyfour::Key;

const DONE: &str = "times over your ground";
const CHECK: &str = "document.getElementById('check-name')?.innerText ?? ''";
const SAID: &str = "document.querySelector('.moved-said').innerText";
const FRONT_STICKS: &str = "Needs a shove before it moves";

/// The causes as they are told, name and chance now.
const CAUSES: &str = "[...document.querySelectorAll('.cause')].map((cause) => \
    [cause.querySelector('.cause-name').innerText, \
     cause.querySelector('.cause-chance').lastChild.innerText.replace(/^was.*now\\s+/, '')])";

/// Where the bar of each cause that moved ended before and ends now, percent.
const BARS: &str = "[...document.querySelectorAll('.moved-causes .bar')].map((bar) => \
    [bar.querySelector('.bar-before').x1.baseVal.value, bar.querySelector('.bar-part').width.baseVal.value])";

/// Notes whether rides begin from now on.
const WATCH: &str = "(() => { window.rode = false; \
    new MutationObserver(() => { window.rode ||= document.querySelector('.rides progress') !== null; }) \
      .observe(document.body, { childList: true, subtree: true }); return true; })()";

/// A rider who has measured nothing, with the rides done.
async fn to_advice(page: &Page) -> Result<()> {
    page.advice_of("First season on a small bike").await?;
    page.sees(DONE).await?;
    page.is_true(&format!("({CHECK}) !== ''")).await
}

async fn text(page: &Page, expression: &str) -> Result<String> {
    let value = page.evaluate(expression).await?;
    Ok(value.as_str().context("not a text")?.to_owned())
}

async fn push_front(page: &Page) -> Result<()> {
    page.is_offered("Push test").await?;
    page.choose_in("Front", FRONT_STICKS).await?;
    page.click("Use this answer").await?;
    page.is_shown(".moved-causes li").await
}

#[test]
fn an_answer_moves_the_chances_and_brings_the_next_check() {
    browse("checking-answer", PHONE, async |page| {
        to_advice(page).await?;
        page.evaluate(WATCH).await?;
        let before = page.evaluate(CAUSES).await?;
        push_front(page).await?;

        let said = text(page, SAID).await?;
        ensure!(
            said.starts_with("Push test: ") && said.contains("Next check: "),
            "it is told as \"{said}\""
        );
        ensure!(text(page, CHECK).await? != "Push test", "it is asked again");
        let bars = page.evaluate(BARS).await?;
        let moved = bars.as_array().into_iter().flatten().any(|bar| {
            let ends = [&bar[0], &bar[1]].map(|end| end.as_f64().unwrap_or_default());
            (ends[0] - ends[1]).abs() > 3.0
        });
        ensure!(moved, "no bar moved: {bars}");
        ensure!(
            page.evaluate("document.activeElement?.id").await? == "part-check",
            "the focus was lost"
        );
        page.accessible().await?;
        page.fits().await?;
        page.picture("checking-moved").await?;

        page.click("Take back my answer: Push test").await?;
        page.sees("Answer taken back.").await?;
        page.is_true(&format!("({CHECK}) === 'Push test'")).await?;
        let back = page.evaluate(CAUSES).await?;
        ensure!(
            back == before,
            "taken back, it is {back} instead of {before}"
        );
        ensure!(
            page.evaluate("window.rode").await? == false,
            "a push test does not change how the bike rides, and yet it was ridden again"
        );
        Ok(())
    });
}

#[test]
fn an_answer_is_kept_with_all_others() {
    browse("checking-kept", PHONE, async |page| {
        to_advice(page).await?;
        push_front(page).await?;
        page.reload().await?;
        page.sees(DONE).await?;
        ensure!(
            text(page, CHECK).await? != "Push test",
            "the answer is lost"
        );
        page.open("#/check").await?;
        page.arrives_at("Check your answers").await?;
        page.sees(FRONT_STICKS).await
    });
}

#[test]
fn what_the_same_tools_are_good_for_is_done_in_one_go() {
    const BY_HAND: &str = "Fork pushed by hand without its gas";
    const BOLTS: &str = "Pinch bolts slackened";
    const CLEANED: &str = "Tubes and wipers cleaned";
    const CHOSEN: &str = "document.querySelector('.check-form input:checked')?.value ?? ''";
    browse("checking-round", PHONE, async |page| {
        page.advice_of("Freshly serviced gas fork").await?;
        page.sees(DONE).await?;
        page.is_true(&format!("({CHECK}) === '{BY_HAND}'")).await?;
        page.choose("Yes").await?;
        page.accessible().await?;
        page.fits().await?;
        page.picture("checking-round").await?;

        // The other one first; what was chosen waits.
        page.click(&format!("{CLEANED}, 10 minutes")).await?;
        page.is_true(&format!("({CHECK}) === '{CLEANED}'")).await?;
        ensure!(
            page.evaluate("document.activeElement?.id").await? == "check-name",
            "the focus was lost"
        );
        ensure!(
            text(page, CHOSEN).await?.is_empty(),
            "it is answered already"
        );
        page.click(&format!("{BY_HAND}, 10 minutes")).await?;
        page.is_true(&format!("({CHECK}) === '{BY_HAND}'")).await?;
        ensure!(text(page, CHOSEN).await? == "yes", "the answer is lost");

        // One answered, another of them is next whatever tells most now: the tools are out.
        page.click("Use this answer").await?;
        page.is_shown(".moved-causes li").await?;
        page.is_true(&format!("({CHECK}) === '{BOLTS}'")).await?;
        page.click(&format!("Take back my answer: {BY_HAND}"))
            .await?;
        page.is_true(&format!("({CHECK}) === '{BY_HAND}'")).await
    });
}

#[test]
fn a_look_at_the_bike_is_an_answer_like_any_other() {
    browse("checking-look", PHONE, async |page| {
        page.advice_of("Freshly serviced gas fork").await?;
        page.sees(DONE).await?;
        page.is_offered("Pinch bolts slackened").await?;
        page.click("Use this answer").await?;
        page.sees("Give your answer first").await?;
        page.choose("Yes").await?;
        page.accessible().await?;
        page.click("Use this answer").await?;
        page.is_shown(".moved-causes li").await?;
        page.reload().await?;
        page.sees(DONE).await?;
        page.open("#/check").await?;
        page.arrives_at("Check your answers").await?;
        page.sees("Does the fork move clearly more freely?").await?;
        page.accessible().await?;
        page.fits().await?;
        page.picture("checking-look-kept").await?;
        page.click("Take out").await?;
        page.is_true("!document.body.innerText.includes('move clearly more freely')")
            .await
    });
}

#[test]
fn another_set_up_is_ridden_again_while_the_old_figures_stay() {
    browse("checking-ridden-again", DESKTOP, async |page| {
        to_advice(page).await?;
        page.is_offered("Shock clickers").await?;
        let numbers = "document.querySelectorAll('.card-number').length";
        let settings = page.evaluate(numbers).await?;
        page.evaluate(WATCH).await?;
        page.fill("Shock rebound: clicks out now", "2").await?;
        page.click("Use this answer").await?;
        page.is_true("window.rode").await?;
        page.is_shown(".moved-causes li").await?;
        ensure!(
            page.evaluate(numbers).await? == settings,
            "the card is gone"
        );
        page.sees(DONE).await?;
        page.is_true("document.querySelector('.provisional') === null")
            .await
    });
}

#[test]
fn chances_say_what_they_rest_on_until_the_rides_are_done() {
    browse("checking-provisional", DESKTOP, async |page| {
        page.advice_of("First season on a small bike").await?;
        page.is_shown(".provisional").await?;
        // At once, before the rides are done.
        page.click("Stop the rides").await?;
        page.sees("Without rides these chances").await?;
        page.accessible().await?;
        page.click("Ride again").await?;
        page.sees(DONE).await?;
        page.is_true("document.querySelector('.provisional') === null")
            .await
    });
}

#[test]
fn a_check_that_cannot_be_done_gives_way_and_comes_back() {
    browse("checking-aside", PHONE, async |page| {
        to_advice(page).await?;
        let first = text(page, CHECK).await?;
        while !text(page, CHECK).await?.is_empty() {
            let name = text(page, CHECK).await?;
            page.click("I can't check this").await?;
            page.is_true(&format!("({CHECK}) !== '{name}'")).await?;
        }
        page.sees("You put aside every check").await?;
        page.accessible().await?;
        page.click("Offer me the checks I put aside").await?;
        page.is_true(&format!("({CHECK}) === '{first}'")).await
    });
}

#[test]
fn what_cannot_be_an_answer_is_told_beside_the_input() {
    browse("checking-trouble", PHONE, async |page| {
        to_advice(page).await?;
        page.is_offered("Tyres").await?;
        let before = page.evaluate(CAUSES).await?;
        page.click("Use this answer").await?;
        page.sees("There is a problem").await?;
        page.fill("Front tyre pressure", "much").await?;
        page.click("Use this answer").await?;
        ensure!(
            page.complaint("Front tyre pressure")
                .await?
                .contains("much"),
            "the message does not say what is wrong"
        );
        page.accessible().await?;
        page.fits().await?;
        ensure!(
            page.evaluate(CAUSES).await? == before,
            "nothing was answered"
        );
        Ok(())
    });
}

#[test]
fn a_check_is_answered_by_keyboard_alone() {
    browse("checking-keyboard", DESKTOP, async |page| {
        to_advice(page).await?;
        page.tab_to("What to check next").await?;
        page.press(Key::Enter).await?;
        while text(page, CHECK).await? != "Push test" {
            let name = text(page, CHECK).await?;
            page.tab_to("I can't check this").await?;
            page.press(Key::Enter).await?;
            page.is_true(&format!("({CHECK}) !== '{name}'")).await?;
            ensure!(
                page.evaluate("document.activeElement?.id").await? == "check-name",
                "the focus is not on the check offered instead"
            );
        }
        page.tab_to("Moves at once").await?;
        page.press(Key::Down).await?;
        page.tab_to("Use this answer").await?;
        page.press(Key::Enter).await?;
        page.is_shown(".moved-causes li").await?;
        page.tab_to("Take back my answer").await?;
        page.press(Key::Enter).await?;
        page.sees("Answer taken back.").await
    });
}

#[test]
fn what_moved_can_be_read_in_the_dark() {
    browse("checking-dark", PHONE, async |page| {
        page.wear(Theme::Dark).await?;
        to_advice(page).await?;
        push_front(page).await?;
        page.accessible().await?;
        page.picture("checking-moved-dark").await
    });
}
