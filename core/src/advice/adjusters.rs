//! The settings card's clickers and tyres.

use super::answer::{Setting, SettingId};
use super::cautions::cautions;
use super::figure::{Figure, Provenance};
use super::ridden::RiddenClicks;
use super::settings::row;
use super::sheet::{Sheet, input, practice};
use crate::intake::{End, Field};
use crate::quantity::Dimension;
use crate::stance::clickers::Baseline;
use crate::stance::tyres::tyres;
use crate::units::{Band, Pressure};
use crate::words::{Arg, Text};

/// Clickers front and rear, then tyres.
pub fn rows(sheet: &Sheet) -> Vec<Setting> {
    let mut rows = Vec::new();
    if let Ok(clickers) = &sheet.baseline.clickers {
        rows.push(clicker(
            sheet,
            SettingId::ForkCompression,
            Field::ForkCompressionNow,
            &clickers.fork_compression,
        ));
        rows.push(clicker(
            sheet,
            SettingId::ForkRebound,
            Field::ForkReboundNow,
            &clickers.fork_rebound,
        ));
        rows.push(clicker(
            sheet,
            SettingId::ShockLowCompression,
            Field::ShockLowNow,
            &clickers.shock_compression,
        ));
        rows.push(high_speed(sheet));
        rows.push(clicker(
            sheet,
            SettingId::ShockRebound,
            Field::ShockReboundNow,
            &clickers.shock_rebound,
        ));
    }
    let usual = tyres(sheet.situation);
    rows.push(tyre(
        sheet,
        SettingId::FrontTyre,
        Field::FrontTyre,
        usual.front,
    ));
    rows.push(tyre(
        sheet,
        SettingId::RearTyre,
        Field::RearTyre,
        usual.rear,
    ));
    rows
}

fn clicker(sheet: &Sheet, id: SettingId, now: Field, start: &Baseline) -> Setting {
    let end = if matches!(id, SettingId::ForkCompression | SettingId::ForkRebound) {
        End::Front
    } else {
        End::Rear
    };
    let start_clicks = f64::from(start.clicks.middle);
    let ridden = sheet
        .ridden
        .map(|ridden| f64::from(ridden_clicks(&ridden.clicks, id)));
    let middle = ridden.unwrap_or(start_clicks);
    let Band { low, high, .. } = start.clicks.map(f64::from);
    let (low, high) = (low.min(middle), high.max(middle));
    let counted = if sheet.situation.told.clicks {
        Provenance::Given
    } else {
        Provenance::Practice
    };
    let mut inputs = vec![
        input(
            "damping-ratio",
            start.ratio.middle,
            Dimension::Share,
            Provenance::Practice,
        ),
        input(
            "click-range",
            f64::from(start.range),
            Dimension::Clicks,
            counted,
        ),
    ];
    let word = if ridden.is_some() {
        let before = input(
            "start-clicks",
            start_clicks,
            Dimension::Clicks,
            Provenance::Computed,
        );
        inputs.push(before);
        "clicker-ridden"
    } else {
        "clicker"
    };
    let figure = practice(word, (low, middle, high), Dimension::Clicks, inputs);
    let notes = start.clipped.map(|clipped| {
        let key = if clipped.share < 1.0 {
            "note.clicker-runs-out-soft"
        } else {
            "note.clicker-runs-out-firm"
        };
        Text::new(key).with("share", Arg::Quantity(clipped.share, Dimension::Share))
    });
    Setting {
        notes: notes.into_iter().collect(),
        cautions: cautions(&["clicks"]),
        ..row(id, end, now.si(sheet.intake), figure)
    }
}

/// Where rides left an adjuster.
fn ridden_clicks(clicks: &RiddenClicks, id: SettingId) -> u8 {
    match id {
        SettingId::ForkCompression => clicks.fork_compression,
        SettingId::ForkRebound => clicks.fork_rebound,
        SettingId::ShockLowCompression => clicks.shock_compression,
        _ => clicks.shock_rebound,
    }
}

/// The high-speed adjuster has no closed form without rides over the rider's ground: start in its middle.
fn high_speed(sheet: &Sheet) -> Setting {
    let range = f64::from(sheet.situation.high_speed_range);
    let middle = (0.5 * range).round();
    let spread = (range / 8.0).round().max(1.0);
    let figure: Figure = practice(
        "high-speed",
        (
            (middle - spread).max(0.0),
            middle,
            (middle + spread).min(range),
        ),
        Dimension::Clicks,
        vec![input(
            "click-range",
            range,
            Dimension::Clicks,
            sheet.provenance(Field::ShockHighRange),
        )],
    );
    let now = Field::ShockHighNow.si(sheet.intake);
    Setting {
        cautions: cautions(&["clicks"]),
        ..row(SettingId::ShockHighCompression, End::Rear, now, figure)
    }
}

fn tyre(sheet: &Sheet, id: SettingId, field: Field, usual: Band<Pressure>) -> Setting {
    let end = if id == SettingId::FrontTyre {
        End::Front
    } else {
        End::Rear
    };
    let band = (usual.low.value, usual.middle.value, usual.high.value);
    let figure = practice("tyre", band, Dimension::Pressure, Vec::new());
    Setting {
        cautions: cautions(&["tyres"]),
        ..row(id, end, field.si(sheet.intake), figure)
    }
}
