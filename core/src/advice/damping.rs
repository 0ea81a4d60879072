//! Damping force over speed as numbers: each clicker where it is advised, where it stands, and at both its ends.

use super::answer::SettingId;
use super::picture::{DampingCurve, DampingMark, DampingPicture, DampingRole};
use super::sheet::{Sheet, input, reason};
use crate::bench::{Bench, Trial};
use crate::bike::damping::DamperLaw;
use crate::bike::damping::design::{HIGH_SPEED, LOW_SPEED};
use crate::intake::Field;
use crate::quantity::Dimension;
use crate::remedy::restack::QUICK;
use crate::words::{Arg, Text};

/// Points of each curve, closer together where shims leave their seat.
const POINTS: u32 = 41;

/// The clickers in the order of [`Clicks`](crate::bench::Clicks), each with the answer that tells its range.
const CLICKERS: [(SettingId, Field); 4] = [
    (SettingId::ForkCompression, Field::ForkCompressionRange),
    (SettingId::ForkRebound, Field::ForkReboundRange),
    (SettingId::ShockLowCompression, Field::ShockLowRange),
    (SettingId::ShockRebound, Field::ShockReboundRange),
];

/// A picture for each clicker; none where no damper can be sized for this bike.
pub fn damping(sheet: &Sheet) -> Vec<DampingPicture> {
    let Ok(bench) = Bench::of(sheet.situation, sheet.baseline) else {
        return Vec::new();
    };
    let bench = bench.with_clicks_of(sheet.intake);
    let mut advised = bench.advised();
    if let Some(ridden) = sheet.ridden {
        let clicks = ridden.clicks;
        advised.clicks = [
            clicks.fork_compression,
            clicks.fork_rebound,
            clicks.shock_compression,
            clicks.shock_rebound,
        ];
    }
    let drawn = |place: usize| picture(sheet, &bench, &advised, place);
    (0..CLICKERS.len()).filter_map(drawn).collect()
}

fn picture(sheet: &Sheet, bench: &Bench, advised: &Trial, place: usize) -> Option<DampingPicture> {
    let (setting, range_told) = CLICKERS[place];
    let range = bench.ranges()[place];
    let chosen = advised.clicks[place];
    let told = setting.field().si(sheet.intake).is_some();
    let now = Some(bench.now().clicks[place]).filter(|now| told && *now != chosen);
    let curve = |role: DampingRole, clicks: u8| {
        let mut trial = advised.clone();
        trial.clicks[place] = clicks;
        Line::of(bench, &trial, place).map(|line| (role, clicks, line))
    };
    let mut lines = vec![
        curve(DampingRole::Closed, 0)?,
        curve(DampingRole::Open, range)?,
        curve(DampingRole::Chosen, chosen)?,
    ];
    if let Some(now) = now {
        lines.push(curve(DampingRole::Now, now)?);
    }
    let (closed, open, line) = (&lines[0].2, &lines[1].2, &lines[2].2);
    let force = |line: &Line, axle: f64| Arg::Quantity(line.at(axle), Dimension::Force);
    let share = (closed.at(QUICK) - open.at(QUICK)) / line.at(QUICK);
    let message = Text::new("picture.damping.message")
        .with("slow", force(line, LOW_SPEED))
        .with("closed", force(closed, LOW_SPEED))
        .with("open", force(open, LOW_SPEED))
        .with("quick", force(line, QUICK))
        .with("share", Arg::Quantity(share, Dimension::Share));
    let mark = |key: &'static str, axle: f64| DampingMark {
        name: Text::new(key),
        speed: axle * line.shaft,
    };
    Some(DampingPicture {
        setting,
        name: Text::new(format!("picture.damping.{}", setting.word())),
        message,
        top_speed: HIGH_SPEED * line.shaft,
        marks: vec![
            mark("picture.damping.slow", LOW_SPEED),
            mark("picture.damping.edge", QUICK),
        ],
        curves: lines
            .iter()
            .map(|(role, clicks, line)| DampingCurve {
                name: name(*role, *clicks),
                role: *role,
                points: line.points(),
            })
            .collect(),
        reason: reason(
            "damping-picture",
            vec![input(
                "click-range",
                f64::from(range),
                Dimension::Clicks,
                sheet.provenance(range_told),
            )],
        ),
    })
}

fn name(role: DampingRole, clicks: u8) -> Text {
    let clicks = Arg::Quantity(f64::from(clicks), Dimension::Clicks);
    match role {
        DampingRole::Chosen => Text::new("picture.damping.chosen").with("clicks", clicks),
        DampingRole::Now => Text::new("picture.damping.now").with("clicks", clicks),
        DampingRole::Closed => Text::new("picture.damping.closed"),
        DampingRole::Open => Text::new("picture.damping.open").with("clicks", clicks),
    }
}

/// The damping of one end one way.
struct Line {
    law: DamperLaw,
    /// Speed of leg or shaft over speed of the axle.
    shaft: f64,
    /// 1 in compression, −1 in rebound.
    sense: f64,
}

impl Line {
    fn of(bench: &Bench, trial: &Trial, place: usize) -> Option<Self> {
        let laws = bench.laws(trial).ok()?;
        let shafts = bench.shaft_speeds();
        let (law, shaft) = if place < 2 {
            (laws.front, shafts.front)
        } else {
            (laws.rear, shafts.rear)
        };
        Some(Self {
            law,
            shaft,
            sense: if place.is_multiple_of(2) { 1.0 } else { -1.0 },
        })
    }

    /// Force in N at a speed of leg or shaft in m/s, once the plate of the mid-valve has arrived.
    fn force(&self, speed: f64) -> f64 {
        let float = if self.sense > 0.0 {
            self.law.float_m
        } else {
            0.0
        };
        self.law.force_n(self.sense * speed, float).abs()
    }

    /// The same at a speed of the axle.
    fn at(&self, axle: f64) -> f64 {
        self.force(axle * self.shaft)
    }

    fn points(&self) -> Vec<(f64, f64)> {
        let last = f64::from(POINTS - 1);
        let at = |step: u32| {
            let part = f64::from(step) / last;
            let speed = HIGH_SPEED * self.shaft * part * part;
            (speed, self.force(speed))
        };
        (0..POINTS).map(at).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::super::answer::Advice;
    use super::super::assemble::{Options, advise_with};
    use super::*;
    use crate::intake::read;

    const RIDERS: [&str; 4] = [
        include_str!("../../../demo-data/enduro-that-packs-down.json"),
        include_str!("../../../demo-data/gas-fork-right-but-harsh.json"),
        include_str!("../../../demo-data/youth-who-knows-little.json"),
        include_str!("../../../demo-data/trail-bike-baseline.json"),
    ];

    fn pictures(json: &str) -> Vec<DampingPicture> {
        let intake = read(json).expect("a demo rider");
        let advice = advise_with(&intake, &Options::default(), None).expect("advice");
        match advice {
            Advice::SetUp(set_up) => set_up.damping,
            Advice::StopRiding(_) => panic!("nothing stops this rider"),
        }
    }

    fn curve(picture: &DampingPicture, role: DampingRole) -> &[(f64, f64)] {
        let mut of_role = picture.curves.iter().filter(|curve| curve.role == role);
        &of_role.next().expect("it is drawn").points
    }

    #[test]
    fn closing_a_clicker_never_weakens_the_damping_and_speed_always_strengthens_it() {
        for rider in RIDERS {
            let all = pictures(rider);
            assert_eq!(all.len(), CLICKERS.len());
            for picture in &all {
                let of = |role| curve(picture, role);
                let rows = of(DampingRole::Closed)
                    .iter()
                    .zip(of(DampingRole::Chosen))
                    .zip(of(DampingRole::Open));
                for ((closed, chosen), open) in rows {
                    assert!(
                        closed.1 >= chosen.1 && chosen.1 >= open.1 && open.1 >= 0.0,
                        "{:?} at {} m/s: {} {} {}",
                        picture.setting,
                        chosen.0,
                        closed.1,
                        chosen.1,
                        open.1
                    );
                }
                for curve in &picture.curves {
                    assert!(curve.points.windows(2).all(|p| p[1].1 > p[0].1));
                }
            }
        }
    }

    /// What a clicker is for (common practice): over its range it changes a slow stroke more than a square edge.
    #[test]
    fn a_clicker_changes_slow_strokes_more_than_quick_ones() {
        for picture in pictures(RIDERS[0]) {
            let change = |mark: usize| {
                let speed = picture.marks[mark].speed;
                let force = |role| {
                    let points = curve(&picture, role);
                    let after = points.iter().position(|point| point.0 >= speed);
                    points[after.expect("marks lie within the picture")].1
                };
                (force(DampingRole::Closed) - force(DampingRole::Open)) / force(DampingRole::Chosen)
            };
            assert!(change(0) > 1.5 * change(1), "{:?}", picture.setting);
        }
    }

    #[test]
    fn where_the_rider_has_a_clicker_is_drawn_only_where_it_differs() {
        let packs = pictures(RIDERS[0]);
        let now = |picture: &DampingPicture| {
            let mut all = picture.curves.iter();
            all.any(|curve| curve.role == DampingRole::Now)
        };
        assert!(packs.iter().any(now));
        let unknown = pictures(RIDERS[2]);
        assert!(!unknown.iter().any(now), "no clicker was told");
    }
}
