//! What is demanded of any page, whatever it is about.

use anyhow::{Context as _, Result, ensure};
use serde_json::Value;

use crate::Page;
use crate::axe;

/// The least contrast of a line that carries meaning with its ground: WCAG 2.2 criterion 1.4.11.
const LEAST_CONTRAST: f64 = 3.0;

impl Page {
    /// Asserts that no accessibility rule is broken on the page as it stands.
    pub async fn accessible(&self) -> Result<()> {
        axe::check(self.browser()).await
    }

    /// Asserts that nothing sticks out sideways, of the screen or of its own box, naming what does.
    pub async fn fits(&self) -> Result<()> {
        let limit = self.screen().width;
        let wide = self
            .evaluate(&format!(
                "[...document.body.querySelectorAll('*')] \
                 .filter((node) => node.getBoundingClientRect().right > {limit} + 1) \
                 .slice(-5).map((node) => node.outerHTML.slice(0, 120))"
            ))
            .await?;
        let width = self
            .evaluate("document.documentElement.scrollWidth")
            .await?;
        ensure!(
            width.as_u64() <= Some(limit.into()),
            "the page is {width} px wide on a screen of {limit}; what sticks out: {wide:#}"
        );
        // What is hidden from sight and what scrolls by itself is wider than its box on purpose; so is a canvas.
        let cut = self
            .evaluate(
                "[...document.body.querySelectorAll('*')] \
                 .filter((node) => node.clientWidth > 1 && node.scrollWidth > node.clientWidth + 1 \
                   && !['auto', 'scroll'].includes(getComputedStyle(node).overflowX) \
                   && !node.matches('input, textarea, canvas')) \
                 .slice(-5).map((node) => node.outerHTML.slice(0, 160))",
            )
            .await?;
        ensure!(
            cut.as_array().is_some_and(Vec::is_empty),
            "wider than the box it stands in: {cut:#}"
        );
        Ok(())
    }

    /// Asserts that everything that can be pressed is large enough for a gloved thumb, naming what is not; a link in
    /// the middle of a sentence is as high as its line.
    pub async fn targets_are_large(&self) -> Result<()> {
        let measured = self.evaluate(include_str!("targets.js")).await?;
        let count = measured["count"].as_u64().context("no count of targets")?;
        ensure!(count > 0, "nothing on the page can be pressed");
        let small = &measured["small"];
        ensure!(
            small.as_array().is_some_and(Vec::is_empty),
            "too small to be pressed in gloves: {small:#}"
        );
        Ok(())
    }

    /// Asserts that whatever takes the focus can be seen, naming what stands over it.
    pub async fn focus_is_seen(&self) -> Result<()> {
        let hidden = self.evaluate(include_str!("focus.js")).await?;
        ensure!(
            hidden.as_array().is_some_and(Vec::is_empty),
            "takes the focus and is not seen: {hidden:#}"
        );
        Ok(())
    }

    /// Asserts that there are charts, that they are drawn in the colours that the page wears now, and that their lines
    /// stand out from their ground.
    pub async fn charts_stand_out(&self) -> Result<()> {
        let charts = self.evaluate(include_str!("charts.js")).await?;
        let charts = charts.as_array().context("no list of charts")?;
        ensure!(!charts.is_empty(), "there is no chart on the page");
        for chart in charts {
            let name = &chart["name"];
            ensure!(
                chart["paper"].as_f64() > Some(0.3),
                "the ground of {name} is not the page's: {chart:#}"
            );
            for (line, contrast) in chart["contrast"].as_object().into_iter().flatten() {
                ensure!(
                    contrast.as_f64() >= Some(LEAST_CONTRAST),
                    "{line} in {name} has a contrast of {contrast}"
                );
            }
            let drawn = chart["drawn"].as_object().into_iter().flatten();
            ensure!(
                drawn
                    .into_iter()
                    .any(|(_, count)| count.as_u64() > Some(20)),
                "no curve of {name} is drawn in a colour of the page: {chart:#}"
            );
        }
        Ok(())
    }

    /// A custom property of the page as it stands.
    pub async fn property(&self, name: &str) -> Result<String> {
        let name = Value::from(name);
        let value = self
            .evaluate(&format!(
                "getComputedStyle(document.documentElement).getPropertyValue({name}).trim()"
            ))
            .await?;
        Ok(value.as_str().unwrap_or_default().to_owned())
    }
}
