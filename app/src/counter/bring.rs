//! What somebody has brought to the counter: one rider's answers, or a whole desk.

use sagwright_core::intake::{Intake, IntakeError, LONGEST_LINK, from_link};
use sagwright_core::words::Text;
use sagwright_core::workshop::answers_in;

use super::file::{LARGEST_DESK, is_desk, jobs_in};
use crate::route::LINK;

/// What a text turned out to be.
#[derive(Debug, Clone, PartialEq)]
pub enum Brought {
    /// Answers of one rider.
    Rider(Box<Intake>),
    /// The jobs of a desk under their names, each still as text.
    Desk(Vec<(String, String)>),
}

/// Why a text is of no use: one line per problem, the place in the document before it where there is one.
#[derive(Debug, Clone, PartialEq)]
pub struct Refused(pub Vec<(String, Text)>);

impl From<IntakeError> for Refused {
    fn from(error: IntakeError) -> Self {
        let problems = error.problems.into_iter();
        Self(
            problems
                .map(|problem| (problem.path, problem.text))
                .collect(),
        )
    }
}

impl From<Text> for Refused {
    fn from(text: Text) -> Self {
        Self(vec![(String::new(), text)])
    }
}

/// Most links in one pasted text.
const MOST_LINKS: usize = 200;

/// Reads what was in a file, pasted, or scanned: a rider's file, a desk file, or links, one per line.
pub fn bring(text: &str) -> Vec<Result<Brought, Refused>> {
    let text = text.trim_start_matches('\u{feff}').trim();
    if text.is_empty() {
        return vec![Err(Text::new("counter.bad.nothing").into())];
    }
    if text.len() > LARGEST_DESK {
        return vec![Err(Text::new("counter.bad.desk-large").into())];
    }
    if text.starts_with(['{', '[']) {
        return vec![document(text)];
    }
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    let links: Vec<&str> = lines.filter_map(link_in).take(MOST_LINKS).collect();
    if links.is_empty() {
        return vec![Err(Text::new("counter.bad.unknown").into())];
    }
    let riders = links.into_iter().map(|word| {
        let intake = from_link(word)?;
        Ok(Brought::Rider(Box::new(intake)))
    });
    riders.collect()
}

fn document(text: &str) -> Result<Brought, Refused> {
    if is_desk(text) {
        Ok(Brought::Desk(jobs_in(text)?))
    } else {
        Ok(Brought::Rider(Box::new(answers_in(text)?)))
    }
}

/// The word of the link in a line: after the address of the page that opens it, or by itself. Words around a link, as
/// in a message, do not matter.
fn link_in(line: &str) -> Option<&str> {
    let mark = ["#/", LINK, "/"].concat();
    let word = match line.split_once(mark.as_str()) {
        Some((_, rest)) => rest.split_whitespace().next().unwrap_or_default(),
        None => line,
    };
    let form = word.split_once('.').map(|(form, _)| form);
    let ours =
        form.is_some_and(|form| !form.is_empty() && form.bytes().all(|b| b.is_ascii_digit()));
    let letters = |b: u8| b.is_ascii_alphanumeric() || matches!(b, b'.' | b'-' | b'_');
    (ours && word.len() <= LONGEST_LINK && word.bytes().all(letters)).then_some(word)
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::{to_link, write};
    use sagwright_core::words::UnitChoice;
    use sagwright_core::workshop::Parcel;

    use super::*;
    use crate::counter::file::to_file;
    use crate::counter::job::Job;
    use crate::counter::limits::read_job;
    use crate::counter::name::name_of;
    use crate::counter::speak;
    use crate::examples;
    use crate::words;

    fn rider() -> Intake {
        examples::riders().next().expect("there are examples")
    }

    fn refusal(text: &str) -> Vec<(String, Text)> {
        let mut all = bring(text);
        assert_eq!(all.len(), 1, "{text:.60}");
        let refused = all.remove(0).expect_err("it is of no use");
        assert!(!refused.0.is_empty(), "no word about why");
        refused.0
    }

    fn keys(text: &str) -> Vec<String> {
        let refused = refusal(text).into_iter();
        refused.map(|(_, text)| text.key.into_owned()).collect()
    }

    #[test]
    fn a_file_a_link_and_a_code_bring_the_same_rider() {
        let file = write(&rider()).expect("plain data");
        let link = to_link(&rider()).expect("it fits");
        let address = format!("https://example.org/set-up/#/link/{link}");
        let message = format!("Hello,\n\nhere it is: {address} \nthanks");
        for text in [
            &file,
            &format!("\u{feff} {file}\n"),
            &link,
            &address,
            &message,
        ] {
            let brought = bring(text);
            let riders = [Ok(Brought::Rider(Box::new(rider())))];
            assert_eq!(brought, riders, "{text}");
        }
    }

    #[test]
    fn what_was_sent_to_the_workshop_brings_its_rider() {
        let sent = Parcel {
            version: sagwright_core::workshop::PARCEL_VERSION,
            id: "1".to_owned(),
            made: "2026-01-02".to_owned(),
            workshop: "Invented".to_owned(),
            agreed: "Yes.".to_owned(),
            intake: rider(),
        };
        let text = sent.text().expect("plain data");
        assert_eq!(bring(&text), [Ok(Brought::Rider(Box::new(rider())))]);
    }

    #[test]
    fn links_one_per_line_bring_a_rider_each() {
        let links: Vec<String> = examples::riders().filter_map(|r| to_link(&r)).collect();
        let brought = bring(&links.join("\n"));
        assert_eq!(brought.len(), links.len());
        assert!(brought.iter().all(Result::is_ok));
    }

    #[test]
    fn what_is_of_no_use_is_refused_with_what_to_do() {
        speak();
        for (text, key) in [
            ("", "counter.bad.nothing"),
            (" \n ", "counter.bad.nothing"),
            ("good morning", "counter.bad.unknown"),
            ("https://example.org/#/advice", "counter.bad.unknown"),
            ("1.", "problem.link-damaged"),
            ("9.abc", "problem.link-newer"),
            ("{", "problem.not-json"),
            ("{}", "problem.version-missing"),
            (r#"{"version":99}"#, "problem.version-newer"),
            (r#"{"version":1,"colour":"red"}"#, "problem.unknown-field"),
            (r#"{"kind":"sagwright-desk"}"#, "counter.bad.desk-version"),
            (
                r#"{"kind":"sagwright-desk","version":2}"#,
                "counter.bad.desk-newer",
            ),
            (
                r#"{"kind":"sagwright-desk","version":1}"#,
                "counter.bad.desk-form",
            ),
            (
                r#"{"kind":"sagwright-desk","version":1,"jobs":[]}"#,
                "counter.bad.desk-form",
            ),
            (
                r#"{"kind":"sagwright-desk","version":1,"jobs":{},"more":1}"#,
                "counter.bad.desk-form",
            ),
        ] {
            assert_eq!(keys(text), [key], "{text}");
            for (_, problem) in refusal(text) {
                let said = words::tell(&problem, &UnitChoice::default());
                assert!(!said.contains(['[', '{']), "{said}");
            }
        }
    }

    #[test]
    fn depth_and_size_are_refused_without_harm() {
        let deep = |open: &str, n: usize| open.repeat(n);
        for text in [
            deep("[", 100_000),
            deep("{\"rider\":", 100_000),
            format!(
                "{{\"kind\":\"sagwright-desk\",\"version\":1,\"jobs\":{{\"a\":{}",
                deep("[", 100_000)
            ),
            r#"{"version":1,"rider":{"weight":{"value":1e999,"unit":"kg"}}}"#.to_owned(),
            "#/link/".repeat(100_000),
            format!("1.{}", "A".repeat(100_000)),
        ] {
            refusal(&text);
        }
    }

    /// A desk of one job whose text was changed on the way.
    fn changed(from: &str, to: &str) -> Result<Job, Text> {
        let job = Job::new(rider(), 10);
        let name = name_of(&rider());
        let file = to_file([(name.as_str(), &job)].into_iter()).expect("plain data");
        assert!(file.contains(from), "{from}");
        let Ok(Brought::Desk(jobs)) = bring(&file.replace(from, to)).remove(0) else {
            panic!("it is still a desk");
        };
        read_job(&jobs[0].0, &jobs[0].1)
    }

    #[test]
    fn a_job_that_does_not_keep_to_the_form_is_refused_alone() {
        let long = "x".repeat(3_000);
        let name = r#""name":{"is":"","at":0}"#;
        for (from, to, key) in [
            (
                r#""version":1,"came""#,
                r#""version":2,"came""#.to_owned(),
                "counter.bad.version",
            ),
            (
                r#""came":10"#,
                r#""came":-1"#.to_owned(),
                "counter.bad.form",
            ),
            (
                r#""came":10"#,
                r#""came":10,"key":1"#.to_owned(),
                "counter.bad.form",
            ),
            (
                r#""value":89"#,
                r#""value":88"#.to_owned(),
                "counter.bad.name",
            ),
            (
                name,
                format!(r#""name":{{"is":"{long}","at":0}}"#),
                "counter.bad.limits",
            ),
            (
                r#""corrected":{}"#,
                r##""corrected":{"#/nowhere":{"is":{"version":1},"at":1}}"##.to_owned(),
                "counter.bad.limits",
            ),
            (
                r#""corrected":{}"#,
                r##""corrected":{"#/rider-weight":{"is":{"version":7},"at":1}}"##.to_owned(),
                "counter.bad.form",
            ),
        ] {
            let refused = changed(from, &to).expect_err(&to);
            assert_eq!(refused.key, key, "{to:.80}");
        }
        // Text is text, whatever it says.
        let script = "<script>alert(1)</script><img src=x onerror=alert(1)>";
        let job = changed(name, &format!(r#""name":{{"is":"{script}","at":5}}"#));
        assert_eq!(job.expect("only words").name.is, script);
    }
}
