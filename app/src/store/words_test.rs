//! Every trouble has a sentence, and no sentence is left over.

use std::collections::BTreeSet;

use sagwright_core::words::Book;

use super::StoreError;

const OWN: &str = include_str!("../../words/en/store.json");

#[test]
fn every_trouble_has_a_sentence_and_every_sentence_a_trouble() {
    let all = [
        StoreError::Full,
        StoreError::Unavailable,
        StoreError::Blocked,
        StoreError::Newer,
        StoreError::Overtaken(String::new()),
        StoreError::Unreadable(String::new()),
        StoreError::Failed,
    ];
    let keys: BTreeSet<String> = all.map(|error| error.text().key.into_owned()).into();
    let own = Book::from_json(OWN).expect("the table is a flat object of sentences");
    assert_eq!(own.keys().map(str::to_owned).collect::<BTreeSet<_>>(), keys);
}
