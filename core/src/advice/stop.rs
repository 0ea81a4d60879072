//! The answer when a stop-riding sign was seen: what to do instead, and nothing to set.

use super::answer::{StopFinding, StopRiding};
use super::cautions::cautions;
use crate::intake::StopSign;
use crate::sorted::Set;
use crate::words::{Arg, Text};

/// What to say about the signs seen; there is at least one.
pub fn stop_riding(signs: &Set<StopSign>) -> StopRiding {
    let count = i64::try_from(signs.len()).unwrap_or(i64::MAX);
    let key = if signs.len() == 1 {
        "stop.sentence-one"
    } else {
        "stop.sentence"
    };
    StopRiding {
        sentence: Text::new(key).with("count", Arg::Count(count)),
        signs: signs.iter().map(|sign| finding(*sign)).collect(),
        cautions: cautions(&["manual-first"]),
    }
}

fn finding(sign: StopSign) -> StopFinding {
    StopFinding {
        sign,
        why: Text::new(format!("stop.{}.why", sign.word())),
        instead: Text::new(format!("stop.{}.instead", sign.word())),
    }
}
