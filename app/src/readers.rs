//! Every reader of text that comes from outside the program, by name, for tests that hand it anything.
//!
//! Each tells whether it took the text. A text that is taken must come out of its own writer as it went in, and one that
//! is refused must be refused in words that there are; what fails is a panic, as a fuzzer wants it.

use sagwright_core::intake::{check, write};
use sagwright_core::words::{Arg, Text, UnitChoice};

use crate::counter::bring::{Brought, bring as brought};
use crate::counter::file::{jobs_in, to_file};
use crate::counter::find::title;
use crate::counter::job::Job;
use crate::counter::limits::read_job;
use crate::counter::merge::{Fate, merge};
use crate::counter::name::name_of;
use crate::counter::route::Place;
use crate::counter::speak;
use crate::counter::table::{Pen, table};
use crate::framed::{Look, Message, Said};
use crate::riding::Told;
use crate::route::Route;
use crate::state::{Page, Wizard, from_saved, lines, to_saved, troubles};
use crate::store::Notice;
use crate::track::log::{Log, Meeting, Press, meet};
use crate::words;

/// Reads a text and tells whether it was taken.
pub type Reader = fn(&str) -> bool;

/// All of them.
pub const READERS: &[(&str, Reader)] = &[
    ("bring", bring),
    ("job", job),
    ("saved", saved),
    ("log", log),
    ("worker", worker),
    ("notice", notice),
    ("address", address),
    ("message", message),
];

/// What is brought to the counter: files of riders and desks, links, the text of a scanned code.
fn bring(text: &str) -> bool {
    let mut taken = false;
    for one in brought(text) {
        match one {
            Ok(Brought::Rider(rider)) => {
                taken = true;
                check(&rider).expect("the counter takes no answers that fail their checks");
                let file = write(&rider).expect("plain data");
                assert_eq!(brought(&file), [Ok(Brought::Rider(rider))]);
            }
            Ok(Brought::Desk(jobs)) => {
                taken = true;
                for (name, text) in jobs {
                    match read_job(&name, &text) {
                        Ok(job) => keeps(&name, &job),
                        Err(why) => told(&why),
                    }
                }
            }
            Err(refused) => {
                assert!(!refused.0.is_empty(), "no word about why");
                refused.0.iter().for_each(|(_, why)| told(why));
            }
        }
    }
    taken
}

/// One job in a desk's file, under the name that it has to have.
fn job(text: &str) -> bool {
    let Ok(job) = serde_json::from_str::<Job>(text) else {
        return false;
    };
    let name = name_of(&job.intake);
    match read_job(&name, text) {
        Ok(job) => {
            keeps(&name, &job);
            true
        }
        Err(why) => {
            told(&why);
            false
        }
    }
}

/// A job that was taken survives its file, adds nothing to itself, and has its row in the table.
fn keeps(name: &str, job: &Job) {
    let file = to_file([(name, job)].into_iter()).expect("plain data");
    let jobs = jobs_in(&file).expect("it was just written");
    let [(found, text)] = jobs.as_slice() else {
        panic!("{} jobs out of one", jobs.len());
    };
    assert_eq!(found, name);
    assert_eq!(read_job(name, text).as_ref(), Ok(job));
    assert_eq!(merge(Some(job), job.clone()), (job.clone(), Fate::Same));
    title(job);
    let units = UnitChoice::default();
    let pen = Pen {
        say: &|text| words::tell(text, &units),
        day: &|moment| moment.to_string(),
    };
    let rows = table([(name, job)].into_iter(), &pen).expect("it is written into memory");
    assert_eq!(
        csv::Reader::from_reader(rows.as_bytes()).records().count(),
        1
    );
}

/// The answers kept on the device.
fn saved(text: &str) -> bool {
    let Ok(wizard) = from_saved(text) else {
        return false;
    };
    let again = to_saved(&wizard).expect("answers have a JSON form");
    // Held against what is written of it: a unit nobody chose is written as the one that is shown.
    let kept = from_saved(&again).expect("it was just written");
    assert_eq!(to_saved(&kept).as_deref().ok(), Some(again.as_str()));
    assert_eq!(kept.intake, wizard.intake);
    shows(&wizard);
    true
}

/// The log of a day at the track.
fn log(text: &str) -> bool {
    let Ok(log) = serde_json::from_str::<Log>(text) else {
        return false;
    };
    let again = serde_json::to_string(&log).expect("plain data");
    assert_eq!(
        serde_json::from_str::<Log>(&again).ok().as_ref(),
        Some(&log)
    );
    let Some(wizard) = log.wizard() else {
        return true;
    };
    assert!(
        matches!(meet(&wizard, &log), Meeting::Same(_)),
        "not its own log"
    );
    let laps = &wizard.intake.tried;
    for press in [
        Press::NotRidden,
        Press::Settle { keep: false },
        Press::Undo,
        Press::TakeOff(0),
    ] {
        log.after(laps, press);
    }
    shows(&wizard);
    true
}

/// Every page of these answers can be read over.
fn shows(wizard: &Wizard) {
    for page in Page::all(&wizard.intake) {
        lines(wizard, page);
        for trouble in troubles(wizard, page) {
            told(&trouble.text);
        }
    }
    let document = wizard.document();
    Wizard::from_intake(document);
}

/// What the worker tells the page.
fn worker(text: &str) -> bool {
    let Ok(heard) = Told::from_text(text) else {
        return false;
    };
    let again = heard.to_text().expect("its numbers are finite");
    assert_eq!(Told::from_text(&again).ok().as_ref(), Some(&heard));
    true
}

/// What another page of the site tells.
fn notice(text: &str) -> bool {
    let notice = Notice::from_text(text);
    if let Some(notice) = &notice {
        assert_eq!(notice.to_text(), text);
    }
    notice.is_some()
}

/// What stands after `#` in the address, on either page.
fn address(text: &str) -> bool {
    let (route, place) = (Route::from_fragment(text), Place::from_fragment(text));
    let (known, found) = (route != Route::Unknown, place != Place::Unknown);
    if known {
        assert_eq!(Route::from_fragment(&route.fragment()), route);
    }
    if found {
        assert_eq!(Place::from_fragment(&place.fragment()), place);
    }
    known || found
}

/// What the page around says.
fn message(text: &str) -> bool {
    let Ok(message) = Message::read(text) else {
        return false;
    };
    assert_eq!(Message::read(&message.to_text()).as_ref(), Ok(&message));
    if let Said::Begin(told) | Said::Look(told) = &message.said {
        let (_, refused) = Look::of(told);
        assert!(refused.len() <= told.len(), "more refused than asked for");
    }
    true
}

/// There is a sentence for a text, and for every text in it.
fn told(text: &Text) {
    if !words::book().has("counter.bad.nothing") {
        speak();
    }
    assert!(words::book().has(&text.key), "no sentence for {}", text.key);
    for arg in text.args.values() {
        if let Arg::Text(inner) = arg {
            told(inner);
        }
    }
}
