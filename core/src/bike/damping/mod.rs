//! Dampers from hydraulics: oil through bleeds and shims, pressures on piston and rod.
//!
//! [`oil`] and [`orifice`] say how oil flows, [`shims`] how discs bend, [`valve`] puts them together, [`damper`] the
//! valves into a damper, and [`design`] sizes one for a wanted damping. [`law`] is what a ride computes with.
//!
//! Inside, pressures are absolute unless their name says gauge, and flows and areas are those of one damper.

pub mod damper;
pub mod design;
pub mod law;
pub mod oil;
pub mod orifice;
pub mod reservoir;
pub mod shims;
pub mod valve;

pub use damper::Damper;
pub use design::{Hardware, Wanted};
pub use law::{DamperLaw, ValveLaw};
pub use oil::Oil;
