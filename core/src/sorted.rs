//! Maps and sets of a few entries, in order.
//!
//! What answers hold are a few entries of closed lists. The trees of the standard library are made for many, and come with some
//! 2 kB of code for every kind of key; these are sorted lists of the `litemap` crate that read, write and compare like them. The
//! one long map, the thousand sentences of a language, takes 1.2 times as long to put together (0.66 ms against 0.54, natively).

use core::fmt;
use core::marker::PhantomData;
use core::ops::{Deref, DerefMut};

use litemap::LiteMap;
use serde::de::{MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// Values by key, in the order of their keys; each key once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Map<K, V>(LiteMap<K, V>);

/// Things in their order, each once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Set<K>(LiteMap<K, ()>);

impl<K, V> Default for Map<K, V> {
    fn default() -> Self {
        Self::new()
    }
}

impl<K, V> Map<K, V> {
    /// Nothing.
    pub const fn new() -> Self {
        Self(LiteMap::new_vec())
    }

    /// Whether it holds nothing.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl<K, V> Deref for Map<K, V> {
    type Target = LiteMap<K, V>;

    fn deref(&self) -> &Self::Target {
        &self.0
    }
}

impl<K, V> DerefMut for Map<K, V> {
    fn deref_mut(&mut self) -> &mut Self::Target {
        &mut self.0
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for Map<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(all: I) -> Self {
        let mut map = Self::new();
        map.extend(all);
        map
    }
}

impl<K: Ord, V> Extend<(K, V)> for Map<K, V> {
    fn extend<I: IntoIterator<Item = (K, V)>>(&mut self, all: I) {
        for (key, value) in all {
            self.0.insert(key, value);
        }
    }
}

impl<K: Ord, V, const N: usize> From<[(K, V); N]> for Map<K, V> {
    fn from(all: [(K, V); N]) -> Self {
        all.into_iter().collect()
    }
}

impl<K, V> IntoIterator for Map<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_tuple_vec().into_iter()
    }
}

impl<'a, K, V> IntoIterator for &'a Map<K, V> {
    type Item = (&'a K, &'a V);
    type IntoIter = <&'a LiteMap<K, V> as IntoIterator>::IntoIter;

    fn into_iter(self) -> Self::IntoIter {
        (&self.0).into_iter()
    }
}

impl<K: Serialize, V: Serialize> Serialize for Map<K, V> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter())
    }
}

impl<'de, K: Deserialize<'de> + Ord, V: Deserialize<'de>> Deserialize<'de> for Map<K, V> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Entries<K, V>(PhantomData<(K, V)>);

        impl<'de, K: Deserialize<'de> + Ord, V: Deserialize<'de>> Visitor<'de> for Entries<K, V> {
            type Value = Map<K, V>;

            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("a map")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut all: A) -> Result<Self::Value, A::Error> {
                let mut map = Map::new();
                while let Some((key, value)) = all.next_entry()? {
                    map.insert(key, value);
                }
                Ok(map)
            }
        }

        deserializer.deserialize_map(Entries(PhantomData))
    }
}

impl<K> Default for Set<K> {
    fn default() -> Self {
        Self::new()
    }
}

impl<K> Set<K> {
    /// Nothing.
    pub const fn new() -> Self {
        Self(LiteMap::new_vec())
    }

    /// Whether it holds nothing.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Takes out all.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// How many it holds.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// What it holds, in order.
    pub fn iter(&self) -> <&Self as IntoIterator>::IntoIter {
        self.into_iter()
    }
}

impl<K: Ord> Set<K> {
    /// Whether it holds this.
    pub fn contains(&self, key: &K) -> bool {
        self.0.contains_key(key)
    }

    /// Puts this in; whether it was not there before.
    pub fn insert(&mut self, key: K) -> bool {
        self.0.insert(key, ()).is_none()
    }

    /// Takes this out; whether it was there.
    pub fn remove(&mut self, key: &K) -> bool {
        self.0.remove(key).is_some()
    }

    /// Keeps those for which this holds.
    pub fn retain(&mut self, mut keep: impl FnMut(&K) -> bool) {
        self.0.retain(|key, ()| keep(key));
    }
}

impl<K: Ord> FromIterator<K> for Set<K> {
    fn from_iter<I: IntoIterator<Item = K>>(all: I) -> Self {
        let mut set = Self::new();
        set.extend(all);
        set
    }
}

impl<K: Ord> Extend<K> for Set<K> {
    fn extend<I: IntoIterator<Item = K>>(&mut self, all: I) {
        for key in all {
            self.insert(key);
        }
    }
}

impl<K: Ord, const N: usize> From<[K; N]> for Set<K> {
    fn from(all: [K; N]) -> Self {
        all.into_iter().collect()
    }
}

impl<'a, K> IntoIterator for &'a Set<K> {
    type Item = &'a K;
    type IntoIter = core::iter::Map<
        <&'a LiteMap<K, ()> as IntoIterator>::IntoIter,
        fn((&'a K, &'a ())) -> &'a K,
    >;

    fn into_iter(self) -> Self::IntoIter {
        (&self.0).into_iter().map(|(key, ())| key)
    }
}

impl<K> IntoIterator for Set<K> {
    type Item = K;
    type IntoIter = core::iter::Map<std::vec::IntoIter<(K, ())>, fn((K, ())) -> K>;

    fn into_iter(self) -> Self::IntoIter {
        let all = self.0.into_tuple_vec().into_iter();
        all.map(|(key, ())| key)
    }
}

impl<K: Serialize> Serialize for Set<K> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.iter())
    }
}

impl<'de, K: Deserialize<'de> + Ord> Deserialize<'de> for Set<K> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Entries<K>(PhantomData<K>);

        impl<'de, K: Deserialize<'de> + Ord> Visitor<'de> for Entries<K> {
            type Value = Set<K>;

            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("a sequence")
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut all: A) -> Result<Self::Value, A::Error> {
                let mut set = Set::new();
                while let Some(key) = all.next_element()? {
                    set.insert(key);
                }
                Ok(set)
            }
        }

        deserializer.deserialize_seq(Entries(PhantomData))
    }
}

#[cfg(feature = "schema")]
mod schema {
    use std::borrow::Cow;
    use std::collections::{BTreeMap, BTreeSet};

    use schemars::{JsonSchema, Schema, SchemaGenerator};

    use super::{Map, Set};

    impl<K: JsonSchema, V: JsonSchema> JsonSchema for Map<K, V> {
        fn inline_schema() -> bool {
            true
        }

        fn schema_name() -> Cow<'static, str> {
            BTreeMap::<K, V>::schema_name()
        }

        fn json_schema(generator: &mut SchemaGenerator) -> Schema {
            BTreeMap::<K, V>::json_schema(generator)
        }
    }

    impl<K: JsonSchema> JsonSchema for Set<K> {
        fn inline_schema() -> bool {
            true
        }

        fn schema_name() -> Cow<'static, str> {
            BTreeSet::<K>::schema_name()
        }

        fn json_schema(generator: &mut SchemaGenerator) -> Schema {
            BTreeSet::<K>::json_schema(generator)
        }
    }
}

#[cfg(test)]
mod tests {
    use std::collections::{BTreeMap, BTreeSet};

    use super::*;

    const PAIRS: [(&str, u8); 5] = [("m", 1), ("a", 2), ("z", 3), ("a", 4), ("k", 5)];

    #[test]
    fn a_map_is_written_and_read_like_the_standard_one() {
        let (ours, theirs) = (Map::from(PAIRS), BTreeMap::from(PAIRS));
        let text = serde_json::to_string(&ours).expect("it can be written");
        assert_eq!(text, serde_json::to_string(&theirs).expect("as above"));
        // Read in any order, the last of one key counts.
        let told = r#"{"m":1,"a":2,"z":3,"a":4,"k":5}"#;
        assert_eq!(
            serde_json::from_str::<Map<&str, u8>>(told).expect("a map"),
            ours
        );
        assert!(ours.into_iter().eq(theirs));
    }

    #[test]
    fn a_set_is_written_and_read_like_the_standard_one() {
        let keys = PAIRS.map(|(key, _)| key);
        let (mut ours, theirs) = (Set::from(keys), BTreeSet::from(keys));
        let text = serde_json::to_string(&ours).expect("it can be written");
        assert_eq!(text, serde_json::to_string(&theirs).expect("as above"));
        assert_eq!(
            serde_json::from_str::<Set<&str>>(r#"["z","k","a","m","k"]"#).expect("a set"),
            ours
        );
        assert!(ours.contains(&"k") && ours.remove(&"k") && !ours.remove(&"k"));
        assert!(ours.insert("b") && !ours.insert("b"));
        assert!(ours.iter().eq(["a", "b", "m", "z"].iter()));
    }
}
