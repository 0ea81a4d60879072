//! Typed-in numbers: the units people use, exact conversion to SI, and the guard against a wrong unit.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::{listed, units};

/// What a number measures, and so which units it may come in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Dimension {
    /// Mass; SI kg.
    Mass,
    /// Body height; SI m.
    Height,
    /// Sag, preload, travel; SI m.
    Length,
    /// Spring rate; SI N/m.
    Rate,
    /// Gauge pressure; SI Pa.
    Pressure,
    /// Temperature; SI K.
    Temperature,
    /// Altitude above sea level; SI m.
    Altitude,
    /// Running time; SI s.
    Time,
    /// Position of an adjuster counted from fully closed; a count.
    Clicks,
    /// Force; SI N. Only in answers, never asked for.
    Force,
    /// Part of a whole, 0 to 1. Only in answers.
    Share,
    /// How many of something. Only in answers.
    Count,
    /// Acceleration; SI m/s². Only in answers.
    Acceleration,
    /// How fast something turns; SI rad/s. Only in answers.
    PitchRate,
}

/// Every unit a number can be typed or shown in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    /// Kilogram.
    Kilogram,
    /// International pound.
    Pound,
    /// Millimetre.
    Millimetre,
    /// Centimetre.
    Centimetre,
    /// Inch.
    Inch,
    /// Newton per millimetre.
    NewtonPerMillimetre,
    /// Kilogram-force per millimetre.
    KilogramForcePerMillimetre,
    /// Pound-force per inch.
    PoundForcePerInch,
    /// Bar.
    Bar,
    /// Pound-force per square inch.
    Psi,
    /// Kilopascal.
    Kilopascal,
    /// Degree Celsius.
    Celsius,
    /// Degree Fahrenheit.
    Fahrenheit,
    /// Metre.
    Metre,
    /// Foot.
    Foot,
    /// Hour.
    Hour,
    /// Click from fully closed.
    Click,
    /// Newton.
    Newton,
    /// Pound-force.
    PoundForce,
    /// Percent.
    Percent,
    /// One of something, shown without a sign.
    Piece,
    /// Metre per second squared.
    MetrePerSecondSquared,
    /// Degree per second.
    DegreePerSecond,
}

impl Unit {
    /// The sign shown beside a number and written in documents.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Kilogram => "kg",
            Self::Pound => "lb",
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Inch => "in",
            Self::NewtonPerMillimetre => "N/mm",
            Self::KilogramForcePerMillimetre => "kgf/mm",
            Self::PoundForcePerInch => "lbf/in",
            Self::Bar => "bar",
            Self::Psi => "psi",
            Self::Kilopascal => "kPa",
            Self::Celsius => "°C",
            Self::Fahrenheit => "°F",
            Self::Metre => "m",
            Self::Foot => "ft",
            Self::Hour => "h",
            Self::Click => "clicks",
            Self::Newton => "N",
            Self::PoundForce => "lbf",
            Self::Percent => "%",
            Self::Piece => "",
            Self::MetrePerSecondSquared => "m/s²",
            Self::DegreePerSecond => "°/s",
        }
    }

    /// `SI = value * scale + offset`; every factor is exact (see [`units`]).
    const fn scale_and_offset(self) -> (f64, f64) {
        match self {
            Self::Kilogram
            | Self::Metre
            | Self::Click
            | Self::Newton
            | Self::Piece
            | Self::MetrePerSecondSquared => (1.0, 0.0),
            Self::DegreePerSecond => (core::f64::consts::PI / 180.0, 0.0),
            Self::Pound => (units::LB_IN_KG, 0.0),
            Self::Millimetre => (1e-3, 0.0),
            Self::Centimetre | Self::Percent => (1e-2, 0.0),
            Self::Inch => (units::INCH_IN_M, 0.0),
            Self::NewtonPerMillimetre | Self::Kilopascal => (1e3, 0.0),
            Self::KilogramForcePerMillimetre => (units::KGF_IN_N * 1e3, 0.0),
            Self::PoundForcePerInch => (units::LBF_IN_N / units::INCH_IN_M, 0.0),
            Self::Bar => (units::BAR_IN_PA, 0.0),
            Self::Psi => (units::PSI_IN_PA, 0.0),
            Self::Celsius => (1.0, units::ZERO_CELSIUS_IN_K),
            Self::Fahrenheit => (5.0 / 9.0, units::ZERO_CELSIUS_IN_K - 32.0 * 5.0 / 9.0),
            Self::Foot => (units::FOOT_IN_M, 0.0),
            Self::Hour => (3600.0, 0.0),
            Self::PoundForce => (units::LBF_IN_N, 0.0),
        }
    }

    /// A number in this unit as SI.
    pub fn to_si(self, value: f64) -> f64 {
        let (scale, offset) = self.scale_and_offset();
        value * scale + offset
    }

    /// An SI number in this unit.
    pub fn from_si(self, si: f64) -> f64 {
        let (scale, offset) = self.scale_and_offset();
        (si - offset) / scale
    }

    /// A difference (a step, a spread) in SI as a difference in this unit: no offset.
    pub fn difference_from_si(self, si: f64) -> f64 {
        si / self.scale_and_offset().0
    }

    /// How many decimals are worth showing: the resolution of the thing measured, no finer.
    pub const fn decimals(self) -> usize {
        match self {
            Self::NewtonPerMillimetre | Self::Bar | Self::MetrePerSecondSquared => 1,
            Self::KilogramForcePerMillimetre | Self::Inch => 2,
            _ => 0,
        }
    }
}

impl Dimension {
    /// The units in which this is typed and shown, metric first.
    pub const fn units(self) -> &'static [Unit] {
        match self {
            Self::Mass => &[Unit::Kilogram, Unit::Pound],
            Self::Height => &[Unit::Centimetre, Unit::Inch],
            Self::Length => &[Unit::Millimetre, Unit::Inch],
            Self::Rate => &[
                Unit::NewtonPerMillimetre,
                Unit::KilogramForcePerMillimetre,
                Unit::PoundForcePerInch,
            ],
            Self::Pressure => &[Unit::Bar, Unit::Psi, Unit::Kilopascal],
            Self::Temperature => &[Unit::Celsius, Unit::Fahrenheit],
            Self::Altitude => &[Unit::Metre, Unit::Foot],
            Self::Time => &[Unit::Hour],
            Self::Clicks => &[Unit::Click],
            Self::Force => &[Unit::Newton, Unit::PoundForce],
            Self::Share => &[Unit::Percent],
            Self::Count => &[Unit::Piece],
            Self::Acceleration => &[Unit::MetrePerSecondSquared],
            Self::PitchRate => &[Unit::DegreePerSecond],
        }
    }
}

/// A set of units that one kind of number may come in.
pub trait UnitSet: Copy + 'static {
    /// What is measured.
    const DIMENSION: Dimension;
    /// Every unit of the set.
    const ALL: &'static [Self];
    /// What each is called in documents, in the same order.
    const WORDS: &'static [&'static str];
    /// The unit meant.
    fn unit(self) -> Unit;
    /// This set's name for `unit`, or `None` when the unit measures something else.
    fn of(unit: Unit) -> Option<Self>;
}

/// Declares the units of one dimension as they are written in documents.
macro_rules! unit_set {
    ($(#[$doc:meta])* $name:ident: $dimension:ident { $($item:ident = $word:literal),+ }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum $name {
            $(#[doc = concat!("`", $word, "`.")] #[serde(rename = $word)] $item),+
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
                let place = listed::place(reader, Self::WORDS)?;
                Ok(Self::ALL[place])
            }
        }

        impl UnitSet for $name {
            const DIMENSION: Dimension = Dimension::$dimension;
            const ALL: &'static [Self] = &[$(Self::$item),+];
            const WORDS: &'static [&'static str] = &[$($word),+];
            fn unit(self) -> Unit {
                match self { $(Self::$item => Unit::$item),+ }
            }
            fn of(unit: Unit) -> Option<Self> {
                match unit { $(Unit::$item => Some(Self::$item),)+ _ => None }
            }
        }
    };
}

unit_set! {
    /// Units of mass.
    MassUnit: Mass { Kilogram = "kg", Pound = "lb" }
}
unit_set! {
    /// Units of body height.
    HeightUnit: Height { Centimetre = "cm", Inch = "in" }
}
unit_set! {
    /// Units of sag, preload and travel.
    LengthUnit: Length { Millimetre = "mm", Inch = "in" }
}
unit_set! {
    /// Units of spring rate.
    RateUnit: Rate {
        NewtonPerMillimetre = "N/mm",
        KilogramForcePerMillimetre = "kgf/mm",
        PoundForcePerInch = "lbf/in"
    }
}
unit_set! {
    /// Units of gauge pressure.
    PressureUnit: Pressure { Bar = "bar", Psi = "psi", Kilopascal = "kPa" }
}
unit_set! {
    /// Units of temperature.
    TemperatureUnit: Temperature { Celsius = "C", Fahrenheit = "F" }
}
unit_set! {
    /// Units of altitude.
    AltitudeUnit: Altitude { Metre = "m", Foot = "ft" }
}
unit_set! {
    /// Units of running time.
    TimeUnit: Time { Hour = "h" }
}
unit_set! {
    /// Adjuster positions, counted from fully closed.
    ClickUnit: Clicks { Click = "clicks" }
}

/// How a number is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum How {
    /// Measured by the rider or the workshop.
    Measured,
    /// Read off the part or from its paper.
    ReadOff,
    /// A guess.
    Guess,
}

/// A number as it was typed: the value, its unit, and how it is known.
///
/// It is kept as typed; showing it in another unit never changes it, so nothing drifts.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema),
    schemars(deny_unknown_fields)
)]
pub struct Entry<U> {
    /// The number, in `unit`.
    pub value: f64,
    /// Its unit.
    pub unit: U,
    /// How it is known; absent means as good as measured.
    #[cfg_attr(
        feature = "schema",
        schemars(default, skip_serializing_if = "Option::is_none")
    )]
    pub how: Option<How>,
}

/// An entry as it is written, whatever it measures: so there is one reader and one writer for all units.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Written<W> {
    value: f64,
    unit: W,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    how: Option<How>,
}

impl<'de, U: UnitSet> Deserialize<'de> for Entry<U> {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let Written { value, unit, how } = Written::<String>::deserialize(reader)?;
        let unit = U::ALL[listed::place_of(&unit, U::WORDS)?];
        Ok(Self { value, unit, how })
    }
}

impl<U: UnitSet + PartialEq> Serialize for Entry<U> {
    fn serialize<S: Serializer>(&self, writer: S) -> Result<S::Ok, S::Error> {
        let place = U::ALL.iter().position(|unit| *unit == self.unit);
        Written {
            value: self.value,
            // Every unit of a set is in its list.
            unit: place.map_or("", |place| U::WORDS[place]),
            how: self.how,
        }
        .serialize(writer)
    }
}

impl<U: UnitSet> Entry<U> {
    /// The number in SI.
    pub fn si(&self) -> f64 {
        self.unit.unit().to_si(self.value)
    }
}

/// A number with its unit, free of the field it came from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Typed {
    /// The number, in `unit`.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
    /// How it is known.
    pub how: Option<How>,
}

impl Typed {
    /// The number in SI.
    pub fn si(&self) -> f64 {
        self.unit.to_si(self.value)
    }
}

/// Reads a number the way people type it: `84,5` and `84.5` alike, spaces at the ends, a unit after it.
///
/// # Errors
/// [`NumberTrouble`] when there is nothing, more than one mark, or a character that belongs to no number.
pub fn read_number(text: &str, unit: Unit) -> Result<f64, NumberTrouble> {
    let trimmed =
        text.trim_matches(|c: char| c.is_whitespace() || c == '\u{a0}' || c == '\u{202f}');
    let bare = trimmed
        .strip_suffix(unit.symbol())
        .unwrap_or(trimmed)
        .trim_end_matches(|c: char| c.is_whitespace() || c == '\u{a0}' || c == '\u{202f}');
    if bare.is_empty() {
        return Err(NumberTrouble::Empty);
    }
    let marks = bare.chars().filter(|c| matches!(c, '.' | ',')).count();
    if marks > 1 {
        return Err(NumberTrouble::TwoMarks);
    }
    let plain: String = bare
        .chars()
        .map(|c| match c {
            ',' => '.',
            '\u{2212}' => '-',
            other => other,
        })
        .collect();
    let shaped = plain.strip_prefix('-').unwrap_or(&plain);
    if !shaped.chars().all(|c| c.is_ascii_digit() || c == '.')
        || !shaped.chars().any(|c| c.is_ascii_digit())
    {
        return Err(NumberTrouble::NotANumber);
    }
    Ok(as_json(&plain))
}

/// The number that digits with at most one point and perhaps a minus sign before them stand for, rounded to the nearest.
///
/// Infinite where it is too large for any. It is read as JSON, whose reader every document needs: the one of the standard
/// library takes 12 kB of download more.
fn as_json(plain: &str) -> f64 {
    let (minus, digits) = match plain.strip_prefix('-') {
        Some(digits) => ("-", digits),
        None => ("", plain),
    };
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let whole = match whole.trim_start_matches('0') {
        "" => "0",
        whole => whole,
    };
    let part = if part.is_empty() { "0" } else { part };
    let too_large = if minus.is_empty() {
        f64::INFINITY
    } else {
        f64::NEG_INFINITY
    };
    serde_json::from_str(&[minus, whole, ".", part].concat()).unwrap_or(too_large)
}

/// Why typed text is not a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NumberTrouble {
    /// Nothing but blanks.
    Empty,
    /// More than one decimal mark, as in `1.234,5`: could mean two things.
    TwoMarks,
    /// Something that is not part of a number.
    NotANumber,
}
