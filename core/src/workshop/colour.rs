//! Colours of a screen, and how well one stands out from another, as WCAG 2.2 defines it.

use std::fmt;

/// The least contrast of text with its ground: level AAA of WCAG 2.2, as people read this outdoors.
pub const LEAST_CONTRAST: f64 = 7.0;

/// A colour of a screen: red, green and blue of sRGB.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Colour(pub [u8; 3]);

impl Colour {
    /// Black.
    pub const BLACK: Self = Self([0; 3]);
    /// White.
    pub const WHITE: Self = Self([255; 3]);

    /// The colour written as `#rrggbb`; `None` for all else.
    pub fn read(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('#')?;
        if digits.len() != 6 || !digits.bytes().all(|digit| digit.is_ascii_hexdigit()) {
            return None;
        }
        let part = |from: usize| u8::from_str_radix(digits.get(from..from + 2)?, 16).ok();
        Some(Self([part(0)?, part(2)?, part(4)?]))
    }

    /// Contrast with another colour, 1 to 21.
    pub fn contrast(self, other: Self) -> f64 {
        let (one, two) = (self.luminance(), other.luminance());
        (one.max(two) + 0.05) / (one.min(two) + 0.05)
    }

    /// Whether text of this colour can be read on that ground outdoors.
    pub fn is_read_on(self, ground: Self) -> bool {
        self.contrast(ground) >= LEAST_CONTRAST
    }

    /// This colour with a share of another in it, 0 to 1.
    #[must_use]
    pub fn mixed(self, other: Self, share: f64) -> Self {
        let part = |at: usize| {
            let (own, its) = (f64::from(self.0[at]), f64::from(other.0[at]));
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "between two parts of a colour, which are bytes"
            )]
            let byte = libm::round(own + share.clamp(0.0, 1.0) * (its - own)) as u8;
            byte
        };
        Self([part(0), part(1), part(2)])
    }

    /// This colour with as much of `end` in it as it takes to be `fit`; `end` itself where nothing less is.
    #[must_use]
    pub fn toward(self, end: Self, fit: impl Fn(Self) -> bool) -> Self {
        /// Steps finer than the eye can tell apart.
        const STEPS: u32 = 50;
        let mut steps = (0..STEPS).map(|step| self.mixed(end, f64::from(step) / f64::from(STEPS)));
        steps.find(|colour| fit(*colour)).unwrap_or(end)
    }

    /// Relative luminance, WCAG 2.2: 0 for black, 1 for white.
    fn luminance(self) -> f64 {
        let [red, green, blue] = self.0.map(|part| linear(f64::from(part) / 255.0));
        0.2126 * red + 0.7152 * green + 0.0722 * blue
    }
}

impl fmt::Display for Colour {
    /// As `#rrggbb`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [red, green, blue] = self.0;
        write!(f, "#{red:02x}{green:02x}{blue:02x}")
    }
}

/// From the sRGB curve to light, with the threshold that WCAG gives.
fn linear(value: f64) -> f64 {
    if value <= 0.04045 {
        value / 12.92
    } else {
        libm::pow((value + 0.055) / 1.055, 2.4)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Contrasts that WCAG's own technique G17 and common checkers give.
    #[test]
    fn known_contrasts_are_found() {
        for (text, expected) in [
            ("#000000", 21.0),
            ("#ffffff", 1.0),
            ("#595959", 7.0),
            ("#767676", 4.54),
        ] {
            let colour = Colour::read(text).expect("a colour");
            let found = colour.contrast(Colour::WHITE);
            assert!((found - expected).abs() < 0.1, "{text}: {found}");
            assert!((found - Colour::WHITE.contrast(colour)).abs() < 1e-12);
            assert_eq!(colour.to_string(), text);
        }
        for wrong in ["", "red", "#fff", "#12345g", "872a08", "#872a0é"] {
            assert_eq!(Colour::read(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn a_colour_goes_no_further_than_it_has_to() {
        let orange = Colour([0xff, 0x88, 0x00]);
        let dark = orange.toward(Colour::BLACK, |c| c.is_read_on(Colour::WHITE));
        let contrast = dark.contrast(Colour::WHITE);
        assert!(
            (LEAST_CONTRAST..7.6).contains(&contrast),
            "{dark}: {contrast}"
        );
        assert_eq!(
            dark.toward(Colour::BLACK, |c| c.is_read_on(Colour::WHITE)),
            dark
        );
        assert_eq!(orange.toward(Colour::BLACK, |_| false), Colour::BLACK);
        assert_eq!(orange.mixed(Colour::WHITE, 0.0), orange);
        assert_eq!(orange.mixed(Colour::WHITE, 7.0), Colour::WHITE);
    }
}
