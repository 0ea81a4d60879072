//! Places where less is allowed: frames without an origin, browsers that keep nothing, pages that may not frame the site,
//! pages without the script.

use anyhow::{Context as _, ensure};
use sagwright_tests_browser::{DESKTOP, PHONE, browse};
use serde_json::json;

use crate::around::Around;

#[test]
fn without_an_origin_of_its_own_the_frame_works_in_memory_up_to_the_ridden_advice() {
    browse("embedding-nameless", PHONE, async |page| {
        let around = Around::open(page, "").await?;
        page.sees("Ready, in the language en.").await?;
        around.remove_first().await?;
        let attributes = [
            ("workshop", "demo-workshop.json"),
            ("sandbox", "allow-scripts allow-forms"),
        ];
        around.put("bare", &attributes).await?;
        around.told("bare", "ready", "lang", "en").await?;
        around.fits_its_content().await?;
        around.inside(0).await?;
        ensure!(page.evaluate("window.origin").await? == "null");
        page.sees("This browser does not let Sagwright keep your answers")
            .await?;
        page.click("Start").await?;
        page.measure("How much do you weigh?", &[("Rider weight", "82")])
            .await?;
        page.knows_nothing_else().await?;
        page.arrives_at("invented) also asks").await?;
        page.continue_().await?;
        page.arrives_at("Check your answers").await?;
        page.sees("82 kg").await?;
        page.click("Get my advice").await?;
        page.is_shown(".causes").await?;
        // The rides run in a worker, which a frame without an origin may not make of another site's script.
        page.sees("times over your ground").await?;
        page.accessible().await?;
        around.outside().await?;
        around.told("bare", "step", "step", "advice").await?;
        around.fits_its_content().await?;
        page.picture("embedding-nameless").await?;
        // Another language is fetched from the site, which is another one to this frame.
        around.inside(0).await?;
        page.pick("Language", "Français").await?;
        page.is_true("document.documentElement.lang === 'fr'")
            .await?;
        around.done().await
    });
}

#[test]
fn where_the_browser_keeps_nothing_the_frame_works_all_the_same() {
    browse("embedding-blocked", PHONE, async |page| {
        page.before_every_page(
            "const no = () => { throw new DOMException('no', 'SecurityError'); }; \
             Object.defineProperty(window, 'localStorage', { get: no }); \
             IDBFactory.prototype.open = no; \
             Object.defineProperty(Navigator.prototype, 'serviceWorker', { get: no });",
        )
        .await?;
        let around = Around::open(page, "").await?;
        page.sees("Ready, in the language en.").await?;
        around.inside(0).await?;
        page.sees("This browser does not let Sagwright keep your answers")
            .await?;
        page.click("Try an example rider").await?;
        page.click("Freshly serviced gas fork").await?;
        page.arrives_at("Check your answers").await?;
        page.click("Get my advice").await?;
        page.is_shown(".causes").await?;
        around.outside().await?;
        page.sees("The rider is at: advice.").await?;
        around.done().await
    });
}

#[test]
fn a_page_that_may_not_frame_the_site_shows_its_link_instead() {
    browse("embedding-foreign", DESKTOP, async |page| {
        let around = Around::open(page, "").await?;
        page.sees("Ready, in the language en.").await?;
        // The same page under another name is another origin, which the site's policy does not name.
        let foreign = around.host.address.replace("127.0.0.1", "localhost");
        page.browser().goto(&foreign).await?;
        page.sees("Something went wrong: no-answer.").await?;
        page.sees("Tell us on this page").await?;
        around.logged("frame-ancestors").await?;
        page.browser().goto(&around.host.address).await?;
        around.done_at(&foreign, "frame-ancestors").await
    });
}

#[test]
fn without_the_script_a_plain_link_leads_to_the_workshops_questions() {
    browse("embedding-link", PHONE, async |page| {
        let blocked = json!({ "urls": ["*/sagwright-intake-*"] });
        let cdp = page.browser().cdp();
        cdp.send_raw("Network.enable", json!({})).await?;
        cdp.send_raw("Network.setBlockedURLs", blocked).await?;
        let around = Around::open(page, "").await?;
        page.click("How does your bike ride?").await?;
        page.is_shown(".skip").await?;
        page.sees("For Demonstration workshop (invented)").await?;
        page.is_true("document.querySelector('.wordmark').checkVisibility()")
            .await?;
        page.click("Try an example rider").await?;
        page.click("Freshly serviced gas fork").await?;
        page.arrives_at("Check your answers").await?;
        page.click("Get my advice").await?;
        page.is_shown(".take-along").await?;
        // The name of the workshop's file stays in the address, and in the link that is made of it.
        let address = page.evaluate("location.search").await?;
        ensure!(address == "?workshop=demo-workshop.json", "{address}");
        page.is_true("document.querySelector('#taking-link').value.includes('?workshop=demo-workshop.json#/link/')")
            .await?;
        around.done().await
    });
}

#[test]
fn the_script_is_refused_where_it_is_not_the_one_the_page_names() {
    browse("embedding-integrity", PHONE, async |page| {
        let around = Around::open(page, "").await?;
        page.sees("Ready, in the language en.").await?;
        let source = page
            .evaluate("document.querySelector('script[integrity]').src")
            .await?;
        let source = source.as_str().context("an address")?;
        let script = "const told = arguments[arguments.length - 1]; \
            const script = document.createElement('script'); script.type = 'module'; script.crossOrigin = ''; \
            script.integrity = 'sha384-' + 'A'.repeat(64); script.src = arguments[0] + '?again'; \
            script.onerror = () => told('refused'); script.onload = () => told('run'); document.head.append(script);";
        let told = page
            .browser()
            .execute_async(script, vec![json!(source)])
            .await?;
        ensure!(told.json() == "refused", "{:?}", told.json());
        around.done_but("integrity").await
    });
}
