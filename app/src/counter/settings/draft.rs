//! The settings as they stand in the boxes, letter by letter, and the document they make.

use sagwright_core::intake::BikeClass;
use sagwright_core::quantity::{Entry, RateUnit, Unit, read_number};
use sagwright_core::remedy::RemedyId;
use sagwright_core::sorted::{Map, Set};
use sagwright_core::words::{Language, Text};
use sagwright_core::workshop::{
    AnswerKind, ColourScheme, Contact, Counting, Delivery, ExtraQuestion, Stock, Theme, Units,
    WORKSHOP_VERSION, Workshop,
};

/// The place of the price of labour in the document.
const LABOUR: &str = "labour_per_hour";

/// What the places of all other prices begin with.
pub const PRICES: &str = "prices.";

/// A question of the workshop's own, as it stands in its boxes.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct AskDraft {
    /// Its short name; made from its place where it is empty.
    pub id: String,
    /// The question.
    pub text: String,
    /// How it is answered.
    pub kind: Option<AnswerKind>,
    /// What there is to choose from, one per line.
    pub choices: String,
    /// Whether it has to be answered.
    pub required: bool,
}

/// Everything in the boxes.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// Name.
    pub name: String,
    /// How to reach the workshop.
    pub contact: Contact,
    /// Languages ticked, in the order in which they are offered.
    pub languages: Vec<Language>,
    /// Units picked.
    pub units: Units,
    /// Currency.
    pub currency: String,
    /// Labour, lowest and highest.
    pub labour: (String, String),
    /// Prices of its own, lowest and highest.
    pub prices: Map<RemedyId, (String, String)>,
    /// Remedies offered.
    pub remedies: Set<RemedyId>,
    /// Rates on the shelf, front and rear, as a list.
    pub stock: (String, String),
    /// The unit of those lists.
    pub stock_unit: RateUnit,
    /// The shelf as it came, each rate in its own unit and with how it was come by, for those left as they were.
    shelf: Stock,
    /// From which end clicks are counted.
    pub counting: Option<Counting>,
    /// Kinds of bike served.
    pub classes: Set<BikeClass>,
    /// Questions of its own.
    pub questions: Vec<AskDraft>,
    /// What riders agree to.
    pub consent: String,
    /// Accent colour.
    pub accent: String,
    /// Roundness of corners.
    pub corner: String,
    /// Size of text.
    pub text: String,
    /// Light or dark.
    pub colours: Option<ColourScheme>,
    /// Ways in which intakes go, by their words, in the order in which they are offered.
    pub ways: Vec<&'static str>,
    /// Where e-mail goes.
    pub mail: String,
    /// Where it is sent to.
    pub endpoint: String,
}

impl Default for Draft {
    /// Nothing told yet: everything is offered and everybody served, and a rider can hand over a file.
    fn default() -> Self {
        Self {
            name: String::new(),
            contact: Contact::default(),
            languages: Vec::new(),
            units: Units::default(),
            currency: String::new(),
            labour: (String::new(), String::new()),
            prices: Map::new(),
            remedies: RemedyId::ALL.iter().copied().collect(),
            stock: (String::new(), String::new()),
            stock_unit: RateUnit::NewtonPerMillimetre,
            shelf: Stock::default(),
            classes: BikeClass::ALL.iter().copied().collect(),
            counting: None,
            questions: Vec::new(),
            consent: String::new(),
            accent: String::new(),
            corner: String::new(),
            text: String::new(),
            colours: None,
            ways: vec!["file"],
            mail: String::new(),
            endpoint: String::new(),
        }
    }
}

impl Draft {
    /// The boxes as they stand when a document is opened.
    pub fn of(workshop: &Workshop) -> Self {
        let all = Self::default();
        let unit = workshop.stock.fork.iter().chain(&workshop.stock.shock);
        let unit = unit.map(|rate| rate.unit).next();
        let stock_unit = unit.unwrap_or(RateUnit::NewtonPerMillimetre);
        let rates = |rates: &[Entry<RateUnit>]| {
            let shown = rates.iter().map(|rate| in_unit(rate, stock_unit));
            shown.collect::<Vec<_>>().join("; ")
        };
        let mut draft = Self {
            name: workshop.name.clone(),
            contact: workshop.contact.clone(),
            languages: workshop.languages.clone(),
            units: workshop.units.clone(),
            currency: workshop.currency.clone(),
            labour: pair(workshop.labour_per_hour),
            prices: workshop
                .prices
                .iter()
                .map(|(id, band)| (*id, pair(*band)))
                .collect(),
            remedies: workshop.remedies.clone().unwrap_or(all.remedies),
            stock: (rates(&workshop.stock.fork), rates(&workshop.stock.shock)),
            stock_unit,
            shelf: workshop.stock.clone(),
            classes: workshop.classes.clone().unwrap_or(all.classes),
            counting: workshop.counting,
            questions: workshop.questions.iter().map(asked).collect(),
            consent: workshop.consent.clone(),
            accent: workshop.theme.accent.clone().unwrap_or_default(),
            corner: shown(workshop.theme.corner),
            text: shown(workshop.theme.text),
            colours: workshop.theme.colours,
            ways: workshop.delivery.iter().map(Delivery::word).collect(),
            mail: String::new(),
            endpoint: String::new(),
        };
        for way in &workshop.delivery {
            match way {
                Delivery::Email { address } => draft.mail.clone_from(address),
                Delivery::Endpoint { url } => draft.endpoint.clone_from(url),
                _ => {}
            }
        }
        draft
    }

    /// The document, or everything that keeps it from being one: the place, and what to do there.
    pub fn finished(&self) -> Result<Workshop, Vec<(String, Text)>> {
        let mut wrong: Vec<(String, Text)> = Vec::new();
        let mut number = |at: &str, text: &str| {
            number_in(text).unwrap_or_else(|| {
                let told = Text::new("counter.settings.not-a-number");
                if !wrong.iter().any(|(known, _)| known == at) {
                    wrong.push((at.to_owned(), told));
                }
                // In place of what is no number: the place is told wrong already.
                1.0
            })
        };
        let labour_per_hour = (
            number(LABOUR, &self.labour.0),
            number(&high_of(LABOUR), &self.labour.1),
        );
        let mut prices = Map::new();
        for (id, (low, high)) in &self.prices {
            if low.trim().is_empty() && high.trim().is_empty() {
                continue;
            }
            let at = [PRICES, id.word()].concat();
            prices.insert(*id, (number(&at, low), number(&high_of(&at), high)));
        }
        let mut shelf = |at: &str, list: &str, came: &[Entry<RateUnit>]| {
            let rates = list.split([';', '\n', ' ']).map(str::trim);
            let rates = rates.filter(|rate| !rate.is_empty());
            let mut came = came.to_vec();
            rates
                .map(|rate| {
                    let same = |one: &Entry<RateUnit>| in_unit(one, self.stock_unit) == rate;
                    // Left as it came, it says no more and no less than it did.
                    match came.iter().position(same) {
                        Some(place) => came.remove(place),
                        None => Entry {
                            value: number(at, rate),
                            unit: self.stock_unit,
                            how: None,
                        },
                    }
                })
                .collect::<Vec<_>>()
        };
        let stock = Stock {
            fork: shelf("stock.fork", &self.stock.0, &self.shelf.fork),
            shock: shelf("stock.shock", &self.stock.1, &self.shelf.shock),
        };
        let mut whole = |at: &str, text: &str| {
            if text.trim().is_empty() {
                return None;
            }
            let parsed = text.trim().parse::<u8>();
            if parsed.is_err() {
                wrong.push((at.to_owned(), Text::new("counter.settings.not-whole")));
            }
            parsed.ok()
        };
        let theme = Theme {
            accent: Some(self.accent.trim().to_owned()).filter(|accent| !accent.is_empty()),
            corner: whole("theme.corner", &self.corner),
            text: whole("theme.text", &self.text),
            colours: self.colours,
        };
        let workshop = Workshop {
            version: WORKSHOP_VERSION,
            name: self.name.trim().to_owned(),
            contact: self.contact.clone(),
            languages: self.languages.clone(),
            units: self.units.clone(),
            currency: self.currency.trim().to_owned(),
            labour_per_hour,
            prices,
            remedies: some_of(&self.remedies, RemedyId::ALL.len()),
            stock,
            classes: some_of(&self.classes, BikeClass::ALL.len()),
            counting: self.counting,
            questions: self.questions.iter().enumerate().map(question).collect(),
            consent: self.consent.trim().to_owned(),
            theme,
            delivery: self.delivery(),
        };
        let problems = |workshop: &Workshop| workshop.check().err().map(|error| error.problems);
        if let Some(found) = problems(&workshop) {
            let of_lowest = problems(&lowest_alone(&workshop)).unwrap_or_default();
            let known: Set<String> = wrong.iter().map(|(at, _)| at.clone()).collect();
            for problem in found {
                let high = high_of(&problem.path);
                // What is no number at all is told once.
                if known.contains(&problem.path) || known.contains(&high) {
                    continue;
                }
                let priced = problem.path == LABOUR || problem.path.starts_with(PRICES);
                let of_highest = priced && of_lowest.iter().all(|one| one.path != problem.path);
                let at = if of_highest { high } else { problem.path };
                wrong.push((at, problem.text));
            }
        }
        if wrong.is_empty() {
            Ok(workshop)
        } else {
            Err(wrong)
        }
    }

    fn delivery(&self) -> Vec<Delivery> {
        let ways = self.ways.iter();
        ways.map(|word| match *word {
            "link" => Delivery::Link,
            "code" => Delivery::Code,
            "email" => Delivery::Email {
                address: self.mail.trim().to_owned(),
            },
            "host-page" => Delivery::HostPage,
            "endpoint" => Delivery::Endpoint {
                url: self.endpoint.trim().to_owned(),
            },
            _ => Delivery::File,
        })
        .collect()
    }
}

/// The place of the highest price beside that of the lowest, which the document has as one.
pub fn high_of(place: &str) -> String {
    [place, "-high"].concat()
}

/// The workshop with the lowest prices alone: what is wrong there still is not the highest one's.
fn lowest_alone(workshop: &Workshop) -> Workshop {
    let low = |&(low, _): &(f64, f64)| (low, low);
    let prices = workshop.prices.iter();
    Workshop {
        labour_per_hour: low(&workshop.labour_per_hour),
        prices: prices.map(|(id, band)| (*id, low(band))).collect(),
        ..workshop.clone()
    }
}

fn asked(question: &ExtraQuestion) -> AskDraft {
    AskDraft {
        id: question.id.clone(),
        text: question.text.clone(),
        kind: Some(question.kind),
        choices: question.choices.join("\n"),
        required: question.required,
    }
}

fn question((at, draft): (usize, &AskDraft)) -> ExtraQuestion {
    let id = draft.id.trim();
    let choices = draft.choices.lines().map(str::trim);
    let choices = choices.filter(|choice| !choice.is_empty());
    let kind = draft.kind.unwrap_or(AnswerKind::Text);
    ExtraQuestion {
        id: if id.is_empty() {
            format!("question-{}", at + 1)
        } else {
            id.to_owned()
        },
        text: draft.text.trim().to_owned(),
        kind,
        choices: if kind == AnswerKind::Choice {
            choices.map(str::to_owned).collect()
        } else {
            Vec::new()
        },
        required: draft.required,
    }
}

/// All ticked says nothing: then what a later build adds is offered too.
fn some_of<T: Ord + Copy>(ticked: &Set<T>, all: usize) -> Option<Set<T>> {
    (ticked.len() < all).then(|| ticked.clone())
}

fn pair((low, high): (f64, f64)) -> (String, String) {
    (low.to_string(), high.to_string())
}

fn shown(number: Option<u8>) -> String {
    number.map_or_else(String::new, |number| number.to_string())
}

/// A rate in the unit of the list; as it was written where that is its own.
fn in_unit(rate: &Entry<RateUnit>, unit: RateUnit) -> String {
    use sagwright_core::quantity::UnitSet as _;
    if rate.unit == unit {
        return rate.value.to_string();
    }
    let unit = unit.unit();
    sagwright_core::words::number(unit.from_si(rate.si()), unit.decimals())
}

/// A plain number, with a comma or a point.
fn number_in(text: &str) -> Option<f64> {
    read_number(text, Unit::Percent).ok()
}

#[cfg(test)]
mod tests;
