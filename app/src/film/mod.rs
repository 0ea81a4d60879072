//! A ride seen from the side, before and after, as it was computed.
//!
//! `motion` reads where everything was at a moment, `pose` puts bike and rider there, `draw` draws both rides on one canvas,
//! `table` says the same in numbers, and `show` has them move, stand still and go step by step.

mod draw;
mod motion;
mod pose;
mod show;
mod table;

pub use show::Film;
