//! Cautions: which signal word each carries, after the definitions of ANSI Z535.6.

use super::answer::{Caution, SignalWord};
use crate::words::Text;

/// The caution known by `word`, with its signal word.
///
/// The hazards and the cures are the usual ones of the trade (common practice); the signal words follow from
/// what happens if the caution is ignored: could kill or maim, could injure a little, could damage.
pub fn caution(word: &'static str) -> Caution {
    let signal = match word {
        "clicks" | "one-change" | "manual-first" => SignalWord::Notice,
        "trapped-air" | "numb-hands" => SignalWord::Caution,
        _ => SignalWord::Warning,
    };
    Caution {
        signal,
        text: Text::new(format!("caution.{word}")),
    }
}

/// Several cautions, gravest first, in the order given otherwise.
pub fn cautions(words: &[&'static str]) -> Vec<Caution> {
    let mut all: Vec<Caution> = words.iter().map(|word| caution(word)).collect();
    all.sort_by_key(|caution| caution.signal);
    all
}
