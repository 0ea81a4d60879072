//! What a day of vibration adds up to, as employers reckon it. A ride is not a shift: context, never a verdict.

use super::weighting::square;

/// Hours of the day that exposure is referred to (ISO 5349-1:2001, ISO 2631-1:1997).
const REFERENCE_HOURS: f64 = 8.0;

/// A(8), m/s²: the steady weighted acceleration over 8 hours that carries the same energy as the parts of a day,
/// each a weighted acceleration in m/s² and its hours, neither negative (ISO 5349-1:2001, 5.3; 2002/44/EC annex).
pub fn daily(parts: &[(f64, f64)]) -> f64 {
    let energy = parts
        .iter()
        .fold(0.0, |sum, (m_s2, hours)| sum + square(*m_s2) * hours);
    (energy / REFERENCE_HOURS).sqrt()
}
