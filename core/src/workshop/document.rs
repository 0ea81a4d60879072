//! The form of a workshop's document.

use std::ops::RangeInclusive;

use serde::de::Error as _;
use serde::{Deserialize, Deserializer, Serialize};

use crate::form::read_form;
use crate::intake::{BikeClass, choice};
use crate::listed;
use crate::quantity::{
    AltitudeUnit, Entry, HeightUnit, LengthUnit, MassUnit, PressureUnit, RateUnit, TemperatureUnit,
};
use crate::remedy::RemedyId;
use crate::sorted::{Map, Set};
use crate::words::Language;

/// The version written by this build. Version 1 held the name, the currency and the price of labour alone, and is read
/// as it is.
pub const WORKSHOP_VERSION: u32 = 2;

choice! {
    /// How a question of the workshop's own is answered.
    AnswerKind {
        /// In words.
        Text = "text",
        /// By one of a few.
        Choice = "choice",
        /// By yes or no.
        YesNo = "yes-no",
    }
}

choice! {
    /// From which end a workshop counts the clicks of an adjuster.
    Counting {
        /// Out from fully closed, as documents and advice do.
        FromClosed = "from-closed",
        /// In from fully open.
        FromOpen = "from-open",
    }
}

choice! {
    /// Light or dark.
    ColourScheme {
        /// As the device asks.
        Device = "device",
        /// Dark on light.
        Light = "light",
        /// Light on dark.
        Dark = "dark",
    }
}

/// A workshop's own document.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Workshop {
    /// Version of this document's form; now 2.
    pub version: u32,
    /// The workshop's name, 1 to 100 characters.
    pub name: String,
    /// How to reach it.
    #[serde(default, skip_serializing_if = "Contact::is_empty")]
    pub contact: Contact,
    /// The languages it offers, the first one first; empty for all there are.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub languages: Vec<Language>,
    /// The units it begins with; those left out are metric.
    #[serde(default, skip_serializing_if = "Units::is_empty")]
    pub units: Units,
    /// Currency as three capital letters after ISO 4217.
    pub currency: String,
    /// Lowest and highest price of an hour of labour, above 0 and at most 10 000, the lowest first.
    pub labour_per_hour: (f64, f64),
    /// Lowest and highest price of a remedy, parts included, 0 to 100 000, in place of the one reckoned from labour.
    #[serde(default, skip_serializing_if = "Map::is_empty")]
    pub prices: Map<RemedyId, (f64, f64)>,
    /// The remedies it offers; left out, all of them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub remedies: Option<Set<RemedyId>>,
    /// Springs on its shelf.
    #[serde(default, skip_serializing_if = "Stock::is_empty")]
    pub stock: Stock,
    /// The kinds of bike it serves; left out, all of them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub classes: Option<Set<BikeClass>>,
    /// From which end it counts clicks; left out, from fully closed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub counting: Option<Counting>,
    /// What it asks besides, at most 12 questions.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub questions: Vec<ExtraQuestion>,
    /// What a rider agrees to before anything is sent, up to 1000 characters.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub consent: String,
    /// How its page looks.
    #[serde(default, skip_serializing_if = "Theme::is_empty")]
    pub theme: Theme,
    /// Where intakes go, in the order in which the ways are offered; each way once.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub delivery: Vec<Delivery>,
}

read_form! {
    Workshop = Workshop {
        version: 0,
        name: String::new(),
        contact: Contact::default(),
        languages: Vec::new(),
        units: Units::default(),
        currency: String::new(),
        labour_per_hour: (0.0, 0.0),
        prices: Map::new(),
        remedies: None,
        stock: Stock::default(),
        classes: None,
        counting: None,
        questions: Vec::new(),
        consent: String::new(),
        theme: Theme::default(),
        delivery: Vec::new(),
    },
    needs [version, name, currency, labour_per_hour],
    { version, name, contact, languages, units, currency, labour_per_hour, prices, remedies, stock, classes, counting, questions, consent, theme, delivery }
}

/// How to reach a workshop; each up to 200 characters and shown as text only.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Contact {
    /// Telephone.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub phone: String,
    /// E-mail.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub email: String,
    /// Street and town.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub address: String,
    /// Website.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub website: String,
}

read_form! {
    Contact = Contact::default(),
    needs [],
    { phone, email, address, website }
}

impl Contact {
    /// Whether nothing is told.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// The unit each kind of number begins in.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Units {
    /// Weights.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass: Option<MassUnit>,
    /// Body height.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub height: Option<HeightUnit>,
    /// Sag, preload, travel.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length: Option<LengthUnit>,
    /// Spring rates.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rate: Option<RateUnit>,
    /// Pressures.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pressure: Option<PressureUnit>,
    /// Temperatures.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub temperature: Option<TemperatureUnit>,
    /// Altitudes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub altitude: Option<AltitudeUnit>,
}

read_form! {
    Units = Units::default(),
    needs [],
    { mass, height, length, rate, pressure, temperature, altitude }
}

impl Units {
    /// Whether nothing is told.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// Springs on the shelf, at most 60 of each.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Stock {
    /// Rates of fork springs.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fork: Vec<Entry<RateUnit>>,
    /// Rates of shock springs.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub shock: Vec<Entry<RateUnit>>,
}

read_form! {
    Stock = Stock::default(),
    needs [],
    { fork, shock }
}

impl Stock {
    /// Whether nothing is told.
    pub fn is_empty(&self) -> bool {
        self.fork.is_empty() && self.shock.is_empty()
    }
}

/// A question of the workshop's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ExtraQuestion {
    /// Its name in documents: 1 to 40 small letters, digits and hyphens; each once.
    pub id: String,
    /// The question, 1 to 200 characters.
    pub text: String,
    /// How it is answered.
    pub kind: AnswerKind,
    /// What there is to choose from, 2 to 12 of up to 80 characters, where it is answered by a choice.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub choices: Vec<String>,
    /// Whether it has to be answered.
    #[serde(default)]
    pub required: bool,
}

read_form! {
    ExtraQuestion = ExtraQuestion {
        id: String::new(),
        text: String::new(),
        kind: AnswerKind::Text,
        choices: Vec::new(),
        required: false,
    },
    needs [id, text, kind],
    { id, text, kind, choices, required }
}

/// How round corners may be, CSS px.
pub const CORNERS: RangeInclusive<u8> = 0..=24;

/// How large text may be, percent of what it is everywhere else.
pub const TEXT_SIZES: RangeInclusive<u8> = 90..=150;

/// How the page looks. The colours of cautions are no one's to choose.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Theme {
    /// The colour of links and buttons on white, as `#rrggbb`; white on it has to reach a contrast of 7 to 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub accent: Option<String>,
    /// How round corners are, px, 0 to 24.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub corner: Option<u8>,
    /// How large text is, percent, 90 to 150.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub text: Option<u8>,
    /// Light or dark.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub colours: Option<ColourScheme>,
}

read_form! {
    Theme = Theme::default(),
    needs [],
    { accent, corner, text, colours }
}

impl Theme {
    /// Whether nothing is told.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// A way in which an intake reaches the workshop.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(tag = "way", rename_all = "kebab-case", deny_unknown_fields)]
pub enum Delivery {
    /// The rider saves a file and hands it over.
    File,
    /// The rider hands over a link.
    Link,
    /// The rider shows a code.
    Code,
    /// The rider's own program drafts an e-mail to this address.
    Email {
        /// The address.
        address: String,
    },
    /// The page that frames this one is told.
    HostPage,
    /// It is sent to this address.
    Endpoint {
        /// The address, beginning with `https://`, or a path on the site's own host, beginning with `/`.
        url: String,
    },
}

/// A way as it is written.
#[derive(Default)]
struct Told {
    way: String,
    address: Option<String>,
    url: Option<String>,
}

read_form! {
    Told = Told::default(),
    needs [way],
    { way, address, url }
}

impl<'de> Deserialize<'de> for Delivery {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let Told { way, address, url } = Told::deserialize(reader)?;
        let word = Self::WORDS[listed::place_of(&way, Self::WORDS)?];
        match (word, address, url) {
            ("email", _, Some(_)) => Err(D::Error::unknown_field("url", &["address"])),
            ("email", Some(address), None) => Ok(Self::Email { address }),
            ("email", None, None) => Err(D::Error::missing_field("address")),
            ("endpoint", Some(_), _) => Err(D::Error::unknown_field("address", &["url"])),
            ("endpoint", None, Some(url)) => Ok(Self::Endpoint { url }),
            ("endpoint", None, None) => Err(D::Error::missing_field("url")),
            ("link", ..) => Ok(Self::Link),
            ("code", ..) => Ok(Self::Code),
            ("host-page", ..) => Ok(Self::HostPage),
            _ => Ok(Self::File),
        }
    }
}

impl Delivery {
    /// The word of every way, in the order in which they are offered where a workshop says nothing.
    pub const WORDS: &[&str] = &["file", "link", "code", "email", "host-page", "endpoint"];

    /// The word that stands for this way in documents and text keys.
    pub const fn word(&self) -> &'static str {
        match self {
            Self::File => "file",
            Self::Link => "link",
            Self::Code => "code",
            Self::Email { .. } => "email",
            Self::HostPage => "host-page",
            Self::Endpoint { .. } => "endpoint",
        }
    }
}
