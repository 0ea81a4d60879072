//! What stands in a row of settings. Clicks stand in both ways of counting where the workshop counts from open.

use sagwright_core::advice::Setting;
use sagwright_core::words::Arg;
use yew::prelude::*;

use super::Voice;
use super::reason::range;

/// A row of settings in words.
pub struct Shown {
    /// What it is.
    pub label: String,
    /// How it stands now.
    pub now: Option<Number>,
    /// What is advised.
    pub advised: Number,
    /// The range of what is advised, where it reads other than the number itself.
    pub range: Option<String>,
}

/// A number in words.
#[derive(PartialEq)]
pub struct Number {
    /// As this page counts, or as the workshop does.
    pub first: String,
    /// The same counted from closed, where the workshop counts from open.
    pub second: Option<String>,
}

/// A row of settings in words.
pub fn shown(voice: &Voice, setting: &Setting) -> Shown {
    let advised = &setting.advised;
    let show = |si: f64| voice.quantity(si, advised.dimension);
    let Some(counted) = &setting.counted else {
        let alone = |si: f64| Number {
            first: show(si),
            second: None,
        };
        return Shown {
            label: voice.say(&setting.label),
            now: setting.now.map(alone),
            advised: alone(advised.value),
            range: range(voice, advised),
        };
    };
    let from = |key: &'static str, clicks: f64| voice.with(key, "clicks", Arg::Raw(show(clicks)));
    let both = |open: f64, closed: f64| Number {
        first: from("advice.setting.from-open", open),
        second: Some(from("advice.setting.from-closed", closed)),
    };
    let (low, high) = (counted.low, counted.high);
    Shown {
        label: voice.say(&counted.label),
        now: counted
            .now
            .zip(setting.now)
            .map(|(open, closed)| both(open, closed)),
        advised: both(counted.advised, advised.value),
        range: (show(low) != show(high)).then(|| {
            let span = voice.units().show_span(low, high, advised.dimension);
            voice.with("advice.setting.from-open", "clicks", Arg::Raw(span))
        }),
    }
}

impl Number {
    /// Beside this class, that it is in words as well, which need more room.
    pub fn class(&self, class: &'static str) -> Classes {
        classes!(class, self.second.is_some().then_some("card-counted"))
    }

    /// The count from closed, below the other.
    pub fn below(&self, class: &'static str) -> Html {
        html! { if let Some(second) = &self.second { <span {class}>{ second }</span> } }
    }
}
