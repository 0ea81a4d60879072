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


#[derive(serde::Serialize, serde::Deserialize)]
struct Kept { told: sagwright_core::intake::Intake, rehearsal: sagwright_core::cause::Rehearsal, cases: Vec<(sagwright_core::intake::Intake, Vec<sagwright_core::cause::Cause>)> }

#[test]
#[ignore]
fn keep() {
    let env = |name: &str, otherwise: usize| std::env::var(name).ok().and_then(|v| v.parse().ok()).unwrap_or(otherwise);
    let size = Size { stables: env("STABLES", 40), single: env("SINGLE", 17), double: env("DOUBLE", 3) };
    let rows = fleet(env("SEED", 1) as u64, size);
    let kept: Vec<Kept> = rows.into_iter().map(|row| Kept { told: row.stable.told.clone(), rehearsal: row.stable.rehearsal.clone(), cases: row.single.iter().chain(&row.double).map(|c| (c.intake.clone(), c.faults.iter().map(|f| f.cause).collect())).collect() }).collect();
    std::fs::write(std::env::var("KEPT").unwrap(), serde_json::to_string(&kept).unwrap()).unwrap();
}

fn load(path: &str) -> Vec<calibrate::Answered> {
    let kept: Vec<Kept> = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    kept.into_iter().map(|k| calibrate::Answered { stable: stable::Stable::of(k.told, k.rehearsal), cases: k.cases }).collect()
}

fn judge(rows: &[calibrate::Answered], numbers: &Numbers, single: bool) -> Vec<Judged> {
    fleet::in_parallel(rows, |row| {
        let ways = row.stable.hypotheses(numbers, true);
        row.cases.iter().filter(|(_, c)| (c.len() < 2) == single).map(|(i, c)| Judged { truth: if c.is_empty() { vec![sagwright_core::cause::Cause::NothingWrong] } else { c.clone() }, belief: row.stable.belief(i, &ways, numbers).probability }).collect::<Vec<_>>()
    }).into_iter().flatten().collect()
}

fn show(name: &str, rows: &[calibrate::Answered], numbers: &Numbers) {
    let judged = judge(rows, numbers, true);
    println!("{name} set loss {:.4}\n{}{}", calibrate::loss(rows, numbers, true), score::HEAD, Score::of(&judged).row("words alone"));
    print!("{}", Score::of(&judge(rows, numbers, false)).row("two causes"));
    println!("{}", score::by_cause(&judged));
    println!("{}", score::curve(&score::reliability(score::leaders(&judged))));
    println!("{}", score::curve(&score::reliability(score::stated(&judged))));
    for (a, b, n) in score::confusions(&judged).iter().take(25) {
        println!("{} → {} {n}", a.word(), b.word());
    }
}

#[test]
#[ignore]
fn fit() {
    let rows = load(&std::env::var("KEPT").unwrap());
    show("before", &rows, &Numbers::USUAL);
    if std::env::var("SHOW").is_ok() { return; }
    let skip = ["prior", "mild", "together", "blunder", "vagueness", "in_clickers", "push", "gain", "leak"];
    // common factors first
    let mut best = Numbers::USUAL;
    let mut least = calibrate::loss(&rows, &best, false);
    println!("singles {least:.4}");
    use sagwright_core::cause::variants::Number;
    let all = |from: &Numbers, name: &str, by: f64| Number::all().filter(|n| n.name == name).fold(from.clone(), |m, n| m.with(&n, by));
    for _ in 0..2 {
        for name in ["gain", "leak"] {
            for by in [1.25, 0.8, 1.1, 0.9] {
                loop {
                    let next = all(&best, name, by);
                    let loss = calibrate::loss(&rows, &next, false);
                    if loss > least - 1e-4 { break; }
                    (best, least) = (next, loss);
                    println!("{name} x{by} {least:.4}");
                }
            }
        }
        best = calibrate::descend(&rows, &best, 2, false, |n| !skip.contains(&n.name));
        least = calibrate::loss(&rows, &best, false);
    }
    println!("common {best:#?}");
    best = calibrate::descend(&rows, &best, 2, false, |n| ["gain", "leak"].contains(&n.name));
    println!("each {best:#?}");
    best = calibrate::descend(&rows, &best, 2, true, |n| ["temper", "together", "silence", "touchiness", "mild"].contains(&n.name));
    println!("{best:#?}");
    show("after", &rows, &best);
    if let Ok(held) = std::env::var("HELD") {
        let held = load(&held);
        show("held out before", &held, &Numbers::USUAL);
        show("held out after", &held, &best);
    }
}
