//! One visit: a server, a driver and a browser that live as long as the walk, and what must hold after it.

use std::panic::AssertUnwindSafe;
use std::path::Path;
use std::sync::RwLock;

use anyhow::{Context as _, Result, bail, ensure};
use futures_util::FutureExt as _;
use serde_json::{Value, json};
use thirtyfour::{
    ChromeCapabilities, ChromiumLikeCapabilities as _, DesiredCapabilities, LoggingPrefsLogLevel,
    WebDriver,
};

use crate::page::Page;
use crate::process::Driver;
use crate::screen::Screen;
use crate::site::Server;

/// Visits share the machine; one that takes times has it to itself.
static MACHINE: RwLock<()> = RwLock::new(());

/// Opens the site on a screen and walks it.
///
/// `name` names the picture taken on failure and must differ between tests.
///
/// # Panics
/// With a full account when the walk fails or a standing rule is broken: that is how a test fails.
pub fn browse(name: &str, screen: Screen, walk: impl AsyncFnOnce(&Page) -> Result<()>) {
    let _shared = MACHINE.read();
    judge(name, screen, walk);
}

/// As [`browse`], for a walk that takes times: no other walk of the program goes on meanwhile.
///
/// # Panics
/// As [`browse`].
pub fn browse_alone(name: &str, screen: Screen, walk: impl AsyncFnOnce(&Page) -> Result<()>) {
    let _alone = MACHINE.write();
    judge(name, screen, walk);
}

fn judge(name: &str, screen: Screen, walk: impl AsyncFnOnce(&Page) -> Result<()>) {
    let outcome = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .context("a runtime could not be made")
        .and_then(|runtime| runtime.block_on(visit(name, screen, walk)));
    if let Err(error) = outcome {
        panic!("{name} on the {} screen: {error:#}", screen.name);
    }
}

async fn visit(
    name: &str,
    screen: Screen,
    walk: impl AsyncFnOnce(&Page) -> Result<()>,
) -> Result<()> {
    let server = Server::start()?;
    let driver = Driver::start()?;
    let profile = tempfile::tempdir()?;
    let browser = WebDriver::new(driver.address(), capabilities(screen, profile.path())?)
        .await
        .context("Chromium could not be started")?;
    let page = Page::new(browser.clone(), server, screen);
    // A failed assertion inside the walk must still close the browser and tell where it was.
    let walked = AssertUnwindSafe(walk(&page)).catch_unwind().await;
    let outcome = match walked {
        Ok(Ok(())) => standing_rules(&page).await,
        Ok(Err(error)) => Err(error),
        Err(panic) => Err(anyhow::anyhow!("{}", message(panic.as_ref()))),
    };
    let outcome = match outcome {
        Ok(()) => Ok(()),
        Err(error) => Err(anyhow::anyhow!("{error:#}\n{}", page.account(name).await)),
    };
    let closed = browser.quit().await.context("the browser did not close");
    outcome.and(closed)
}

/// What must hold on every visit, whatever the walk was about.
async fn standing_rules(page: &Page) -> Result<()> {
    let console = page.take_console().await?;
    ensure!(
        console.is_empty(),
        "the console is not clean:\n{}",
        console.join("\n")
    );
    let foreign: Vec<String> = page
        .requests()
        .await?
        .into_iter()
        .filter(|url| !url.starts_with(page.address()))
        .collect();
    if !foreign.is_empty() {
        bail!("requests left this site:\n{}", foreign.join("\n"));
    }
    Ok(())
}

fn message(panic: &(dyn std::any::Any + Send)) -> String {
    let text = panic.downcast_ref::<&str>().map(ToString::to_string);
    text.or_else(|| panic.downcast_ref::<String>().cloned())
        .unwrap_or_else(|| "the walk panicked without a message".to_owned())
}

fn capabilities(screen: Screen, profile: &Path) -> Result<ChromeCapabilities> {
    let mut wanted = DesiredCapabilities::chrome();
    for flag in [
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-dev-shm-usage",
        "--disable-sync",
        // Pictures are of the page at rest, not of a moment in a transition.
        "--force-prefers-reduced-motion",
        "--hide-scrollbars",
    ] {
        wanted.add_arg(flag)?;
    }
    wanted.add_arg(&format!("--user-data-dir={}", profile.display()))?;
    wanted.add_arg(&format!("--window-size={},{}", screen.width, screen.height))?;
    wanted.add_experimental_option("mobileEmulation", emulation(screen))?;
    let letters = json!({ "webkit": { "webprefs": { "default_font_size": screen.text } } });
    wanted.add_experimental_option("prefs", letters)?;
    wanted.set_logging_prefs("browser", LoggingPrefsLogLevel::All)?;
    wanted.set_logging_prefs("performance", LoggingPrefsLogLevel::All)?;
    Ok(wanted)
}

fn emulation(screen: Screen) -> Value {
    json!({ "deviceMetrics": {
        "width": screen.width,
        "height": screen.height,
        "pixelRatio": screen.ratio,
        "touch": screen.touch,
        "mobile": screen.touch,
    }})
}
