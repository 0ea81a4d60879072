//! The advice as a few lines of text, for a message to somebody.

use sagwright_core::advice::{Advice, Setting};
use sagwright_core::intake::Intake;
use sagwright_core::words::{Arg, Text};

use crate::advice_page::{Voice, figure};
use crate::track::laps_as_text;

/// The sentence, a line for every setting or sign, what was tried at the track, the caution, and the link where there is one.
pub fn as_text(voice: &Voice, advice: &Advice, intake: &Intake, link: Option<&str>) -> String {
    let mut lines = Vec::new();
    match advice {
        Advice::SetUp(set_up) => {
            lines.push(voice.say(&set_up.sentence));
            lines.extend(set_up.settings.iter().map(|one| setting(voice, one)));
        }
        Advice::StopRiding(stop) => {
            lines.push(voice.say(&stop.sentence));
            lines.extend(stop.signs.iter().map(|sign| voice.say(&sign.instead)));
        }
    }
    lines.extend(laps_as_text(voice, intake));
    lines.push(voice.words("taking.text.scope"));
    if let Some(link) = link {
        lines.push(voice.with("taking.text.link", "link", Arg::Raw(link.to_owned())));
    }
    lines.join("\n")
}

fn setting(voice: &Voice, setting: &Setting) -> String {
    let advised = &setting.advised;
    let key = if setting.now.is_some() {
        "taking.text.setting-now"
    } else {
        "taking.text.setting"
    };
    let now = setting.now.unwrap_or(advised.value);
    let text = Text::new(key)
        .with("setting", setting.label.clone().into())
        .with("value", Arg::Raw(figure(voice, advised)))
        .with("now", Arg::Quantity(now, advised.dimension));
    voice.say(&text)
}

#[cfg(test)]
mod tests {
    use sagwright_core::advice::{Options, advise};
    use sagwright_core::words::UnitChoice;

    use super::*;
    use crate::examples;
    use crate::words::book;

    #[test]
    fn every_example_reads_as_text_without_gaps() {
        let voice = Voice::new(book(), UnitChoice::default());
        for rider in examples::riders() {
            let advice = advise(&rider, &Options::default()).expect("examples get advice");
            let text = as_text(
                &voice,
                &advice,
                &rider,
                Some("https://example.org/#/link/1.A"),
            );
            assert!(text.ends_with("https://example.org/#/link/1.A"), "{text}");
            assert!(!text.contains(['[', '{', '}']), "{text}");
            let least = match &advice {
                Advice::SetUp(set_up) => set_up.settings.len() + 3,
                Advice::StopRiding(stop) => stop.signs.len() + 3,
            };
            assert!(text.lines().count() >= least, "{text}");
        }
    }
}
