//! Taking the result along: as a file, on paper, as a link, as a code to scan, as text. Nothing leaves the device
//! before the rider presses a button that says so.

mod code;
mod hand;
mod section;
mod text;

pub use code::Code;
pub use hand::copy;
pub use section::{TakeAlong, paper_code};

use sagwright_core::intake::{Intake, to_link};

use crate::browser;
use crate::route::LINK;

/// The whole link to these answers, the address of this site in front.
pub fn link_to(intake: &Intake) -> Option<String> {
    let word = to_link(intake)?;
    Some(format!("{}#/{LINK}/{word}", browser::site()?))
}

/// The link for a code to scan: the answers alone, without the rider's own words.
pub fn link_without_words(intake: &Intake) -> Option<String> {
    let bare = Intake {
        note: String::new(),
        ..intake.clone()
    };
    link_to(&bare)
}
