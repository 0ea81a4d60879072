//! A code for a phone's camera to scan (QR code, ISO/IEC 18004).

use std::fmt::Write as _;

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use yew::prelude::*;

/// The largest version drawn: 69 dots wide, of 0.8 mm each on 60 mm with the margin. At level M it holds 331 bytes.
const LARGEST: u8 = 13;

/// Light dots to keep free on every side, as the standard asks.
const MARGIN: i32 = 4;

/// A code, as the dots to draw.
#[derive(Debug, Clone, PartialEq)]
pub struct Code {
    /// Dots on a side, margin included.
    width: i32,
    /// The dark dots as a path, one dot being one unit.
    path: String,
}

impl Code {
    /// The code for a text; `None` where the text is too long for a code that any phone reads.
    ///
    /// Level M at least: it can still be read with 15 % of it dirty or creased.
    pub fn of(text: &str) -> Option<Self> {
        let segments = [QrSegment::make_bytes(text.as_bytes())];
        let code = QrCode::encode_segments_advanced(
            &segments,
            QrCodeEcc::Medium,
            Version::MIN,
            Version::new(LARGEST),
            None,
            true,
        )
        .ok()?;
        Some(Self {
            width: code.size() + 2 * MARGIN,
            path: path(&code),
        })
    }

    /// The drawing, black on white whatever the theme: many cameras read nothing else. `name` says what it is.
    pub fn draw(&self, name: String) -> Html {
        let width = self.width;
        html! {
            <svg
                class="code"
                viewBox={format!("0 0 {width} {width}")}
                shape-rendering="crispEdges"
                role="img"
                aria-label={name}
            >
                <rect class="code-light" width={width.to_string()} height={width.to_string()} />
                <path class="code-dark" d={self.path.clone()} />
            </svg>
        }
    }
}

/// Every run of dark dots in a row as one bar.
fn path(code: &QrCode) -> String {
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let run = (x..code.size())
                .take_while(|x| code.get_module(*x, y))
                .count();
            if run > 0 {
                // Writing to a String cannot fail.
                let _ = write!(path, "M{} {}h{run}v1h-{run}z", x + MARGIN, y + MARGIN);
            }
            // What ended the run is light.
            x += i32::try_from(run).unwrap_or_default() + 1;
        }
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Draws the path as the browser does and has it read by another library.
    fn read_back(code: &Code) -> String {
        const DOT: usize = 4;
        let side = usize::try_from(code.width).expect("a width") * DOT;
        let mut dark = vec![false; side * side];
        for bar in code.path.split('M').filter(|bar| !bar.is_empty()) {
            let (start, rest) = bar.split_once('h').expect("every bar goes right");
            let (x, y) = start.split_once(' ').expect("every bar starts somewhere");
            let (run, _) = rest.split_once('v').expect("every bar goes down");
            let number = |text: &str| text.parse::<usize>().expect("a whole number") * DOT;
            for row in number(y)..number(y) + DOT {
                let from = row * side + number(x);
                dark[from..from + number(run)].fill(true);
            }
        }
        let shade = |x: usize, y: usize| if dark[y * side + x] { 0 } else { 255 };
        let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side, side, shade);
        let grids = picture.detect_grids();
        let (meta, text) = grids[0].decode().expect("one code that can be read");
        // 0 stands for level M in the code itself; 1, 2 and 3 are L, H and Q.
        assert_ne!(meta.ecc_level, 1, "below level M");
        assert!(meta.version.0 <= usize::from(LARGEST));
        text
    }

    #[test]
    fn what_is_drawn_is_read_back_by_another_library() {
        for length in [1, 60, 200, 331] {
            let text: String = "https://example.org/#/link/1.Ab-_"
                .chars()
                .cycle()
                .take(length)
                .collect();
            let code = Code::of(&text).expect("it fits");
            assert_eq!(read_back(&code), text);
        }
    }

    #[test]
    fn what_is_too_long_makes_no_code() {
        assert_eq!(Code::of(&"a".repeat(332)), None);
    }
}
