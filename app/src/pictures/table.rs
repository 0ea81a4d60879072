//! The numbers of a picture in rows: the table under it, and the same as a file for a spreadsheet.

use sagwright_core::words::{Arg, Text, number};
use yew::prelude::*;

use super::chart::{Chart, Measure};
use crate::advice_page::Voice;

/// One row, SI.
#[derive(Debug, Clone, PartialEq)]
pub struct Row<'a> {
    /// Where on the level axis.
    pub at: f64,
    /// What is marked there.
    pub mark: Option<&'a Text>,
    /// The height of each curve there; none beyond its ends.
    pub heights: Vec<Option<f64>>,
}

/// The rows of a chart: even steps and every mark with its name, in order.
pub fn rows(chart: &Chart) -> Vec<Row<'_>> {
    let even = (0..=chart.table_steps).map(|step| {
        let part = f64::from(step) / f64::from(chart.table_steps);
        (chart.at(part), None)
    });
    let marks = chart.marks.iter().map(|mark| (mark.at, Some(&mark.name)));
    let mut places: Vec<_> = marks.chain(even).collect();
    places.sort_by(|a, b| a.0.total_cmp(&b.0));
    // A mark that stands on an even step needs no second row; the sort is stable, so the mark comes first.
    places.dedup_by(|later, earlier| later.1.is_none() && (later.0 - earlier.0).abs() < 5e-4);
    places
        .into_iter()
        .map(|(at, mark)| Row {
            at,
            mark,
            heights: chart.curves.iter().map(|c| c.height_at(at)).collect(),
        })
        .collect()
}

/// The rows as the table beneath the picture.
pub fn table(chart: &Chart, voice: &Voice, message: &str) -> Html {
    let heads = chart.curves.iter().map(|curve| {
        html! { <th scope="col">{ voice.say(&curve.name) }</th> }
    });
    let rows = rows(chart).into_iter().map(|row| {
        let cells = row.heights.iter().map(|height| {
            let height = height.map(|height| chart.upright.measure.say(voice, height));
            html! { <td>{ height.unwrap_or_default() }</td> }
        });
        html! {
            <tr>
                <th scope="row">
                    { chart.level.measure.say(voice, row.at) }
                    if let Some(name) = row.mark {
                        <span class="hint">{ " " }{ voice.say(name) }</span>
                    }
                </th>
                { for cells }
            </tr>
        }
    });
    let heads = html! {
        <>
            <th scope="col">{ voice.words(chart.words.column) }</th>
            { for heads }
        </>
    };
    scrolled(voice, message, heads, rows.collect())
}

/// A table that may be wider than its place, called by the sentence of its picture.
pub fn scrolled(voice: &Voice, message: &str, heads: Html, rows: Html) -> Html {
    html! {
        <div class="scroller" tabindex="0" role="region" aria-label={voice.words("picture.table")}>
            <table class="data">
                <caption>{ message }</caption>
                <thead>
                    <tr>{ heads }</tr>
                </thead>
                <tbody>{ rows }</tbody>
            </table>
        </div>
    }
}

/// The rows as comma-separated values after RFC 4180, in the units the reader chose; the unit stands in the head of its
/// column, and decimals follow a point in every language.
///
/// # Errors
/// None when writing into memory.
pub fn csv(chart: &Chart, voice: &Voice) -> Result<String, csv::Error> {
    let head = |name: String, measure: Measure| {
        let text = Text::new("picture.csv.column")
            .with("name", Arg::Raw(name))
            .with("unit", Arg::Raw(measure.symbol(voice.units()).to_owned()));
        voice.say(&text)
    };
    let plain = |measure: Measure, si: f64| {
        let shown = measure.shown(voice.units(), si);
        number(shown, measure.decimals(voice.units()))
    };
    let (level, upright) = (chart.level.measure, chart.upright.measure);
    let marked = !chart.marks.is_empty();
    let mut writer = csv::Writer::from_writer(Vec::new());
    let mut heads = vec![head(voice.words(chart.words.column), level)];
    heads.extend(marked.then(|| voice.words("picture.csv.mark")));
    heads.extend(
        chart
            .curves
            .iter()
            .map(|curve| head(voice.say(&curve.name), upright)),
    );
    writer.write_record(&heads)?;
    for row in rows(chart) {
        let mut cells = vec![plain(level, row.at)];
        cells.extend(marked.then(|| row.mark.map(|name| voice.say(name)).unwrap_or_default()));
        let heights = row.heights.iter();
        cells.extend(heights.map(|height| height.map(|si| plain(upright, si)).unwrap_or_default()));
        writer.write_record(&cells)?;
    }
    let bytes = writer
        .into_inner()
        .map_err(csv::IntoInnerError::into_error)?;
    // What was written from text is text.
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

#[cfg(test)]
mod tests {
    use sagwright_core::advice::CurveRole;
    use sagwright_core::advice::{ForceCurve, ForcePicture, TravelMark};
    use sagwright_core::quantity::{Dimension, Unit};
    use sagwright_core::words::UnitChoice;

    use super::*;
    use crate::advice_page::no_reason;
    use crate::words::book;

    fn chart(marks: &[f64]) -> Chart {
        Chart::of_force(&ForcePicture {
            message: Text::new("x"),
            curves: vec![ForceCurve {
                name: Text::new("picture.coil"),
                role: CurveRole::Coil,
                points: vec![(0.0, 100.0), (0.2, 1100.0)],
            }],
            marks: marks
                .iter()
                .map(|&travel| TravelMark {
                    name: Text::new("picture.free-sag"),
                    travel,
                })
                .collect(),
            full_travel: 0.3,
            reason: no_reason(),
        })
    }

    #[test]
    fn the_table_holds_even_steps_and_every_mark_in_order() {
        let chart = chart(&[0.035, 0.12, 0.3]);
        let rows = rows(&chart);
        assert!(rows.windows(2).all(|pair| pair[0].at < pair[1].at));
        assert_eq!(rows.iter().filter(|row| row.mark.is_some()).count(), 3);
        // Eleven even steps; two of the marks stand on one.
        assert_eq!(rows.len(), 12);
    }

    #[test]
    fn the_file_has_units_in_its_heads_and_points_in_its_numbers() {
        let mut units = UnitChoice::default().marked(',');
        units.choose(Dimension::Length, Unit::Inch);
        let voice = Voice::new(book(), units);
        let text = csv(&chart(&[0.035]), &voice).expect("memory takes it");
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        let heads = reader.headers().expect("a head").clone();
        assert!(
            heads[0].ends_with("(in)") && heads[2].ends_with("(N)"),
            "{heads:?}"
        );
        let rows: Vec<_> = reader.records().map(|row| row.expect("whole")).collect();
        assert_eq!(rows.len(), 12);
        for row in &rows {
            row[0].parse::<f64>().expect("a number with a point");
        }
        let marked: Vec<_> = rows.iter().filter(|row| !row[1].is_empty()).collect();
        assert_eq!(marked.len(), 1);
        assert_eq!(&marked[0][0], "1.38");
        // Beyond the end of a curve there is nothing.
        assert_eq!(&rows[11][2], "");
        assert_eq!(&rows[0][2], "100");
    }
}
