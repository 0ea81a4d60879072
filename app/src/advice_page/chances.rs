//! Chances as numbers and bars.

use sagwright_core::quantity::Dimension;
use yew::prelude::*;

use super::Voice;

/// Below this and above its opposite a chance is not told more exactly: nothing is certain.
const LEAST: f64 = 0.01;

/// "34 %"; "under 1 %" and "over 99 %" at the ends.
pub fn chance(voice: &Voice, share: f64) -> String {
    match share {
        p if p < LEAST => voice.words("advice.chance.least"),
        p if p > 1.0 - LEAST => voice.words("advice.chance.most"),
        p => voice.quantity(p, Dimension::Share),
    }
}

/// A bar as long as a share. The number stands beside it, so it is drawn for the eye only.
pub fn bar(share: f64) -> Html {
    moved_bar(None, share)
}

/// A bar as long as a share, with a mark where it ended before.
pub fn moved_bar(before: Option<f64>, share: f64) -> Html {
    let place = |share: f64| (share.clamp(0.0, 1.0) * 100.0).to_string();
    html! {
        <svg class="bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
            <rect class="bar-whole" x="0" y="0" width="100" height="10" />
            <rect class="bar-part" x="0" y="0" width={place(share)} height="10" />
            if let Some(before) = before {
                <line class="bar-before" x1={place(before)} x2={place(before)} y1="0" y2="10" />
            }
        </svg>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice_page::words_test::voice;

    #[test]
    fn no_chance_is_told_as_certain() {
        let voice = voice();
        for (share, part) in [
            (0.0, "under 1"),
            (0.004, "under 1"),
            (0.34, "34"),
            (1.0, "over 99"),
        ] {
            let told = chance(&voice, share);
            assert!(told.starts_with(part), "{share} is told as {told}");
        }
    }
}
