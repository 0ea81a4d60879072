use crate::{calibrate, score, stable};
use crate::fleet::{self, Size, fleet};
use crate::score::{Judged, Score};
use sagwright_core::cause::Numbers;

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
    let best = calibrate::fit(&rows, &Numbers::USUAL);
    println!("{best:#?}");
    show("after", &rows, &best);
    if let Ok(held) = std::env::var("HELD") {
        let held = load(&held);
        show("held out before", &held, &Numbers::USUAL);
        show("held out after", &held, &best);
    }
}
