//! Numbers for people: the unit they chose, no more digits than the thing has.

use crate::quantity::{Dimension, Unit};

/// How many kinds of quantity there are.
const DIMENSIONS: usize = Dimension::PitchRate as usize + 1;

/// Which unit each kind of quantity is shown in. Riders mix them: kg with lbf/in is fine.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnitChoice {
    /// In the order of the dimensions.
    chosen: [Option<Unit>; DIMENSIONS],
    /// What stands between a whole number and its decimals.
    mark: char,
}

impl Default for UnitChoice {
    /// Metric, with a decimal point.
    fn default() -> Self {
        Self {
            chosen: [None; DIMENSIONS],
            mark: '.',
        }
    }
}

/// The thin space between a number and its unit.
const GAP: char = '\u{202f}';

impl UnitChoice {
    /// The unit chosen for `dimension`; metric where nothing was chosen.
    pub fn unit(&self, dimension: Dimension) -> Unit {
        let first = dimension.units().first().copied().unwrap_or(Unit::Percent);
        let chosen = self.chosen.get(dimension as usize).copied();
        chosen.flatten().unwrap_or(first)
    }

    /// Chooses a unit; one that measures something else is ignored.
    pub fn choose(&mut self, dimension: Dimension, unit: Unit) {
        if dimension.units().contains(&unit)
            && let Some(chosen) = self.chosen.get_mut(dimension as usize)
        {
            *chosen = Some(unit);
        }
    }

    /// The same with another decimal mark, as a language has it.
    #[must_use]
    pub fn marked(mut self, mark: char) -> Self {
        self.mark = mark;
        self
    }

    /// A plain number with so many decimals.
    pub fn number(&self, value: f64, decimals: usize) -> String {
        self.mark(number(value, decimals))
    }

    /// A number written with a decimal point, with the mark in its place.
    pub fn mark(&self, shown: String) -> String {
        match self.mark {
            '.' => shown,
            mark => shown.replace('.', mark.encode_utf8(&mut [0; 4])),
        }
    }

    /// A quantity (SI) with its unit.
    pub fn show(&self, si: f64, dimension: Dimension) -> String {
        let unit = self.unit(dimension);
        with_unit(&self.number(unit.from_si(si), unit.decimals()), unit)
    }

    /// A difference (SI) with sign and unit.
    pub fn show_change(&self, si: f64, dimension: Dimension) -> String {
        let unit = self.unit(dimension);
        let value = unit.difference_from_si(si);
        let sign = if value > 0.0 { "+" } else { "" };
        with_unit(
            &format!("{sign}{}", self.number(value, unit.decimals())),
            unit,
        )
    }

    /// From `low` to `high` (SI) with the unit once; one number where both read the same.
    pub fn show_span(&self, low: f64, high: f64, dimension: Dimension) -> String {
        let unit = self.unit(dimension);
        let (from, to) = (
            self.number(unit.from_si(low), unit.decimals()),
            self.number(unit.from_si(high), unit.decimals()),
        );
        if from == to {
            return with_unit(&from, unit);
        }
        // A dash after a minus sign cannot be read, so negative ends are joined by a word sign instead.
        let joint = if from.starts_with('-') || to.starts_with('-') {
            " … "
        } else {
            "–"
        };
        with_unit(&format!("{from}{joint}{to}"), unit)
    }
}

fn with_unit(number: &str, unit: Unit) -> String {
    match unit {
        Unit::Click | Unit::Piece => number.to_owned(),
        _ => format!("{number}{GAP}{}", unit.symbol()),
    }
}

/// `value` with so many decimals, without a negative zero.
pub fn number(value: f64, decimals: usize) -> String {
    let shown = format!("{value:.decimals$}");
    let is_zero = shown.chars().all(|c| matches!(c, '-' | '0' | '.'));
    if is_zero {
        shown.trim_start_matches('-').to_owned()
    } else {
        shown
    }
}

/// A cell of a table that no spreadsheet takes for a formula: what begins like one gets the mark that says "text".
pub fn plain_cell(cell: &str) -> String {
    if cell.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        ["'", cell].concat()
    } else {
        cell.to_owned()
    }
}
