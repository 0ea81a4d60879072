//! Riders who walk through the site by clicking and typing.

mod advice;
mod examples;
mod gas;
mod imperial;
mod keyboard;
mod stop;
mod unknowing;
