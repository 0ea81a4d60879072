//! Journeys at the counter, by keyboard too.

use crate::desk::{desk_of, file_of, name_of, rider};
use crate::handling::{CATCH_FILES, KEPT, last_file, open, rows_told, take_in};
use anyhow::{Result, ensure};
use sagwright_tests_browser::{DESKTOP, NARROW, PAPERS, PHONE, Page, browse, pages_of};
use thirtyfour::Key;

/// The sentence that goes when the rides are done.
const RIDDEN: &str = "!document.body.innerText.includes('Riding it out')";

async fn job(page: &Page, number: usize, rest: &str) -> Result<()> {
    open(page, &format!("#/job/{}{rest}", name_of(number))).await
}

async fn in_order(page: &Page, name: &str) -> Result<()> {
    page.accessible().await?;
    page.fits().await?;
    page.targets_are_large().await?;
    page.focus_is_seen().await?;
    page.picture(name).await
}

#[test]
#[expect(
    clippy::too_many_lines,
    reason = "one job's whole way over the counter, step by step"
)]
fn a_rider_is_brought_in_put_right_worked_on_and_heard_back_from_by_keyboard() {
    let link = sagwright_core::intake::to_link(&rider(1)).expect("plain data");
    browse("counter-keyboard", DESKTOP, async |page| {
        open(page, "#/").await?;
        page.sees("There is no job on the desk yet").await?;
        page.tab_to("Bring in riders").await?;
        page.press(Key::Enter).await?;
        page.arrives_at("Bring in riders").await?;
        page.tab_to("A link, or the text of a code").await?;
        page.type_keys(&format!("https://example.org/#/link/{link}"))
            .await?;
        page.tab_to("Take in").await?;
        page.press(Key::Enter).await?;
        page.sees("One new job is on the desk").await?;
        page.tab_to("Rider 1").await?;
        page.press(Key::Enter).await?;
        page.arrives_at("Rider 1").await?;

        page.tab_to("Where it stands").await?;
        page.type_keys("Waiting").await?;
        page.sees("Kept.").await?;
        page.tab_to("Name or number").await?;
        page.type_keys("Rider Two").await?;
        page.press(Key::Enter).await?;
        page.arrives_at("Rider Two").await?;
        page.tab_to("New tag").await?;
        page.type_keys("race, loan bike").await?;
        page.press(Key::Enter).await?;
        page.is_shown(".tag").await?;
        page.reload().await?;
        page.tab_to("Take off : race").await?;
        page.press(Key::Enter).await?;
        page.is_true("document.querySelectorAll('.tag').length === 1")
            .await?;
        page.tab_to("New note").await?;
        page.type_keys("Rings on Friday").await?;
        page.tab_to("Add the note").await?;
        page.press(Key::Enter).await?;
        page.sees("Take this note out").await?;

        page.tab_to("Put right : What is the sag at the front")
            .await?;
        page.press(Key::Enter).await?;
        page.is_shown("[id='measured.fork_rider_sag']").await?;
        page.fill("Front rider sag", "500").await?;
        page.tab_to("Keep").await?;
        page.press(Key::Enter).await?;
        // What is out of range is told at its field and stays there to be put right.
        page.complaint("Front rider sag").await?;
        ensure!(page.value("Front rider sag").await? == "500");
        page.fill("Front rider sag", "75").await?;
        page.tab_to("Keep").await?;
        page.press(Key::Enter).await?;
        page.sees("Came as:").await?;
        page.sees("As it came").await?;
        page.is_true(RIDDEN).await?;

        page.tab_to("Write down what was done").await?;
        page.press(Key::Enter).await?;
        page.arrives_at("Write down what was done").await?;
        page.tab_to("Done by").await?;
        page.type_keys("A mechanic").await?;
        page.tab_to("Oil").await?;
        page.type_keys("Thin oil").await?;
        page.tab_to("Fork rebound: clicks out now").await?;
        page.type_keys("99").await?;
        page.tab_to("Keep").await?;
        page.press(Key::Enter).await?;
        page.is_shown(".problems").await?;
        page.fill("Fork rebound: clicks out now", "9").await?;
        page.tab_to("Keep").await?;
        page.press(Key::Enter).await?;
        page.sees("Thin oil").await?;

        page.tab_to("Write down what the rider says").await?;
        page.press(Key::Enter).await?;
        page.arrives_at("Write down what the rider says").await?;
        // The first of the group follows the last.
        page.tab_to("Not asked").await?;
        page.press(Key::Down).await?;
        ensure!(page.focused().await? == "Better");
        page.tab_to("In the rider's words").await?;
        page.type_keys("Calmer now").await?;
        page.tab_to("Keep").await?;
        page.press(Key::Enter).await?;
        page.sees("Calmer now").await?;
        page.sees(": Better").await?;

        page.tab_to("See in and out side by side").await?;
        page.press(Key::Enter).await?;
        page.arrives_at("Side by side").await?;
        page.sees("Fork clickers").await?;
        page.is_true(RIDDEN).await?;

        // All of it is found again after a reload, and by its words.
        page.reload().await?;
        open(page, "#/").await?;
        page.tab_to("Search").await?;
        page.type_keys("friday loan thin").await?;
        page.sees("1 found").await?;
        page.tab_to("Rider Two").await?;
        page.press(Key::Enter).await?;
        page.sees("Calmer now").await?;
        page.tab_to("Delete this rider").await?;
        page.press(Key::Enter).await?;
        page.tab_to("Delete this rider").await?;
        page.press(Key::Enter).await?;
        page.sees("There is no job on the desk yet").await?;
        ensure!(page.evaluate(KEPT).await? == 0);
        Ok(())
    });
}

#[test]
fn every_page_is_in_order_on_every_screen() {
    for screen in [DESKTOP, PHONE, NARROW] {
        browse("counter-pages", screen, async |page| {
            open(page, "#/").await?;
            in_order(page, "counter-empty").await?;
            take_in(page, &[&desk_of(1..=3), &file_of(4), "no rider"]).await?;
            page.sees("Not taken in").await?;
            in_order(page, "counter-brought").await?;
            open(page, "#/").await?;
            ensure!(rows_told(page).await? == "4 found");
            in_order(page, "counter-desk").await?;
            open(page, "#/filing").await?;
            in_order(page, "counter-filing").await?;
            open(page, "#/delete-all").await?;
            in_order(page, "counter-delete-all").await?;
            job(page, 1, "/answer/sag-front").await?;
            page.is_shown("[id='measured.fork_rider_sag']").await?;
            page.fill("Front rider sag", "75").await?;
            in_order(page, "counter-answer").await?;
            page.click("Keep").await?;
            page.sees("As it came").await?;
            page.is_true(RIDDEN).await?;
            in_order(page, "counter-job").await?;
            for (rest, shown, name) in [
                ("/work", "#work-oil", "counter-work"),
                ("/heard", "#heard-words", "counter-heard"),
                ("/beside/as-it-came", ".side-table", "counter-came"),
                ("/card", ".job-card table", "counter-card"),
                ("/delete", ".onward", "counter-delete"),
            ] {
                job(page, 1, rest).await?;
                page.is_shown(shown).await?;
                page.is_true(RIDDEN).await?;
                in_order(page, name).await?;
            }
            job(page, 1, &format!("/beside/{}", name_of(2))).await?;
            page.is_shown(".side-table").await?;
            page.is_true(RIDDEN).await?;
            in_order(page, "counter-two-riders").await
        });
    }
}

#[test]
fn the_job_card_is_one_page_for_every_invented_rider() {
    let riders = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo-data"));
    let riders = riders.expect("the riders are there").map(|entry| {
        let path = entry.expect("the folder can be read").path();
        let text = std::fs::read_to_string(&path).unwrap_or_default();
        (path, text)
    });
    let riders: Vec<_> = riders
        .filter(|(_, text)| text.contains("\"rider\""))
        .collect();
    assert!(riders.len() >= 10, "where are the riders?");
    let fullest = include_str!("../../../links/fullest.json").to_owned();
    browse("counter-cards", DESKTOP, async |page| {
        let mut texts: Vec<&str> = riders.iter().map(|(_, text)| text.as_str()).collect();
        texts.push(&fullest);
        for (number, text) in texts.iter().enumerate() {
            take_in(page, &[text]).await?;
            page.evaluate("document.querySelector('.came a').click()")
                .await?;
            page.is_shown(".job").await?;
            page.click("Job card").await?;
            page.sees("Ready to print").await?;
            for paper in PAPERS {
                let pdf = page.print(paper).await?;
                save(&format!("job-card-{number}-{}.pdf", paper.0), &pdf)?;
                let pages = pages_of(&pdf);
                ensure!(
                    pages == 1,
                    "card {number} takes {pages} pages of {}",
                    paper.0
                );
            }
        }
        Ok(())
    });
}

#[test]
fn two_pages_of_one_desk_see_and_keep_each_others_work() {
    browse("counter-two-tabs", DESKTOP, async |page| {
        take_in(page, &[&desk_of(1..=2)]).await?;
        job(page, 1, "").await?;
        page.is_shown("#job-note").await?;
        page.open_tab(&format!("workshop.html#/job/{}", name_of(1)))
            .await?;
        page.fill("New note", "From the second").await?;
        page.click("Add the note").await?;
        page.sees("From the second").await?;
        page.turn_to(0).await?;
        page.sees("From the second").await?;
        page.fill("New note", "From the first").await?;
        page.click("Add the note").await?;
        page.turn_to(1).await?;
        page.sees("From the first").await?;
        page.sees("From the second").await
    });
}

#[test]
fn a_saved_desk_comes_back_whole_and_two_desks_come_together() {
    browse("counter-filing", DESKTOP, async |page| {
        page.before_every_page(CATCH_FILES).await?;
        take_in(page, &[&desk_of(1..=5)]).await?;
        job(page, 3, "").await?;
        page.fill("New note", "Only on the first desk").await?;
        page.click("Add the note").await?;
        page.sees("Only on the first desk").await?;
        open(page, "#/filing").await?;
        page.sees("Jobs on this desk: 5").await?;
        page.click("Save the table").await?;
        page.sees("Written, with 5 jobs").await?;
        let table = last_file(page).await?;
        ensure!(
            table.lines().count() >= 6 && table.contains("Only on the first desk"),
            "{table}"
        );
        page.click("Save the desk file").await?;
        let first = last_file(page).await?;
        page.click("Delete everything").await?;
        page.arrives_at("Delete everything").await?;
        page.click("Delete everything").await?;
        page.sees("There is no job on the desk yet").await?;
        ensure!(page.evaluate(KEPT).await? == 0);

        // The second desk: some of the same riders, worked on apart.
        take_in(page, &[&desk_of(3..=8)]).await?;
        job(page, 3, "").await?;
        page.fill("New note", "Only on the second desk").await?;
        page.click("Add the note").await?;
        page.sees("Only on the second desk").await?;
        take_in(page, &[&first]).await?;
        page.sees("2 new jobs are on the desk").await?;
        page.sees("One job was there already and has taken in what was new")
            .await?;
        page.sees("2 were on the desk already").await?;
        ensure!(page.evaluate(KEPT).await? == 8);
        job(page, 3, "").await?;
        page.sees("Only on the first desk").await?;
        page.sees("Only on the second desk").await?;
        // Again is no news.
        take_in(page, &[&first]).await?;
        page.sees("5 were on the desk already").await?;
        ensure!(page.evaluate(KEPT).await? == 8);
        Ok(())
    });
}

fn save(name: &str, content: &[u8]) -> Result<()> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../screenshots");
    std::fs::create_dir_all(folder)?;
    Ok(std::fs::write(format!("{folder}/{name}"), content)?)
}
