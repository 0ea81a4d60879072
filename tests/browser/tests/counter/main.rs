//! The workshop's counter in a real browser.

mod desk;
mod full;
mod handling;
mod journeys;
mod outside;
mod settings;
