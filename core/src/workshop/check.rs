//! Reading a workshop's document and seeing that all of it can be used: every problem named, not only the first.

use std::ops::RangeInclusive;

use serde::Deserialize as _;
use serde_json::{Value, json};

use super::colour::{Colour, LEAST_CONTRAST};
use super::document::{
    AnswerKind, CORNERS, Delivery, ExtraQuestion, TEXT_SIZES, Theme, WORKSHOP_VERSION, Workshop,
};
use crate::intake::{
    Field, IntakeError, LONGEST_ASKED, MOST_EXTRA, MOST_PROBLEMS, Problem, is_extra_id, misfit_at,
    whole,
};
use crate::quantity::{Entry, RateUnit};
use crate::sorted::Set;
use crate::words::{Arg, Text};

/// Largest document read, bytes.
pub const LARGEST_WORKSHOP: usize = 64 * 1024;

/// Most rates on a shelf, front or rear.
const MOST_RATES: i64 = 60;

/// Every field that cannot be used, and what is allowed there.
pub type Problems = IntakeError;

/// Reads and checks a workshop document.
///
/// # Errors
/// [`Problems`] naming every field that cannot be used, an unknown one among them.
pub fn read(text: &str) -> Result<Workshop, Problems> {
    // A mark that some editors put before the first letter is no part of the document.
    let text = text.trim_start_matches('\u{feff}');
    let (too_large, broken) = ("problem.workshop-too-large", "problem.workshop");
    let mut document = whole(text, LARGEST_WORKSHOP, too_large, broken)?;
    migrate(&mut document)?;
    // Read by way of a reference, as an intake is: by way of the value itself, every answer's reader would be there twice.
    let workshop = Workshop::deserialize(&document).map_err(|error| misfits(&document, &error))?;
    workshop.check()?;
    Ok(workshop)
}

impl Workshop {
    /// Whether everything in the document can be used.
    ///
    /// # Errors
    /// [`Problems`] naming every field that cannot.
    pub fn check(&self) -> Result<(), Problems> {
        let mut found = Found::default();
        found.words(self);
        found.money(self);
        found.offer(self);
        for (at, question) in self.questions.iter().enumerate() {
            found.question(self, at, question);
        }
        found.look(self);
        for (at, way) in self.delivery.iter().enumerate() {
            found.way(self, at, way);
        }
        found.0.truncate(MOST_PROBLEMS);
        if found.0.is_empty() {
            Ok(())
        } else {
            Err(Problems { problems: found.0 })
        }
    }
}

impl Theme {
    /// What of it keeps to its limits; the rest is left as it is where nothing is told.
    #[must_use]
    pub fn held(&self) -> Self {
        let read = |accent: &&String| {
            Colour::read(accent).is_some_and(|colour| colour.is_read_on(Colour::WHITE))
        };
        Self {
            accent: self.accent.as_ref().filter(read).cloned(),
            corner: self.corner.filter(|corner| CORNERS.contains(corner)),
            text: self.text.filter(|text| TEXT_SIZES.contains(text)),
            colours: self.colours,
        }
    }
}

/// Brings an older document up to this version; everything that version 2 added may be left out.
fn migrate(document: &mut Value) -> Result<(), Problems> {
    let refused = || Problems::one("version", Text::new("problem.workshop-version"));
    let fields = document.as_object_mut().ok_or_else(refused)?;
    match fields.get("version").and_then(Value::as_u64) {
        Some(1) => {
            fields.insert("version".to_owned(), json!(WORKSHOP_VERSION));
            Ok(())
        }
        Some(version) if version == u64::from(WORKSHOP_VERSION) => Ok(()),
        _ => Err(refused()),
    }
}

/// Every field that has not the form it should have, each tried alone in the smallest document there can be.
fn misfits(document: &Value, whole: &serde_json::Error) -> Problems {
    let fields = document.as_object().into_iter().flatten();
    let mut problems = Vec::new();
    for (name, value) in fields {
        let mut alone = json!({
            "version": WORKSHOP_VERSION, "name": "-", "currency": "EUR", "labour_per_hour": [1, 1]
        });
        if let Some(fields) = alone.as_object_mut() {
            fields.insert(name.clone(), value.clone());
        }
        if let Err(error) = Workshop::deserialize(&alone) {
            problems.push(misfit_at(name, value, &error));
        }
    }
    if problems.is_empty() {
        problems.push(misfit_at("", document, whole));
    }
    problems.truncate(MOST_PROBLEMS);
    Problems { problems }
}

#[derive(Default)]
struct Found(Vec<Problem>);

impl Found {
    fn at(&mut self, path: impl Into<String>, text: Text) {
        self.0.push(Problem {
            path: path.into(),
            question: None,
            text,
        });
    }

    /// At least `least` characters and at most `most`.
    fn length(&mut self, path: impl Into<String>, text: &str, least: usize, most: usize) {
        if !(least..=most).contains(&text.chars().count()) {
            let count = |n: usize| Arg::Count(i64::try_from(n).unwrap_or(i64::MAX));
            let told = Text::new("problem.workshop-length");
            self.at(
                path,
                told.with("least", count(least)).with("most", count(most)),
            );
        }
    }

    fn words(&mut self, workshop: &Workshop) {
        if !(1..=100).contains(&workshop.name.trim().chars().count()) {
            self.at("name", Text::new("problem.workshop-name"));
        }
        let contact = &workshop.contact;
        for (path, text) in [
            ("contact.phone", &contact.phone),
            ("contact.email", &contact.email),
            ("contact.address", &contact.address),
            ("contact.website", &contact.website),
        ] {
            self.length(path, text, 0, 200);
        }
        self.length("consent", &workshop.consent, 0, 1_000);
        if !all_differ(&workshop.languages) {
            self.at("languages", Text::new("problem.workshop-twice"));
        }
    }

    fn money(&mut self, workshop: &Workshop) {
        let currency = &workshop.currency;
        if currency.len() != 3 || !currency.bytes().all(|b| b.is_ascii_uppercase()) {
            self.at("currency", Text::new("problem.workshop-currency"));
        }
        let (low, high) = workshop.labour_per_hour;
        if !(low > 0.0 && low <= high && high <= 10_000.0) {
            self.at("labour_per_hour", Text::new("problem.workshop-labour"));
        }
        for (remedy, (low, high)) in &workshop.prices {
            if !(*low >= 0.0 && low <= high && *high <= 100_000.0) {
                let path = ["prices.", remedy.word()].concat();
                self.at(path, Text::new("problem.workshop-price"));
            }
        }
    }

    fn offer(&mut self, workshop: &Workshop) {
        if workshop.remedies.as_ref().is_some_and(Set::is_empty) {
            self.at("remedies", Text::new("problem.workshop-none"));
        }
        if workshop.classes.as_ref().is_some_and(Set::is_empty) {
            self.at("classes", Text::new("problem.workshop-none"));
        }
        self.shelf("stock.fork", &workshop.stock.fork, Field::ForkRate);
        self.shelf("stock.shock", &workshop.stock.shock, Field::ShockRate);
    }

    fn shelf(&mut self, path: &str, rates: &[Entry<RateUnit>], field: Field) {
        let allowed = field.allowed();
        let many = i64::try_from(rates.len()).is_ok_and(|count| count > MOST_RATES);
        let fits = |rate: &Entry<RateUnit>| rate.value.is_finite() && allowed.holds(rate.si());
        if many || !rates.iter().all(fits) {
            let dimension = field.dimension();
            let told = Text::new("problem.workshop-stock")
                .with("most", Arg::Count(MOST_RATES))
                .with("span", Arg::Span(allowed.low, allowed.high, dimension));
            self.at(path, told);
        }
    }

    fn question(&mut self, workshop: &Workshop, at: usize, question: &ExtraQuestion) {
        let path = |part: &str| format!("questions[{at}].{part}");
        if at == MOST_EXTRA {
            self.at("questions", Text::new("problem.workshop-questions"));
        }
        let id = &question.id;
        let before = workshop.questions.iter().take(at);
        let again = before.into_iter().any(|other| other.id == *id);
        if !is_extra_id(id) || again {
            self.at(path("id"), Text::new("problem.workshop-id"));
        }
        self.length(path("text"), question.text.trim(), 1, LONGEST_ASKED);
        let choices = &question.choices;
        let choices: Vec<&str> = choices.iter().map(|choice| choice.trim()).collect();
        let fit = |choice: &&str| (1..=80).contains(&choice.chars().count());
        let right = match question.kind {
            AnswerKind::Choice => {
                (2..=12).contains(&choices.len()) && all_differ(&choices) && choices.iter().all(fit)
            }
            AnswerKind::Text | AnswerKind::YesNo => choices.is_empty(),
        };
        if !right {
            self.at(path("choices"), Text::new("problem.workshop-choices"));
        }
    }

    fn look(&mut self, workshop: &Workshop) {
        let theme = &workshop.theme;
        if let Some(accent) = &theme.accent {
            let contrast = Colour::read(accent).map(|colour| colour.contrast(Colour::WHITE));
            match contrast {
                None => self.at("theme.accent", Text::new("problem.workshop-colour")),
                Some(contrast) if contrast < LEAST_CONTRAST => {
                    let told = Text::new("problem.workshop-contrast")
                        .with("contrast", Arg::Plain(contrast, 1));
                    self.at("theme.accent", told);
                }
                Some(_) => {}
            }
        }
        let mut span = |path: &str, told: Option<u8>, allowed: RangeInclusive<u8>| {
            if told.is_some_and(|told| !allowed.contains(&told)) {
                let text = Text::new("problem.workshop-span")
                    .with("low", Arg::Count((*allowed.start()).into()))
                    .with("high", Arg::Count((*allowed.end()).into()));
                self.at(path, text);
            }
        };
        span("theme.corner", theme.corner, CORNERS);
        span("theme.text", theme.text, TEXT_SIZES);
    }

    fn way(&mut self, workshop: &Workshop, at: usize, way: &Delivery) {
        let before = workshop.delivery.iter().take(at);
        if before.into_iter().any(|other| other.word() == way.word()) {
            self.at(
                format!("delivery[{at}]"),
                Text::new("problem.workshop-twice"),
            );
        }
        match way {
            Delivery::Email { address } if !is_mail_address(address) => {
                self.at(
                    format!("delivery[{at}].address"),
                    Text::new("problem.workshop-mail"),
                );
            }
            Delivery::Endpoint { url } if !is_endpoint(url) => {
                self.at(
                    format!("delivery[{at}].url"),
                    Text::new("problem.workshop-url"),
                );
            }
            _ => {}
        }
    }
}

/// Whether nothing stands in a list twice.
fn all_differ<T: PartialEq>(list: &[T]) -> bool {
    let mut items = list.iter().enumerate();
    items.all(|(at, item)| !list[..at].contains(item))
}

/// One name, one place, and nothing with which a draft could be given other recipients or headers.
fn is_mail_address(address: &str) -> bool {
    let plain = |b: u8| b.is_ascii_graphic() && !b"?&,;:<>()[]\"\\%".contains(&b);
    let parts = address.split_once('@');
    address.len() <= 200
        && address.bytes().all(plain)
        && parts.is_some_and(|(name, place)| {
            !name.is_empty() && place.contains('.') && !place.contains('@')
        })
}

/// A path on the site itself, or an address on an encrypted line, without a user's name in it. A line within one machine
/// needs no encryption, so a workshop can try its receiver there.
fn is_endpoint(url: &str) -> bool {
    // Browsers take a backslash for a slash, and two slashes for the beginning of another site.
    let plain = |b: u8| b.is_ascii_graphic() && b != b'#' && b != b'\\';
    if url.len() > 500 || !url.bytes().all(plain) {
        return false;
    }
    if let Some(path) = url.strip_prefix('/') {
        return !path.starts_with('/');
    }
    let host = |rest: &str| {
        let host = rest.split(['/', '?']).next().unwrap_or_default();
        host.to_owned()
    };
    if let Some(rest) = url.strip_prefix("https://") {
        let host = host(rest);
        return !host.is_empty() && !host.contains('@');
    }
    url.strip_prefix("http://").is_some_and(|rest| {
        let host = host(rest);
        let name = host.split(':').next().unwrap_or_default();
        matches!(name, "localhost" | "127.0.0.1") && !host.contains('@')
    })
}
