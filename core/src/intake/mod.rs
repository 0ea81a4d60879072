//! What people say and measure: types, limits, document versions.

mod choices;

pub use choices::*;
