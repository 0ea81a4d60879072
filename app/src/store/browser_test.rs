//! The store on a browser's own database, and in memory by the same calls.

use std::cell::RefCell;
use std::rc::Rc;

use gloo::timers::callback::Timeout;
use idb::{Database, Factory, ObjectStoreParams, TransactionMode};
use serde::{Deserialize, Serialize};
use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test as test, wasm_bindgen_test_configure};
use yew::Callback;

use super::memory::Memory;
use super::shape::{Shape, the_first_places};
use super::{Inner, Kind, Notice, Over, Place, Record, Store, StoreError, fresh_id};

wasm_bindgen_test_configure!(run_in_browser);

/// A record for the tests.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
struct Lap {
    number: u32,
}

impl Record for Lap {
    const KIND: Kind = Kind::Logs;
}

/// A record kept beside laps.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
struct Note(String);

impl Record for Note {
    const KIND: Kind = Kind::Meta;
}

fn lap(number: u32) -> Lap {
    Lap { number }
}

const fn shape(name: &'static str) -> Shape {
    Shape {
        name,
        steps: &[the_first_places],
        patience_ms: 5_000,
    }
}

async fn device(name: &'static str) -> Store {
    let store = Store::of(shape(name)).await;
    assert_eq!(store.trouble(), None);
    store
}

fn memory() -> Store {
    Store(Rc::new(Inner {
        shape: shape("in memory"),
        place: Place::Memory(Memory::default()),
        trouble: Some(StoreError::Unavailable),
    }))
}

async fn numbers(store: &Store) -> Vec<u32> {
    let listing = store.list::<Lap>().await.expect("it opens");
    assert_eq!(listing.unreadable, Vec::<String>::new());
    listing.entries.iter().map(|e| e.record.number).collect()
}

async fn moment(ms: u32) {
    let (send, sent) = futures_channel::oneshot::channel();
    Timeout::new(ms, move || send.send(()).expect("somebody waits")).forget();
    sent.await.expect("the clock runs");
}

#[test]
async fn records_are_found_in_order_each_kind_by_itself() {
    for store in [device("found in order").await, memory()] {
        assert_eq!(numbers(&store).await, [0; 0]);
        for (id, number) in [("b", 2), ("a", 1), ("c", 3)] {
            let put = store.put(id, &lap(number), Over::Nothing).await;
            put.expect("there is room");
        }
        let note = Note("beside the laps".to_owned());
        store.put("a", &note, Over::Nothing).await.expect("room");
        assert_eq!(numbers(&store).await, [1, 2, 3]);
        let found = store.get::<Lap>("b").await.expect("it opens");
        assert_eq!(found.map(|entry| entry.record), Some(lap(2)));
        let gone = store.delete(Kind::Logs, "b", Over::Anything).await;
        gone.expect("it may go");
        assert_eq!(numbers(&store).await, [1, 3]);
        assert_eq!(store.get::<Lap>("b").await, Ok(None));
        let beside = store.get::<Note>("a").await.expect("it opens");
        assert_eq!(beside.map(|entry| entry.record), Some(note));
    }
}

#[test]
async fn what_one_visit_keeps_the_next_one_finds() {
    let first = device("next visit").await;
    let put = first.put("lap", &lap(7), Over::Nothing).await;
    let stamp = put.expect("there is room");
    drop(first);
    let second = device("next visit").await;
    let found = second.get::<Lap>("lap").await.expect("it opens");
    let found = found.expect("it was kept");
    assert_eq!((found.record, found.stamp), (lap(7), stamp));
}

#[test]
async fn nothing_is_written_over_unasked() {
    for [one, two] in [
        [device("over").await, device("over").await],
        [(); 2].map({
            let store = memory();
            move |()| store.clone()
        }),
    ] {
        let first = one.put("lap", &lap(1), Over::Nothing).await.expect("room");
        let overtaken = Err(StoreError::Overtaken("lap".to_owned()));
        let blind = two.put("lap", &lap(2), Over::Nothing).await;
        assert_eq!(blind, overtaken);
        let seen = Over::Seen(first.clone());
        let second = two.put("lap", &lap(2), seen).await.expect("it was seen");
        let late = one.put("lap", &lap(3), Over::Seen(first.clone())).await;
        assert_eq!(late, overtaken);
        let late = one.delete(Kind::Logs, "lap", Over::Seen(first)).await;
        assert_eq!(late, Err(StoreError::Overtaken("lap".to_owned())));
        assert_eq!(numbers(&one).await, [2]);
        let gone = one.delete(Kind::Logs, "lap", Over::Seen(second.clone()));
        gone.await.expect("it was seen");
        let back = two.put("lap", &lap(4), Over::Seen(second)).await;
        assert_eq!(back, overtaken);
        let insisted = two.put("lap", &lap(4), Over::Anything).await;
        insisted.expect("anything may be written over");
        assert_eq!(numbers(&one).await, [4]);
    }
}

#[test]
async fn an_import_is_kept_whole_or_not_at_all() {
    for store in [device("import").await, memory()] {
        let put = store.put("b", &lap(20), Over::Nothing).await;
        put.expect("there is room");
        let laps = |over: Over| {
            [("a", 1), ("b", 2), ("c", 3)]
                .map(|(id, number)| (id.to_owned(), lap(number), over.clone()))
        };
        let refused = store.put_all(&laps(Over::Nothing)).await;
        assert_eq!(refused, Err(StoreError::Overtaken("b".to_owned())));
        assert_eq!(numbers(&store).await, [20]);
        let done = store.put_all(&laps(Over::Anything)).await;
        done.expect("anything may be written over");
        assert_eq!(numbers(&store).await, [1, 2, 3]);
    }
}

#[test]
async fn many_records_are_read_a_few_at_a_time_and_forgotten_at_once() {
    for store in [device("a few at a time").await, memory()] {
        let laps = (10..20).map(|number| (number.to_string(), lap(number), Over::Nothing));
        let laps: Vec<_> = laps.collect();
        store.put_all(&laps).await.expect("there is room");
        let again = store.put_all(&laps).await;
        assert_eq!(again, Err(StoreError::Overtaken("10".to_owned())));
        let mut read = Vec::new();
        let slices = store.list_slices::<Lap>(4, |slice| {
            let numbers = slice.entries.iter().map(|entry| entry.record.number);
            read.push(numbers.collect::<Vec<u32>>());
        });
        slices.await.expect("it opens");
        assert_eq!(
            read,
            [vec![10, 11, 12, 13], vec![14, 15, 16, 17], vec![18, 19]]
        );
        let note = Note("stays".to_owned());
        store.put("note", &note, Over::Nothing).await.expect("room");
        store.clear(Kind::Logs).await.expect("it may go");
        assert_eq!(numbers(&store).await, [0; 0]);
        let beside = store.get::<Note>("note").await.expect("it opens");
        assert_eq!(beside.map(|entry| entry.record), Some(note));
    }
}

#[test]
async fn another_page_hears_what_was_written_and_this_one_does_not() {
    let (one, two) = (device("notices").await, device("notices").await);
    let heard = Rc::new(RefCell::new(Vec::new()));
    let into = |heard: &Rc<RefCell<Vec<Notice>>>| {
        let heard = Rc::clone(heard);
        Callback::from(move |notice| heard.borrow_mut().push(notice))
    };
    let listener = two.listen(into(&heard)).expect("this browser has channels");
    one.put("lap 1", &lap(1), Over::Nothing)
        .await
        .expect("room");
    let gone = one.delete(Kind::Logs, "lap 1", Over::Anything).await;
    gone.expect("it may go");
    let stamp = one.put("lap 1", &lap(1), Over::Nothing).await;
    let stamp = Over::Seen(stamp.expect("there is room"));
    let refused = one.put("lap 2", &lap(1), stamp).await;
    assert!(refused.is_err(), "nothing is told of what was not written");
    moment(200).await;
    let notice = Notice {
        kind: Kind::Logs,
        id: "lap 1".to_owned(),
    };
    assert_eq!(*heard.borrow(), [notice.clone(), notice.clone(), notice]);
    drop(listener);
    one.put("lap 2", &lap(2), Over::Nothing)
        .await
        .expect("room");
    moment(200).await;
    assert_eq!(heard.borrow().len(), 3, "who has gone hears nothing");
}

/// A place that a later version might add.
fn one_more_place(database: &Database) -> Result<(), idb::Error> {
    database.create_object_store("later", ObjectStoreParams::new())?;
    Ok(())
}

const LATER: Shape = Shape {
    name: "older and newer",
    steps: &[the_first_places, one_more_place],
    patience_ms: 5_000,
};

#[test]
async fn a_newer_build_finds_everything_and_an_older_page_steps_back() {
    let older = device("older and newer").await;
    older
        .put("lap", &lap(1), Over::Nothing)
        .await
        .expect("room");
    let newer = Store::of(LATER).await;
    assert_eq!(newer.trouble(), None, "the older page has let go");
    assert_eq!(numbers(&newer).await, [1]);
    newer
        .put("next", &lap(2), Over::Nothing)
        .await
        .expect("room");
    let stays = older.put("lap", &lap(9), Over::Anything).await;
    assert_eq!(stays, Err(StoreError::Newer));
    assert_eq!(numbers(&newer).await, [1, 2]);
    let again = Store::of(shape("older and newer")).await;
    assert_eq!(again.trouble(), Some(&StoreError::Newer));
    again
        .put("lap", &lap(9), Over::Nothing)
        .await
        .expect("memory");
    assert_eq!(numbers(&newer).await, [1, 2], "memory is not the device");
}

#[test]
async fn a_step_that_fails_leaves_the_device_as_it_was() {
    let broken = Shape {
        name: "a step that fails",
        // The same place cannot be made twice.
        steps: &[the_first_places, one_more_place, one_more_place],
        patience_ms: 5_000,
    };
    let before = device("a step that fails").await;
    before
        .put("lap", &lap(1), Over::Nothing)
        .await
        .expect("room");
    let refused = Store::of(broken).await;
    assert_eq!(refused.trouble(), Some(&StoreError::Unavailable));
    assert_eq!(numbers(&before).await, [1], "it opens again by itself");
}

#[test]
async fn a_page_that_does_not_let_go_is_not_waited_for_for_ever() {
    let holding = Factory::new().expect("this browser has databases");
    let holding = holding.open("held", Some(1)).expect("it may be opened");
    let held = holding.await.expect("nobody else holds it");
    let impatient = Shape {
        name: "held",
        steps: &[the_first_places, the_first_places],
        patience_ms: 300,
    };
    let store = Store::of(impatient).await;
    assert_eq!(store.trouble(), Some(&StoreError::Blocked));
    store
        .put("lap", &lap(1), Over::Nothing)
        .await
        .expect("memory");
    held.close();
}

#[test]
async fn what_cannot_be_read_stays_and_is_named() {
    let store = device("unreadable").await;
    store.put("a", &lap(1), Over::Nothing).await.expect("room");
    let raw = Factory::new().expect("this browser has databases");
    let raw = raw.open("unreadable", Some(1)).expect("it may be opened");
    let raw = raw.await.expect("it opens");
    let turn = raw.transaction(&["logs"], TransactionMode::ReadWrite);
    let turn = turn.expect("the place is there");
    let place = turn.object_store("logs").expect("the place is there");
    for (id, value) in [
        ("b", JsValue::from_f64(5.0)),
        ("c", JsValue::from_str(r#"{"numero":1}"#)),
    ] {
        let put = place.put(&value, Some(&JsValue::from_str(id)));
        put.expect("plain data").await.expect("there is room");
    }
    turn.await.expect("it is kept");
    let listing = store.list::<Lap>().await.expect("the others can be read");
    assert_eq!(listing.entries.len(), 1);
    assert_eq!(listing.unreadable, ["b", "c"]);
    for id in ["b", "c"] {
        let unreadable = Err(StoreError::Unreadable(id.to_owned()));
        assert_eq!(store.get::<Lap>(id).await, unreadable);
        let put = store.put(id, &lap(2), Over::Nothing).await;
        assert_eq!(put, Err(StoreError::Overtaken(id.to_owned())));
    }
    let put = store.put("b", &lap(2), Over::Anything).await;
    put.expect("who insists may");
    let listing = store.list::<Lap>().await.expect("the others can be read");
    assert_eq!(listing.unreadable, ["c"]);
    raw.close();
}

#[test]
async fn fresh_names_differ_and_sort_by_time() {
    let first = fresh_id();
    moment(5).await;
    let second = fresh_id();
    assert!(first < second, "{first} before {second}");
    assert_eq!(first.len(), second.len());
}
