//! Drives the built site in real Chromium, the way a rider would use it.
//!
//! A test is one call of [`browse`]: it serves the site, opens a browser of the wanted size, hands a [`Page`]
//! to the walk, and afterwards asserts what must always hold: no error in the console and no request to any
//! other origin. When the walk fails, the message says at which address and heading, and where the picture is.
//!
//! ```no_run
//! # use sagwright_tests_browser::{PHONE, browse};
//! browse("start", PHONE, async |page| {
//!     page.open("#/").await?;
//!     page.sees("Sagwright").await?;
//!     page.accessible().await?;
//!     page.picture("start").await
//! });
//! ```
//!
//! Environment: `SAGWRIGHT_DIST` is a site built before (else it is built once per test program);
//! `CHROMEDRIVER` is the driver to start (else `chromedriver` on the `PATH`).

mod answering;
mod around;
mod axe;
mod browse;
mod demands;
mod keyboard;
mod page;
mod pages;
mod process;
mod screen;
mod site;
mod themes;

pub use answering::{DONT_KNOW, NOT_MEASURED};
pub use around::{KEPT, Network, PAPERS, pages_of};
pub use browse::{browse, browse_alone};
pub use page::Page;
pub use pages::{PAGES, Place, Rider};
pub use screen::{DESKTOP, LARGE_TEXT, LYING, NARROW, PHONE, Screen};
pub use site::{HostPage, dist};
pub use themes::Theme;
