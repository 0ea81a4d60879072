//! A number as the rider typed it, kept letter by letter.

use sagwright_core::intake::Field;
use sagwright_core::quantity::{How, NumberTrouble, Typed, Unit, read_number};
use sagwright_core::words::number;

/// What stands in a number's box, in the unit it was typed in.
///
/// Invariant: nothing but the rider's own typing changes `text`; another unit only changes what is shown.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedText {
    /// The letters typed.
    pub text: String,
    /// The unit shown while they were typed.
    pub unit: Unit,
    /// How the number is known, where the rider said.
    pub how: Option<How>,
    /// The rider was asked whether another unit was meant, and said no.
    pub unit_kept: bool,
}

impl TypedText {
    /// An empty box.
    pub fn blank(unit: Unit) -> Self {
        Self {
            text: String::new(),
            unit,
            how: None,
            unit_kept: false,
        }
    }

    /// The text of a number that came from a document rather than the keyboard.
    pub fn from_answer(answer: Typed) -> Self {
        Self {
            text: answer.value.to_string(),
            unit: answer.unit,
            how: answer.how,
            unit_kept: true,
        }
    }

    /// Nothing but blanks.
    pub fn is_blank(&self) -> bool {
        self.text.trim().is_empty()
    }

    /// The number typed, in [`TypedText::unit`].
    pub fn number(&self) -> Result<f64, NumberTrouble> {
        read_number(&self.text, self.unit)
    }

    /// The answer, where the text is a number.
    pub fn answer(&self) -> Option<Typed> {
        let value = self.number().ok()?;
        Some(Typed {
            value,
            unit: self.unit,
            how: self.how,
        })
    }

    /// What the box shows in `unit`: the very letters typed in their own unit, the number converted in another.
    pub fn shown_in(&self, unit: Unit) -> String {
        match self.number() {
            Ok(value) if unit != self.unit => {
                number(unit.from_si(self.unit.to_si(value)), unit.decimals())
            }
            _ => self.text.clone(),
        }
    }

    /// The first other unit in which the number would be a usual one for `field`, unless the rider was asked before.
    pub fn unit_to_ask(&self, field: Field) -> Option<Unit> {
        if self.unit_kept {
            return None;
        }
        let value = self.number().ok()?;
        field.likelier_units(value, self.unit).first().copied()
    }
}
