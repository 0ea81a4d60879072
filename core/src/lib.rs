//! From what an off-road rider can say and measure to a defensible suspension set-up.
//!
//! One street of rooms, each reading only the rooms before it:
//! [`intake`] → `bike` → `stance` → `cause` → `remedy` → `advice`.

#![forbid(unsafe_code)]

pub mod intake;
pub mod units;
