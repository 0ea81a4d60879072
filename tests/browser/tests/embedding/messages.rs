//! Messages that nobody should heed, to either side of the line.

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{PHONE, Page, browse};
use serde_json::{Value, json};

use crate::around::Around;

/// Writes down every message that the page around gets, before anything of the page runs.
const LISTEN: &str = "if (window === top) { window.heard = []; \
    addEventListener('message', (event) => heard.push([event.data, event.origin])); }";

/// The first message of a kind that the page around got, as it came.
async fn first(page: &Page, kind: &str) -> Result<Value> {
    let found =
        format!("heard.map(([data]) => data).find((data) => data.includes('\"kind\":\"{kind}\"'))");
    page.is_true(&format!("{found} !== undefined")).await?;
    let text = page.evaluate(&found).await?;
    Ok(serde_json::from_str(text.as_str().context("a text")?)?)
}

fn text(message: &Value) -> Value {
    Value::String(message.to_string())
}

#[test]
fn the_page_in_the_frame_heeds_only_new_whole_messages_of_the_page_around() {
    browse("embedding-inside", PHONE, async |page| {
        page.before_every_page(LISTEN).await?;
        let around = Around::open(page, "").await?;
        page.sees("Ready, in the language en.").await?;
        let hello = first(page, "hello").await?;
        let look = |number: u64, corner: &str| {
            json!({ "app": "sagwright", "version": 1, "kind": "look", "frame": hello["frame"],
                "number": number, "look": { "corner": corner } })
        };
        let changed = |name: &str, value: Value| {
            let mut message = look(50, "23px");
            message[name] = value;
            message
        };
        for (message, reason) in [
            (
                text(&look(1, "23px")),
                "a message of that number was here before",
            ),
            (
                text(&changed("frame", json!("another"))),
                "it is for a page that is gone",
            ),
            (
                text(&changed("version", json!(2))),
                "it is of another version",
            ),
            (
                text(&changed("app", json!("other"))),
                "it is no message of Sagwright",
            ),
            (text(&changed("kind", json!("run"))), "its kind is unknown"),
            (
                text(&changed("look", json!({ "corner": [23] }))),
                "something in it is missing or wrong",
            ),
            (
                text(&changed("more", json!("x".repeat(5000)))),
                "it is too long",
            ),
            (json!({ "app": "sagwright" }), "it is no text"),
            (json!("{{"), "it is no message of Sagwright"),
        ] {
            around.send(&message).await?;
            around.logged(reason).await?;
        }
        // Another window at the same origin as the page around is not the page around.
        let script = "const other = document.createElement('iframe'); other.id = 'other'; document.body.append(other);";
        page.browser().execute(script, vec![]).await?;
        let other = page
            .browser()
            .execute("return document.querySelector('#other')", vec![])
            .await?;
        other.element()?.enter_frame().await?;
        let script = "parent.document.querySelector('sagwright-intake').shadowRoot.querySelector('iframe').contentWindow.postMessage(arguments[0], '*')";
        page.browser()
            .execute(script, vec![text(&look(60, "23px"))])
            .await?;
        around
            .logged("it came from another window than the page around")
            .await?;

        // None of it was worn, and none of it used up a number.
        around.inside(0).await?;
        let corner = "getComputedStyle(document.documentElement).getPropertyValue('--corner')";
        ensure!(page.evaluate(corner).await? == "10px");
        around.send(&text(&look(2, "3px"))).await?;
        around.inside(0).await?;
        page.is_true(&format!("{corner} === '3px'")).await?;
        around.done().await
    });
}

#[test]
fn the_page_around_heeds_only_new_whole_messages_of_the_page_in_the_frame() {
    browse("embedding-outside", PHONE, async |page| {
        page.before_every_page(LISTEN).await?;
        let around = Around::open(page, "").await?;
        page.sees("Ready, in the language en.").await?;
        let hello = first(page, "hello").await?;
        first(page, "height").await?;
        // Everything but the first word names the one who is to get it, so it came.
        let origins = page
            .evaluate("[...new Set(heard.map(([, origin]) => origin))]")
            .await?;
        ensure!(
            origins == json!([around.host.site.trim_end_matches('/')]),
            "{origins}"
        );
        let step = |number: u64| {
            json!({ "app": "sagwright", "version": 1, "kind": "step", "frame": hello["frame"],
                "number": number, "step": "forged" })
        };
        let changed = |name: &str, value: Value| {
            let mut message = step(500);
            message[name] = value;
            message
        };
        for (message, reason) in [
            (text(&step(2)), "a message of that number was here before"),
            (text(&hello), "a message of that number was here before"),
            (
                text(&changed("frame", json!("another"))),
                "it is from a page that is gone",
            ),
            (
                text(&changed("version", json!(7))),
                "it is of version 7 and not 1",
            ),
            (
                text(&changed("app", json!("other"))),
                "it is no message of Sagwright",
            ),
            (text(&changed("kind", json!("run"))), "its kind is unknown"),
            (
                text(&changed("kind", json!("constructor"))),
                "its kind is unknown",
            ),
            (json!({ "app": "sagwright" }), "it is no text"),
            (json!("{{"), "it is no JSON"),
        ] {
            around.inside(0).await?;
            let script = "parent.postMessage(arguments[0], '*')";
            page.browser().execute(script, vec![message]).await?;
            around.outside().await?;
            around.logged(reason).await?;
        }
        around.inside(0).await?;
        page.browser()
            .execute("parent.postMessage(' '.repeat(4_000_001), '*')", vec![])
            .await?;
        let wrong = text(&{
            let mut message = step(501);
            message["step"] = json!("<img src=x>");
            message
        });
        page.browser()
            .execute("parent.postMessage(arguments[0], '*')", vec![wrong])
            .await?;
        around.outside().await?;
        around.logged("it is too long").await?;
        around.logged("something in it is missing or wrong").await?;
        // From the page itself and from no frame of ours.
        let script = "postMessage(arguments[0], '*')";
        page.browser()
            .execute(script, vec![text(&step(600))])
            .await?;
        around
            .logged("it came from a window that is not ours")
            .await?;
        let told = page
            .evaluate("document.querySelector('#told').innerText")
            .await?;
        ensure!(
            !told.as_str().context("a text")?.contains("forged"),
            "{told}"
        );

        // The frame may go nowhere else.
        around.inside(0).await?;
        let script = "location.replace('data:text/html,gone')";
        page.browser().execute(script, vec![]).await.ok();
        around.outside().await?;
        around.done_but("Framing '' violates").await
    });
}
