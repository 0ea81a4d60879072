//! What every walk at the track does.

use anyhow::Result;
use sagwright_tests_browser::Page;
use serde_json::json;

/// An invented rider whose bike packs down with the rebound closed too far, and two things to judge a lap by.
pub const RIDER: &str = "Enduro without linkage";
pub const PACKS: &str = "It rides lower and lower";
pub const JOLTS: &str = "Rocks and square edges";
pub const RIDDEN: &str = "I have ridden it";
pub const JUDGING: &str = "How was it, against the lap before?";

/// Every log on the device, in the order kept, as text.
pub const LOGS: &str = "new Promise((done) => { \
    const opening = indexedDB.open('sagwright'); \
    opening.onsuccess = () => { \
        const database = opening.result; \
        const all = database.transaction('logs').objectStore('logs').getAll(); \
        all.onsuccess = () => { done(all.result); database.close(); }; }; \
    opening.onerror = () => done([]); })";

/// Opens the log of the rider, with a change proposed.
pub async fn at_the_track(page: &Page) -> Result<()> {
    page.open_example(RIDER).await?;
    page.open("#/track").await?;
    page.is_shown(".lap-what").await
}

/// Waits until the log that was kept last holds a text.
pub async fn is_kept(page: &Page, text: &str) -> Result<()> {
    let text = json!(text);
    // The answers stand in it as they are kept elsewhere: a text within a text.
    page.is_true(&format!(
        "{LOGS}.then((logs) => (logs.at(-1) ?? '').replaceAll('\\\\', '').includes({text}))"
    ))
    .await
}

/// Touches what a rider would: a button, a link or an answer, the last one on the page that is called so.
pub async fn tap(page: &Page, text: &str, place: usize) -> Result<()> {
    let name = json!(text);
    page.is_true(&format!(
        "(() => {{ const all = [...document.querySelectorAll('main button, main a, main label')] \
           .filter((node) => node.innerText.replace(/\\s+/g, ' ').trim().startsWith({name})); \
         window.toTap = all[{place}]; window.toTap?.scrollIntoView({{ block: 'center', behavior: 'instant' }}); \
         return window.toTap !== undefined; }})()"
    ))
    .await?;
    let middle = page
        .evaluate(
            "(() => { const box = window.toTap.getBoundingClientRect(); \
             return { x: box.x + box.width / 2, y: box.y + box.height / 2 }; })()",
        )
        .await?;
    let cdp = page.browser().cdp();
    let touch =
        |kind: &str, points: serde_json::Value| json!({ "type": kind, "touchPoints": points });
    cdp.send_raw(
        "Input.dispatchTouchEvent",
        touch("touchStart", json!([middle])),
    )
    .await?;
    cdp.send_raw("Input.dispatchTouchEvent", touch("touchEnd", json!([])))
        .await?;
    Ok(())
}
