//! A rider without mouse or touch: Tab, Space, Enter, arrows and letters only.

use anyhow::ensure;
use sagwright_tests_browser::{DESKTOP, browse};
use thirtyfour::Key;

#[test]
fn questions_and_advice_by_keyboard_alone() {
    browse("keyboard", DESKTOP, async |page| {
        page.open("").await?;
        page.tab_to("Skip to the question").await?;
        page.tab_to("Start").await?;
        page.press(Key::Enter).await?;

        page.arrives_at("How much do you weigh?").await?;
        page.tab_to("Rider weight").await?;
        page.type_keys("84").await?;
        page.tab_to("lb").await?;
        page.press(Key::Space).await?;
        ensure!(
            page.value("Rider weight").await? == "185",
            "Space did not switch the unit"
        );
        page.tab_to("Continue").await?;
        page.press(Key::Enter).await?;

        page.arrives_at("Is that weight with your riding gear on?")
            .await?;
        page.tab_to("Yes, with gear").await?;
        page.press(Key::Space).await?;
        page.press(Key::Down).await?;
        ensure!(
            page.is_chosen("No, without gear").await?,
            "the arrow did not move the choice"
        );
        // Enter in a form goes on, as everywhere on the web.
        page.press(Key::Enter).await?;

        page.arrives_at("How fast do you ride?").await?;
        page.tab_to("Continue").await?;
        page.press(Key::Enter).await?;
        page.sees("There is a problem").await?;
        // From the message, Tab and Enter lead to the first answer.
        page.tab_to("Pick one of the answers").await?;
        page.press(Key::Enter).await?;
        ensure!(
            page.focused().await?.starts_with("Learning"),
            "the message leads to {}",
            page.focused().await?
        );
        page.press(Key::Space).await?;
        page.press(Key::Enter).await?;
        page.arrives_at("How do you spend most of a ride?").await?;
        page.tab_to("Back").await?;
        page.press(Key::Enter).await?;
        page.arrives_at("How fast do you ride?").await?;

        // From an invented rider's answers to the advice, and to the reason of a number.
        page.open("#/").await?;
        page.arrives_at("Find out what your suspension needs")
            .await?;
        page.tab_to("Try an example rider").await?;
        page.press(Key::Enter).await?;
        page.tab_to("Freshly serviced gas fork").await?;
        page.press(Key::Enter).await?;
        page.arrives_at("Check your answers").await?;
        page.tab_to("Get my advice").await?;
        page.press(Key::Enter).await?;
        page.is_shown(".card-number").await?;
        page.tab_to("Why? Fork gas pressure").await?;
        page.press(Key::Enter).await?;
        page.sees("What went in").await?;
        page.sees("Balance of forces (statics)").await
    });
}
