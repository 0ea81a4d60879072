//! From what an off-road rider can say and measure to a defensible suspension set-up.
//!
//! One street of rooms, each reading only the rooms before it:
//! [`intake`] → [`bike`] → [`stance`] → [`ride`] → [`feel`] → [`mod@bench`] → `cause` → `remedy` → [`workshop`] → `advice`.
//! [`units`], [`quantity`], [`solve`], [`sorted`], [`lane`] and [`words`] stand beside the street and serve all of it.

#![forbid(unsafe_code)]

pub mod advice;
pub mod bench;
pub mod bike;
pub mod cause;
pub mod feel;
mod form;
pub mod intake;
pub mod lane;
mod listed;
pub mod quantity;
pub mod remedy;
pub mod ride;
pub mod solve;
pub mod sorted;
pub mod stance;
pub mod units;
pub mod words;
pub mod workshop;
