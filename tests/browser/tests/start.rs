//! The site starts, under the policy it is served with, from one download of each program.

use std::time::Duration;

use anyhow::{Result, ensure};
use sagwright_tests_browser::{DESKTOP, KEPT, Network, PHONE, Page, browse, browse_alone};

async fn starts(page: &Page) -> Result<()> {
    page.open("").await?;
    page.sees("Sagwright").await?;
    page.fits().await
}

#[test]
fn it_starts_on_a_phone() {
    browse("starts", PHONE, starts);
}

#[test]
fn it_starts_on_a_desktop() {
    browse("starts", DESKTOP, starts);
}

#[test]
fn each_program_is_downloaded_once() {
    browse("downloaded-once", PHONE, async |page| {
        page.open("").await?;
        page.begin().await?;
        // The advice's program comes once the page has nothing else to do.
        page.is_true("document.querySelector('script[data-rides]') !== null")
            .await?;
        page.open("#/advice").await?;
        page.arrives_at("Your advice").await?;
        page.is_true("document.getElementById('stage')?.hasChildNodes() === true")
            .await?;
        let asked = page.requests().await?;
        let programs: Vec<_> = asked
            .iter()
            .filter(|url| url.ends_with("_bg.wasm"))
            .collect();
        ensure!(programs.len() == 2, "asked for {programs:?}");
        let doubled = asked
            .iter()
            .find(|url| asked.iter().filter(|u| u == url).count() > 1);
        ensure!(doubled.is_none(), "asked twice for {doubled:?}");
        Ok(())
    });
}

/// How long a page is looked at only, ms: longer than a browser takes to notice that it has nothing to do.
const LOOKED_AT_MS: u64 = 4000;

#[test]
fn who_only_looks_downloads_what_the_first_question_needs() {
    browse("only-looks", PHONE, async |page| {
        page.open("").await?;
        tokio::time::sleep(Duration::from_millis(LOOKED_AT_MS)).await;
        let asked = page.requests().await?;
        let name = |url: &String| url.rsplit('/').next().unwrap_or_default().to_owned();
        let (programs, rest): (Vec<_>, Vec<_>) = asked
            .iter()
            .map(name)
            .partition(|name| name.starts_with("questions-"));
        // A style sheet, the script that starts the program, its glue and the program.
        ensure!(programs.len() == 4, "{programs:?}");
        let other: Vec<_> = rest
            .iter()
            .filter(|name| {
                !name.is_empty() && !name.contains("icon") && !name.contains(".webmanifest")
            })
            .collect();
        ensure!(other.is_empty(), "asked for {other:?} too");
        page.begin().await?;
        page.is_true("document.querySelector('script[data-rides]') !== null")
            .await?;
        page.sees(KEPT).await
    });
}

/// Where the things stand that a rider sees first, noted for every picture until the program has drawn the page.
const STANDING: &str = "window.standing = () => ['.wordmark', '.wear select', '.ruler', 'h1', '.lead', '.button-main', \
      '.landing .hint', '.landing .button:not(.button-main)', '.try summary', '.footer p', '.footer select'] \
      .map((what) => document.querySelector(what)?.getBoundingClientRect()) \
      .map((box) => box && [box.x, box.y, box.height].map(Math.round).join(' ')); \
    const look = () => { if (document.querySelector('.skip')) return; \
      if (document.querySelector('.landing')) window.before = standing(); requestAnimationFrame(look); }; look(); \
    window.shifted = 0; new PerformanceObserver((list) => { \
      for (const one of list.getEntries()) window.shifted += one.value; }).observe({ type: 'layout-shift', buffered: true });";

/// Slow enough to see what stands there before the program has come.
const SLOW: Network = Network {
    latency_ms: 100.0,
    down: 400_000.0,
    up: 400_000.0,
};

async fn stands_before(page: &Page) -> Result<()> {
    page.slow_network(SLOW).await?;
    page.before_every_page(STANDING).await?;
    page.open("").await?;
    let before = page.evaluate("window.before").await?;
    let after = page.evaluate("window.standing()").await?;
    ensure!(
        before == after
            && after
                .as_array()
                .is_some_and(|all| all.iter().all(serde_json::Value::is_string)),
        "before the program {before}, and then {after}"
    );
    let shifted = page.evaluate("window.shifted").await?.as_f64();
    ensure!(shifted.is_some_and(|s| s <= 0.02), "shifted by {shifted:?}");
    Ok(())
}

#[test]
fn what_is_seen_first_stands_before_the_program_on_a_phone() {
    browse("stands-before", PHONE, stands_before);
}

#[test]
fn what_is_seen_first_stands_before_the_program_on_a_desktop() {
    browse("stands-before", DESKTOP, stands_before);
}

/// On a quick line too: what has come before the first picture counts as what that waited for. A machine that is busy with
/// something else may paint late, but not every time.
#[test]
fn the_first_page_is_painted_before_the_program_has_come() {
    const TRIES: u32 = 3;
    const PAINTED: &str = "performance.getEntriesByName('first-contentful-paint')[0]?.startTime";
    const COME: &str = "performance.getEntriesByType('resource') \
        .find(({ name }) => /questions-[^/]*_bg\\.wasm$/.test(name))?.responseEnd";
    let mut painted_first = false;
    for _ in 0..TRIES {
        browse_alone("painted-first", PHONE, async |page| {
            page.open("").await?;
            page.is_true(&format!("{PAINTED} > 0 && {COME} > 0"))
                .await?;
            painted_first = page.evaluate(&format!("{PAINTED} < {COME}")).await? == true;
            Ok(())
        });
        if painted_first {
            return;
        }
    }
    panic!("the program came first in each of {TRIES} tries");
}

#[test]
fn a_start_before_the_program_has_come_is_not_lost() {
    browse("started-early", PHONE, async |page| {
        page.slow_network(SLOW).await?;
        page.before_every_page(
            "const start = () => { const link = document.querySelector('.early .button-main'); \
             if (!link) return requestAnimationFrame(start); link.click(); \
             window.told = getComputedStyle(document.querySelector('.on-its-way:target')).display; }; start();",
        )
        .await?;
        page.open("").await?;
        page.arrives_at("How much do you weigh?").await?;
        page.is_true("window.told === 'block'").await
    });
}

#[test]
fn a_script_that_slipped_in_does_not_run() {
    browse("inline-script", DESKTOP, async |page| {
        page.open("").await?;
        let ran = page
            .evaluate(
                "(() => { const script = document.createElement('script'); \
                 script.textContent = 'window.slippedIn = true'; \
                 document.head.append(script); return window.slippedIn === true; })()",
            )
            .await?;
        ensure!(ran == false, "the inline script ran");
        let console = page.take_console().await?;
        ensure!(
            console
                .iter()
                .any(|line| line.contains("Content Security Policy")),
            "the refusal is not in the console, so the console is not read: {console:?}"
        );
        Ok(())
    });
}

#[test]
fn a_picture_from_elsewhere_is_refused() {
    browse("foreign-picture", DESKTOP, async |page| {
        page.open("").await?;
        page.evaluate(
            "new Promise((done) => { const picture = new Image(); picture.onerror = done; \
                       picture.src = 'http://127.0.0.1:9/x.png'; }).then(() => true)",
        )
        .await?;
        let console = page.take_console().await?;
        ensure!(
            console.iter().any(|line| line.contains("img-src")),
            "nothing refused it: {console:?}"
        );
        // The refused address is in the log of requests too; it is not one the page asks for itself.
        page.requests().await.map(drop)
    });
}
