//! The colours the page wears: as the device asks, or as the rider chose.

use wasm_bindgen::JsCast;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

use crate::browser;
use crate::keeping;
use crate::words::say;

/// Told to the window when the page has put on other colours, for those who draw with them.
pub const CHANGED: &str = "wear";

/// A theme of the style sheets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Theme {
    /// By the device's settings.
    #[default]
    Device,
    /// Dark on light.
    Light,
    /// Light on dark.
    Dark,
    /// Black on white and heavier, for a screen in bright light.
    Sun,
}

impl Theme {
    /// Every theme, as offered.
    pub const ALL: &[Self] = &[Self::Device, Self::Light, Self::Dark, Self::Sun];

    /// Its word in the style sheets, in storage and in the text keys.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Device => "device",
            Self::Light => "light",
            Self::Dark => "dark",
            Self::Sun => "sun",
        }
    }

    /// The theme of a word; an unknown word leaves it to the device.
    pub fn of(word: &str) -> Self {
        let found = Self::ALL.iter().find(|theme| theme.word() == word);
        found.copied().unwrap_or_default()
    }
}

/// Wears the colours for bright light for as long as the component stands, unless others were chosen.
#[hook]
pub fn use_sun() {
    use_effect_with((), |()| {
        let left_to_us = keeping::theme() == Theme::Device;
        if left_to_us {
            browser::wear(Some(Theme::Sun.word()));
            browser::tell(CHANGED);
        }
        move || {
            if left_to_us && keeping::theme() == Theme::Device {
                browser::wear(None);
                browser::tell(CHANGED);
            }
        }
    });
}

/// Where the colours are chosen.
#[component]
pub fn ThemeSwitch() -> Html {
    let theme = use_state_eq(keeping::theme);
    use_effect_with(*theme, |theme| {
        browser::wear((*theme != Theme::Device).then(|| theme.word()));
        browser::tell(CHANGED);
    });
    let onchange = {
        let theme = theme.clone();
        Callback::from(move |event: Event| {
            let list = event.target();
            if let Some(list) = list.and_then(|t| t.dyn_into::<HtmlSelectElement>().ok()) {
                let chosen = Theme::of(&list.value());
                keeping::keep_theme(chosen);
                theme.set(chosen);
            }
        })
    };
    let options = Theme::ALL.iter().map(|option| {
        let word = option.word();
        html! {
            <option value={word} selected={*option == *theme}>{ say(&format!("wear.{word}")) }</option>
        }
    });
    html! {
        <label class="wear">
            <span class="vh">{ say("shell.wear") }</span>
            <select {onchange}>{ for options }</select>
        </label>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_leads_back_to_its_theme_and_junk_to_the_device() {
        for theme in Theme::ALL {
            assert_eq!(Theme::of(theme.word()), *theme);
        }
        assert_eq!(Theme::of("<script>"), Theme::Device);
    }
}
