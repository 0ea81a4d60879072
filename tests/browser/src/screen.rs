//! The screens people hold or sit at.

/// A screen: its size in CSS pixels, and how many dots make one of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Screen {
    /// Used in file names.
    pub name: &'static str,
    /// Width in CSS pixels.
    pub width: u32,
    /// Height in CSS pixels.
    pub height: u32,
    /// Device pixels per CSS pixel.
    pub ratio: f64,
    /// Whether it is touched rather than pointed at.
    pub touch: bool,
    /// How large its owner set text, CSS pixels; 16 is usual.
    pub text: u32,
}

/// A phone of usual size, held upright.
pub const PHONE: Screen = Screen {
    name: "phone",
    width: 390,
    height: 844,
    ratio: 2.0,
    touch: true,
    text: 16,
};

/// The narrowest width that WCAG 2.2 criterion 1.4.10 asks to work without scrolling sideways.
pub const NARROW: Screen = Screen {
    name: "narrow",
    width: 320,
    height: 568,
    ratio: 2.0,
    touch: true,
    text: 16,
};

/// A small laptop.
pub const DESKTOP: Screen = Screen {
    name: "desktop",
    width: 1280,
    height: 800,
    ratio: 1.0,
    touch: false,
    text: 16,
};

/// The phone lying on its side.
pub const LYING: Screen = Screen {
    name: "lying",
    width: 844,
    height: 390,
    ..PHONE
};

/// The phone of somebody who set text to twice its size: WCAG 2.2 criterion 1.4.4.
pub const LARGE_TEXT: Screen = Screen {
    name: "large-text",
    text: 32,
    ..PHONE
};
