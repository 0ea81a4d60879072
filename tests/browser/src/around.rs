//! What is around the page: the network it came over, other tabs of the browser, the printer.

use std::path::Path;

use anyhow::{Context as _, Result};
use base64::Engine as _;
use serde_json::{Value, json};
use thirtyfour::Key;

use crate::Page;

/// Sheets of paper: name, width and height in inches.
pub const PAPERS: [(&str, f64, f64); 2] =
    [("a4", 210.0 / 25.4, 297.0 / 25.4), ("letter", 8.5, 11.0)];

/// What the foot of a page says once the device keeps the site.
pub const KEPT: &str = "opens and computes without a signal";

/// How a network carries.
#[derive(Debug, Clone, Copy)]
pub struct Network {
    /// From a request to the first of its answer, ms.
    pub latency_ms: f64,
    /// To the page, bytes a second.
    pub down: f64,
    /// From the page, bytes a second.
    pub up: f64,
}

impl Page {
    /// Takes the network away: the server ends.
    pub fn lose_signal(&self) {
        self.server().stop();
    }

    /// Serves another site at the same address, as after its owner has put up a newer build.
    pub fn serve(&self, dist: &Path) -> Result<()> {
        self.server().serve(dist)
    }

    /// Puts a network between the page and its server from the next request on.
    pub async fn slow_network(&self, network: Network) -> Result<()> {
        let slow = json!({
            "offline": false,
            "latency": network.latency_ms,
            "downloadThroughput": network.down,
            "uploadThroughput": network.up,
        });
        let cdp = self.browser().cdp();
        cdp.send_raw("Network.enable", json!({})).await?;
        cdp.send_raw("Network.emulateNetworkConditions", slow)
            .await?;
        Ok(())
    }

    /// Gives the page a processor that takes so many times as long.
    pub async fn slow_processor(&self, times: f64) -> Result<()> {
        let cdp = self.browser().cdp();
        cdp.send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": times }))
            .await?;
        Ok(())
    }

    /// Opens a page of the site in another tab and turns to that.
    pub async fn open_tab(&self, fragment: &str) -> Result<()> {
        let tab = self.browser().new_tab().await?;
        self.browser().switch_to_window(tab).await?;
        self.open(fragment).await
    }

    /// Turns to a tab, counted from 0 in the order of their opening.
    pub async fn turn_to(&self, tab: usize) -> Result<()> {
        let tabs = self.browser().windows().await?;
        let tab = tabs.get(tab).context("there is no such tab")?;
        Ok(self.browser().switch_to_window(tab.clone()).await?)
    }

    /// Runs a script in every page from now on, before anything of the page itself runs.
    pub async fn before_every_page(&self, script: &str) -> Result<()> {
        let source = json!({ "source": script });
        let cdp = self.browser().cdp();
        cdp.send_raw("Page.addScriptToEvaluateOnNewDocument", source)
            .await?;
        Ok(())
    }

    /// The page as a PDF, printed without colours of the ground, as printers are set.
    pub async fn print(&self, (_, width, height): (&str, f64, f64)) -> Result<Vec<u8>> {
        let options = json!({ "paperWidth": width, "paperHeight": height });
        let cdp = self.browser().cdp();
        let printed = cdp.send_raw("Page.printToPDF", options).await?;
        let data = printed["data"].as_str().context("nothing was printed")?;
        Ok(base64::engine::general_purpose::STANDARD.decode(data)?)
    }

    /// Begins, so that the rest of the site comes: a key is enough, and this one does nothing else.
    pub async fn begin(&self) -> Result<()> {
        self.press(Key::Shift).await
    }

    /// Opens the first page, begins, and waits until the device keeps the site.
    pub async fn is_kept_on_the_device(&self) -> Result<()> {
        self.open("#/").await?;
        self.begin().await?;
        self.is_true("navigator.serviceWorker.controller !== null")
            .await?;
        self.sees(KEPT).await
    }

    /// Every address on a network that the page asked for since last asked, in order.
    pub async fn requests(&self) -> Result<Vec<String>> {
        let log = self.browser().get_log("performance").await?;
        let events = log
            .iter()
            .filter_map(|entry| serde_json::from_str::<Value>(&entry.message).ok());
        let sent = events.filter(|event| event["message"]["method"] == "Network.requestWillBeSent");
        let url = |event: Value| {
            event["message"]["params"]["request"]["url"]
                .as_str()
                .map(str::to_owned)
        };
        // The browser's own pages, data and blobs come from no network.
        let network = |url: &String| url.starts_with("http") || url.starts_with("ws");
        Ok(sent.filter_map(url).filter(network).collect())
    }
}

/// How many pages a PDF of the browser's has: each is an object of its own, written plainly.
pub fn pages_of(pdf: &[u8]) -> usize {
    let mark = b"/Type /Page";
    let starts = pdf.windows(mark.len() + 1);
    starts
        .filter(|piece| piece.starts_with(mark) && piece.last() != Some(&b's'))
        .count()
}
