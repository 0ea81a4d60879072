//! The colours of the page: chosen on it, or asked for by the device.

use anyhow::Result;
use serde_json::json;

use crate::Page;

/// A theme offered on the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Theme {
    /// Dark on light.
    Light,
    /// Light on dark.
    Dark,
    /// Black on white and heavier.
    Sun,
}

impl Theme {
    /// Every one.
    pub const ALL: [Self; 3] = [Self::Light, Self::Dark, Self::Sun];

    /// For file names.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Light => "light",
            Self::Dark => "dark",
            Self::Sun => "sun",
        }
    }

    /// What the page calls it.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Light => "Light",
            Self::Dark => "Dark",
            Self::Sun => "Sun",
        }
    }
}

impl Page {
    /// Chooses a theme on the first page, from where it goes along to every other.
    pub async fn wear(&self, theme: Theme) -> Result<()> {
        self.open("#/").await?;
        self.pick("Colours of the page", theme.label()).await
    }

    /// Sets what the device asks of pages, such as `("prefers-color-scheme", "dark")`.
    pub async fn device_asks(&self, features: &[(&str, &str)]) -> Result<()> {
        let features: Vec<_> = features
            .iter()
            .map(|(name, value)| json!({ "name": name, "value": value }))
            .collect();
        let media = json!({ "features": features });
        self.browser()
            .cdp()
            .send_raw("Emulation.setEmulatedMedia", media)
            .await?;
        Ok(())
    }
}
