//! The look that a workshop or the page around chose, put on once it is known to be readable in every theme.
//!
//! It goes into custom properties of the page, which `styles/theme.css` builds its themes from, so the rider's own choice of
//! theme, a device's wish for contrast, paper and the colours of cautions stay what they are.

use sagwright_core::workshop::{Colour, ColourScheme, Theme};
use web_sys::CssStyleDeclaration;

use crate::browser;
use crate::wear;

/// The grounds of `styles/theme.css` on which the accent is read, but for what is picked, which is mixed from it.
const LIGHT: [Colour; 2] = [Colour::WHITE, Colour([0xf4, 0xf0, 0xea])];
const DARK: [Colour; 2] = [Colour([0x12, 0x10, 0x0e]), Colour([0x21, 0x1d, 0x19])];
/// What is picked for a device that asks for contrast, in light and in bright light, and in dark.
const PICKED_SUN: Colour = Colour([0xff, 0xe4, 0x5c]);
const PICKED_STARK: Colour = Colour([0x5c, 0x33, 0x00]);

/// Puts a look on the page in place of the one before. What does not keep to its limits is left as it is everywhere else.
pub fn dress(theme: &Theme) {
    if let Some(style) = browser::style_of_page() {
        put_on(&style, theme);
        browser::match_bars();
        browser::tell(wear::CHANGED);
    }
}

/// The same on one element that has the class of a page in small.
pub fn put_on(style: &CssStyleDeclaration, theme: &Theme) {
    for (name, value) in properties(&theme.held()) {
        // Neither can fail: the names are well-formed, and a custom property takes any value.
        match value {
            Some(value) => style.set_property(name, &value).ok(),
            None => style.remove_property(name).ok().map(drop),
        };
    }
}

/// Every property of a look; one without a value is as it is everywhere else.
fn properties(theme: &Theme) -> [(&'static str, Option<String>); 10] {
    let accent = theme.accent.as_deref().and_then(Colour::read);
    let worn = accent.map(accents);
    let colour = |at: usize| worn.map(|worn| worn[at].to_string());
    let scheme = match theme.colours {
        Some(ColourScheme::Light) => Some("light"),
        Some(ColourScheme::Dark) => Some("dark"),
        Some(ColourScheme::Device) | None => None,
    };
    [
        ("--own-accent-light", colour(0)),
        ("--own-strong-light", colour(1)),
        ("--own-picked-light", colour(2)),
        ("--own-accent-dark", colour(3)),
        ("--own-strong-dark", colour(4)),
        ("--own-picked-dark", colour(5)),
        ("--own-accent-sun", colour(6)),
        ("--own-corner", theme.corner.map(|px| format!("{px}px"))),
        ("--own-text", theme.text.map(|share| format!("{share}%"))),
        ("--own-scheme", scheme.map(str::to_owned)),
    ]
}

/// A colour as the accent of every theme, as much darker or lighter as it takes to be read there: accent, a stronger one
/// and what is picked, in light and in dark; then the accent in bright light.
fn accents(told: Colour) -> [Colour; 7] {
    let tint = |accent: Colour| Colour::WHITE.mixed(accent, 0.12);
    let shade = |accent: Colour| DARK[0].mixed(accent, 0.22);
    let read_on = |accent: Colour, grounds: [Colour; 2], picked: Colour| {
        let mut grounds = grounds.into_iter().chain([picked]);
        grounds.all(|ground| accent.is_read_on(ground))
    };
    let light = told.toward(Colour::BLACK, |one| read_on(one, LIGHT, tint(one)));
    let dark = told.toward(Colour::WHITE, |one| read_on(one, DARK, shade(one)));
    let stark = |one: Colour| one.is_read_on(PICKED_STARK);
    [
        light,
        light.mixed(Colour::BLACK, 0.3),
        tint(light),
        dark,
        dark.mixed(Colour::WHITE, 0.4).toward(Colour::WHITE, stark),
        shade(dark),
        light.toward(Colour::BLACK, |one| one.is_read_on(PICKED_SUN)),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHEET: &str = include_str!("../../../styles/theme.css");

    #[test]
    fn every_accent_that_may_be_chosen_is_read_in_every_theme() {
        let on_dark = Colour([0x1d, 0x0a, 0x02]);
        let (light_ink, dark_ink) = (Colour::BLACK, Colour([0xfb, 0xf8, 0xf4]));
        let steps = || (0..=255_u8).step_by(51);
        let all = steps().flat_map(|r| steps().flat_map(move |g| steps().map(move |b| [r, g, b])));
        let told = all
            .map(Colour)
            .filter(|told| told.is_read_on(Colour::WHITE));
        let mut count = 0;
        for told in told {
            let [light, strong, tint, dark, lighter, shade, sun] = accents(told);
            for (text, ground) in [
                (light, LIGHT[0]),
                (light, LIGHT[1]),
                (light, tint),
                (strong, LIGHT[1]),
                (strong, tint),
                (light_ink, tint),
                (dark, DARK[0]),
                (dark, DARK[1]),
                (dark, shade),
                (lighter, DARK[1]),
                (lighter, shade),
                (lighter, PICKED_STARK),
                (dark_ink, shade),
                (on_dark, dark),
                (on_dark, lighter),
                (Colour::WHITE, strong),
                (Colour::WHITE, sun),
                (sun, PICKED_SUN),
            ] {
                assert!(text.is_read_on(ground), "{told}: {text} on {ground}");
            }
            count += 1;
        }
        assert!(count > 40, "{count} colours were tried");
        // The light theme's lowest ground asks for a little more than white does.
        assert_eq!(
            accents(Colour([0x1d, 0x4d, 0x2b]))[0].to_string(),
            "#1d4d2b"
        );
    }

    #[test]
    fn the_grounds_are_those_of_the_style_sheet_which_takes_every_property() {
        for line in [
            format!("--paper: light-dark({}, {});", LIGHT[0], DARK[0]),
            format!("--paper-low: light-dark({}, {});", LIGHT[1], DARK[1]),
            format!("--picked: {PICKED_SUN};"),
            format!("--picked: light-dark({PICKED_SUN}, {PICKED_STARK});"),
            "--on-accent: light-dark(#ffffff, #1d0a02);".to_owned(),
            "--ink: light-dark(#000000, #fbf8f4);".to_owned(),
        ] {
            assert!(SHEET.contains(&line), "{line}");
        }
        let base = include_str!("../../../styles/base.css");
        for (name, value) in properties(&Theme::default()) {
            let taken = format!("var({name}, ");
            assert!(SHEET.contains(&taken) || base.contains(&taken), "{name}");
            assert_eq!(value, None, "{name}");
        }
    }

    #[test]
    fn what_does_not_keep_to_its_limits_is_left_out() {
        let theme = Theme {
            accent: Some("#ff8800".to_owned()),
            corner: Some(25),
            text: Some(110),
            colours: Some(ColourScheme::Dark),
        };
        let put_on = properties(&theme.held());
        let put_on: Vec<_> = put_on.iter().filter(|(_, value)| value.is_some()).collect();
        let (text, dark) = (Some("110%".to_owned()), Some("dark".to_owned()));
        assert_eq!(put_on, [&("--own-text", text), &("--own-scheme", dark)]);
    }
}
