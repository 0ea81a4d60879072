//! Riders who walk through the site by clicking and typing.

mod advice;
mod examples;
mod gas;
mod imperial;
mod keyboard;
mod stop;
mod unknowing;

/// The button beside "Continue", of equal rank with any answer.
const DONT_KNOW: &str = "I don't know";
/// The same button where something is to be measured.
const NOT_MEASURED: &str = "I haven't measured it";
