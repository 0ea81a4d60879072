//! The page around, as its owner and its visitors see it.

use std::cell::RefCell;

use anyhow::{Context as _, Result, ensure};
use sagwright_tests_browser::{HostPage, Page};
use serde_json::{Value, json};

/// The example page of the workshop, open in a browser.
pub struct Around<'a> {
    page: &'a Page,
    pub host: HostPage,
    /// What the console has said so far.
    console: RefCell<Vec<String>>,
}

impl<'a> Around<'a> {
    /// Opens it; `rest` is what follows its address.
    pub async fn open(page: &'a Page, rest: &str) -> Result<Self> {
        let host = HostPage::start()?;
        let to = format!("{}{rest}", host.address);
        page.browser().goto(to).await?;
        Ok(Self {
            page,
            host,
            console: RefCell::default(),
        })
    }

    /// From now on the page inside the frame of an element, counted from 0, is looked at.
    pub async fn inside(&self, at: usize) -> Result<()> {
        self.outside().await?;
        let script = "return document.querySelectorAll('sagwright-intake')[arguments[0]].shadowRoot.querySelector('iframe')";
        let found = self.page.browser().execute(script, vec![json!(at)]).await?;
        found.element()?.enter_frame().await?;
        self.page.is_shown(".skip").await
    }

    /// From now on the page around is looked at.
    pub async fn outside(&self) -> Result<()> {
        Ok(self.page.browser().enter_default_frame().await?)
    }

    /// Puts another element on the page, with an `id` and these attributes, and writes down what it tells.
    pub async fn put(&self, id: &str, attributes: &[(&str, &str)]) -> Result<()> {
        let script = "const element = document.createElement('sagwright-intake'); \
            element.id = arguments[0]; window.told ??= {}; const told = (window.told[element.id] = []); \
            for (const [name, value] of arguments[1]) element.setAttribute(name, value); \
            for (const name of ['ready', 'resized', 'step', 'finished', 'error']) \
              element.addEventListener(name, ({ type, detail }) => told.push({ type, ...detail })); \
            document.querySelector('main').append(element);";
        let arguments = vec![json!(id), json!(attributes)];
        self.page.browser().execute(script, arguments).await?;
        Ok(())
    }

    /// Waits until an element that was put there has told this.
    pub async fn told(&self, id: &str, event: &str, name: &str, value: &str) -> Result<()> {
        let told = format!("(told) => told.type === '{event}' && told['{name}'] === '{value}'");
        self.page
            .is_true(&format!("window.told['{id}'].some({told})"))
            .await
    }

    /// Sets a custom property on the first element.
    pub async fn style(&self, name: &str, value: &str) -> Result<()> {
        let script = "document.querySelector('sagwright-intake').style.setProperty(...arguments)";
        let arguments = vec![json!(name), json!(value)];
        self.page.browser().execute(script, arguments).await?;
        Ok(())
    }

    /// How high the page in the frame is, px; only while it is looked at.
    pub async fn height_inside(&self) -> Result<f64> {
        let height = self
            .page
            .evaluate("document.documentElement.getBoundingClientRect().height");
        height.await?.as_f64().context("a height")
    }

    /// Waits until the first frame is as high as what is in it, and nothing in it scrolls.
    pub async fn fits_its_content(&self) -> Result<()> {
        for _ in 0..100 {
            self.inside(0).await?;
            let content = self.height_inside().await?;
            let frame = self.page.evaluate("innerHeight").await?;
            if frame
                .as_f64()
                .is_some_and(|frame| (frame - content).abs() < 3.0)
            {
                ensure!(content > 200.0, "{content}");
                return self.outside().await;
            }
            tokio::time::sleep(std::time::Duration::from_millis(100)).await;
        }
        self.outside().await?;
        anyhow::bail!("the frame does not fit its content")
    }

    /// Takes the first element away.
    pub async fn remove_first(&self) -> Result<()> {
        let script = "document.querySelector('sagwright-intake').remove()";
        self.page.browser().execute(script, vec![]).await?;
        Ok(())
    }

    /// Sends a message to the page in the first frame, from the page around.
    pub async fn send(&self, message: &Value) -> Result<()> {
        self.outside().await?;
        let script = "document.querySelector('sagwright-intake').shadowRoot.querySelector('iframe').contentWindow.postMessage(arguments[0], '*')";
        self.page
            .browser()
            .execute(script, vec![message.clone()])
            .await?;
        Ok(())
    }

    /// Waits until the console says this.
    pub async fn logged(&self, text: &str) -> Result<()> {
        for _ in 0..100 {
            let new = self.page.take_console().await?;
            self.console.borrow_mut().extend(new);
            if self.console.borrow().iter().any(|line| line.contains(text)) {
                return Ok(());
            }
            tokio::time::sleep(std::time::Duration::from_millis(100)).await;
        }
        anyhow::bail!(
            "the console never said {text:?}: {:?}",
            self.console.borrow()
        )
    }

    /// Nothing was asked for but the two sites, and the console says nothing but why something was ignored.
    pub async fn done(&self) -> Result<()> {
        self.done_but("is ignored").await
    }

    /// The same, where the console may say this too.
    pub async fn done_but(&self, may_say: &str) -> Result<()> {
        self.done_at(&self.host.site, may_say).await
    }

    /// The same, where this address was asked too.
    pub async fn done_at(&self, also: &str, may_say: &str) -> Result<()> {
        self.outside().await?;
        // Whatever the page still fetches for later goes with it.
        self.page.browser().goto("about:blank").await?;
        let new = self.page.take_console().await?;
        self.console.borrow_mut().extend(new);
        for line in self.console.borrow().iter() {
            let expected = [
                "is ignored",
                "does not wear",
                "Failed to load resource",
                "Fetch API cannot load",
                may_say,
            ];
            ensure!(expected.iter().any(|text| line.contains(text)), "{line}");
        }
        for url in self.page.requests().await? {
            let mut ours = [self.host.address.as_str(), &self.host.site, also].into_iter();
            ensure!(ours.any(|start| url.starts_with(start)), "{url}");
        }
        Ok(())
    }
}
