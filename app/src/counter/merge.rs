//! Bringing what comes in together with what is on the desk.

use super::job::Job;

/// What became of a job that came in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fate {
    /// It was not on the desk.
    New,
    /// It was, and something about it was told later or besides.
    Updated,
    /// It was, and nothing in it is news.
    Same,
}

/// The job to keep, and what became of the one that came in.
pub fn merge(there: Option<&Job>, coming: Job) -> (Job, Fate) {
    let Some(there) = there else {
        return (coming, Fate::New);
    };
    let mut both = there.clone();
    both.take_in(&coming);
    // The same answers once more are no news, whenever they come.
    let alike = Job {
        extra_came: there.extra_came,
        ..both.clone()
    };
    let fate = if alike == *there {
        Fate::Same
    } else {
        Fate::Updated
    };
    (both, fate)
}

#[cfg(test)]
mod tests {
    use std::rc::Rc;

    use sagwright_core::intake::{ExtraAnswer, Feeling, Field, Intake, Question, Verdict};

    use super::*;
    use crate::counter::change::Change;
    use crate::counter::file::{jobs_in, to_file};
    use crate::counter::job::{Heard, Stage, Work};
    use crate::counter::limits::read_job;
    use crate::counter::name::name_of;
    use crate::examples;
    use crate::state::{Action, Page};

    fn rider() -> Intake {
        examples::riders().next().expect("there are examples")
    }

    /// The same rider with an answer to a question of the workshop's own.
    fn asked(answer: &str) -> Intake {
        let day = ExtraAnswer {
            id: "day".to_owned(),
            question: "Which day?".to_owned(),
            answer: answer.to_owned(),
        };
        Intake {
            extra: vec![day],
            ..rider()
        }
    }

    fn measured(job: &Job, sag: &str) -> Change {
        let page = Page::Ask(Question::SagFront);
        let typed = Action::Type(Field::ForkRiderSag, sag.to_owned());
        Change::Correct(page, Rc::new(job.now().after(typed)))
    }

    fn work(oil: &str) -> Change {
        let mut set = Intake::default();
        Field::ForkReboundNow.set(&mut set, Field::ForkReboundNow.get(&rider()));
        let work = Work {
            oil: oil.to_owned(),
            set,
            ..Work::default()
        };
        Change::Work("visit".to_owned(), Some(Box::new(work)))
    }

    fn heard() -> Change {
        let heard = Heard {
            felt: [(Feeling::Sticks, Verdict::Better)].into(),
            ..Heard::default()
        };
        Change::Heard("call".to_owned(), Some(heard))
    }

    /// Copies of one job that were worked on apart.
    fn copies() -> Vec<Job> {
        let first = Job::new(rider(), 10);
        let changes = [
            (Change::Name("Rider 1".to_owned()), 20),
            (Change::Name("Rider one".to_owned()), 20),
            (Change::Stage(Stage::OnStand), 30),
            (Change::Stage(Stage::Closed), 25),
            (Change::Tag("race".to_owned(), true), 40),
            (Change::Tag("race".to_owned(), false), 40),
            (
                Change::Note("a".to_owned(), "Leaks a little".to_owned()),
                50,
            ),
            (
                Change::Note("b".to_owned(), "Rings on Friday".to_owned()),
                50,
            ),
            (measured(&first, "61"), 60),
            (measured(&first, "64"), 61),
            (work("thin"), 70),
            (work("thinner"), 69),
            (heard(), 80),
        ];
        let apart = changes.map(|(change, now)| {
            let mut copy = first.clone();
            copy.hear(change, now);
            copy
        });
        let mut all = Vec::from(apart);
        all.push(first);
        for (came, answer) in [
            (15, "Monday"),
            (16, "Friday"),
            (16, "Sunday"),
            (17, "Monday"),
        ] {
            all.push(Job::new(asked(answer), came));
        }
        all
    }

    fn both(one: &Job, other: &Job) -> Job {
        merge(Some(one), other.clone()).0
    }

    #[test]
    fn it_does_not_matter_who_comes_first_or_how_often() {
        let copies = copies();
        for one in &copies {
            assert_eq!(both(one, one), *one);
            assert_eq!(merge(Some(one), one.clone()).1, Fate::Same);
            for two in &copies {
                let pair = both(one, two);
                assert_eq!(pair, both(two, one));
                assert_eq!(both(&pair, two), pair);
                for three in &copies {
                    assert_eq!(both(&pair, three), both(one, &both(two, three)));
                }
            }
        }
    }

    #[test]
    fn nothing_that_was_told_is_lost_and_the_later_word_counts() {
        let copies = copies();
        let all = copies
            .iter()
            .fold(copies[0].clone(), |so_far, copy| both(&so_far, copy));
        assert_eq!(all.name.is, "Rider one");
        assert_eq!(all.stage.is, Stage::OnStand);
        assert_eq!(all.notes().count(), 2);
        let sag = Field::ForkRiderSag.get(&all.now().document());
        assert_eq!(sag.map(|sag| sag.value), Some(64.0));
        let oils: Vec<&str> = all.work().map(|(_, work)| work.oil.as_str()).collect();
        assert_eq!(oils, ["thin"]);
        assert_eq!(all.heard().count(), 1);
        let last = asked("Monday");
        assert_eq!(all.intake, last, "what came in stays as it came");
    }

    #[test]
    fn the_same_intake_again_is_no_news_and_leaves_the_job_where_it_stands() {
        let mut job = Job::new(rider(), 10);
        job.hear(Change::Stage(Stage::Ready), 20);
        let (kept, fate) = merge(Some(&job), Job::new(rider(), 99));
        assert_eq!((kept, fate), (job.clone(), Fate::Same));
        assert_eq!(merge(None, job).1, Fate::New);
        // Answers from a code come without the note; the file brings it along.
        let by_code = Intake {
            note: String::new(),
            ..rider()
        };
        assert_eq!(name_of(&by_code), name_of(&rider()));
        let (kept, fate) = merge(Some(&Job::new(by_code, 10)), Job::new(rider(), 20));
        assert_eq!((kept.intake, fate), (rider(), Fate::Updated));
    }

    #[test]
    fn a_rider_who_sends_again_may_answer_the_workshop_otherwise() {
        let first = Job::new(asked("Monday"), 10);
        let (kept, fate) = merge(Some(&first), Job::new(asked("Friday"), 20));
        assert_eq!((&kept.intake, fate), (&asked("Friday"), Fate::Updated));
        assert_eq!((kept.came, kept.changed()), (10, 20));
        // The desk of before, brought again, holds the older word; a code holds none.
        for other in [first, Job::new(rider(), 30)] {
            assert_eq!(merge(Some(&kept), other), (kept.clone(), Fate::Same));
        }
        let again = merge(Some(&kept), Job::new(asked("Friday"), 40));
        assert_eq!((again.0.intake, again.1), (kept.intake, Fate::Same));
    }

    #[test]
    fn a_desk_comes_back_from_its_file_to_the_letter() {
        let name = name_of(&rider());
        for copy in copies() {
            let file = to_file([(name.as_str(), &copy)].into_iter()).expect("plain data");
            let jobs = jobs_in(&file).expect("it was just written");
            assert_eq!(jobs.len(), 1);
            let (found, text) = &jobs[0];
            assert_eq!((found, read_job(found, text)), (&name, Ok(copy)));
        }
    }

    #[test]
    fn a_clock_that_runs_ahead_wins_only_until_now() {
        let mut ahead = Job::new(rider(), 10);
        ahead.hear(Change::Stage(Stage::Closed), u64::MAX);
        ahead.not_after(1_000);
        ahead.hear(Change::Stage(Stage::Ready), 900);
        assert_eq!((ahead.stage.is, ahead.stage.at), (Stage::Ready, 1_001));
    }

    #[test]
    fn a_correction_taken_back_leaves_the_answers_as_they_came() {
        let mut job = Job::new(rider(), 10);
        let page = Page::Ask(Question::SagFront);
        job.hear(measured(&job, "61"), 20);
        assert_eq!(job.pages_put_right(), [page]);
        let came = Rc::new(job.as_came());
        job.hear(Change::Correct(page, came), 30);
        assert_eq!(job.pages_put_right(), []);
        assert_eq!(job.now().document(), job.as_came().document());
    }

    #[test]
    fn the_bike_leaves_with_the_numbers_of_the_last_visit() {
        let mut job = Job::new(rider(), 10);
        let number = |intake: &Intake| Field::ForkReboundNow.get(intake).map(|n| n.value);
        let Change::Work(_, Some(mut last)) = work("thin") else {
            unreachable!("work is work")
        };
        let mut clicks = Field::ForkReboundNow.get(&last.set).expect("it was set");
        clicks.value = 9.0;
        Field::ForkReboundNow.set(&mut last.set, Some(clicks));
        job.hear(work("thin"), 20);
        job.hear(Change::Work("visit 2".to_owned(), Some(last)), 30);
        assert_eq!(number(&job.after_work()), Some(9.0));
        assert_eq!(number(&job.now().document()), number(&rider()));
    }
}
