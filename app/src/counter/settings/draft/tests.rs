//! The boxes of the settings give back what they were filled with, and say what is wrong where it stands.

use sagwright_core::quantity::How;

use super::*;

fn demo() -> Workshop {
    let demo = include_str!("../../../../../demo-data/workshop.json");
    sagwright_core::workshop::read(demo).expect("the demo workshop is well-formed")
}

fn wrong(draft: &Draft) -> Vec<String> {
    let wrong = draft.finished().expect_err("something is wrong");
    wrong.into_iter().map(|(at, _)| at).collect()
}

#[test]
fn a_document_goes_through_the_boxes_unchanged() {
    assert_eq!(Draft::of(&demo()).finished(), Ok(demo()));
}

#[test]
fn what_is_in_order_or_measured_stays_so_through_the_boxes() {
    let mut workshop = demo();
    workshop.languages = vec![Language::German, Language::English];
    let endpoint = Delivery::Endpoint {
        url: "/in".to_owned(),
    };
    workshop.delivery = vec![endpoint, Delivery::Code, Delivery::File];
    let rate = |value, unit, how| Entry { value, unit, how };
    workshop.stock.fork = vec![
        rate(4.6, RateUnit::NewtonPerMillimetre, Some(How::Measured)),
        rate(26.0, RateUnit::PoundForcePerInch, None),
        rate(4.6, RateUnit::NewtonPerMillimetre, None),
    ];
    let mut draft = Draft::of(&workshop);
    assert_eq!(draft.finished(), Ok(workshop.clone()));
    // One more rate leaves the others as they came.
    draft.stock.0.push_str("; 5");
    let more = draft.finished().expect("it is in order").stock.fork;
    assert_eq!(more[..3], workshop.stock.fork);
    assert_eq!(more[3], rate(5.0, RateUnit::NewtonPerMillimetre, None));
}

#[test]
fn an_empty_form_says_what_it_needs_and_no_more() {
    assert_eq!(
        wrong(&Draft::default()),
        [
            "labour_per_hour",
            "labour_per_hour-high",
            "name",
            "currency"
        ]
    );
    let least = Draft {
        name: "A".to_owned(),
        currency: "EUR".to_owned(),
        labour: ("60".to_owned(), "80,5".to_owned()),
        ..Draft::default()
    };
    let workshop = least.finished().expect("that is enough");
    assert_eq!(workshop.labour_per_hour, (60.0, 80.5));
    assert_eq!((workshop.remedies, workshop.classes), (None, None));
    assert_eq!(workshop.delivery, [Delivery::File]);
}

#[test]
fn trouble_with_a_price_stands_at_the_box_it_is_in() {
    for (low, high, at) in [
        ("60", "50", Some("-high")),
        ("60", "1000000", Some("-high")),
        ("60", "", Some("-high")),
        ("-1", "50", Some("")),
        ("1000000", "1000000", Some("")),
        ("60", "60", None),
    ] {
        let mut draft = Draft::of(&demo());
        draft.labour = (low.to_owned(), high.to_owned());
        let own = (low.to_owned(), high.to_owned());
        draft.prices.insert(RemedyId::SetTyres, own);
        let places = ["labour_per_hour", "prices.set-tyres"];
        let places = places.map(|place| at.map(|at| [place, at].concat()));
        let expected: Vec<String> = places.into_iter().flatten().collect();
        let found = draft.finished().err().unwrap_or_default();
        let found: Vec<String> = found.into_iter().map(|(at, _)| at).collect();
        assert_eq!(found, expected, "{low} to {high}");
    }
}

#[test]
fn every_box_with_nonsense_is_named() {
    let mut draft = Draft::of(&demo());
    draft.labour.0 = "a lot".to_owned();
    draft
        .prices
        .insert(RemedyId::SetTyres, ("5".to_owned(), "x".to_owned()));
    draft.stock.0 = "4.6; soft".to_owned();
    draft.accent = "#ff8800".to_owned();
    draft.corner = "round".to_owned();
    draft.ways.push("endpoint");
    draft.questions.push(AskDraft::default());
    assert_eq!(
        wrong(&draft),
        [
            "labour_per_hour",
            "prices.set-tyres-high",
            "stock.fork",
            "theme.corner",
            "questions[3].text",
            "theme.accent",
            "delivery[3].url",
        ]
    );
}
