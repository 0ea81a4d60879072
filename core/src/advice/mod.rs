//! The answer: numbers with reasons, causes with evidence, remedies with effects, cautions.

mod adjusters;
mod answer;
mod assemble;
mod at_workshop;
mod causes;
mod cautions;
mod caveats;
mod draw;
mod effects;
mod figure;
mod keep;
mod laps;
mod picture;
pub mod ranges;
mod rehearsed;
mod remedies;
mod remedy_finding;
mod restacked;
mod ridden;
mod rides;
mod settings;
mod sheet;
mod still;
mod stop;
mod useful;
pub mod what_if;

pub use answer::*;
pub use assemble::{Options, Seen, advise, advise_between, advise_from, advise_with, ride_out};
pub use figure::*;
pub use keep::{Keep, keep};
pub use laps::{LapMove, NextLap, moved_by_laps, put_back};
pub use picture::*;
pub use rehearsed::rehearsed;
pub use remedy_finding::*;
pub use ridden::*;
pub use still::{Still, stand_still};
