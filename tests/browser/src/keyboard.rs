//! The page as it is used without a pointer.

use anyhow::{Context as _, Result, bail, ensure};
use thirtyfour::Key;

use crate::Page;

/// More stops than any page has between its top and its end.
const MOST_STOPS: usize = 120;

/// Name, and what shows that it has the focus: the width of its ring, and how far it lies outside the window.
const FOCUSED: &str = "(() => { \
    const node = document.activeElement; \
    const own = node.closest('label')?.innerText \
        ?? [...(node.labels ?? [])].map((label) => label.innerText).join(' '); \
    const name = node === document.body ? 'BODY' : (node.getAttribute('aria-label') || own || node.innerText).replace(/\\s+/g, ' ').trim(); \
    const rings = [node, node.closest('label'), node.closest('.row')].filter(Boolean).map((ringed) => { \
        const style = getComputedStyle(ringed); \
        return style.outlineStyle === 'none' ? 0 : parseFloat(style.outlineWidth); }); \
    const box = node.getBoundingClientRect(); \
    const seen = box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth; \
    return { name, ring: Math.max(...rings), seen }; })()";

impl Page {
    /// Presses a key, wherever the focus is.
    pub async fn press(&self, key: Key) -> Result<()> {
        Ok(self
            .browser()
            .action_chain()
            .send_keys(key)
            .perform()
            .await?)
    }

    /// Types a text, wherever the focus is.
    pub async fn type_keys(&self, text: &str) -> Result<()> {
        let chain = self.browser().action_chain();
        Ok(chain.send_keys(text).perform().await?)
    }

    /// What the thing with the focus is called.
    pub async fn focused(&self) -> Result<String> {
        let focused = self.evaluate(FOCUSED).await?;
        Ok(focused["name"].as_str().unwrap_or_default().to_owned())
    }

    /// Presses Tab until the focus is on what begins so; every stop on the way must show that it has the focus.
    pub async fn tab_to(&self, beginning: &str) -> Result<()> {
        let mut passed = Vec::new();
        for _ in 0..MOST_STOPS {
            self.press(Key::Tab).await?;
            let focused = self.evaluate(FOCUSED).await?;
            let name = focused["name"].as_str().context("no name")?.to_owned();
            let ring = focused["ring"].as_f64().unwrap_or_default();
            ensure!(
                name == "BODY" || ring >= 2.0,
                "\"{name}\" has a focus ring of {ring} px only"
            );
            ensure!(
                name == "BODY" || focused["seen"] == true,
                "\"{name}\" has the focus outside the window"
            );
            if name.starts_with(beginning) {
                return Ok(());
            }
            passed.push(name);
        }
        bail!("Tab leads nowhere called \"{beginning}\", only to {passed:?}")
    }
}
