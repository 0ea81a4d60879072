//! The log at the track: a lap in five taps, kept press by press, in two tabs, without room and without a signal.

mod beyond;
mod handling;
mod keeping;
mod lap;
