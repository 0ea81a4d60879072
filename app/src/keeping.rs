//! Answers and colours kept on the device between visits. Nothing leaves it.

use crate::browser;
use crate::state::{SavedError, Wizard, from_saved, to_saved};
use crate::wear::Theme;

/// Where the answers are kept.
const ANSWERS: &str = "sagwright.answers";

/// Where answers that could not be read are put aside, so that nothing overwrites them.
const ASIDE: &str = "sagwright.answers.aside";

/// Where the chosen colours are kept; the first script of the page reads it too.
const THEME: &str = "sagwright.theme";

/// What was found on the device at the start.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Found {
    /// Answers, or none yet.
    Fine,
    /// Answers written by a newer build, put aside.
    Newer,
    /// Answers of an unknown form, put aside.
    Unreadable,
}

/// The answers of the last visit.
pub fn load() -> (Wizard, Found) {
    let Some(text) = browser::kept(ANSWERS) else {
        return (Wizard::default(), Found::Fine);
    };
    match from_saved(&text) {
        Ok(wizard) => (wizard, Found::Fine),
        Err(error) => {
            browser::keep(ASIDE, &text);
            let found = match error {
                SavedError::Newer => Found::Newer,
                SavedError::Unreadable => Found::Unreadable,
            };
            (Wizard::default(), found)
        }
    }
}

/// Keeps the answers; `false` where the device does not keep them.
pub fn save(wizard: &Wizard) -> bool {
    to_saved(wizard).is_ok_and(|text| browser::keep(ANSWERS, &text))
}

/// The colours of the last visit.
pub fn theme() -> Theme {
    browser::kept(THEME).map_or(Theme::Device, |word| Theme::of(&word))
}

/// Keeps the colours for the next visit; where the device does not, they last until the page is closed.
pub fn keep_theme(theme: Theme) {
    browser::keep(THEME, theme.word());
}
