//! Answers and colours kept on the device between visits. Nothing leaves it.
//!
//! Every page of the site keeps its answers in the same place. So a page looks before it writes: what stands there and
//! was not put there by itself, nor read from there, are answers given on another page, and the rider is asked which
//! of the two to go on with.

use std::cell::RefCell;
use std::rc::Rc;

use gloo::events::EventListener;
use sagwright_core::words::Language;
use yew::prelude::*;

use crate::browser::{self, Device};
use crate::shell::HEADING;
use crate::state::{Action, SavedError, Wizard, from_saved, to_saved};
use crate::wear::Theme;

/// Where the answers are kept.
const ANSWERS: &str = "sagwright.answers";

/// Where answers that could not be read, or were overruled, are put aside.
const ASIDE: &str = "sagwright.answers.aside";

/// Where the chosen colours are kept; the first script of the page reads it too.
const THEME: &str = "sagwright.theme";

/// Where the chosen language is kept.
const LANGUAGE: &str = "sagwright.language";

/// What was found on the device.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Found {
    /// Answers, or none yet.
    Fine,
    /// Answers written by a newer build, put aside.
    Newer,
    /// Answers of an unknown form, put aside.
    Unreadable,
}

/// How the answers of this page are kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kept {
    /// They are on the device.
    Yes,
    /// The device does not take them; they live as long as the page.
    No,
    /// Another page has kept others; nothing is written until the rider has chosen.
    Overtaken,
}

/// A place for texts under names.
pub trait Shelf {
    /// What was kept under `name`.
    fn kept(&self, name: &str) -> Option<String>;
    /// Keeps `text` under `name`; `false` where it is not kept.
    fn keep(&self, name: &str, text: &str) -> bool;
}

/// Keeps the answers of one page.
#[derive(Debug)]
pub struct Keeper<S = Device> {
    shelf: S,
    /// What stood on the shelf when this page last read or wrote it.
    seen: RefCell<Option<String>>,
}

impl<S: Shelf> Keeper<S> {
    /// The answers of the last visit, and the keeper of those to come.
    pub fn open(shelf: S) -> (Self, Wizard, Found) {
        let seen = shelf.kept(ANSWERS);
        let (wizard, found) = match seen.as_deref().map(from_saved) {
            None => (Wizard::default(), Found::Fine),
            Some(Ok(wizard)) => (wizard, Found::Fine),
            Some(Err(error)) => {
                shelf.keep(ASIDE, seen.as_deref().unwrap_or_default());
                let found = match error {
                    SavedError::Newer => Found::Newer,
                    SavedError::Unreadable => Found::Unreadable,
                };
                (Wizard::default(), found)
            }
        };
        let seen = RefCell::new(seen);
        (Self { shelf, seen }, wizard, found)
    }

    /// Keeps the answers, unless another page has kept others.
    pub fn save(&self, wizard: &Wizard) -> Kept {
        let Ok(ours) = to_saved(wizard) else {
            return Kept::No;
        };
        match self.shelf.kept(ANSWERS) {
            Some(there) if there == ours => {}
            Some(there) if Some(&there) != self.seen.borrow().as_ref() => return Kept::Overtaken,
            _ if self.shelf.keep(ANSWERS, &ours) => {}
            _ => return Kept::No,
        }
        *self.seen.borrow_mut() = Some(ours);
        Kept::Yes
    }

    /// The answers of the other page, to go on with. `None` where there are none that this build can read.
    pub fn take_over(&self) -> Option<Wizard> {
        let theirs = self.shelf.kept(ANSWERS)?;
        let wizard = from_saved(&theirs).ok()?;
        *self.seen.borrow_mut() = Some(theirs);
        Some(wizard)
    }

    /// Keeps the answers of this page although another page has kept others; those are put aside.
    pub fn insist(&self, wizard: &Wizard) -> Kept {
        let theirs = self.shelf.kept(ANSWERS);
        if let Some(theirs) = &theirs {
            self.shelf.keep(ASIDE, theirs);
        }
        *self.seen.borrow_mut() = theirs;
        self.save(wizard)
    }
}

/// How the answers are kept, and what can be done where another page has kept others.
#[derive(Debug, Clone, PartialEq)]
pub struct Keeping {
    /// How they are kept.
    pub kept: Kept,
    /// Goes on with the answers of the other page.
    pub take_over: Callback<MouseEvent>,
    /// Goes on with the answers of this page.
    pub insist: Callback<MouseEvent>,
}

/// Keeps the answers on the device whenever they change, and looks out for other pages.
#[hook]
pub fn use_keeping(
    keeper: &Rc<Keeper>,
    wizard: &Rc<Wizard>,
    change: UseReducerDispatcher<Wizard>,
) -> Keeping {
    let kept = use_state_eq(|| Kept::Yes);
    // What the page holds now, for the listener that is made once.
    let latest = use_mut_ref(|| Rc::clone(wizard));
    latest.replace(Rc::clone(wizard));
    {
        let (keeper, set) = (Rc::clone(keeper), kept.setter());
        use_effect_with(Rc::clone(wizard), move |wizard| {
            set.set(keeper.save(wizard));
        });
    }
    {
        let (keeper, set) = (Rc::clone(keeper), kept.setter());
        use_effect_with((), move |()| {
            let listener = web_sys::window().map(|window| {
                // Another page has written; saving looks before it writes.
                EventListener::new(&window, "storage", move |_| {
                    set.set(keeper.save(&latest.borrow()));
                })
            });
            move || drop(listener)
        });
    }
    let take_over = {
        let (keeper, set) = (Rc::clone(keeper), kept.setter());
        Callback::from(move |_| {
            if let Some(theirs) = keeper.take_over() {
                change.dispatch(Action::TakeOver(Box::new(theirs)));
                set.set(Kept::Yes);
                browser::focus(HEADING);
            }
        })
    };
    let insist = {
        let (keeper, set) = (Rc::clone(keeper), kept.setter());
        let wizard = Rc::clone(wizard);
        Callback::from(move |_| {
            set.set(keeper.insist(&wizard));
            browser::focus(HEADING);
        })
    };
    Keeping {
        kept: *kept,
        take_over,
        insist,
    }
}

/// The colours of the last visit.
pub fn theme() -> Theme {
    Device
        .kept(THEME)
        .map_or(Theme::Device, |word| Theme::of(&word))
}

/// Keeps the colours for the next visit; where the device does not, they last until the page is closed.
pub fn keep_theme(theme: Theme) {
    Device.keep(THEME, theme.word());
}

/// The language chosen on an earlier visit.
pub fn language() -> Option<Language> {
    Language::of(&Device.kept(LANGUAGE)?)
}

/// Keeps the language for the next visit.
pub fn keep_language(language: Language) {
    Device.keep(LANGUAGE, language.tag());
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use sagwright_core::intake::Field;

    use super::*;

    /// A shelf with room for so many letters.
    #[derive(Debug, Clone)]
    struct Board {
        texts: Rc<RefCell<BTreeMap<String, String>>>,
        room: usize,
    }

    impl Shelf for Board {
        fn kept(&self, name: &str) -> Option<String> {
            self.texts.borrow().get(name).cloned()
        }
        fn keep(&self, name: &str, text: &str) -> bool {
            let fits = text.len() <= self.room;
            if fits {
                self.texts
                    .borrow_mut()
                    .insert(name.to_owned(), text.to_owned());
            }
            fits
        }
    }

    fn board(room: usize) -> Board {
        Board {
            texts: Rc::default(),
            room,
        }
    }

    /// Answers as they are found on the shelf: units never chosen are named there.
    fn weighing(kilograms: &str) -> Wizard {
        let typed = Action::Type(Field::RiderWeight, kilograms.to_owned());
        let text = to_saved(&Wizard::default().after(typed)).expect("plain data");
        from_saved(&text).expect("it was just written")
    }

    #[test]
    fn what_is_kept_is_found_on_the_next_visit_letter_by_letter() {
        let shelf = board(usize::MAX);
        let (keeper, fresh, found) = Keeper::open(shelf.clone());
        assert_eq!((fresh, found), (Wizard::default(), Found::Fine));
        let halfway = weighing("8,");
        assert_eq!(keeper.save(&halfway), Kept::Yes);
        let (_, again, _) = Keeper::open(shelf);
        assert_eq!(again, halfway);
    }

    #[test]
    fn of_two_pages_neither_overwrites_the_other_unasked() {
        let shelf = board(usize::MAX);
        let (one, _, _) = Keeper::open(shelf.clone());
        let (two, _, _) = Keeper::open(shelf.clone());
        assert_eq!(one.save(&weighing("80")), Kept::Yes);
        assert_eq!(two.save(&weighing("90")), Kept::Overtaken);
        assert_eq!(two.save(&weighing("91")), Kept::Overtaken);
        assert_eq!(Keeper::open(shelf.clone()).1, weighing("80"));

        let theirs = two.take_over();
        assert_eq!(theirs, Some(weighing("80")));
        assert_eq!(two.save(&weighing("81")), Kept::Yes);
        assert_eq!(one.save(&weighing("80")), Kept::Overtaken);
        assert_eq!(one.insist(&weighing("80")), Kept::Yes);
        assert_eq!(Keeper::open(shelf.clone()).1, weighing("80"));
        let aside = shelf.kept(ASIDE).expect("they were overruled, not lost");
        assert_eq!(from_saved(&aside), Ok(weighing("81")));
    }

    #[test]
    fn a_shelf_without_room_is_told_and_tried_again() {
        let (keeper, _, _) = Keeper::open(board(10));
        assert_eq!(keeper.save(&weighing("80")), Kept::No);
        let roomier = Keeper {
            shelf: board(usize::MAX),
            ..keeper
        };
        assert_eq!(roomier.save(&weighing("80")), Kept::Yes);
    }

    #[test]
    fn what_was_cleared_elsewhere_is_kept_again() {
        let shelf = board(usize::MAX);
        let (keeper, _, _) = Keeper::open(shelf.clone());
        assert_eq!(keeper.save(&weighing("80")), Kept::Yes);
        shelf.texts.borrow_mut().clear();
        assert_eq!(keeper.save(&weighing("80")), Kept::Yes);
        assert!(shelf.kept(ANSWERS).is_some());
    }

    #[test]
    fn what_cannot_be_read_is_put_aside_unchanged() {
        for (text, expected) in [
            ("nonsense", Found::Unreadable),
            (r#"{"version":9}"#, Found::Newer),
        ] {
            let shelf = board(usize::MAX);
            assert!(shelf.keep(ANSWERS, text));
            let (keeper, wizard, found) = Keeper::open(shelf.clone());
            assert_eq!((wizard, found), (Wizard::default(), expected));
            assert_eq!(keeper.save(&weighing("80")), Kept::Yes);
            assert_eq!(shelf.kept(ASIDE).as_deref(), Some(text));
        }
    }
}
