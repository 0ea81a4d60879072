//! The log for a message and for paper.

use sagwright_core::advice::{LapMove, moved_by_laps};
use sagwright_core::intake::{Intake, Tried};
use sagwright_core::words::{Arg, Text};
use yew::prelude::*;

use super::laps::{name, verdicts};
use crate::advice_page::Voice;

/// Laps on paper: the last ones, as many as leave room for the reasons.
const MOST_ON_PAPER: usize = 8;

/// What was tried, a line for each lap, and where the bike stands now; nothing where nothing was tried.
pub fn laps_as_text(voice: &Voice, intake: &Intake) -> Vec<String> {
    if intake.tried.is_empty() {
        return Vec::new();
    }
    let laps = intake.tried.iter().enumerate();
    let laps = laps.map(|(place, lap)| line(voice, place, lap));
    let moved = moved_by_laps(intake);
    let moved = moved.iter().map(|one| now(voice, one));
    [voice.words("track.tried")]
        .into_iter()
        .chain(laps)
        .chain(moved)
        .collect()
}

/// The same for paper.
pub fn laps_on_paper(voice: &Voice, intake: &Intake) -> Html {
    if intake.tried.is_empty() {
        return Html::default();
    }
    let spare = intake.tried.len().saturating_sub(MOST_ON_PAPER);
    let laps = intake.tried.iter().enumerate().skip(spare);
    let laps = laps.map(|(place, lap)| html! { <li>{ line(voice, place, lap) }</li> });
    let moved = moved_by_laps(intake);
    let moved = moved
        .iter()
        .map(|one| html! { <li>{ now(voice, one) }</li> });
    html! {
        <>
            <h3>{ voice.words("track.tried") }</h3>
            <ul class="paper-list">{ for laps }{ for moved }</ul>
        </>
    }
}

fn line(voice: &Voice, place: usize, lap: &Tried) -> String {
    let text = Text::new("track.line")
        .with("lap", Arg::Raw(name(voice, place, lap)))
        .with("felt", Arg::Raw(verdicts(voice, lap)))
        .with(
            "stays",
            Text::new(if lap.kept { "track.kept" } else { "track.gone" }).into(),
        );
    voice.say(&text)
}

fn now(voice: &Voice, moved: &LapMove) -> String {
    let shown = |si: Option<f64>| {
        let si = si.unwrap_or_default();
        Arg::Quantity(si, moved.dimension)
    };
    let text = Text::new("track.now")
        .with("setting", moved.label.clone().into())
        .with("before", shown(moved.from))
        .with("now", shown(moved.to));
    voice.say(&text)
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::{Change, Feeling, Verdict, read, write};

    use super::*;
    use crate::advice_page::test_voice;
    use crate::examples;

    /// An invented rider after two laps: one change stayed, one was put back.
    fn after_two_laps() -> Intake {
        let packs = |rider: &Intake| rider.note.contains("rebound closed far too much");
        let mut rider = examples::riders().find(packs).expect("it is an example");
        rider.tried = [(Verdict::Better, true), (Verdict::Worse, false)]
            .map(|(verdict, kept)| Tried {
                change: Change::ShockReboundOpen,
                felt: [(Feeling::Packs, verdict)].into(),
                kept,
            })
            .into();
        rider
    }

    #[test]
    fn every_lap_has_its_line_and_the_bike_stands_where_it_was_left() {
        let lines = laps_as_text(&test_voice(), &after_two_laps());
        assert_eq!(lines.len(), 4, "{lines:?}");
        for (line, said) in lines
            .iter()
            .zip(["tried", "better", "worse", "5 before, 9 now"])
        {
            assert!(line.contains(said), "{line}");
            assert!(!line.contains(['[', '{', '}']), "{line}");
        }
        assert_eq!(
            laps_as_text(&test_voice(), &Intake::default()),
            Vec::<String>::new()
        );
    }

    #[test]
    fn a_file_brings_the_laps_back() {
        let rider = after_two_laps();
        let file = write(&rider).expect("plain data");
        assert_eq!(read(&file).expect("it was just written").tried, rider.tried);
    }
}
