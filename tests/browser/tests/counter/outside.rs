//! What comes from outside, and a browser that keeps nothing.

use anyhow::{Result, ensure};
use sagwright_tests_browser::{DESKTOP, Page, browse};

use crate::desk::{desk_of, file_of, name_of};
use crate::handling::{KEPT, open, take_in};

async fn job(page: &Page, number: usize, rest: &str) -> Result<()> {
    open(page, &format!("#/job/{}{rest}", name_of(number))).await
}

#[test]
fn what_comes_from_outside_is_text_and_what_is_no_use_says_why() {
    let script = "<script>window.broken = 1</script><img src=x onerror='window.broken = 1'>";
    let named = desk_of(1..=1)
        .replace("Rider 1", script)
        .replace("club", "<b>club</b>");
    let noted = desk_of(2..=2).replace("Rings after work", script);
    let longer = desk_of(3..=3).replace("Rings after work", &"x".repeat(5_000));
    let newer = desk_of(4..=4).replace("\"version\":1,\"jobs\"", "\"version\":9,\"jobs\"");
    let huge = file_of(5).replace("60.05", "1e400");
    let heavy = file_of(5).replace("60.05", "99999999");
    let deep = format!("{{\"version\":1,\"rider\":{}", "{\"a\":".repeat(50_000));
    let forged = desk_of(6..=6).replace("60.06", "61.06");
    browse("counter-hostile", DESKTOP, async |page| {
        take_in(
            page,
            &[
                &named,
                &noted,
                &longer,
                &newer,
                &huge,
                &heavy,
                &deep,
                &forged,
                "\u{0}\u{1}",
            ],
        )
        .await?;
        page.sees("2 new jobs are on the desk").await?;
        page.sees("2 jobs in the file were not taken in").await?;
        page.sees("Something in this job is longer than it may be")
            .await?;
        page.sees("does not belong to its answers").await?;
        page.sees("written by a newer Sagwright").await?;
        let refused = page
            .evaluate("document.querySelectorAll('.problems').length")
            .await?;
        ensure!(refused == 5, "{refused} files were refused");
        page.accessible().await?;
        page.fits().await?;
        ensure!(page.evaluate(KEPT).await? == 2);
        open(page, "#/").await?;
        page.sees("<script>window.broken = 1</script>").await?;
        for number in [1, 2] {
            job(page, number, "").await?;
            page.is_shown(".job").await?;
            page.sees("onerror=").await?;
            job(page, number, "/card").await?;
            page.is_shown(".job-card table").await?;
        }
        ensure!(page.evaluate("window.broken === undefined").await? == true);
        // An address made up by somebody leads to the list.
        open(page, "#/job/<img src=x>").await?;
        page.sees("leads to no page of the counter").await
    });
}

#[test]
fn without_a_database_the_desk_works_as_long_as_the_page() {
    browse("counter-blocked", DESKTOP, async |page| {
        page.before_every_page("Object.defineProperty(window, 'indexedDB', { value: undefined });")
            .await?;
        open(page, "#/bring-in").await?;
        page.sees("lets Sagwright keep nothing here").await?;
        page.accessible().await?;
        page.fill("A link, or the text of a code", &file_of(1))
            .await?;
        page.click("Take in").await?;
        page.sees("One new job is on the desk").await?;
        page.click("Rider 1").await?;
        page.fill("New note", "Only in memory").await?;
        page.click("Add the note").await?;
        page.sees("Only in memory").await
    });
}
