//! Every hand-set number moved: what the answer would be, were it another.

use super::Cause;
use super::numbers::Numbers;
use crate::intake::Feeling;

/// One of the numbers of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Number {
    /// The name of its field.
    pub name: &'static str,
    /// The word of the cause or feeling it belongs to, where there is one each.
    pub of: Option<&'static str>,
    /// Whether it is a chance, which is moved in odds so that it stays one.
    pub chance: bool,
    place: Place,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Place {
    Prior(usize),
    Leak(usize),
    Gain(usize),
    Single(usize),
}

/// The table with one number moved.
#[derive(Debug, Clone, PartialEq)]
pub struct Variant {
    /// What was moved.
    pub number: Number,
    /// By what factor, see [`Numbers::with`].
    pub factor: f64,
    /// All numbers.
    pub numbers: Numbers,
}

/// What a number changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Moves {
    /// The odds before anything is said, or the weight of all evidence: what each piece of it says stays as it is.
    Odds,
    /// What is said, and how laps with a change are judged.
    Said,
    /// What is said of one feeling, and how laps are judged.
    SaidOf(Feeling),
    /// What is measured and looked at.
    Found,
    /// All of it.
    All,
}

impl Number {
    /// What it changes.
    pub fn moves(&self) -> Moves {
        match (self.place, self.name) {
            (Place::Prior(_), _) | (_, "mild" | "together" | "temper") => Moves::Odds,
            (Place::Leak(at) | Place::Gain(at), _) => Moves::SaidOf(Feeling::ALL[at]),
            (_, "blunder" | "vagueness" | "in_clickers" | "push") => Moves::Found,
            _ => Moves::Said,
        }
    }

    /// Every number of the table.
    pub fn all() -> impl Iterator<Item = Self> {
        let each = |name, of, chance, place| Self {
            name,
            of: Some(of),
            chance,
            place,
        };
        let causes = Cause::ALL.iter().enumerate();
        let priors =
            causes.map(move |(at, cause)| each("prior", cause.word(), false, Place::Prior(at)));
        let words = || Feeling::ALL.iter().map(|f| f.word()).enumerate();
        let leaks = words().map(move |(at, word)| each("leak", word, true, Place::Leak(at)));
        let gains = words().map(move |(at, word)| each("gain", word, false, Place::Gain(at)));
        let singles = SINGLES.iter().enumerate();
        let singles = singles.map(|(at, (name, chance, _))| Self {
            name,
            of: None,
            chance: *chance,
            place: Place::Single(at),
        });
        singles.chain(priors).chain(leaks).chain(gains)
    }
}

type Single = (&'static str, bool, fn(&mut Numbers) -> &mut f64);

/// Numbers of which there is one each, and whether they are chances.
const SINGLES: &[Single] = &[
    ("mild", true, |n| &mut n.mild),
    ("touchiness", false, |n| &mut n.touchiness),
    ("silence", false, |n| &mut n.silence),
    ("denial", false, |n| &mut n.denial),
    ("wrong_end", true, |n| &mut n.wrong_end),
    ("says_both", true, |n| &mut n.says_both),
    ("severity", false, |n| &mut n.severity),
    ("clear_at", false, |n| &mut n.clear_at),
    ("bad_at", false, |n| &mut n.bad_at),
    ("moment", false, |n| &mut n.moment),
    ("ticked", true, |n| &mut n.ticked),
    ("each_moment", false, |n| &mut n.each_moment),
    ("history", true, |n| &mut n.history),
    ("blunder", true, |n| &mut n.blunder),
    ("vagueness", false, |n| &mut n.vagueness),
    ("in_clickers", true, |n| &mut n.in_clickers),
    ("push", false, |n| &mut n.push),
    ("temper", false, |n| &mut n.temper),
    ("together", false, |n| &mut n.together),
];

impl Numbers {
    /// The value of a number.
    pub fn of(&self, number: &Number) -> f64 {
        *self.clone().place(number)
    }

    /// The table with a number times `factor`, above 0; a chance has its odds multiplied.
    #[must_use]
    pub fn with(&self, number: &Number, factor: f64) -> Self {
        let mut moved = self.clone();
        let value = moved.place(number);
        *value = if number.chance {
            let odds = factor * *value / (1.0 - *value);
            odds / (1.0 + odds)
        } else {
            factor * *value
        };
        moved
    }

    /// The table with each number halved and doubled in turn.
    pub fn variants(&self) -> impl Iterator<Item = Variant> {
        Number::all().flat_map(|number| {
            [0.5, 2.0].map(|factor| Variant {
                number,
                factor,
                numbers: self.with(&number, factor),
            })
        })
    }

    fn place(&mut self, number: &Number) -> &mut f64 {
        match number.place {
            Place::Prior(at) => &mut self.prior[at],
            Place::Leak(at) => &mut self.leak[at],
            Place::Gain(at) => &mut self.gain[at],
            Place::Single(at) => SINGLES[at].2(self),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every number of the table is moved, none twice: the table written out has as many numbers as are walked.
    #[test]
    fn every_number_is_there_once() {
        let usual = Numbers::USUAL;
        let marked = Number::all()
            .enumerate()
            .fold(usual.clone(), |marked, (at, number)| {
                let mut next = marked;
                #[expect(clippy::cast_precision_loss, reason = "a hundred numbers")]
                let mark = 1000.0 + at as f64;
                *next.place(&number) = mark;
                next
            });
        let written = format!("{marked:?}");
        let numbers = written
            .split(|c: char| !c.is_ascii_digit() && c != '.')
            .filter(|word| word.contains(|c: char| c.is_ascii_digit()));
        let values: Vec<f64> = numbers.filter_map(|word| word.parse().ok()).collect();
        assert_eq!(values.len(), Number::all().count());
        assert!(values.iter().all(|value| *value >= 1000.0));
    }

    #[test]
    fn a_chance_stays_one() {
        for variant in Numbers::USUAL.variants().filter(|v| v.number.chance) {
            let (before, after) = (
                Numbers::USUAL.of(&variant.number),
                variant.numbers.of(&variant.number),
            );
            assert!(after > 0.0 && after < 1.0);
            let odds = |p: f64| p / (1.0 - p);
            assert!((odds(after) / odds(before) / variant.factor - 1.0).abs() < 1e-12);
        }
    }
}
