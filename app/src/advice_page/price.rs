//! What something costs, in words.

use sagwright_core::advice::CostBand;
use sagwright_core::words::{Arg, Text, number};

use super::Voice;

/// "free", "0.5 to 1 hours of workshop labour, parts included", or the same in money.
pub fn price(voice: &Voice, cost: &CostBand) -> String {
    let (low, high) = cost.labour_hours;
    if let Some(money) = &cost.money {
        if money.high <= 0.0 {
            return voice.words("advice.cost.free");
        }
        let band = Text::new("advice.cost.money")
            .with("band", Arg::Raw(band(voice, money.low, money.high, 0)))
            .with("currency", Arg::Raw(money.currency.clone()));
        return voice.say(&band);
    }
    if high <= 0.0 {
        return voice.words("advice.cost.free");
    }
    voice.with(
        "advice.cost.hours",
        "hours",
        Arg::Raw(band(voice, low, high, 1)),
    )
}

/// From one plain number to another; one number where both read the same.
fn band(voice: &Voice, low: f64, high: f64, decimals: usize) -> String {
    let tidy = |value: f64| {
        let text = number(value, decimals);
        match text.split_once('.') {
            Some((whole, part)) if part.chars().all(|c| c == '0') => whole.to_owned(),
            _ => text,
        }
    };
    let (low, high) = (tidy(low), tidy(high));
    let shown = if low == high {
        low
    } else {
        format!("{low}–{high}")
    };
    voice.units().mark(shown)
}

/// "10 minutes", "1 h 30 min".
pub fn minutes(voice: &Voice, minutes: u32) -> String {
    let (hours, rest) = (minutes / 60, minutes % 60);
    let key = match (hours, rest) {
        (0, 1) => "advice.time.minute",
        (0, _) => "advice.time.minutes",
        (_, 0) => "advice.time.hours",
        _ => "advice.time.both",
    };
    let text = Text::new(key)
        .with("hours", Arg::Count(hours.into()))
        .with("minutes", Arg::Count(rest.into()));
    voice.say(&text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice_page::words_test::voice;
    use sagwright_core::advice::Money;

    fn cost(labour_hours: (f64, f64), money: Option<(f64, f64)>) -> CostBand {
        CostBand {
            labour_hours,
            money: money.map(|(low, high)| Money {
                low,
                high,
                currency: "EUR".to_owned(),
            }),
            source: Text::new("x"),
        }
    }

    #[test]
    fn prices_are_free_hours_or_money() {
        let voice = voice();
        assert_eq!(price(&voice, &cost((0.0, 0.0), None)), "free");
        assert!(price(&voice, &cost((0.5, 1.0), None)).starts_with("0.5–1 "));
        assert!(price(&voice, &cost((2.0, 2.0), None)).starts_with("2 "));
        assert!(price(&voice, &cost((0.5, 1.0), Some((30.4, 80.0)))).contains("30–80"));
        assert!(price(&voice, &cost((0.5, 1.0), Some((30.0, 80.0)))).contains("EUR"));
    }

    #[test]
    fn times_are_minutes_below_the_hour_and_hours_above() {
        let voice = voice();
        assert_eq!(minutes(&voice, 1), "1 minute");
        assert_eq!(minutes(&voice, 45), "45 minutes");
        assert_eq!(minutes(&voice, 120), "2 h");
        assert_eq!(minutes(&voice, 90), "1 h 30 min");
    }
}
