//! The settings card's clickers and tyres.

use super::answer::{Setting, SettingId};
use super::cautions::cautions;
use super::figure::Provenance;
use super::ranges::high_speed as turns_from_closed;
use super::ridden::RiddenClicks;
use super::settings::row;
use super::sheet::{Sheet, input};
use crate::intake::{End, Field};
use crate::quantity::Dimension;
use crate::stance::clickers::Baseline;
use crate::stance::tyres::tyres;
use crate::words::{Arg, Text};

/// Clickers front and rear, then tyres.
pub fn rows(sheet: &Sheet) -> Vec<Setting> {
    let mut rows = Vec::new();
    if let Ok(clickers) = &sheet.baseline.clickers {
        rows.push(clicker(
            sheet,
            SettingId::ForkCompression,
            [Field::ForkCompressionNow, Field::ForkCompressionRange],
            &clickers.fork_compression,
        ));
        rows.push(clicker(
            sheet,
            SettingId::ForkRebound,
            [Field::ForkReboundNow, Field::ForkReboundRange],
            &clickers.fork_rebound,
        ));
        rows.push(clicker(
            sheet,
            SettingId::ShockLowCompression,
            [Field::ShockLowNow, Field::ShockLowRange],
            &clickers.shock_compression,
        ));
        rows.push(high_speed(sheet));
        rows.push(clicker(
            sheet,
            SettingId::ShockRebound,
            [Field::ShockReboundNow, Field::ShockReboundRange],
            &clickers.shock_rebound,
        ));
    }
    let usual = tyres(sheet.situation);
    rows.push(tyre(
        sheet,
        SettingId::FrontTyre,
        Field::FrontTyre,
        usual.front.middle.value,
    ));
    rows.push(tyre(
        sheet,
        SettingId::RearTyre,
        Field::RearTyre,
        usual.rear.middle.value,
    ));
    rows
}

fn clicker(sheet: &Sheet, id: SettingId, [now, range]: [Field; 2], start: &Baseline) -> Setting {
    let end = if matches!(id, SettingId::ForkCompression | SettingId::ForkRebound) {
        End::Front
    } else {
        End::Rear
    };
    let start_clicks = f64::from(start.clicks.middle);
    let ridden = sheet
        .ridden
        .map(|ridden| f64::from(ridden_clicks(ridden.clicks, id)));
    let counted = match sheet.provenance(range) {
        Provenance::TypicalOfClass => Provenance::Practice,
        known => known,
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
    let middle = ridden.unwrap_or(start_clicks);
    let mut figure = sheet.practice((id, word), start_clicks, Dimension::Clicks, inputs);
    // What is not known moves the clicks that rides found by as much as those they started from.
    let moved = |clicks: f64| start.held(clicks + middle - start_clicks).round();
    (figure.low, figure.high) = (
        moved(figure.low).min(middle),
        moved(figure.high).max(middle),
    );
    figure.value = middle;
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
fn ridden_clicks(clicks: RiddenClicks, id: SettingId) -> u8 {
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
    let middle = turns_from_closed(range, 0.0).round();
    let inputs = vec![input(
        "click-range",
        range,
        Dimension::Clicks,
        sheet.provenance(Field::ShockHighRange),
    )];
    let id = SettingId::ShockHighCompression;
    let mut figure = sheet.practice((id, "high-speed"), middle, Dimension::Clicks, inputs);
    (figure.low, figure.high) = (figure.low.round(), figure.high.round().min(range));
    let now = Field::ShockHighNow.si(sheet.intake);
    Setting {
        cautions: cautions(&["clicks"]),
        ..row(id, End::Rear, now, figure)
    }
}

fn tyre(sheet: &Sheet, id: SettingId, field: Field, usual: f64) -> Setting {
    let end = if id == SettingId::FrontTyre {
        End::Front
    } else {
        End::Rear
    };
    let figure = sheet.practice((id, "tyre"), usual, Dimension::Pressure, Vec::new());
    Setting {
        cautions: cautions(&["tyres"]),
        ..row(id, end, field.si(sheet.intake), figure)
    }
}
