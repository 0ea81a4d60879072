//! The harness itself: that it finds what a person would mean, and that each of its demands can fail.

use std::panic::{AssertUnwindSafe, catch_unwind};

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, Page, browse};

/// A page with one of everything the helpers handle, put in place of the site's own content.
const FORM: &str = r#"
<main>
  <h1>A form</h1>
  <fieldset><legend>Front</legend>
    <label><input type="radio" name="f" value="s"> Soft</label>
    <label><input type="radio" name="f" value="h"> Hard</label>
  </fieldset>
  <fieldset><legend>Rear</legend>
    <label><input type="radio" name="r" value="s"> Soft</label>
    <label><input type="radio" name="r" value="h"> Hard</label>
  </fieldset>
  <p><label for="w">Weight</label> <input id="w" value="80" aria-invalid="true" aria-describedby="wc">
     <span id="wc">Too light to be true.</span></p>
  <p><label for="u">Unit</label> <select id="u"><option>kilograms</option><option>pounds</option></select></p>
  <p><button type="button" id="b">Continue</button> <button type="button" hidden>Hidden</button></p>
  <p id="out"></p>
</main>"#;

/// Shows some content in place of the page's own, and counts clicks on its button in `#out`.
async fn show(page: &Page, content: &str) -> Result<()> {
    page.open("").await?;
    let content = serde_json::Value::from(content);
    page.evaluate(&format!(
        "(() => {{ document.body.innerHTML = {content}; let clicks = 0; \
         document.getElementById('b')?.addEventListener('click', () => \
         {{ document.getElementById('out').textContent = 'clicks: ' + ++clicks; }}); }})()"
    ))
    .await
    .map(drop)
}

#[test]
fn things_are_found_by_what_is_written_on_them() {
    browse("harness-form", PHONE, async |page| {
        show(page, FORM).await?;
        page.arrives_at("A form").await?;

        page.choose_in("Rear", "Hard").await?;
        let chosen =
            "[...document.querySelectorAll('input:checked')].map((i) => i.name + i.value).join()";
        ensure!(
            page.evaluate(chosen).await? == "rh",
            "the rear one was meant"
        );
        page.choose("Soft").await?;
        ensure!(
            page.evaluate(chosen).await? == "fs,rh",
            "the first is taken"
        );
        ensure!(page.is_chosen("Soft").await?, "it was just chosen");

        page.fill("Weight", "92,5").await?;
        ensure!(page.value("Weight").await? == "92,5", "typing replaces");
        ensure!(page.complaint("Weight").await? == "Too light to be true.");
        page.fill("Weight", "").await?;
        ensure!(
            page.value("Weight").await?.is_empty(),
            "typing nothing empties"
        );

        page.pick("Unit", "pounds").await?;
        ensure!(page.value("Unit").await? == "pounds");

        page.continue_().await?;
        page.sees("clicks: 1").await
    });
}

/// Asserts that a visit fails, for a reason that contains `reason`.
#[track_caller]
fn fails(name: &str, reason: &str, walk: impl AsyncFnOnce(&Page) -> Result<()>) {
    let outcome = catch_unwind(AssertUnwindSafe(|| browse(name, DESKTOP, walk)));
    let panic = outcome.expect_err("the visit should have failed");
    let message = panic
        .downcast_ref::<String>()
        .expect("browse panics with a text");
    assert!(
        message.contains(reason),
        "failed for another reason: {message}"
    );
    assert!(
        message.contains("heading"),
        "the account is missing: {message}"
    );
}

#[test]
fn what_is_hidden_or_missing_is_not_found() {
    fails(
        "harness-hidden",
        "a control called \"Hidden\"",
        async |page| {
            show(page, FORM).await?;
            page.click("Hidden").await
        },
    );
}

#[test]
fn an_error_in_the_console_fails_the_visit() {
    fails(
        "harness-console",
        "the console is not clean",
        async |page| {
            page.open("").await?;
            page.evaluate("console.error('something broke')")
                .await
                .map(drop)
        },
    );
}

#[test]
fn a_request_to_another_origin_fails_the_visit() {
    fails("harness-foreign", "requests left this site", async |page| {
        // The policy would refuse it before it is made; without the policy the rule must still hold.
        let off = serde_json::json!({ "enabled": true });
        page.browser()
            .cdp()
            .send_raw("Page.setBypassCSP", off)
            .await?;
        page.open("").await?;
        page.evaluate("fetch('http://127.0.0.1:9/', { mode: 'no-cors' }).catch(() => {})")
            .await?;
        page.take_console().await.map(drop)
    });
}

#[test]
fn a_failed_assertion_inside_a_walk_fails_the_visit() {
    fails("harness-panic", "the walk's own words", async |page| {
        page.open("").await?;
        assert_eq!(1, 2, "the walk's own words");
        Ok(())
    });
}

#[test]
fn accessibility_faults_are_found() {
    for (content, rule) in [
        (
            "<main><h1>Title</h1><button></button></main>",
            "button-name",
        ),
        ("<main><h1 class=\"x\">Title</h1></main>", "color-contrast"),
        // Too short for axe-core to judge, though it measures it.
        (
            "<main><h1>Title</h1><p class=\"x\">7</p></main>",
            "color-contrast",
        ),
        // Enough for level AA, too little for AAA.
        (
            "<main><h1>Title</h1><p class=\"y\">Some more words</p></main>",
            "color-contrast-enhanced",
        ),
        (
            "<main><h1>Title</h1><button class=\"s\">a</button><button class=\"s\">b</button></main>",
            "target-size",
        ),
    ] {
        browse("harness-axe", DESKTOP, async |page| {
            show(page, content).await?;
            // Set through the object model, because the policy allows no inline style.
            page.evaluate(
                "document.querySelectorAll('.x').forEach((n) => { n.style.color = '#999'; }), \
                 document.querySelectorAll('.y').forEach((n) => { n.style.color = '#666'; }), \
                 document.querySelectorAll('.s').forEach((n) => { \
                 n.style.cssText = 'width:12px;height:12px;padding:0;border:0;font-size:8px'; })",
            )
            .await?;
            let found = page
                .accessible()
                .await
                .err()
                .context("no fault was found")?;
            ensure!(
                format!("{found:#}").contains(rule),
                "{rule} expected: {found:#}"
            );
            Ok(())
        });
    }
}

#[test]
fn an_empty_page_does_not_pass_as_accessible() {
    browse("harness-empty", DESKTOP, async |page| {
        show(page, "").await?;
        ensure!(page.accessible().await.is_err(), "an empty page passed");
        Ok(())
    });
}

#[test]
fn what_sticks_out_sideways_is_named() {
    for screen in [PHONE, DESKTOP] {
        browse("harness-wide", screen, async |page| {
            show(page, "<main><h1>Title</h1><p id=\"wide\">wide</p></main>").await?;
            page.fits().await?;
            page.evaluate("document.getElementById('wide').style.width = '1400px'")
                .await?;
            let found = page.fits().await.err().context("nothing was found")?;
            ensure!(
                found.to_string().contains("id=\\\"wide\\\""),
                "not named: {found}"
            );
            // On the screen, but out of its own box and over its neighbour.
            page.evaluate(
                "document.getElementById('wide').style.cssText = 'width:2rem;white-space:nowrap', \
                 document.getElementById('wide').textContent = '52.6 N/mm'",
            )
            .await?;
            let found = page.fits().await.err().context("nothing was found")?;
            ensure!(
                found.to_string().contains("52.6 N/mm"),
                "not named: {found}"
            );
            Ok(())
        });
    }
}

#[test]
fn what_is_too_small_to_be_pressed_is_named() {
    browse("harness-small", PHONE, async |page| {
        show(
            page,
            "<main><h1>Title</h1><p>Words around <a href=\"#/\">a link</a> in a sentence.</p>\
             <button id=\"b\">Go</button></main>",
        )
        .await?;
        let size = async |css: &str| {
            page.evaluate(&format!(
                "document.getElementById('b').style.cssText = 'box-sizing:border-box;{css}'"
            ))
            .await
        };
        size("width:48px;height:48px").await?;
        page.targets_are_large().await?;
        size("width:48px;height:44px").await?;
        let found = page.targets_are_large().await;
        let found = found.err().context("44 px passed as 48")?;
        ensure!(found.to_string().contains("48.0 x 44.0"), "{found}");
        show(page, "<main><h1>Title</h1></main>").await?;
        ensure!(
            page.targets_are_large().await.is_err(),
            "a page without targets passed"
        );
        Ok(())
    });
}

#[test]
fn a_focus_under_something_else_is_named() {
    browse("harness-focus", PHONE, async |page| {
        show(
            page,
            "<main><h1>Title</h1><button id=\"b\">Go</button><div id=\"lid\"></div></main>",
        )
        .await?;
        page.focus_is_seen().await?;
        page.evaluate(
            "document.getElementById('lid').style.cssText = 'position:fixed;inset:0;background:white'",
        )
        .await?;
        let found = page.focus_is_seen().await;
        let found = found.err().context("a covered button passed")?;
        ensure!(found.to_string().contains("lid"), "{found}");
        Ok(())
    });
}

#[test]
fn a_faint_chart_and_one_in_old_colours_are_named() {
    browse("harness-chart", PHONE, async |page| {
        show(
            page,
            "<main><h1>Title</h1><canvas class=\"picture-canvas\" width=\"100\" height=\"100\" \
             aria-label=\"force\"></canvas></main>",
        )
        .await?;
        let paint = async |paper: &str, curve: &str| {
            page.evaluate(&format!(
                "(() => {{ const pen = document.querySelector('canvas').getContext('2d'); \
                 pen.fillStyle = '{paper}'; pen.fillRect(0, 0, 100, 100); \
                 pen.fillStyle = '{curve}'; pen.fillRect(0, 50, 100, 2); }})()"
            ))
            .await
        };
        let gas = page.property("--plot-gas").await?;
        paint("white", &gas).await?;
        page.charts_stand_out().await?;
        paint("black", &gas).await?;
        ensure!(
            page.charts_stand_out().await.is_err(),
            "a black ground passed"
        );
        paint("white", "white").await?;
        ensure!(page.charts_stand_out().await.is_err(), "no curve passed");
        paint("white", &gas).await?;
        page.evaluate("document.querySelector('canvas').style.setProperty('--plot-mark', '#bbb')")
            .await?;
        let found = page.charts_stand_out().await;
        let found = found.err().context("a faint line passed")?;
        ensure!(found.to_string().contains("--plot-mark"), "{found}");
        Ok(())
    });
}
