//! What if: the rider moves a setting and sees at once what it would do.
//!
//! `course` is what was moved and the way back, `levers` the settings to move, `seen` what shows standing still, `rode` what
//! rides show, `section` puts them on the page and takes what is tried as the rider's own.

mod course;
mod levers;
mod rode;
mod section;
mod seen;

pub use section::WhatIfSection;
