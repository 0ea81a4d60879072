//! The look of the page around, as far as it is safe to wear.
//!
//! A look comes as values under fixed names and never as style; each is read for what it has to be. What is worn is a workshop's
//! theme in which it has told some parts, put on as that is. The colours of cautions have no name here.

use std::ops::RangeInclusive;

use sagwright_core::sorted::Map;
use sagwright_core::workshop::{CORNERS, Colour, ColourScheme, TEXT_SIZES, Theme};

use crate::browser;
use crate::hosted;

/// The fonts that may be asked for: those that every device has by itself.
const FONTS: [&str; 5] = [
    "system-ui",
    "ui-rounded",
    "sans-serif",
    "serif",
    "monospace",
];

/// The property of the style sheet for the font, which is the page around's alone to choose.
const FONT: &str = "--own-font";

/// A look that can be worn.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Look {
    /// What a workshop may choose too.
    theme: Theme,
    font: Option<&'static str>,
}

/// Why a value is not worn, for whoever builds the page around.
pub type Refused = (String, &'static str);

impl Look {
    /// The look made of values by name, and the values that are left out.
    pub fn of(told: &Map<String, String>) -> (Self, Vec<Refused>) {
        let (mut look, mut refused) = (Self::default(), Vec::new());
        for (name, value) in told {
            if let Err(why) = look.put(name, value.trim()) {
                refused.push((name.clone(), why));
            }
        }
        (look, refused)
    }

    fn put(&mut self, name: &str, value: &str) -> Result<(), &'static str> {
        let whole = |unit: &str, limits: RangeInclusive<u8>| {
            let number = value.strip_suffix(unit).unwrap_or(value).parse::<u8>().ok();
            let fits = number.filter(|number| limits.contains(number));
            fits.ok_or("it is no whole number within its limits")
        };
        match name {
            "accent" => {
                let colour = Colour::read(value).ok_or("it is no colour written as #rrggbb")?;
                if !colour.is_read_on(Colour::WHITE) {
                    return Err("text in it would have a contrast below 7 to 1");
                }
                self.theme.accent = Some(value.to_owned());
            }
            "corner" => self.theme.corner = Some(whole("px", CORNERS)?),
            "text" => self.theme.text = Some(whole("%", TEXT_SIZES)?),
            "font" => {
                let font = FONTS.iter().find(|font| **font == value);
                self.font = Some(*font.ok_or("it is none of the fonts that can be asked for")?);
            }
            "colours" => {
                let known = ColourScheme::ALL.iter().find(|known| known.word() == value);
                self.theme.colours = Some(*known.ok_or("it is not `device`, `light` or `dark`")?);
            }
            _ => return Err("there is no such part of a look"),
        }
        Ok(())
    }

    /// The theme to wear: what is not told stays as the workshop has it.
    fn over(&self, own: Theme) -> Theme {
        let told = self.theme.clone();
        Theme {
            accent: told.accent.or(own.accent),
            corner: told.corner.or(own.corner),
            text: told.text.or(own.text),
            colours: told.colours.or(own.colours),
        }
    }

    /// Wears it, in place of the one before.
    pub fn wear(&self) {
        if let Some(style) = browser::style_of_page() {
            // Neither can fail: the name is well-formed, and a custom property takes any value.
            match self.font {
                Some(font) => style.set_property(FONT, font).ok(),
                None => style.remove_property(FONT).ok().map(drop),
            };
        }
        let own = hosted::workshop().map(|workshop| workshop.theme.clone());
        hosted::dress(&self.over(own.unwrap_or_default()));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(told: &[(&str, &str)]) -> (Look, Vec<Refused>) {
        let told = told.iter();
        Look::of(
            &told
                .map(|(name, value)| ((*name).to_owned(), (*value).to_owned()))
                .collect(),
        )
    }

    #[test]
    fn text_that_could_not_be_read_is_refused_and_the_rest_is_worn() {
        for pale in ["#5a5a5a", "#ff8200", "#ffffff"] {
            let (look, refused) = of(&[("accent", pale), ("corner", "6px")]);
            assert_eq!(refused.len(), 1, "{pale}");
            assert!(refused[0].1.contains("7 to 1"), "{pale}");
            assert_eq!((look.theme.accent, look.theme.corner), (None, Some(6)));
        }
        let (look, refused) = of(&[("accent", "#595959")]);
        assert_eq!(refused, []);
        assert_eq!(look.theme.held(), look.theme, "a workshop may have it too");
    }

    #[test]
    fn nothing_but_the_fixed_names_and_forms_is_worn() {
        for (name, value) in [
            ("danger", "#00ff00"),
            ("--danger", "#00ff00"),
            ("accent", "red"),
            ("accent", "#1d4d2b;background:url(x)"),
            ("accent", "var(--paper)"),
            ("corner", "25"),
            ("corner", "6em"),
            ("corner", "-1"),
            ("text", "80%"),
            ("text", "1e9"),
            ("font", "url(x)"),
            ("font", "serif, monospace"),
            ("colours", "sun"),
            ("", ""),
        ] {
            let (look, refused) = of(&[(name, value)]);
            assert_eq!(look, Look::default(), "{name} {value}");
            assert_eq!(refused.len(), 1, "{name} {value}");
        }
    }

    #[test]
    fn what_is_not_told_stays_as_the_workshop_has_it() {
        let own = Theme {
            accent: Some("#1d4d2b".to_owned()),
            corner: Some(6),
            text: Some(110),
            colours: Some(ColourScheme::Dark),
        };
        assert_eq!(Look::default().over(own.clone()), own);
        let (look, refused) = of(&[("corner", "2px"), ("colours", "device"), ("font", "serif")]);
        assert_eq!((look.font, refused), (Some("serif"), vec![]));
        let worn = look.over(own.clone());
        assert_eq!(
            (worn.corner, worn.colours),
            (Some(2), Some(ColourScheme::Device))
        );
        assert_eq!((worn.accent, worn.text), (own.accent, own.text));
    }

    #[test]
    fn the_style_sheet_takes_the_font() {
        let base = include_str!("../../../styles/base.css");
        assert!(base.contains(&format!("font-family: var({FONT}, ")));
    }
}
