//! The desk as a table for a spreadsheet: a row per job, in the workshop's language.

use sagwright_core::intake::{Field, Intake};
use sagwright_core::words::{Arg, Text, plain_cell};

use super::change::LEAVES_WITH;
use super::find::{class_name, feeling_name, stage_name, title};
use super::job::{Heard, Job, Work};
use super::told::Moment;
use crate::words::beside;

/// What a table is written with: the words of the workshop's language, and the day of a moment.
pub struct Pen<'a> {
    /// The sentence for a text.
    pub say: &'a dyn Fn(&Text) -> String,
    /// The day of a moment, as year, month and day.
    pub day: &'a dyn Fn(Moment) -> String,
}

/// The columns before the numbers, by the keys of their names.
const FIRST: [&str; 9] = [
    "counter.column.name",
    "counter.column.contact",
    "counter.column.stage",
    "counter.column.tags",
    "counter.column.came",
    "counter.column.touched",
    "counter.column.class",
    "counter.column.complaints",
    "counter.column.put-right",
];

/// The columns after them.
const LAST: [&str; 9] = [
    "counter.column.work-date",
    "counter.column.work-by",
    "counter.column.oil",
    "counter.column.valving",
    "counter.column.other",
    "counter.column.heard",
    "counter.column.heard-words",
    "counter.column.notes",
    "counter.column.id",
];

/// The table as text: comma-separated values after RFC 4180.
///
/// # Errors
/// None when writing into memory.
pub fn table<'a>(
    jobs: impl Iterator<Item = (&'a str, &'a Job)>,
    pen: &Pen,
) -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    let names = || FIRST.iter().map(|key| (pen.say)(&Text::new(*key)));
    let numbers = LEAVES_WITH.iter().flat_map(|field| {
        let name = Text::new(format!("field.{}", field.path()));
        ["counter.column.in", "counter.column.out"]
            .map(|key| (pen.say)(&Text::new(key).with("name", name.clone().into())))
    });
    let last = LAST.iter().map(|key| (pen.say)(&Text::new(*key)));
    writer.write_record(names().chain(numbers).chain(last))?;
    for (id, job) in jobs {
        writer.write_record(row(id, job, pen).iter().map(|cell| plain_cell(cell)))?;
    }
    let bytes = writer
        .into_inner()
        .map_err(csv::IntoInnerError::into_error)?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

fn row(id: &str, job: &Job, pen: &Pen) -> Vec<String> {
    let came_with = job.now().document();
    let leaves_with = job.after_work();
    let complaints = came_with.complaints.iter().flatten();
    let last_work = job.work().next_back().map(|(_, work)| work.clone());
    let last_heard = job.heard().next_back().map(|(_, heard)| heard.clone());
    let Work {
        date,
        by,
        oil,
        valving,
        other,
        ..
    } = last_work.unwrap_or_default();
    let heard = last_heard.unwrap_or_default();
    let mut cells = vec![
        title(job),
        job.contact.is.clone(),
        (pen.say)(&stage_name(job.stage.is)),
        list(job.tags().into_iter().map(str::to_owned)),
        (pen.day)(job.came),
        (pen.day)(job.changed()),
        came_with
            .bike
            .class
            .map_or_else(String::new, |class| (pen.say)(&class_name(class))),
        list(complaints.map(|one| (pen.say)(&feeling_name(one.feeling)))),
        job.pages_put_right().len().to_string(),
    ];
    for field in LEAVES_WITH {
        cells.push(number(*field, &came_with, pen));
        cells.push(number(*field, &leaves_with, pen));
    }
    cells.extend([date, by, oil, valving, other]);
    cells.extend([verdicts(&heard, pen), heard.words]);
    cells.push(list(job.notes().map(|(_, told)| told.is.clone())));
    cells.push(id.to_owned());
    cells
}

/// The number as it was written down, with its unit.
fn number(field: Field, intake: &Intake, pen: &Pen) -> String {
    field.get(intake).map_or_else(String::new, |typed| {
        let text = Text::new("line.number")
            .with("number", Arg::Raw(typed.value.to_string()))
            .with("unit", Arg::Raw(beside(field, typed.unit)));
        (pen.say)(&text)
    })
}

fn verdicts(heard: &Heard, pen: &Pen) -> String {
    list(heard.felt.iter().map(|(feeling, verdict)| {
        let text = Text::new("counter.heard-line")
            .with("complaint", feeling_name(*feeling).into())
            .with(
                "verdict",
                Text::new(format!("choice.verdict.{}", verdict.word())).into(),
            );
        (pen.say)(&text)
    }))
}

fn list(items: impl Iterator<Item = String>) -> String {
    items.collect::<Vec<_>>().join("; ")
}

#[cfg(test)]
mod tests {
    use sagwright_core::words::UnitChoice;

    use super::*;
    use crate::counter::change::Change;
    use crate::counter::name::name_of;
    use crate::counter::speak;
    use crate::examples;
    use crate::words;

    fn written(jobs: &[Job]) -> Vec<csv::StringRecord> {
        speak();
        let say = |text: &Text| words::tell(text, &UnitChoice::default());
        let pen = Pen {
            say: &say,
            day: &|moment| format!("day {moment}"),
        };
        let names: Vec<String> = jobs.iter().map(|job| name_of(&job.intake)).collect();
        let jobs = names.iter().map(String::as_str).zip(jobs);
        let text = table(jobs, &pen).expect("it is written into memory");
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .from_reader(text.as_bytes());
        let rows: Result<Vec<_>, _> = reader.records().collect();
        rows.expect("every row has as many cells")
    }

    #[test]
    fn every_job_is_a_row_and_every_cell_has_a_name() {
        let jobs: Vec<Job> = examples::riders().map(|rider| Job::new(rider, 7)).collect();
        let rows = written(&jobs);
        assert_eq!(rows.len(), jobs.len() + 1);
        assert!(
            rows[0]
                .iter()
                .all(|name| !name.is_empty() && !name.contains(['[', '{']))
        );
        assert_eq!(&rows[1][4], "day 7");
        for row in &rows[1..] {
            assert!(row.iter().all(|cell| !cell.contains(['[', '{'])), "{row:?}");
        }
    }

    #[test]
    fn what_is_written_in_a_field_stays_text() {
        let rider = examples::riders().next().expect("there are examples");
        let mut job = Job::new(rider, 7);
        for (name, expected) in [
            ("=1+1", "'=1+1"),
            ("@SUM(A1)", "'@SUM(A1)"),
            ("a,\"b\"\nc", "a,\"b\"\nc"),
            ("<script>", "<script>"),
        ] {
            job.hear(Change::Name(name.to_owned()), 8);
            assert_eq!(&written(std::slice::from_ref(&job))[1][0], expected);
        }
    }
}
