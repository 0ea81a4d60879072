//! Without a signal, and over newer builds: the site opens, computes, and loses no answer.

use std::fs;
use std::path::Path;

use anyhow::{Context as _, Result, ensure};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD as BASE64;
use sagwright_tests_browser::{DESKTOP, KEPT, PHONE, Page, browse, browse_alone, dist};
use sha2::{Digest as _, Sha384};

const NEWER: &str = "A newer Sagwright is on this device";

/// A copy of the site under test, told apart by a word in its page. With `whole` it is a build as the host makes it;
/// else its list says other things of the page than the page holds, as when the owner's upload broke off.
fn build(word: &str, whole: bool) -> Result<tempfile::TempDir> {
    let folder = tempfile::tempdir()?;
    for entry in fs::read_dir(dist()?)? {
        let entry = entry?;
        if entry.file_type()?.is_file() {
            fs::copy(entry.path(), folder.path().join(entry.file_name()))?;
        }
    }
    let (page, worker) = (
        folder.path().join("index.html"),
        folder.path().join("sw.js"),
    );
    let before = fs::read_to_string(&page)?;
    let after = before.replace("<html ", &format!("<html data-build=\"{word}\" "));
    let integrity = |text: &str| format!("sha384-{}", BASE64.encode(Sha384::digest(text)));
    let listed = if whole { &after } else { "other" };
    let list = fs::read_to_string(&worker)?;
    let changed = list.replace(&integrity(&before), &integrity(listed));
    ensure!(changed != list, "the page is not in the list of the worker");
    let changed = changed.replacen("const BUILD = \"", &format!("const BUILD = \"{word}"), 1);
    fs::write(&worker, changed)?;
    fs::write(&page, after)?;
    Ok(folder)
}

/// Has the browser look for a newer build, as it does on each visit and once a day. What it finds is told by the
/// page, so a failure is swallowed here, and so is the registration: the driver cannot hand it over.
async fn look_for_newer(page: &Page) -> Result<()> {
    page.evaluate(
        "navigator.serviceWorker.getRegistration().then((found) => found.update()).then(() => null, () => null)",
    )
    .await
    .map(drop)
}

/// The builds that the device keeps, in the order of their arrival.
async fn builds(page: &Page) -> Result<Vec<String>> {
    let names = page.evaluate("caches.keys()").await?;
    let names = names.as_array().context("a list")?;
    let build = |name: &serde_json::Value| name.as_str()?.rsplit(' ').next().map(str::to_owned);
    Ok(names.iter().filter_map(build).collect())
}

#[test]
fn the_second_visit_opens_and_rides_without_a_network() {
    browse("no-signal", PHONE, async |page| {
        page.is_kept_on_the_device().await?;
        page.lose_signal();
        page.reload().await?;
        page.sees(KEPT).await?;
        page.advice_of("Freshly serviced gas fork").await?;
        page.is_shown(".card-number").await?;
        page.sees("times over your ground").await?;
        page.reload().await?;
        page.arrives_at("Your advice").await?;
        // Looking for a newer build fails without a network, and the browser says so in the console.
        let console = page.take_console().await?;
        let other: Vec<_> = console
            .iter()
            .filter(|line| !line.contains("sw.js"))
            .collect();
        ensure!(other.is_empty(), "{other:?}");
        Ok(())
    });
}

/// How long a rider waits for the program on a page that is loaded anew: the best of some, as the machine may be busy
/// with something else at any one of them.
#[test]
fn the_second_visit_is_ready_within_a_second() {
    const READY: &str = "window.ready = new Promise((done) => new MutationObserver(() => { \
         if (document.querySelector('.skip')) done(performance.now()); }) \
         .observe(document, { childList: true, subtree: true }));";
    browse_alone("ready", PHONE, async |page| {
        page.before_every_page(READY).await?;
        page.is_kept_on_the_device().await?;
        page.lose_signal();
        let mut best_ms = f64::INFINITY;
        for _ in 0..5 {
            page.reload().await?;
            let ready_ms = page.evaluate("window.ready").await?.as_f64();
            best_ms = best_ms.min(ready_ms.context("a time")?);
        }
        println!("ready after {best_ms:.0} ms");
        ensure!(best_ms < 1000.0, "ready after {best_ms:.0} ms");
        page.take_console().await.map(drop)
    });
}

#[test]
fn the_site_can_be_installed() {
    browse("installable", PHONE, async |page| {
        page.is_kept_on_the_device().await?;
        let cdp = page.browser().cdp();
        let manifest = cdp
            .send_raw("Page.getAppManifest", serde_json::json!({}))
            .await?;
        let errors = manifest["errors"].as_array().context("no manifest")?;
        ensure!(errors.is_empty(), "{errors:?}");
        ensure!(
            manifest["data"]
                .as_str()
                .is_some_and(|data| data.contains("Sagwright"))
        );
        let found = cdp
            .send_raw("Page.getInstallabilityErrors", serde_json::json!({}))
            .await?;
        let errors = found["installabilityErrors"].as_array().context("a list")?;
        ensure!(errors.is_empty(), "{errors:?}");
        Ok(())
    });
}

#[test]
fn nothing_but_the_site_itself_is_kept_and_all_of_it() {
    browse("kept-files", DESKTOP, async |page| {
        page.is_kept_on_the_device().await?;
        let kept = page
            .evaluate(
                "caches.keys().then((names) => caches.open(names[0])).then((cache) => cache.keys()) \
                 .then((asked) => asked.map(({ url }) => url))",
            )
            .await?;
        let kept = kept.as_array().context("a list")?.clone();
        let address = page.address();
        for entry in fs::read_dir(dist()?)? {
            let name = entry?.file_name().to_string_lossy().into_owned();
            let url = match name.as_str() {
                "index.html" => address.to_owned(),
                name => format!("{address}{name}"),
            };
            // What only a workshop or its page needs is no rider's to download, nor is the drawing that icons are made
            // from, nor a language that is not spoken.
            let others = ["workshop", "sagwright-intake-", "icon-maskable-", "words-"];
            let wanted = !["_headers", "sw.js"].contains(&name.as_str())
                && !others.iter().any(|beginning| name.starts_with(beginning))
                && Path::new(&name)
                    .extension()
                    .is_none_or(|kind| kind != "png");
            ensure!(
                kept.contains(&url.clone().into()) == wanted,
                "{url} is wrongly kept or missing among {kept:#?}"
            );
        }
        Ok(())
    });
}

#[test]
fn a_language_spoken_once_is_there_without_a_network() {
    browse("kept-language", PHONE, async |page| {
        page.is_kept_on_the_device().await?;
        page.pick("Language", "Deutsch").await?;
        page.arrives_at("Finde heraus").await?;
        // The advice's sentences follow once the page speaks.
        page.is_true(
            "caches.keys() \
             .then((names) => Promise.all(names.map((name) => caches.open(name)))) \
             .then((caches) => Promise.all(caches.map((cache) => cache.keys()))) \
             .then((kept) => kept.flat().some(({ url }) => url.includes('words-de-advice')))",
        )
        .await?;
        page.lose_signal();
        page.reload().await?;
        page.arrives_at("Finde heraus").await
    });
}

#[test]
fn a_newer_build_is_offered_while_answering_and_loses_nothing() {
    let newer = build("newer", true).expect("the site can be copied");
    let newest = build("newest", true).expect("the site can be copied");
    browse("newer", PHONE, async |page| {
        page.is_kept_on_the_device().await?;
        let first = builds(page).await?;
        page.open("#/rider-weight").await?;
        page.fill("Rider weight", "84,").await?;
        page.evaluate("window.same = true").await?;

        page.serve(newer.path())?;
        look_for_newer(page).await?;
        page.sees(NEWER).await?;
        page.accessible().await?;
        page.fits().await?;
        page.picture("newer").await?;
        // Nothing is forced: the page is the same, and goes on.
        ensure!(page.evaluate("window.same").await? == true);
        page.fill("Rider weight", "84,5").await?;

        page.click("Use it now").await?;
        page.is_true("document.documentElement.dataset.build === 'newer'")
            .await?;
        page.is_shown(".skip").await?;
        ensure!(page.value("Rider weight").await? == "84,5");
        ensure!(!page.text().await?.contains(NEWER), "offered twice");

        // The build before stays for other tabs; with the next one it goes.
        ensure!(builds(page).await?.len() == 2);
        page.serve(newest.path())?;
        look_for_newer(page).await?;
        page.click("Use it now").await?;
        page.is_true("document.documentElement.dataset.build === 'newest'")
            .await?;
        page.is_true("caches.keys().then((names) => names.length === 2)")
            .await?;
        ensure!(!builds(page).await?.contains(&first[0]));
        page.lose_signal();
        page.reload().await?;
        ensure!(page.value("Rider weight").await? == "84,5");
        let console = page.take_console().await?;
        ensure!(
            console.iter().all(|line| line.contains("sw.js")),
            "{console:?}"
        );
        Ok(())
    });
}

#[test]
fn a_newer_build_that_did_not_arrive_whole_leaves_the_old_one_at_work() {
    let broken = build("broken", false).expect("the site can be copied");
    browse("broken-build", DESKTOP, async |page| {
        page.is_kept_on_the_device().await?;
        let before = builds(page).await?;
        page.serve(broken.path())?;
        let end = page
            .evaluate(
                "navigator.serviceWorker.getRegistration().then((found) => found.update()) \
                 .then(({ installing }) => new Promise((done) => { \
                 installing.onstatechange = () => done(installing.state); }))",
            )
            .await?;
        ensure!(end == "redundant", "the broken build became {end}");
        ensure!(
            !page.text().await?.contains(NEWER),
            "a broken build is offered"
        );
        ensure!(
            builds(page).await? == before,
            "{before:?} became {:?}",
            builds(page).await?
        );
        page.lose_signal();
        page.reload().await?;
        page.sees(KEPT).await?;
        let console = page.take_console().await?;
        ensure!(
            console.iter().all(|line| line.contains("sw.js")),
            "{console:?}"
        );
        Ok(())
    });
}

#[test]
fn a_newer_build_taken_in_one_tab_does_not_disturb_the_other() {
    let newer = build("newer", true).expect("the site can be copied");
    browse("newer-two-tabs", DESKTOP, async |page| {
        page.is_kept_on_the_device().await?;
        page.evaluate("window.same = true").await?;
        page.open_tab("#/").await?;
        page.serve(newer.path())?;
        look_for_newer(page).await?;
        page.click("Use it now").await?;
        page.is_true("document.documentElement.dataset.build === 'newer'")
            .await?;
        page.turn_to(0).await?;
        page.sees("Sagwright was renewed on another page").await?;
        ensure!(
            page.evaluate("window.same").await? == true,
            "it was loaded anew"
        );
        // Its own files are still there for it: the worker of the rides starts from one.
        page.lose_signal();
        page.click("Try an example rider").await?;
        page.click("Freshly serviced gas fork").await?;
        page.click("Get my advice").await?;
        page.sees("times over your ground").await
    });
}

#[test]
fn a_newer_build_taken_in_the_middle_of_a_lap_goes_on_with_it() {
    let newer = build("newer", true).expect("the site can be copied");
    browse("newer-lap", PHONE, async |page| {
        page.is_kept_on_the_device().await?;
        page.open_example("Enduro without linkage").await?;
        page.open("#/track").await?;
        page.click("I have ridden it").await?;
        page.choose_in("It rides lower and lower", "Better").await?;
        page.serve(newer.path())?;
        look_for_newer(page).await?;
        page.click("Use it now").await?;
        page.is_true("document.documentElement.dataset.build === 'newer'")
            .await?;
        page.sees("How was it, against the lap before?").await?;
        ensure!(page.is_chosen("Better").await?, "the answer is lost");
        page.click("Keep it").await?;
        page.sees("Lap 2: change this one thing").await
    });
}

#[test]
fn it_works_where_nothing_can_be_kept() {
    browse("nothing-kept", PHONE, async |page| {
        page.before_every_page(
            "for (const [owner, name] of [[Navigator.prototype, 'serviceWorker'], [window, 'localStorage'], \
             [Navigator.prototype, 'storage']]) \
             Object.defineProperty(owner, name, { get() { throw new DOMException('no', 'SecurityError'); } });",
        )
        .await?;
        page.open("#/").await?;
        page.sees("does not let Sagwright keep your answers")
            .await?;
        page.accessible().await?;
        page.click("Try an example rider").await?;
        page.click("Freshly serviced gas fork").await?;
        page.click("Get my advice").await?;
        page.is_shown(".card-number").await?;
        ensure!(!page.text().await?.contains(KEPT));
        Ok(())
    });
}
