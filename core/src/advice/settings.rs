//! The settings card: springs, pressure, preload and sags, front then rear, then adjusters and tyres.

use super::adjusters;
use super::answer::{NearestRate, Setting, SettingId};
use super::cautions::cautions;
use super::figure::{Figure, Provenance};
use super::sheet::{Sheet, input};
use crate::bike::atmosphere::gauge_after;
use crate::bike::{ForkSpring, ShockSet};
use crate::intake::{End, Field};
use crate::quantity::Dimension;
use crate::stance::StanceError;
use crate::stance::baseline::{
    FORK_PRELOAD, Front, SHOCK_PRELOAD, fork_preload, fork_pressure, fork_rate, shock_preload,
    shock_rate,
};
use crate::stance::offers::Offer;
use crate::units::{Band, Length, SpringRate, newton_per_m, pascal};
use crate::words::{Arg, Text};

/// Every row that can be worked out, in the order of the card.
pub fn settings(sheet: &Sheet) -> Vec<Setting> {
    let mut rows = match &sheet.baseline.front {
        Front::Coil {
            nearest, fitted, ..
        } => {
            let rows = [sheet.fork_rate(nearest, *fitted), sheet.fork_preload()];
            rows.into_iter().flatten().collect()
        }
        Front::Gas { .. } => sheet.fork_pressure().into_iter().collect::<Vec<_>>(),
    };
    rows.extend(
        [
            sheet.sag(SettingId::ForkFreeSag),
            sheet.sag(SettingId::ForkRiderSag),
        ]
        .into_iter()
        .flatten(),
    );
    rows.extend(
        [sheet.shock_rate(), Some(sheet.shock_preload())]
            .into_iter()
            .flatten(),
    );
    rows.extend(
        [
            sheet.sag(SettingId::RearFreeSag),
            sheet.sag(SettingId::RearRiderSag),
        ]
        .into_iter()
        .flatten(),
    );
    rows.extend(adjusters::rows(sheet));
    rows
}

/// A row with its label.
pub fn row(id: SettingId, end: End, now: Option<f64>, advised: Figure) -> Setting {
    Setting {
        id,
        end,
        label: Text::new(format!("setting.{}", id.word())),
        now,
        advised,
        nearest: Vec::new(),
        notes: Vec::new(),
        in_stock: None,
        counted: None,
        cautions: Vec::new(),
    }
}

/// What to do about a spring, and that riding chose it where it differs from the one nearest by sag.
fn fit_notes(now: Option<f64>, fitted: SpringRate, ridden: Option<f64>) -> Vec<Text> {
    let rate = ridden.unwrap_or(fitted.value);
    let mut notes = vec![fit_note(now, newton_per_m(rate))];
    // Springs are sold in whole steps, so a tenth of a percent tells two of them apart.
    if (rate - fitted.value).abs() > 1e-3 * fitted.value {
        notes.push(
            Text::new("note.spring-ridden").with("rate", Arg::Quantity(rate, Dimension::Rate)),
        );
    }
    notes
}

/// What to do about a spring: keep it or fit another.
fn fit_note(now: Option<f64>, fitted: SpringRate) -> Text {
    let key = match now {
        Some(_) if keeps(now, fitted) => "note.keep-spring",
        Some(_) => "note.change-spring",
        None => "note.fit-spring",
    };
    Text::new(key).with("rate", Arg::Quantity(fitted.value, Dimension::Rate))
}

/// The spring to fit in the place of the present one; `None` where that one suits.
pub fn spring_due(sheet: &Sheet, id: SettingId) -> Option<SpringRate> {
    let set_up = &sheet.baseline.set_up;
    let fit = match (id, set_up.fork.spring) {
        (SettingId::ForkRate, ForkSpring::Coil { rate, .. }) => rate,
        (SettingId::ShockRate, _) => set_up.shock.rate,
        _ => return None,
    };
    (!keeps(id.field().si(sheet.intake), fit)).then_some(fit)
}

/// Whether the present spring stays: a kept one is passed on bit for bit.
fn keeps(now: Option<f64>, fitted: SpringRate) -> bool {
    now == Some(fitted.value)
}

/// What to know of a preload that practice would not accept, or that none reaches.
fn preload_note(found: Result<Length, StanceError>, accepted: Band<Length>) -> Vec<Text> {
    let note = match found {
        Ok(found) if accepted.contains(&found) => None,
        Ok(found) if found < accepted.low => Some("note.preload-too-little"),
        Err(StanceError::OutOfReach { too_much: true, .. }) => Some("note.preload-too-little"),
        Ok(_) | Err(StanceError::OutOfReach { .. }) => Some("note.preload-too-much"),
        Err(_) => None,
    };
    note.map(Text::new).into_iter().collect()
}

impl Sheet<'_> {
    fn fork_rate(&self, nearest: &[Offer], fitted: SpringRate) -> Option<Setting> {
        let mut inputs = self.load_inputs(true);
        let preload = self.situation.fork_preload.value;
        inputs.push(input(
            "fork-preload",
            preload,
            Dimension::Length,
            Provenance::Practice,
        ));
        let springs = f64::from(self.situation.machine.fork_springs());
        inputs.push(input(
            "fork-springs",
            springs,
            Dimension::Count,
            self.kind_provenance(),
        ));
        let advised = self.computed(SettingId::ForkRate, Dimension::Rate, inputs, |s| {
            fork_rate(s).map(|r| r.value)
        })?;
        let now = Field::ForkRate.si(self.intake);
        Some(Setting {
            nearest: nearest.iter().map(|offer| near(offer, true)).collect(),
            notes: fit_notes(now, fitted, self.ridden.and_then(|r| r.fork_rate)),
            cautions: cautions(&["spring-preload", "axle-clamps"]),
            ..row(SettingId::ForkRate, End::Front, now, advised)
        })
    }

    fn kind_provenance(&self) -> Provenance {
        if self.situation.told.fork_kind {
            Provenance::Given
        } else {
            Provenance::TypicalOfClass
        }
    }

    fn fork_preload(&self) -> Option<Setting> {
        let ForkSpring::Coil { rate, preload, .. } = self.baseline.set_up.fork.spring else {
            return None;
        };
        let notes = preload_note(fork_preload(self.situation, rate), FORK_PRELOAD);
        let advised = self.practice(
            (SettingId::ForkPreload, "fork-preload"),
            preload.value,
            Dimension::Length,
            Vec::new(),
        );
        let now = Field::ForkPreload.si(self.intake);
        Some(Setting {
            notes,
            ..row(SettingId::ForkPreload, End::Front, now, advised)
        })
    }

    fn fork_pressure(&self) -> Option<Setting> {
        /// A change that a gauge can show, Pa.
        const MOVED_PA: f64 = 0.15e5;
        let air = self.situation.surroundings;
        let mut inputs = self.load_inputs(true);
        inputs.push(input(
            "temperature",
            air.riding.temperature.value,
            Dimension::Temperature,
            self.air_provenance(),
        ));
        let mut advised =
            self.computed(SettingId::ForkPressure, Dimension::Pressure, inputs, |s| {
                fork_pressure(s).map(|p| p.value)
            })?;
        let mut notes = Vec::new();
        match self.situation.marked_maximum {
            Some(most) if most.value < advised.value => notes.push(
                Text::new("note.held-under-maximum")
                    .with("wanted", Arg::Quantity(advised.value, Dimension::Pressure)),
            ),
            Some(_) => {}
            None => notes.push(Text::new("note.maximum-not-told")),
        }
        if let Some(most) = self.situation.marked_maximum {
            advised.value = advised.value.min(most.value);
            advised.low = advised.low.min(most.value);
            advised.high = advised.high.min(most.value);
        }
        // What the gauge would read today on a charge set earlier.
        let told = Field::ForkPressure.si(self.intake);
        let now = told.map(|told| gauge_after(pascal(told), air.filled, air.riding).value);
        if let (Some(told), Some(now)) = (told, now)
            && (now - told).abs() > MOVED_PA
        {
            notes.push(
                Text::new("note.pressure-moved")
                    .with("told", Arg::Quantity(told, Dimension::Pressure))
                    .with("now", Arg::Quantity(now, Dimension::Pressure)),
            );
        }
        Some(Setting {
            notes,
            cautions: cautions(&["marked-maximum", "gas-fork"]),
            ..row(SettingId::ForkPressure, End::Front, now, advised)
        })
    }

    fn air_provenance(&self) -> Provenance {
        if self.situation.told.temperature {
            Provenance::Given
        } else {
            Provenance::Practice
        }
    }

    fn shock_rate(&self) -> Option<Setting> {
        let mut inputs = self.load_inputs(false);
        let leverage = self.situation.machine.leverage;
        let ratio = leverage.ratio(self.situation.rear_sag.value);
        inputs.push(input(
            "motion-ratio",
            ratio,
            Dimension::Share,
            Provenance::TypicalOfClass,
        ));
        let preload = self.situation.shock_preload.value;
        inputs.push(input(
            "shock-preload",
            preload,
            Dimension::Length,
            Provenance::Practice,
        ));
        let advised = self.computed(SettingId::ShockRate, Dimension::Rate, inputs, |s| {
            shock_rate(s).map(|r| r.value)
        })?;
        let now = Field::ShockRate.si(self.intake);
        let rear = &self.baseline.rear;
        Some(Setting {
            nearest: rear
                .nearest
                .iter()
                .map(|offer| near(offer, false))
                .collect(),
            notes: fit_notes(now, rear.fitted, self.ridden.map(|r| r.shock_rate)),
            cautions: cautions(&["spring-preload", "clearance"]),
            ..row(SettingId::ShockRate, End::Rear, now, advised)
        })
    }

    fn shock_preload(&self) -> Setting {
        let ShockSet {
            rate: fitted,
            preload: set,
            ..
        } = self.baseline.set_up.shock;
        let notes = preload_note(shock_preload(self.situation, fitted), SHOCK_PRELOAD);
        let inputs = vec![input(
            "shock-rate-fitted",
            fitted.value,
            Dimension::Rate,
            Provenance::Computed,
        )];
        let advised = self.practice(
            (SettingId::ShockPreload, "shock-preload"),
            set.value,
            Dimension::Length,
            inputs,
        );
        let now = Field::ShockPreload.si(self.intake);
        Setting {
            notes,
            cautions: cautions(&["spring-preload", "clearance"]),
            ..row(SettingId::ShockPreload, End::Rear, now, advised)
        }
    }

    /// A sag of the advised set-up; where friction lets it stop stands in the reason.
    fn sag(&self, id: SettingId) -> Option<Setting> {
        let stance = self.baseline.stance.ok()?;
        let (end, field, band, word) = match id {
            SettingId::ForkFreeSag => {
                (End::Front, Field::ForkFreeSag, stance.free.fork, "free-sag")
            }
            SettingId::ForkRiderSag => (
                End::Front,
                Field::ForkRiderSag,
                stance.ridden.fork,
                "rider-sag",
            ),
            SettingId::RearFreeSag => (End::Rear, Field::RearFreeSag, stance.free.rear, "free-sag"),
            _ => (
                End::Rear,
                Field::RearRiderSag,
                stance.ridden.rear,
                "rider-sag",
            ),
        };
        let Band { low, middle, high } = band.map(|sag| sag.value);
        let mut inputs = self.load_inputs(end == End::Front);
        inputs.push(input(
            "sticks-from",
            low,
            Dimension::Length,
            Provenance::Computed,
        ));
        inputs.push(input(
            "sticks-to",
            high,
            Dimension::Length,
            Provenance::Computed,
        ));
        let advised = self.practice((id, word), middle, Dimension::Length, inputs);
        Some(row(id, end, field.si(self.intake), advised))
    }
}

fn near(offer: &Offer, front: bool) -> NearestRate {
    let (ridden, free) = (&offer.stance.ridden, &offer.stance.free);
    let (rider_sag, free_sag) = if front {
        (ridden.fork.middle.value, free.fork.middle.value)
    } else {
        (ridden.rear.middle.value, free.rear.middle.value)
    };
    NearestRate {
        rate: offer.rate.value,
        rider_sag,
        free_sag,
    }
}
