//! What a workshop's document adds to the settings: which of its springs to fit, and clicks as it counts them. The numbers
//! advised stay what they are.

use super::answer::{Counted, InStock, Setting, SettingId};
use super::settings::spring_due;
use super::sheet::Sheet;
use crate::bike::{ForkSpring, Surroundings};
use crate::intake::Field;
use crate::quantity::{Dimension, Entry, RateUnit};
use crate::remedy::RemedyId;
use crate::stance::baseline::fork_step;
use crate::stance::equivalent::other_kind;
use crate::units::{Band, SpringRate, newton_per_m};
use crate::words::{Arg, Text};
use crate::workshop::{Counting, Nearest, Workshop, nearest};

/// Adds what the workshop has in stock and its way of counting.
pub fn add_to(settings: &mut [Setting], sheet: &Sheet, workshop: &Workshop) {
    for setting in settings {
        setting.in_stock = match setting.id {
            SettingId::ForkRate => another(sheet, setting, workshop, &workshop.stock.fork),
            SettingId::ShockRate => another(sheet, setting, workshop, &workshop.stock.shock),
            _ => None,
        };
        setting.counted = counted(sheet, workshop, setting);
    }
}

/// That it counts from fully open, and what to do where an adjuster's clicks were not counted.
pub fn counting(settings: &[Setting], workshop: &Workshop) -> Option<Text> {
    let clickers = || settings.iter().filter(|one| range_of(one.id).is_some());
    if workshop.counting != Some(Counting::FromOpen) || clickers().next().is_none() {
        return None;
    }
    let key = if clickers().all(|one| one.counted.is_some()) {
        "counting.from-open"
    } else {
        "counting.uncounted"
    };
    Some(Text::new(key).with("name", Arg::Raw(workshop.name.clone())))
}

/// The spring that a remedy needs: the one on the settings card, or the coil that takes the place of the gas.
pub fn for_remedy(
    id: RemedyId,
    settings: &[Setting],
    sheet: &Sheet,
    workshop: &Workshop,
) -> Option<InStock> {
    let of = |id| settings.iter().find(|one| one.id == id)?.in_stock.clone();
    match id {
        RemedyId::ForkSprings => of(SettingId::ForkRate),
        RemedyId::ShockSpring => of(SettingId::ShockRate),
        RemedyId::ConvertToCoil => {
            let wanted = coil(sheet)?;
            let found = nearest(&workshop.stock.fork, &wanted, None)?;
            Some(in_stock(workshop, found, &wanted))
        }
        _ => None,
    }
}

/// What there is in the place of the present spring, where that one does not suit, within the range that is advised.
fn another(
    sheet: &Sheet,
    setting: &Setting,
    workshop: &Workshop,
    shelf: &[Entry<RateUnit>],
) -> Option<InStock> {
    let rate = spring_due(sheet, setting.id)?;
    let advised = &setting.advised;
    let wanted = Band {
        low: rate.min(newton_per_m(advised.low)),
        middle: rate,
        high: rate.max(newton_per_m(advised.high)),
    };
    let found = nearest(shelf, &wanted, setting.now.map(newton_per_m))?;
    Some(in_stock(workshop, found, &wanted))
}

/// The coil that sits the rider where the gas does, and a step of those sold either way.
fn coil(sheet: &Sheet) -> Option<Band<SpringRate>> {
    let situation = sheet.situation;
    let today = Surroundings::same(situation.surroundings.riding);
    let (machine, set_up) = other_kind(situation, &sheet.baseline.set_up, &today).ok()?;
    let ForkSpring::Coil { rate, .. } = set_up.fork.spring else {
        return None;
    };
    let step = fork_step(&machine);
    Some(Band {
        low: rate - step,
        middle: rate,
        high: rate + step,
    })
}

fn in_stock(workshop: &Workshop, found: Nearest, wanted: &Band<SpringRate>) -> InStock {
    let rate = found.rate.value;
    let text = if found.advised {
        Text::new("stock.there")
    } else {
        let (low, high) = (wanted.low.value, wanted.high.value);
        Text::new("stock.outside").with("advised", Arg::Span(low, high, Dimension::Rate))
    };
    InStock {
        rate,
        advised: found.advised,
        text: text
            .with("name", Arg::Raw(workshop.name.clone()))
            .with("rate", Arg::Quantity(rate, Dimension::Rate)),
    }
}

/// Where an adjuster's clicks from closed to open are told.
const fn range_of(id: SettingId) -> Option<Field> {
    match id {
        SettingId::ForkCompression => Some(Field::ForkCompressionRange),
        SettingId::ForkRebound => Some(Field::ForkReboundRange),
        SettingId::ShockLowCompression => Some(Field::ShockLowRange),
        SettingId::ShockHighCompression => Some(Field::ShockHighRange),
        SettingId::ShockRebound => Some(Field::ShockReboundRange),
        _ => None,
    }
}

/// A clicker counted from open, where the workshop counts so and somebody counted all its clicks: a guess will not do.
fn counted(sheet: &Sheet, workshop: &Workshop, setting: &Setting) -> Option<Counted> {
    let field = range_of(setting.id)?;
    if workshop.counting != Some(Counting::FromOpen) || field.is_guess(sheet.intake) {
        return None;
    }
    let range = field.si(sheet.intake)?;
    let from_open = |from_closed: f64| (range - from_closed).max(0.0);
    let advised = &setting.advised;
    Some(Counted {
        label: Text::new(format!("setting.{}.counted", setting.id.word())),
        advised: from_open(advised.value),
        low: from_open(advised.high),
        high: from_open(advised.low),
        now: setting.now.map(from_open),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::{Advice, Options, SetUpAdvice, advise_with};
    use crate::intake::{Intake, read};
    use crate::quantity::How;
    use crate::workshop;

    const HEAVY: &str = include_str!("../../../demo-data/heavy-rider-on-standard-springs.json");

    fn demo() -> Workshop {
        workshop::read(include_str!("../../../demo-data/workshop.json")).expect("an invented one")
    }

    fn advice(intake: &Intake, workshop: Option<Workshop>) -> SetUpAdvice {
        let options = Options { workshop };
        match advise_with(intake, &options, None).expect("a checked intake") {
            Advice::SetUp(set_up) => *set_up,
            Advice::StopRiding(_) => panic!("no sign to stop was told"),
        }
    }

    fn setting(advice: &SetUpAdvice, id: SettingId) -> &Setting {
        let mut all = advice.settings.iter();
        all.find(|one| one.id == id).expect("a row of the card")
    }

    fn shelf(rates: &[f64]) -> Vec<Entry<RateUnit>> {
        let entry = |value: &f64| Entry {
            value: *value,
            unit: RateUnit::NewtonPerMillimetre,
            how: None,
        };
        rates.iter().map(entry).collect()
    }

    #[test]
    fn the_shelf_is_told_beside_the_spring_and_changes_no_number() {
        let intake = read(HEAVY).expect("an invented rider");
        let mut there = advice(&intake, Some(demo()));
        let fork = setting(&there, SettingId::ForkRate);
        let (low, high) = (fork.advised.low, fork.advised.high);
        assert!(low < 4_800.0 && high < 8_000.0, "{low} {high}");
        let spring = fork.in_stock.as_ref().expect("a spring in stock");
        assert!(spring.advised && (spring.rate - 4_800.0).abs() < 1e-9);
        for remedy in &there.remedies {
            let fork_springs = remedy.id == RemedyId::ForkSprings;
            assert_eq!(remedy.in_stock.as_ref() == Some(spring), fork_springs);
        }

        let mut short = demo();
        short.stock.fork = shelf(&[8.0, 9.0]);
        short.stock.shock.clear();
        let elsewhere = advice(&intake, Some(short));
        let fork = setting(&elsewhere, SettingId::ForkRate);
        let spring = fork.in_stock.as_ref().expect("a spring in stock");
        assert!(!spring.advised && (spring.rate - 8_000.0).abs() < 1e-9);
        assert_eq!(spring.text.key, "stock.outside");
        assert_eq!(setting(&elsewhere, SettingId::ShockRate).in_stock, None);

        let alone = advice(&intake, None);
        assert_eq!(alone.counting, None);
        for row in &mut there.settings {
            (row.in_stock, row.counted) = (None, None);
        }
        assert_eq!(there.settings, alone.settings);
    }

    #[test]
    fn a_spring_that_suits_needs_none_and_gas_may_take_a_coil() {
        let gas = include_str!("../../../demo-data/gas-fork-over-pressured.json");
        let intake = read(gas).expect("an invented rider");
        let mut workshop = demo();
        workshop.remedies = None;
        workshop.stock.fork = shelf(&[4.6, 8.0]);
        let advice = advice(&intake, Some(workshop));
        // The rear keeps its spring.
        assert_eq!(setting(&advice, SettingId::ShockRate).in_stock, None);
        let mut remedies = advice.remedies.iter();
        let convert = remedies.find(|one| one.id == RemedyId::ConvertToCoil);
        let spring = convert.and_then(|one| one.in_stock.as_ref());
        let spring = spring.expect("a coil in stock");
        assert!(spring.advised && (spring.rate - 8_000.0).abs() < 1e-9);
    }

    #[test]
    fn clicks_are_counted_from_open_only_where_somebody_counted_them_all() {
        let mut intake = read(HEAVY).expect("an invented rider");
        let told = advice(&intake, Some(demo()));
        let rebound = setting(&told, SettingId::ForkRebound);
        let counted = rebound.counted.as_ref().expect("20 clicks were counted");
        for (open, closed) in [
            (counted.advised, rebound.advised.value),
            (counted.low, rebound.advised.high),
            (counted.high, rebound.advised.low),
        ] {
            assert!((open + closed - 20.0).abs() < 1e-9, "{open} {closed}");
        }
        assert_eq!((rebound.now, counted.now), (Some(10.0), Some(10.0)));
        // The high-speed adjuster was not counted.
        assert_eq!(
            setting(&told, SettingId::ShockHighCompression).counted,
            None
        );
        let key = |advice: &SetUpAdvice| advice.counting.as_ref().map(|text| text.key.clone());
        assert_eq!(key(&told).as_deref(), Some("counting.uncounted"));

        let mut usual = demo();
        usual.counting = Some(Counting::FromClosed);
        let usual = advice(&intake, Some(usual));
        assert!(usual.settings.iter().all(|one| one.counted.is_none()));
        assert_eq!(usual.counting, None);

        let range = Field::ForkReboundRange;
        let mut guessed = range.get(&intake).expect("it was told");
        guessed.how = Some(How::Guess);
        range.set(&mut intake, Some(guessed));
        let guess = advice(&intake, Some(demo()));
        assert_eq!(setting(&guess, SettingId::ForkRebound).counted, None);
    }
}
