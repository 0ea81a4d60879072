//! How far an answer moves with one input alone.

use super::input::{Input, Spread};
use crate::stance::error::StanceError;
use crate::stance::situation::Situation;

/// How far an answer moves with one input.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Move {
    /// The input.
    pub input: Input,
    /// One standard deviation of it, its own SI unit.
    pub deviation: f64,
    /// How far the answer moves when the input rises by that much, the answer's SI unit.
    pub moves_by: f64,
}

/// Moves each input that is spread normally by one standard deviation either way, most moving first. Those that move the
/// answer by less than a ten-thousandth, or beyond what has an answer, are left out.
///
/// # Errors
/// That of `answer` in the situation itself.
pub fn moves(
    situation: &Situation,
    answer: impl Fn(&Situation) -> Result<f64, StanceError>,
) -> Result<Vec<Move>, StanceError> {
    let value = answer(situation)?;
    let mut moves: Vec<Move> = Input::ALL
        .into_iter()
        .filter_map(|input| {
            let Spread::Normal(deviation) = input.spread(situation) else {
                return None;
            };
            let up = answer(&input.put(situation, deviation)).ok()?;
            let down = answer(&input.put(situation, -deviation)).ok()?;
            Some(Move {
                input,
                deviation,
                moves_by: 0.5 * (up - down),
            })
        })
        .filter(|m| m.moves_by.abs() > 1e-4 * value.abs())
        .collect();
    moves.sort_by(|a, b| b.moves_by.abs().total_cmp(&a.moves_by.abs()));
    Ok(moves)
}
