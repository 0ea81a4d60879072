#![allow(missing_docs, clippy::all)]
use sagwright_core::{
    advice::{Advice, Options, advise},
    intake::Intake,
    words::Book,
};
use std::io::Read;
fn main() {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text).unwrap();
    let intake: Intake = serde_json::from_str(&text).unwrap();
    let t = std::time::Instant::now();
    let Advice::SetUp(a) = advise(&intake, &Options::default()).unwrap() else {
        println!("stop");
        return;
    };
    println!(
        "{:?} rides {}",
        t.elapsed(),
        a.rides.as_ref().map_or(0, |r| r.rides)
    );
    let t = std::time::Instant::now();
    let _ = sagwright_core::advice::advise_with(&intake, &Options::default(), a.rides.as_ref())
        .unwrap();
    println!("with rides {:?}", t.elapsed());
    let t = std::time::Instant::now();
    let _ = sagwright_core::advice::advise_with(&intake, &Options::default(), None).unwrap();
    println!("without rides {:?}", t.elapsed());
    for c in &a.caveats {
        println!("   caveat {} {:?}", c.key, c.args.get("evidence"));
    }
    let _book = Book::english();
    for c in intake.complaints.iter().flatten() {
        println!(
            "   said {:?} {:?} {:?} {:?} {:?}",
            c.feeling, c.end, c.severity, c.since, c.phases
        );
    }
    for c in a.causes.iter().take(7) {
        println!("{:.3} {:?}", c.probability, c.cause);
        for e in c.evidence_for.iter().take(4) {
            println!(
                "        + {:.2} {} {:?}",
                e.weight,
                e.text.key,
                e.text.args.get("feeling")
            );
        }
        for e in c.evidence_against.iter().take(3) {
            println!(
                "        {:.2} {} {:?}",
                e.weight,
                e.text.key,
                e.text.args.get("feeling")
            );
        }
    }
    println!(
        "sum {:.2} next {:?}",
        a.causes.iter().map(|c| c.probability).sum::<f64>(),
        a.next_check.map(|c| (c.what.key, c.why.args))
    );
    for r in a.remedies.iter().take(5) {
        println!(
            "  {:?} {:?} relief {:.2} gain {:.2}",
            r.tier, r.id, r.relief, r.gain
        );
    }
}
