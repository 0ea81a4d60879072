//! A rider who answers "I don't know" to everything.

use anyhow::ensure;
use sagwright_tests_browser::{DONT_KNOW, PHONE, browse};

use crate::advice::sees_whole_advice;

#[test]
fn a_rider_who_knows_nothing() {
    browse("rider-unknowing", PHONE, async |page| {
        page.open("").await?;
        page.click("Start").await?;
        page.passes("How much do you weigh?", DONT_KNOW).await?;
        page.knows_nothing_else().await?;
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
