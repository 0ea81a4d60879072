//! The accessibility rules of axe-core, run on the page as it stands.

use anyhow::{Context as _, Result, bail};
use serde_json::{Value, json};
use thirtyfour::WebDriver;

use crate::site::root;

/// Levels A and AA of WCAG 2.0 to 2.2. The contrast of level AAA (7:1) is asked for as well: people read this outdoors.
const TAGS: [&str; 5] = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
/// The rule that only a page with text can pass; an empty page passes several of the others.
const NEEDS_TEXT: &str = "color-contrast";

/// Runs the rules; an error lists each broken one with the elements that break it.
pub async fn check(driver: &WebDriver) -> Result<()> {
    let path = root().join("tests/browser/node_modules/axe-core/axe.min.js");
    let axe = std::fs::read_to_string(&path).with_context(|| {
        format!(
            "{} is missing; `tests/run prepare` installs it",
            path.display()
        )
    })?;
    driver.execute(axe, vec![]).await?;
    let options = json!({
        "runOnly": { "type": "tag", "values": TAGS },
        // Off unless asked for by name.
        "rules": {
            "target-size": { "enabled": true },
            "color-contrast": { "enabled": true },
            "color-contrast-enhanced": { "enabled": true },
        },
        "resultTypes": ["violations", "passes", "incomplete"],
    });
    let script = "const done = arguments[1]; \
        axe.run(document, arguments[0]).then(done, (error) => done({ error: String(error) }));";
    let result = driver.execute_async(script, vec![options]).await?;
    let result = result.json();
    if let Some(error) = result["error"].as_str() {
        bail!("axe-core failed: {error}");
    }
    let list = |kind: &str| result[kind].as_array().cloned().unwrap_or_default();
    let mut broken: Vec<String> = list("violations").iter().map(describe).collect();
    broken.extend(
        list("incomplete")
            .iter()
            .filter(|rule| too_faint(rule))
            .map(describe),
    );
    if !broken.is_empty() {
        bail!("accessibility rules broken:\n{}", broken.join("\n"));
    }
    if !list("passes").iter().any(|rule| rule["id"] == NEEDS_TEXT) {
        bail!("no text on the page could be checked: is it empty?");
    }
    Ok(())
}

/// Whether a contrast that axe-core measured but would not judge, as of a single letter, is too low.
fn too_faint(rule: &Value) -> bool {
    let nodes = rule["nodes"].as_array().into_iter().flatten();
    let measured = nodes.flat_map(|node| node["any"].as_array().into_iter().flatten());
    measured.map(|any| &any["data"]).any(|data| {
        // Written as "4.5:1".
        let needed = data["expectedContrastRatio"].as_str().unwrap_or_default();
        let needed = needed.trim_end_matches(":1").parse::<f64>().ok();
        matches!((data["contrastRatio"].as_f64(), needed), (Some(is), Some(needed)) if is > 0.0 && is < needed)
    })
}

/// One broken rule: its name, what it asks, and the elements with what is wrong at each.
fn describe(rule: &Value) -> String {
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    let nodes = rule["nodes"].as_array().cloned().unwrap_or_default();
    let nodes = nodes.iter().map(|node| {
        let why = text(&node["failureSummary"]).replace('\n', " ");
        format!("    {} {}", text(&node["html"]), why)
    });
    let nodes = nodes.collect::<Vec<_>>().join("\n");
    format!("  {}: {}\n{nodes}", text(&rule["id"]), text(&rule["help"]))
}
