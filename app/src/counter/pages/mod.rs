//! The pages of the counter.

mod answer;
mod beside;
mod bring_in;
mod card;
mod card_table;
mod columns;
mod desk;
mod different;
mod filing;
mod forgetting;
mod heard;
mod job;
mod parts;
mod preview;
mod said_here;
mod settings;
mod settings_boxes;
mod settings_form;
mod work;

use yew::prelude::*;

use super::route::Place;
use answer::AnswerPage;
use beside::BesidePage;
use bring_in::BringInPage;
use card::CardPage;
use desk::DeskPage;
use filing::FilingPage;
use forgetting::{DeleteAllPage, DeletePage};
use heard::HeardPage;
use job::JobPage;
use settings::SettingsPage;
use work::WorkPage;

/// The page at a place. Pages of one kind about different jobs are different pages: nothing typed goes over.
pub fn page(place: &Place) -> Html {
    let key = place.fragment();
    match place.clone() {
        Place::Desk | Place::Unknown => html! { <DeskPage /> },
        Place::Settings => html! { <SettingsPage /> },
        Place::BringIn => html! { <BringInPage /> },
        Place::Filing => html! { <FilingPage /> },
        Place::Job(id) => html! { <JobPage {key} {id} /> },
        Place::Answer(id, page) => html! { <AnswerPage {key} {id} {page} /> },
        Place::Work(id, name) => html! { <WorkPage {key} {id} {name} /> },
        Place::Heard(id, name) => html! { <HeardPage {key} {id} {name} /> },
        Place::Card(id) => html! { <CardPage {key} {id} /> },
        Place::Beside(id, side) => html! { <BesidePage {key} {id} {side} /> },
        Place::Delete(id) => html! { <DeletePage {key} {id} /> },
        Place::DeleteAll => html! { <DeleteAllPage /> },
    }
}
