//! A page that stands for a workshop: what it asks and offers, and how answers reach it, whatever the network does.

mod look;
mod receiver;

use anyhow::{Context as _, Result, ensure};
use sagwright_core::intake::from_link;
use sagwright_core::workshop::Parcel;
use sagwright_tests_browser::{DESKTOP, NARROW, PHONE, Page, browse};

use receiver::{Mood, Receiver};

/// What the workshop says about itself.
const WORKSHOP: &str = r#"{
  "version": 2, "name": "Invented <b>works</b>", "currency": "EUR", "labour_per_hour": [60, 80],
  "contact": { "phone": "000 (invented)" }, "languages": ["en", "de"], "units": { "mass": "lb" },
  "classes": ["motocross-250", "enduro-linkage"], "remedies": ["service-fork-oil"],
  "questions": [
    { "id": "day", "text": "Which day suits you?", "kind": "text", "required": true },
    { "id": "loan", "text": "Do you need a loan bike?", "kind": "yes-no" },
    { "id": "next", "text": "When do you ride next?", "kind": "choice", "choices": ["This week", "Later"] }
  ],
  "consent": "They keep my answers for this job. (Invented)",
  "delivery": [
    { "way": "endpoint", "url": "/in" }, { "way": "email", "address": "desk@works.example" },
    { "way": "file" }, { "way": "link" }, { "way": "code" }
  ]
}"#;

async fn go(page: &Page, receiver: &Receiver, rest: &str) -> Result<()> {
    let to = format!("{}{rest}", receiver.address);
    page.browser().goto(to).await?;
    page.is_shown("h1").await
}

/// The page of that workshop.
async fn at(page: &Page, receiver: &Receiver, fragment: &str) -> Result<()> {
    go(
        page,
        receiver,
        &format!("?workshop=workshop.json{fragment}"),
    )
    .await
}

/// What the browser itself says of answers that did not come is no fault of the page; and the receiver stands at an
/// address of its own.
async fn done(page: &Page, receiver: &Receiver) -> Result<()> {
    // Whatever the page still fetches for later goes with it.
    page.browser().goto("about:blank").await?;
    for line in page.take_console().await? {
        ensure!(line.contains("Failed to load resource"), "{line}");
    }
    for url in page.requests().await? {
        ensure!(url.starts_with(&receiver.address), "{url}");
    }
    Ok(())
}

async fn agree(page: &Page) -> Result<()> {
    page.is_shown("#agree").await?;
    page.choose("I agree to this").await
}

#[test]
fn what_a_workshop_asks_is_asked_and_nothing_goes_before_the_rider_agrees() {
    browse("sending-asks", PHONE, async |page| {
        let receiver = Receiver::start(page.address(), WORKSHOP)?;
        at(page, &receiver, "#/rider-weight").await?;
        page.sees("For Invented <b>works</b>").await?;
        page.is_true("document.querySelector('.unit[aria-pressed=true]').innerText === 'lb'")
            .await?;
        page.is_true("document.querySelectorAll('.language option').length === 2")
            .await?;
        at(page, &receiver, "#/bike-class").await?;
        page.sees("works on these kinds of bike").await?;
        // Two kinds, and not knowing.
        page.is_true("document.querySelectorAll('input[name=bike-class]').length === 3")
            .await?;
        page.picture("workshop-bike-class").await?;

        at(page, &receiver, "#/").await?;
        page.click("Try an example rider").await?;
        page.click("Freshly serviced gas fork").await?;
        page.arrives_at("Check your answers").await?;
        at(page, &receiver, "#/send").await?;
        page.sees("questions of its own that are still open")
            .await?;
        page.click("Go there").await?;
        page.arrives_at("Invented <b>works</b> also asks").await?;
        page.continue_().await?;
        page.is_shown(".problems").await?;
        page.sees("the workshop cannot go on without it").await?;
        page.accessible().await?;
        page.fits().await?;
        page.targets_are_large().await?;
        page.picture("workshop-questions").await?;
        page.fill("Which day suits you?", "Monday, or \"Tuesday\"")
            .await?;
        page.choose_in("Do you need a loan bike?", "No").await?;
        page.choose_in("When do you ride next?", "This week")
            .await?;
        page.continue_().await?;
        page.arrives_at("Check your answers").await?;
        page.sees("Monday, or \"Tuesday\"").await?;

        page.click("Get my advice").await?;
        page.sees("only what Invented <b>works</b> offers").await?;
        page.click("See what goes").await?;
        page.arrives_at("Hand it to Invented <b>works</b>").await?;
        page.sees("They keep my answers for this job").await?;
        // Without the tick there is no way to send anything.
        page.sees("Without it nothing goes anywhere").await?;
        ensure!(
            page.evaluate("document.querySelectorAll('.going, a[href^=mailto], .code').length")
                .await?
                == 0
        );
        page.accessible().await?;
        agree(page).await?;
        page.is_shown(".going").await?;
        page.accessible().await?;
        page.fits().await?;
        page.targets_are_large().await?;
        page.focus_is_seen().await?;
        page.picture("workshop-send").await?;
        ensure!(receiver.state().tries == 0);

        // Mail programs look for a literal at sign.
        page.is_true(
            "document.querySelector('a[href^=\"mailto:\"]').getAttribute('href').startsWith('mailto:desk@works.example?subject=')",
        )
        .await?;
        let mail = page
            .evaluate("decodeURIComponent(document.querySelector('a[href^=\"mailto:\"]').href)")
            .await?;
        let mail = mail.as_str().context("a draft")?;
        ensure!(
            mail.starts_with("mailto:desk@works.example?subject="),
            "{mail}"
        );
        let word = mail
            .split("#/link/")
            .nth(1)
            .and_then(|rest| rest.split_whitespace().next());
        let intake = from_link(word.context("a link")?).ok().context("answers")?;
        ensure!(intake.extra.len() == 3 && intake.extra[0].id == "day");
        // Taking the word back takes the ways away.
        page.choose("I agree to this").await?;
        page.sees("Without it nothing goes anywhere").await?;
        done(page, &receiver).await
    });
}

#[test]
fn answers_wait_until_the_workshop_has_them_and_arrive_once() {
    browse("sending-waits", DESKTOP, async |page| {
        let receiver = Receiver::start(
            page.address(),
            &WORKSHOP.replace("\"required\": true", "\"required\": false"),
        )?;
        at(page, &receiver, "#/").await?;
        page.click("Try an example rider").await?;
        page.click("Freshly serviced gas fork").await?;
        page.arrives_at("Check your answers").await?;

        receiver.state().mood = Mood::Answers(500);
        at(page, &receiver, "#/send").await?;
        agree(page).await?;
        let shown = page
            .evaluate("document.querySelector('.going').innerText")
            .await?;
        page.click("Send now").await?;
        page.sees("Tries so far: 1").await?;
        receiver.state().mood = Mood::Down;
        page.click("Try now").await?;
        page.sees("Tries so far: 2").await?;
        page.picture("workshop-waiting").await?;
        page.accessible().await?;

        // Another page, opened without the workshop's address, still has them and says so.
        receiver.state().mood = Mood::LosesItsWord;
        go(page, &receiver, "#/").await?;
        page.sees("still wait to be sent").await?;
        page.click("Look at what waits").await?;
        page.arrives_at("Sent from here").await?;
        page.click("Try now").await?;
        page.sees("Tries so far: 3").await?;
        receiver.state().mood = Mood::Takes;
        page.reload().await?;
        page.is_shown(".letter").await?;
        page.click("Try now").await?;
        page.sees("has your answers").await?;
        {
            let state = receiver.state();
            // Its word was lost the first time, so it came twice, under one name.
            let [(first, text), (second, again)] = state.taken.as_slice() else {
                anyhow::bail!("taken {} times", state.taken.len());
            };
            ensure!(first == second && text == again);
            ensure!(shown.as_str() == Some(text), "{shown}\nis not\n{text}");
            let parcel = Parcel::read(text).map_err(|error| anyhow::anyhow!("{error}"))?;
            ensure!(parcel.id == *first && parcel.agreed.starts_with("They keep"));
        }
        // Nothing of the answers stays in the queue.
        page.click("Clear this line").await?;
        page.is_true("document.querySelector('.letter') === null")
            .await?;

        // A slow one is waited for, and asked once.
        receiver.state().mood = Mood::Slow;
        at(page, &receiver, "#/send").await?;
        agree(page).await?;
        page.click("Send now").await?;
        page.sees("On the way to").await?;
        page.sees("has your answers").await?;
        ensure!(receiver.state().taken.len() == 3);

        // One that refuses is not asked again by itself, and the answers can be saved or taken back.
        receiver.state().mood = Mood::Answers(422);
        page.click("Send once more").await?;
        page.click("Send now").await?;
        page.sees("gave the number 422").await?;
        let tries = receiver.state().tries;
        page.reload().await?;
        page.sees("did not take the answers").await?;
        ensure!(receiver.state().tries == tries);
        page.click("Take it back").await?;
        page.is_true("!document.body.innerText.includes('number 422')")
            .await?;
        done(page, &receiver).await
    });
}

#[test]
fn a_workshop_file_that_cannot_be_used_is_told_and_the_page_goes_on() {
    browse("sending-refused", NARROW, async |page| {
        let receiver = Receiver::start(
            page.address(),
            &WORKSHOP.replace(
                "\"currency\": \"EUR\"",
                "\"currency\": \"euro\", \"script\": 1",
            ),
        )?;
        at(page, &receiver, "").await?;
        page.sees("cannot be used").await?;
        page.sees("script").await?;
        page.fits().await?;
        page.accessible().await?;
        page.click("Start").await?;
        page.arrives_at("How much do you weigh?").await?;
        go(
            page,
            &receiver,
            "?workshop=https://elsewhere.example/w.json",
        )
        .await?;
        page.sees("on another site").await?;
        go(page, &receiver, "?workshop=nowhere.json").await?;
        page.sees("did not arrive").await?;
        go(page, &receiver, "#/send").await?;
        page.sees("belongs to no workshop").await?;
        done(page, &receiver).await
    });
}
