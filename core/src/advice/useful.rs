//! Whether a remedy would change anything on this bike as far as it is known.

use super::answer::SettingId;
use super::sheet::Sheet;
use crate::bike::ForkSpring;
use crate::bike::atmosphere::gauge_after;
use crate::intake::Field;
use crate::remedy::RemedyId;
use crate::stance::baseline::{Front, fork_preload, shock_preload};
use crate::stance::clickers::{Baseline, Clickers};
use crate::stance::tyres::tyres;
use crate::units::{BAR_IN_PA, pascal};

/// A clicker this far past its start already has been moved that way far enough.
const PAST_CLICKS: f64 = 3.0;
/// A fork or shock serviced within so many hours gains nothing from another service (common practice).
const FRESH_HOURS: f64 = 10.0;
/// Preloads, rates and pressures closer than these to what is advised are as good as set.
const SAME_PRELOAD_M: f64 = 0.001;
const SAME_RATE_N_PER_M: f64 = 1.0;
const SAME_GAS_PA: f64 = 0.3 * BAR_IN_PA;

/// Whether `id` is worth offering: false only where an answer shows that it is done already.
pub fn useful(sheet: &Sheet, id: RemedyId) -> bool {
    match id {
        RemedyId::SetGasPressure => !gas_is_set(sheet),
        RemedyId::SetTyres => !tyres_are_set(sheet),
        RemedyId::SetShockPreload => !shock_preload_is_set(sheet),
        RemedyId::ForkSpacer => !fork_preload_is_set(sheet),
        RemedyId::ForkSprings => !fork_springs_fit(sheet),
        RemedyId::ShockSpring => {
            let now = Field::ShockRate.si(sheet.intake);
            now.is_none_or(|now| differs(now, sheet.baseline.rear.fitted.value, SAME_RATE_N_PER_M))
        }
        RemedyId::ServiceSeals | RemedyId::ServiceForkOil => !fresh(sheet, Field::ForkHours),
        RemedyId::ServiceLinkage | RemedyId::ServiceShock => !fresh(sheet, Field::ShockHours),
        RemedyId::OpenForkCompression => has_room(
            sheet,
            Field::ForkCompressionNow,
            |c| &c.fork_compression,
            true,
        ),
        RemedyId::CloseForkCompression => has_room(
            sheet,
            Field::ForkCompressionNow,
            |c| &c.fork_compression,
            false,
        ),
        RemedyId::OpenForkRebound => {
            has_room(sheet, Field::ForkReboundNow, |c| &c.fork_rebound, true)
        }
        RemedyId::CloseForkRebound => {
            has_room(sheet, Field::ForkReboundNow, |c| &c.fork_rebound, false)
        }
        RemedyId::OpenShockCompression => {
            has_room(sheet, Field::ShockLowNow, |c| &c.shock_compression, true)
        }
        RemedyId::CloseShockCompression => {
            has_room(sheet, Field::ShockLowNow, |c| &c.shock_compression, false)
        }
        RemedyId::OpenShockRebound => {
            has_room(sheet, Field::ShockReboundNow, |c| &c.shock_rebound, true)
        }
        RemedyId::CloseShockRebound => {
            has_room(sheet, Field::ShockReboundNow, |c| &c.shock_rebound, false)
        }
        _ => true,
    }
}

fn differs(a: f64, b: f64, least: f64) -> bool {
    (a - b).abs() >= least
}

fn fresh(sheet: &Sheet, field: Field) -> bool {
    field
        .si(sheet.intake)
        .is_some_and(|seconds| seconds / 3600.0 < FRESH_HOURS)
}

/// Whether a clicker can still be moved that way: it has not gone past its start already.
fn has_room(sheet: &Sheet, now: Field, of: fn(&Clickers) -> &Baseline, open: bool) -> bool {
    let (Some(now), Ok(start)) = (now.si(sheet.intake), &sheet.baseline.clickers) else {
        return true;
    };
    let past = now - f64::from(of(start).clicks.middle);
    if open {
        past < PAST_CLICKS
    } else {
        past > -PAST_CLICKS
    }
}

/// Whether what a remedy sets was told to stand outside the range that suits, whatever is not known.
pub fn plainly_off(sheet: &Sheet, id: RemedyId) -> bool {
    if id != RemedyId::SetGasPressure {
        return false;
    }
    let range = sheet.ranges.get(SettingId::ForkPressure);
    match (gas_now(sheet), range) {
        (Some(now), Some(found)) => now < found.range.low || now > found.range.high,
        _ => false,
    }
}

/// What a gauge would read on the fork today, Pa, where its pressure was told.
fn gas_now(sheet: &Sheet) -> Option<f64> {
    let air = sheet.situation.surroundings;
    let told = Field::ForkPressure.si(sheet.intake)?;
    Some(gauge_after(pascal(told), air.filled, air.riding).value)
}

fn gas_is_set(sheet: &Sheet) -> bool {
    match (gas_now(sheet), &sheet.baseline.front) {
        (Some(now), Front::Gas { held, .. }) => !differs(now, held.value, SAME_GAS_PA),
        _ => false,
    }
}

fn tyres_are_set(sheet: &Sheet) -> bool {
    let suits = tyres(sheet.situation);
    let set = |field: Field, band: crate::units::Band<crate::units::Pressure>| {
        field
            .si(sheet.intake)
            .is_some_and(|now| band.contains(&pascal(now)))
    };
    set(Field::FrontTyre, suits.front) && set(Field::RearTyre, suits.rear)
}

fn shock_preload_is_set(sheet: &Sheet) -> bool {
    let situation = sheet.situation;
    let told = situation.told.shock_preload && situation.told.shock_rate;
    let now = situation.now.shock;
    told && shock_preload(situation, now.rate)
        .is_ok_and(|suits| !differs(now.preload.value, suits.value, SAME_PRELOAD_M))
}

fn fork_preload_is_set(sheet: &Sheet) -> bool {
    let situation = sheet.situation;
    let told = situation.told.fork_preload && situation.told.fork_spring;
    match situation.now.fork.spring {
        ForkSpring::Coil { rate, preload, .. } if told => fork_preload(situation, rate)
            .is_ok_and(|suits| !differs(preload.value, suits.value, SAME_PRELOAD_M)),
        _ => false,
    }
}

fn fork_springs_fit(sheet: &Sheet) -> bool {
    match (Field::ForkRate.si(sheet.intake), &sheet.baseline.front) {
        (Some(now), Front::Coil { fitted, .. }) => !differs(now, fitted.value, SAME_RATE_N_PER_M),
        _ => false,
    }
}
