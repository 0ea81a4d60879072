//! The answer: numbers with reasons, causes with evidence, remedies with effects, cautions.

mod adjusters;
mod answer;
mod assemble;
mod causes;
mod cautions;
mod draw;
mod effects;
mod figure;
mod picture;
mod remedies;
mod ridden;
mod rides;
mod settings;
mod sheet;
mod stop;
mod useful;

pub use answer::*;
pub use assemble::{Options, advise, advise_with, ride_out};
pub use figure::*;
pub use picture::*;
pub use ridden::*;
pub use rides::rehearsed;
