//! A rider who answers "I don't know" to everything.

use anyhow::ensure;
use sagwright_tests_browser::{PHONE, browse};

use crate::advice::sees_whole_advice;
use crate::{DONT_KNOW, NOT_MEASURED};

#[test]
fn a_rider_who_knows_nothing() {
    browse("rider-unknowing", PHONE, async |page| {
        page.open("").await?;
        page.click("Start").await?;
        page.passes("How much do you weigh?", DONT_KNOW).await?;
        page.does_not_know("riding gear on?").await?;
        page.does_not_know("How fast do you ride?").await?;
        page.does_not_know("most of a ride?").await?;
        page.passes("How tall are you?", DONT_KNOW).await?;
        page.does_not_know("What kind of bike is it?").await?;
        page.passes("What does the bike weigh", DONT_KNOW).await?;
        page.does_not_know("How much fuel").await?;
        page.does_not_know("What carries the front").await?;
        page.passes("Which fork springs are in it?", DONT_KNOW)
            .await?;
        page.does_not_know("How does the shock").await?;
        for question in [
            "Which shock spring",
            "Where do the fork clickers",
            "Where do the shock clickers",
            "How long ago",
            "What ground",
            "What are the usual",
            "And today?",
        ] {
            page.passes(question, DONT_KNOW).await?;
        }
        page.answer("What is wrong?", "I don't know how to put it")
            .await?;
        for question in [
            "What is the sag at the front?",
            "What is the sag at the rear?",
            "How much of the fork's travel",
            "tyre pressures?",
        ] {
            page.passes(question, NOT_MEASURED).await?;
        }
        page.passes("What does a slow push", "I haven't tried it")
            .await?;
        page.does_not_know("Have you seen any of these?").await?;
        page.arrives_at("Check your answers").await?;
        page.click("Get my advice").await?;
        sees_whole_advice(page).await?;
        page.sees("the ranges span the kinds it could be").await?;
        page.sees("You have not said whether you saw any stop-riding sign")
            .await?;
        page.sees("What was assumed").await?;
        page.sees("narrow the numbers of the settings card more than any other: which kind of bike you ride")
            .await?;
        // Nothing that depends on the bike may look as if it were known.
        let narrow = page
            .evaluate(
                "[...document.querySelectorAll('.card-values')] \
                 .filter((row) => !row.innerText.includes('range')).map((row) => row.innerText)",
            )
            .await?;
        ensure!(
            narrow.as_array().is_some_and(Vec::is_empty),
            "without a range: {narrow}"
        );
        page.picture("advice-unknowing").await
    });
}
