//! The contrast of a colour with white, as WCAG 2.2 defines it.

/// Contrast of a colour given as `#rrggbb` with white, 1 to 21; `None` where it is no such colour.
pub fn contrast_with_white(colour: &str) -> Option<f64> {
    let digits = colour.strip_prefix('#')?;
    if digits.len() != 6 || !digits.bytes().all(|digit| digit.is_ascii_hexdigit()) {
        return None;
    }
    let part = |from: usize| {
        let value = u8::from_str_radix(digits.get(from..from + 2)?, 16).ok()?;
        Some(linear(f64::from(value) / 255.0))
    };
    // Relative luminance, WCAG 2.2; white has 1.
    let luminance = 0.2126 * part(0)? + 0.7152 * part(2)? + 0.0722 * part(4)?;
    Some(1.05 / (luminance + 0.05))
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
        for (colour, expected) in [
            ("#000000", 21.0),
            ("#ffffff", 1.0),
            ("#595959", 7.0),
            ("#767676", 4.54),
        ] {
            let found = contrast_with_white(colour).expect("a colour");
            assert!((found - expected).abs() < 0.1, "{colour}: {found}");
        }
        for wrong in ["", "red", "#fff", "#12345g", "872a08", "#872a0é"] {
            assert_eq!(contrast_with_white(wrong), None, "{wrong}");
        }
    }
}
