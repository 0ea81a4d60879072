//! Reading the parts of documents by the names of their fields: one loop for all of them, where the reader that is derived
//! for each part brings a loop, a second one for lists, and a check of its own for every field.

use core::fmt;

use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, Visitor};

/// Reads the value of the field at a place.
type Take<'a, A, E> = &'a mut dyn FnMut(usize, &mut A) -> Result<(), E>;

/// Reads every field of a part: `take` is told the place of each among `names` and has to read its value. A name that is
/// none of them, one that stands twice, and one of `needed` that is left out are refused, as where a reader is derived.
///
/// # Errors
/// The reader's own, and that of `take`.
pub(crate) fn read<'de, A: MapAccess<'de>>(
    fields: &mut A,
    names: &'static [&'static str],
    needed: &[usize],
    take: Take<'_, A, A::Error>,
) -> Result<(), A::Error> {
    let mut met = vec![false; names.len()];
    while let Some(place) = fields.next_key_seed(Named(names))? {
        if std::mem::replace(&mut met[place], true) {
            return Err(A::Error::duplicate_field(names[place]));
        }
        take(place, fields)?;
    }
    let left_out = needed.iter().find(|place| !met[**place]);
    left_out.map_or(Ok(()), |place| Err(A::Error::missing_field(names[*place])))
}

/// The place of a field's name among these.
struct Named(&'static [&'static str]);

impl<'de> DeserializeSeed<'de> for Named {
    type Value = usize;

    fn deserialize<D: Deserializer<'de>>(self, reader: D) -> Result<usize, D::Error> {
        reader.deserialize_identifier(self)
    }
}

impl Visitor<'_> for Named {
    type Value = usize;

    fn expecting(&self, told: &mut fmt::Formatter) -> fmt::Result {
        told.write_str("field identifier")
    }

    fn visit_str<E: Error>(self, name: &str) -> Result<usize, E> {
        let place = self.0.iter().position(|one| *one == name);
        place.ok_or_else(|| E::unknown_field(name, self.0))
    }
}

/// Declares how a part of a document is read: beginning with `$empty`, each field that stands there is put in. Fields after
/// `needs` have to stand there.
macro_rules! read_form {
    ($name:ident = $empty:expr, needs [$($needed:ident),*], { $($field:ident),+ $(,)? }) => {
        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
                use serde::de::{MapAccess, Visitor};

                #[derive(Clone, Copy)]
                #[expect(non_camel_case_types, reason = "they are the names of the fields")]
                enum At { $($field),+ }
                const PLACES: &[At] = &[$(At::$field),+];
                const NAMES: &[&str] = &[$(stringify!($field)),+];

                struct Form;

                impl<'de> Visitor<'de> for Form {
                    type Value = $name;

                    fn expecting(&self, told: &mut core::fmt::Formatter) -> core::fmt::Result {
                        told.write_str(concat!("struct ", stringify!($name)))
                    }

                    fn visit_map<A: MapAccess<'de>>(self, mut fields: A) -> Result<$name, A::Error> {
                        let mut part: $name = $empty;
                        let needed = [$(At::$needed as usize),*];
                        $crate::form::read(&mut fields, NAMES, &needed, &mut |place, fields| {
                            match PLACES[place] {
                                $(At::$field => part.$field = fields.next_value()?),+
                            }
                            Ok(())
                        })?;
                        Ok(part)
                    }
                }

                reader.deserialize_struct(stringify!($name), NAMES, Form)
            }
        }
    };
}

pub(crate) use read_form;
