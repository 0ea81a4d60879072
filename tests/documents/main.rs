//! The documents people and other programs exchange with Sagwright: their schema, and that the demo data keeps to it.

use std::path::PathBuf;

use sagwright_core::intake::{BikeClass, Feeling, Field, ForkKind, Intake, ShockKind, read};
use sagwright_core::workshop::Workshop;
use serde_json::Value;

fn folder(name: &str) -> PathBuf {
    [env!("CARGO_MANIFEST_DIR"), "..", name].iter().collect()
}

/// Every demo intake by name.
fn intakes() -> Vec<(String, String)> {
    let mut all: Vec<_> = std::fs::read_dir(folder("demo-data"))
        .expect("the demo data is there")
        .map(|entry| entry.expect("a readable folder").path())
        .filter(|path| {
            path.extension().is_some_and(|e| e == "json") && !path.ends_with("workshop.json")
        })
        .map(|path| {
            let text = std::fs::read_to_string(&path).expect("readable");
            (path.display().to_string(), text)
        })
        .collect();
    all.sort();
    all
}

fn validator(schema: &schemars::Schema) -> jsonschema::Validator {
    jsonschema::draft202012::new(schema.as_value()).expect("a well-formed schema")
}

#[test]
fn the_schemas_on_record_are_the_ones_generated() {
    for (name, schema) in [
        ("intake", schemars::schema_for!(Intake)),
        ("workshop", schemars::schema_for!(Workshop)),
    ] {
        let path = folder("core/schema").join(format!("{name}.schema.json"));
        let generated = serde_json::to_string_pretty(&schema).expect("plain data") + "\n";
        let recorded = std::fs::read_to_string(&path).unwrap_or_default();
        assert!(
            recorded == generated,
            "{} is not what the types say. Write it anew:\n  cargo run -q -p sagwright-core --features schema --example schema {name} > {}",
            path.display(),
            path.display()
        );
        let dialect = schema.get("$schema").and_then(Value::as_str);
        assert_eq!(
            dialect,
            Some("https://json-schema.org/draft/2020-12/schema")
        );
    }
}

#[test]
fn demo_intakes_keep_to_the_schema_and_survive_the_round_trip() {
    let schema = validator(&schemars::schema_for!(Intake));
    let all = intakes();
    assert!(all.len() >= 8, "{} demo intakes", all.len());
    for (name, text) in all {
        let document: Value = serde_json::from_str(&text).expect("JSON");
        if let Err(problem) = schema.validate(&document) {
            panic!("{name}: {problem} at {}", problem.instance_path());
        }
        let intake = read(&text).unwrap_or_else(|error| panic!("{name}: {error}"));
        assert!(
            intake.note.starts_with("Invented"),
            "{name} does not say that it is invented"
        );
        let again = serde_json::to_string(&intake).expect("plain data");
        assert_eq!(
            read(&again).expect("what was written can be read"),
            intake,
            "{name}"
        );
    }
}

#[test]
fn the_schema_refuses_what_the_reader_refuses() {
    let schema = validator(&schemars::schema_for!(Intake));
    for text in [
        r"{}",
        r#"{"version": 1, "colour": "red"}"#,
        r#"{"version": 1, "rider": {"pace": "warp"}}"#,
        r#"{"version": 1, "rider": {"weight": {"value": 80, "unit": "stone"}}}"#,
        r#"{"version": 1, "rider": {"weight": {"value": 80}}}"#,
        r#"{"version": 1, "complaints": [{"end": "front"}]}"#,
    ] {
        let document: Value = serde_json::from_str(text).expect("JSON");
        assert!(!schema.is_valid(&document), "{text}");
        assert!(read(text).is_err(), "{text}");
    }
}

#[test]
fn demo_intakes_cover_classes_forks_shocks_units_and_complaints() {
    let all: Vec<Intake> = intakes()
        .iter()
        .map(|(_, text)| read(text).expect("well-formed"))
        .collect();
    for class in BikeClass::ALL {
        assert!(
            all.iter().any(|intake| intake.bike.class == Some(*class)),
            "{class:?}"
        );
    }
    for fork in ForkKind::ALL {
        assert!(
            all.iter().any(|intake| intake.bike.fork == Some(*fork)),
            "{fork:?}"
        );
    }
    for shock in ShockKind::ALL {
        assert!(
            all.iter().any(|intake| intake.bike.shock == Some(*shock)),
            "{shock:?}"
        );
    }
    for feeling in Feeling::ALL {
        let named = |intake: &Intake| {
            intake
                .complaints
                .iter()
                .flatten()
                .any(|c| c.feeling == *feeling)
        };
        assert!(all.iter().any(named), "{feeling:?}");
    }
    for field in [
        Field::RiderWeight,
        Field::ShockRate,
        Field::RearRiderSag,
        Field::FrontTyre,
    ] {
        let units: std::collections::BTreeSet<_> = all
            .iter()
            .filter_map(|intake| field.get(intake))
            .map(|typed| typed.unit.symbol())
            .collect();
        assert!(units.len() >= 2, "{} only in {units:?}", field.path());
    }
    assert!(
        all.iter()
            .any(|intake| intake.complaints.as_ref().is_some_and(Vec::is_empty))
    );
    assert!(
        all.iter()
            .any(|intake| intake.stop_signs.as_ref().is_some_and(|s| !s.is_empty()))
    );
}
