//! The page as a rider handles it: by what is written on things, waiting as a person would.

use std::cell::{RefCell, RefMut};
use std::fs;
use std::path::PathBuf;
use std::time::{Duration, Instant};

use anyhow::{Context as _, Result, bail};
use base64::Engine as _;
use serde_json::{Value, json};
use thirtyfour::components::SelectElement;
use thirtyfour::prelude::*;

use crate::screen::Screen;
use crate::site::{Server, root};

/// How long anything may take to appear. Far more than it should, so that a busy machine fails no test.
const PATIENCE: Duration = Duration::from_secs(45);
const LOOK_AGAIN: Duration = Duration::from_millis(40);

/// The step forward in the wizard.
const CONTINUE: &str = "Continue";

/// An open page. Every method waits until it can do its work, or fails saying what it waited for.
#[derive(Debug)]
pub struct Page {
    browser: WebDriver,
    server: RefCell<Server>,
    address: String,
    screen: Screen,
}

impl Page {
    pub(crate) fn new(browser: WebDriver, server: Server, screen: Screen) -> Self {
        Self {
            browser,
            address: server.address().to_owned(),
            server: RefCell::new(server),
            screen,
        }
    }

    /// The driver itself, for what the methods here do not cover.
    pub fn browser(&self) -> &WebDriver {
        &self.browser
    }

    /// What serves the site.
    pub(crate) fn server(&self) -> RefMut<'_, Server> {
        self.server.borrow_mut()
    }

    /// What it is looked at on.
    pub(crate) fn screen(&self) -> Screen {
        self.screen
    }

    /// Where the site is served, ending in `/`.
    pub fn address(&self) -> &str {
        &self.address
    }

    // Going places.

    /// Opens a page of the site, such as `#/rider/weight`, and waits until the program has drawn it.
    pub async fn open(&self, fragment: &str) -> Result<()> {
        self.browser
            .goto(format!("{}{fragment}", self.address))
            .await?;
        self.drawn().await
    }

    /// Loads the page anew, as after closing and opening the browser.
    pub async fn reload(&self) -> Result<()> {
        self.browser.refresh().await?;
        self.drawn().await
    }

    /// Waits until the program runs and has drawn a heading. The page shows one before the program has arrived; what
    /// is done until then would be drawn over. Only the program draws the link that skips to the question.
    async fn drawn(&self) -> Result<()> {
        self.wait("the program to draw the page", async || {
            let skip = self
                .evaluate("document.querySelector('.skip') !== null")
                .await?;
            Ok((skip == Value::Bool(true)).then_some(()))
        })
        .await?;
        self.heading().await.map(drop)
    }

    /// The browser's own back button.
    pub async fn back(&self) -> Result<()> {
        Ok(self.browser.back().await?)
    }

    /// The browser's own forward button.
    pub async fn forward(&self) -> Result<()> {
        Ok(self.browser.forward().await?)
    }

    /// The step forward in the wizard.
    pub async fn continue_(&self) -> Result<()> {
        self.click(CONTINUE).await
    }

    // Handling things by what is written on them: the whole text, or a beginning that only one thing has.

    /// Clicks a button, link or disclosure.
    pub async fn click(&self, text: &str) -> Result<()> {
        self.push("control", text, None).await
    }

    /// Chooses a radio button or checkbox by its label.
    pub async fn choose(&self, label: &str) -> Result<()> {
        self.push("choice", label, None).await
    }

    /// Chooses within the group whose legend or heading begins so, where labels repeat on a page.
    pub async fn choose_in(&self, group: &str, label: &str) -> Result<()> {
        self.push("choice", label, Some(group)).await
    }

    /// Whether a radio button or checkbox is chosen.
    pub async fn is_chosen(&self, label: &str) -> Result<bool> {
        let script = "const node = arguments[0].control ?? arguments[0]; \
                      return node.checked ?? node.getAttribute('aria-checked') === 'true';";
        let found = self.find("choice", label, None).await?;
        let answer = self.browser.execute(script, vec![found.to_json()?]).await?;
        answer.json().as_bool().context("neither chosen nor not")
    }

    /// Types into a field, replacing what is there, and leaves the field.
    pub async fn fill(&self, label: &str, text: &str) -> Result<()> {
        let field = self.find("field", label, None).await?;
        field.send_keys(Key::Control + "a").await?;
        field.send_keys(Key::Delete).await?;
        field.send_keys(text).await?;
        field.send_keys(Key::Tab).await?;
        Ok(())
    }

    /// Picks an option of a drop-down list by its text.
    pub async fn pick(&self, label: &str, option: &str) -> Result<()> {
        let list = self.find("field", label, None).await?;
        SelectElement::new(&list)
            .await?
            .select_by_exact_text(option)
            .await?;
        Ok(())
    }

    /// What stands in a field.
    pub async fn value(&self, label: &str) -> Result<String> {
        let field = self.find("field", label, None).await?;
        Ok(field.prop("value").await?.unwrap_or_default())
    }

    /// The complaint a field carries: the text of what describes it, once it is marked invalid.
    pub async fn complaint(&self, label: &str) -> Result<String> {
        let script = "const node = arguments[0]; \
            if (node.getAttribute('aria-invalid') !== 'true') return ''; \
            const ids = node.getAttribute('aria-errormessage') ?? node.getAttribute('aria-describedby') ?? ''; \
            return ids.split(/\\s+/).map((id) => document.getElementById(id)?.innerText ?? '').join(' ').trim();";
        let field = self.find("field", label, None).await?.to_json()?;
        self.wait(&format!("a complaint at \"{label}\""), async || {
            let text = self.browser.execute(script, vec![field.clone()]).await?;
            let text = text.json().as_str().unwrap_or_default().to_owned();
            Ok((!text.is_empty()).then_some(text))
        })
        .await
    }

    async fn find(&self, kind: &str, text: &str, group: Option<&str>) -> Result<WebElement> {
        self.wait(&called(kind, text, group), async || {
            self.look_for(kind, text, group).await
        })
        .await
    }

    /// Clicks; what was drawn anew between the look and the click is looked for again.
    async fn push(&self, kind: &str, text: &str, group: Option<&str>) -> Result<()> {
        self.wait(&called(kind, text, group), async || {
            let Some(found) = self.look_for(kind, text, group).await? else {
                return Ok(None);
            };
            Ok(Some(found.click().await?))
        })
        .await
    }

    async fn look_for(
        &self,
        kind: &str,
        text: &str,
        group: Option<&str>,
    ) -> Result<Option<WebElement>> {
        let arguments = vec![json!(kind), json!(text), json!(group)];
        let found = self
            .browser
            .execute(include_str!("find.js"), arguments)
            .await?;
        Ok(if found.json().is_null() {
            None
        } else {
            Some(found.element()?)
        })
    }

    // Reading.

    /// The text of the page's main heading.
    pub async fn heading(&self) -> Result<String> {
        self.wait("a heading", async || {
            let text = self
                .evaluate("document.querySelector('h1')?.innerText ?? ''")
                .await?;
            let text = text.as_str().unwrap_or_default().trim().to_owned();
            Ok((!text.is_empty()).then_some(text))
        })
        .await
    }

    /// Waits until the main heading contains a text.
    pub async fn arrives_at(&self, heading: &str) -> Result<()> {
        self.wait(&format!("the heading \"{heading}\""), async || {
            Ok(self.heading().await?.contains(heading).then_some(()))
        })
        .await
    }

    /// Waits until a text stands anywhere on the page.
    pub async fn sees(&self, text: &str) -> Result<()> {
        self.wait(&format!("the text \"{text}\""), async || {
            Ok(self.text().await?.contains(text).then_some(()))
        })
        .await
    }

    /// Waits until something that a selector names is on the page.
    pub async fn is_shown(&self, selector: &str) -> Result<()> {
        let selector = Value::from(selector);
        self.wait(&format!("something at {selector}"), async || {
            let found = self
                .evaluate(&format!("document.querySelector({selector}) !== null"))
                .await?;
            Ok((found == true).then_some(()))
        })
        .await
    }

    /// Waits until a JavaScript expression is true, for what cannot be seen.
    pub async fn is_true(&self, expression: &str) -> Result<()> {
        self.wait(expression, async || {
            Ok((self.evaluate(expression).await? == true).then_some(()))
        })
        .await
    }

    /// All the text of the page, as it is shown; spaces that do not break are spaces to a reader.
    pub async fn text(&self) -> Result<String> {
        let text = self.evaluate("document.body.innerText").await?;
        let text = text.as_str().unwrap_or_default();
        Ok(text.replace(['\u{a0}', '\u{202f}'], " "))
    }

    /// The value of a JavaScript expression, for what cannot be seen.
    pub async fn evaluate(&self, expression: &str) -> Result<Value> {
        let script = format!("return ({expression});");
        Ok(self.browser.execute(script, vec![]).await?.json().clone())
    }

    /// Looks until `look` finds something. What is not there yet and what was just replaced are looked for again.
    async fn wait<T>(&self, what: &str, look: impl AsyncFn() -> Result<Option<T>>) -> Result<T> {
        let start = Instant::now();
        loop {
            let looked = look().await;
            match looked {
                Ok(Some(found)) => return Ok(found),
                Ok(None) if start.elapsed() > PATIENCE => {
                    bail!("waited {PATIENCE:?} for {what}, in vain")
                }
                Err(error) if start.elapsed() > PATIENCE => {
                    return Err(error.context(format!("while waiting for {what}")));
                }
                _ => tokio::time::sleep(LOOK_AGAIN).await,
            }
        }
    }

    /// Takes a picture of the whole page, below the fold too: `screenshots/NAME-SCREEN.png`.
    pub async fn picture(&self, name: &str) -> Result<()> {
        self.take_picture(name).await.map(drop)
    }

    async fn take_picture(&self, name: &str) -> Result<PathBuf> {
        self.put_aside(name, &self.capture(None).await?)
    }

    /// Keeps a PNG that the page made, given in base64, among the pictures.
    pub fn keep(&self, name: &str, base64: &str) -> Result<()> {
        let picture = base64::engine::general_purpose::STANDARD.decode(base64)?;
        self.put_aside(name, &picture).map(drop)
    }

    fn put_aside(&self, name: &str, picture: &[u8]) -> Result<PathBuf> {
        let folder = root().join("screenshots");
        fs::create_dir_all(&folder)?;
        let path = folder.join(format!("{name}-{}.png", self.screen.name));
        fs::write(&path, picture)?;
        Ok(path)
    }

    /// A PNG of the top of the page, so many pixels high, whatever the height of the screen.
    pub async fn top(&self, height: u32) -> Result<Vec<u8>> {
        let clip =
            json!({ "x": 0, "y": 0, "width": self.screen.width, "height": height, "scale": 1 });
        self.capture(Some(clip)).await
    }

    /// A PNG of a part of the page, or of all of it.
    async fn capture(&self, clip: Option<Value>) -> Result<Vec<u8>> {
        let mut options = json!({ "format": "png", "captureBeyondViewport": true });
        if let Some(clip) = clip {
            options["clip"] = clip;
        }
        let shot = self
            .browser
            .cdp()
            .send_raw("Page.captureScreenshot", options)
            .await?;
        let data = shot["data"]
            .as_str()
            .context("the browser gave no picture")?;
        Ok(base64::engine::general_purpose::STANDARD.decode(data)?)
    }

    // What went on behind the page.

    /// The console's errors and warnings since last asked; asking empties it.
    pub async fn take_console(&self) -> Result<Vec<String>> {
        let log = self.browser.browser_log().await?;
        let bad = log
            .into_iter()
            .filter(|entry| matches!(entry.level.as_str(), "SEVERE" | "WARNING"));
        Ok(bad
            .map(|entry| format!("{} {}", entry.level, entry.message))
            .collect())
    }

    /// Where the page stood, for a failed test: address, heading, text, console and a picture.
    pub(crate) async fn account(&self, name: &str) -> String {
        let url = self.browser.current_url().await.map(|url| url.to_string());
        let heading = self
            .evaluate("document.querySelector('h1')?.innerText")
            .await;
        let text = self.text().await.unwrap_or_default();
        let text: String = text.chars().take(600).collect();
        let console = self.take_console().await.unwrap_or_default();
        let picture = self.take_picture(&format!("failed-{name}")).await;
        format!(
            "  at {}\n  heading {}\n  picture {}\n  console {console:?}\n  text {text:?}",
            url.unwrap_or_else(|error| error.to_string()),
            heading.unwrap_or_default(),
            picture.map_or_else(|error| error.to_string(), |path| path.display().to_string()),
        )
    }
}

/// What is looked for, for whoever waits for it in vain.
fn called(kind: &str, text: &str, group: Option<&str>) -> String {
    let place = group
        .map(|group| format!(" in \"{group}\""))
        .unwrap_or_default();
    format!("a {kind} called \"{text}\"{place}")
}
