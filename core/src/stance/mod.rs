//! Where the bike sits, and which spring, pressure or preload makes it sit where it should.
//!
//! [`loads`] says what each axle carries, [`mod@settle`] where the bike comes to rest under it, [`wanted`] which
//! set-up gives a wanted sag, [`offers`] what the nearest springs on sale give instead, [`equivalent`] which gas
//! stands for which coil, [`mod@breakaway`] what it takes to get a fork moving, [`curves`] force over travel,
//! [`free_sag`] what the free sag tells of the spring, [`damping`] how much of it to aim at and [`mod@clickers`] where the
//! adjusters start. [`situation`] turns answers into a bike that can be computed, [`mod@baseline`] puts what suits it
//! together, [`unknowns`] says how far each number could be off, and [`mod@sound`] how the numbers of bikes that are set up
//! well go together.
//!
//! **The model.** Tyres do not enter, since sag is measured from axle to bike. Springs, gas and trapped air act
//! with slow gas laws. The shares of the weight on the axles are those of the level bike; when one end sits
//! lower, the bike pitches and its centre of mass moves towards that end: with pitch θ (nose up), the axle loads
//! change by ∓ (Σ m h) g θ / L. The wheels' own movement fore and aft along their paths, which is of like size
//! and opposite sign, is left out, as practice quotes shares no better than to a percent.
//! Friction makes every sag a band: the bike rests anywhere between the balance of load less friction and that of load plus friction.

pub mod baseline;
pub mod breakaway;
pub mod clickers;
pub mod curves;
pub mod damping;
pub mod equivalent;
pub mod error;
pub mod free_sag;
pub mod loads;
pub mod offers;
pub mod settle;
pub mod situation;
pub mod sound;
pub mod tyres;
pub mod unknowns;
pub mod wanted;

pub use baseline::{Baseline, baseline};
pub use breakaway::{Breakaway, breakaway};
pub use clickers::{Clickers, Ranges, clickers};
pub use equivalent::{
    equal_energy_pressure, equal_energy_rate, equal_sag_pressure, equal_sag_rate,
};
pub use error::{Asked, StanceError};
pub use loads::Load;
pub use offers::{Offer, fork_rates_near, shock_rates_near};
pub use settle::{Pitch, Stance, settle, settle_level};
pub use situation::Situation;
pub use wanted::{
    Case, fork_preload_for, fork_rate_for, gas_pressure_for, shock_preload_for, shock_rate_for,
};
