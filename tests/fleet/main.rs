//! The fleet: virtual bikes with something hidden in them.

mod calibrate;
mod case;
mod fleet;
mod luck;
mod readers;
mod rider;
mod score;
mod stable;
mod table;
mod truth;
mod workshop;

use fleet::{Row, Size, fleet};
use readers::{Reader, Which};
use sagwright_core::cause::Numbers;
use score::{Judged, Score};

fn words_alone(rows: &[Row], numbers: &Numbers) -> Vec<Judged> {
    Reader::Library.judged(rows, numbers, Which::Single, 0).remove(0)
}

#[test]
fn first() {
    let env = |name: &str, otherwise: usize| {
        std::env::var(name).ok().and_then(|v| v.parse().ok()).unwrap_or(otherwise)
    };
    let size = Size {
        stables: env("STABLES", 4),
        single: env("SINGLE", 10),
        double: env("DOUBLE", 0),
    };
    let start = web_time::Instant::now();
    let rows = fleet(1, size);
    println!("fleet {:.1} s", start.elapsed().as_secs_f64());
    let start = web_time::Instant::now();
    for (reader, checks) in [(Reader::Library, env("CHECKS", 4)), (Reader::Table, env("CHECKS", 4)), (Reader::Priors, env("CHECKS", 4))] {
        let start = web_time::Instant::now();
        let all = reader.judged(&rows, &Numbers::USUAL, Which::Single, checks);
        println!("{reader:?} {:.1} s", start.elapsed().as_secs_f64());
        print!("{}", score::HEAD);
        for (n, judged) in all.iter().enumerate() {
            print!("{}", Score::of(judged).row(&format!("{reader:?} after {n}")));
        }
    }
    let judged = words_alone(&rows, &Numbers::USUAL);
    let said: Vec<usize> = rows.iter().flat_map(|row| &row.single).map(|case| case.intake.complaints.as_ref().map_or(0, Vec::len)).collect();
    println!("complaints {said:?}");
    if env("DUMP", 0) > 0 {
        for case in rows.iter().flat_map(|row| &row.single) {
            println!("{:?} {:?}", case.faults, case.intake.complaints.iter().flatten().map(|c| format!("{}:{:?}:{:?}", c.feeling.word(), c.end, c.severity)).collect::<Vec<_>>());
        }
    }
}

#[test]
#[ignore = "minutes; prints numbers for the table"]
fn calibrate() {
    let env = |name: &str, otherwise: usize| {
        std::env::var(name).ok().and_then(|v| v.parse().ok()).unwrap_or(otherwise)
    };
    let size = Size {
        stables: env("STABLES", 40),
        single: env("SINGLE", 17),
        double: env("DOUBLE", 3),
    };
    let rows = fleet(1, size);
    println!("drawn");
    println!("loss with pairs {:.4}", calibrate::loss(&rows, &Numbers::USUAL, true));
    let skip = ["prior", "mild", "together", "blunder", "vagueness", "in_clickers", "push"];
    let fitted = calibrate::descend(&rows, &Numbers::USUAL, 3, false, |n| !skip.contains(&n.name));
    println!("{fitted:#?}");
    let pairs = ["temper", "together", "mild", "silence", "touchiness"];
    let fitted = calibrate::descend(&rows, &fitted, 2, true, |n| pairs.contains(&n.name));
    println!("{fitted:#?}");
    for (name, numbers) in [("before", &Numbers::USUAL), ("after", &fitted)] {
        let judged = words_alone(&rows, numbers);
        println!("{name}\n{}{}", score::HEAD, Score::of(&judged).row("words alone"));
        println!("{}", score::by_cause(&judged));
        println!("{}", score::curve(&score::reliability(score::leaders(&judged))));
        println!("{}", score::curve(&score::reliability(score::stated(&judged))));
        for (a, b, n) in score::confusions(&judged).iter().take(25) {
            println!("{} → {} {n}", a.word(), b.word());
        }
    }
}
