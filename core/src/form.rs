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

#[cfg(test)]
mod tests {
    use crate::workshop::{Contact, Delivery};
    use serde::de::DeserializeOwned;

    fn told<T: DeserializeOwned>(json: &str) -> String {
        let refused = serde_json::from_str::<T>(json).err();
        refused.map_or_else(String::new, |error| error.to_string())
    }

    #[test]
    fn fields_are_taken_in_any_order_and_those_left_out_stay_empty() {
        let json = r#"{"website":"w","phone":"p"}"#;
        let contact: Contact = serde_json::from_str(json).expect("both are fields of it");
        assert_eq!(
            (contact.phone.as_str(), contact.website.as_str()),
            ("p", "w")
        );
        assert!(contact.email.is_empty() && contact.address.is_empty());
    }

    #[test]
    fn what_is_unknown_twice_or_no_part_at_all_is_named() {
        let unknown = told::<Contact>(r#"{"fax":"1"}"#);
        let known = "expected one of `phone`, `email`, `address`, `website`";
        assert!(
            unknown.starts_with(&format!("unknown field `fax`, {known}")),
            "{unknown}"
        );
        let twice = told::<Contact>(r#"{"phone":"1","phone":"2"}"#);
        assert!(twice.starts_with("duplicate field `phone`"), "{twice}");
        for (none, what) in [("[]", "sequence"), ("7", "integer `7`"), ("null", "null")] {
            let expected = format!("invalid type: {what}, expected struct Contact");
            assert!(told::<Contact>(none).starts_with(&expected), "{none}");
        }
    }

    #[test]
    fn a_way_needs_what_it_leads_to_and_takes_nothing_else() {
        for (json, expected) in [
            ("{}", "missing field `way`"),
            (r#"{"way":"pigeon"}"#, "unknown variant `pigeon`"),
            (r#"{"way":"email"}"#, "missing field `address`"),
            (
                r#"{"way":"email","address":"a","url":"u"}"#,
                "unknown field `url`",
            ),
            (r#"{"way":"endpoint"}"#, "missing field `url`"),
            (
                r#"{"way":"endpoint","address":"a","url":"u"}"#,
                "unknown field `address`",
            ),
        ] {
            let told = told::<Delivery>(json);
            assert!(told.starts_with(expected), "{json}: {told}");
        }
    }

    #[test]
    fn every_way_is_read_as_it_is_written() {
        let (address, url) = ("a@b.c".to_owned(), "/in".to_owned());
        let ways = [
            Delivery::File,
            Delivery::Link,
            Delivery::Code,
            Delivery::Email { address },
            Delivery::HostPage,
            Delivery::Endpoint { url },
        ];
        assert_eq!(ways.len(), Delivery::WORDS.len());
        for way in ways {
            let json = serde_json::to_string(&way).expect("it has a JSON form");
            assert_eq!(
                serde_json::from_str::<Delivery>(&json).ok(),
                Some(way),
                "{json}"
            );
        }
    }
}
