//! What to know before trusting the answer.

use super::causes;
use super::sheet::Sheet;
use crate::cause::alike::alike;
use crate::cause::{Cause, checks, close_call};
use crate::intake::Field;
use crate::quantity::Dimension;
use crate::stance::baseline::stance_now;
use crate::units::Band;
use crate::words::{Arg, Text};
use crate::workshop::Workshop;

/// The caveats, most pressing first.
pub(super) fn caveats(
    sheet: &Sheet,
    case: &checks::Case,
    workshop: Option<&Workshop>,
) -> Vec<Text> {
    /// More than this many misfits would say that nothing is known.
    const MOST_MISFITS: usize = 2;
    let mut caveats = Vec::new();
    if sheet.intake.stop_signs.is_none() {
        caveats.push(Text::new("caveat.stop-signs"));
    }
    if let Some(workshop) = workshop.filter(|workshop| workshop.remedies.is_some()) {
        let name = Arg::Raw(workshop.name.clone());
        caveats.push(Text::new("caveat.offered").with("name", name));
    }
    caveats.extend(contradictions(sheet));
    caveats.extend(
        case.belief
            .misfits()
            .into_iter()
            .take(MOST_MISFITS)
            .map(|misfit| Text::new("caveat.misfit").with("evidence", misfit.text.clone().into())),
    );
    let out_of_reach = sheet.baseline.stance.is_err() || sheet.baseline.clickers.is_err();
    if out_of_reach {
        caveats.push(Text::new("caveat.out-of-reach"));
    } else if sheet.ranges.often_out_of_reach() {
        caveats.push(Text::new("caveat.often-out-of-reach"));
    }
    caveats.extend(beside_the_leader(case));
    if !sheet.situation.told.class {
        caveats.push(Text::new("caveat.class"));
    }
    caveats.push(Text::new("caveat.no-field-data"));
    caveats
}

/// That another cause may be there as well, or in place of the one that leads.
fn beside_the_leader(case: &checks::Case) -> Option<Text> {
    /// Less than so many times as likely as the second, the first is not called the likelier by words that fit both.
    const AS_LIKELY: f64 = 2.0;
    /// Share of the second cause's chance that it has beside the first, from which both may be there at once.
    const TOGETHER: f64 = 0.5;
    /// Below this a cause is not worth telling beside another.
    const WORTH_TELLING: f64 = 0.12;
    let (ways, belief) = (case.hypotheses, case.belief);
    let ranked = belief.ranked();
    let [(first, p), (second, q), ..] = *ranked.as_slice() else {
        return None;
    };
    let told = |key: &'static str, other: Cause| {
        Text::new(key)
            .with("first", causes::name(first).into())
            .with("second", causes::name(other).into())
    };
    if q > WORTH_TELLING {
        if belief.both(ways, first, second) > TOGETHER * q {
            return Some(told("caveat.both", second));
        }
        if p < AS_LIKELY * q && alike(ways, belief, case.numbers, first, second) {
            return Some(told("caveat.alike", second));
        }
    }
    let close = close_call(case)?;
    let count = |count: usize| Arg::Count(i64::try_from(count).unwrap_or(i64::MAX));
    Some(
        told("caveat.close-call", close.rival)
            .with("stays", count(close.of - close.flips))
            .with("of", count(close.of)),
    )
}

/// Sags that no bike with the springs told could have: one of the two is wrong.
fn contradictions(sheet: &Sheet) -> Vec<Text> {
    /// Beyond friction, measuring and the spread of a class: about three standard deviations, m.
    const IMPOSSIBLE_M: f64 = 0.025;
    let told = &sheet.situation.told;
    let Ok(stance) = stance_now(sheet.situation) else {
        return Vec::new();
    };
    let rows = [
        (
            "contradiction.fork-sag",
            told.fork_spring,
            Field::ForkRiderSag,
            stance.ridden.fork,
        ),
        (
            "contradiction.rear-sag",
            told.shock_rate && told.shock_preload,
            Field::RearRiderSag,
            stance.ridden.rear,
        ),
    ];
    rows.into_iter()
        .filter(|(_, told, ..)| *told)
        .filter_map(|(key, _, field, band)| {
            let Band { low, high, .. } = band.map(|sag| sag.value);
            let measured = field.si(sheet.intake)?;
            let beyond = (low - measured).max(measured - high);
            (beyond > IMPOSSIBLE_M).then(|| {
                Text::new(key)
                    .with("measured", Arg::Quantity(measured, Dimension::Length))
                    .with("computed", Arg::Span(low, high, Dimension::Length))
            })
        })
        .collect()
}
