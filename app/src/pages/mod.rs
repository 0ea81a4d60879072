//! One component per page.

mod advice;
mod answers;
mod check;
mod complaints;
mod detail;
mod frame;
mod groups;
mod how_to;
mod landing;
mod link;
mod numbers;
mod open;
mod question;
mod sheet;
mod signs;
mod start_again;
mod terms;

pub use advice::{AdvicePage, use_outcome};
pub use answers::{name, said};
pub use check::CheckPage;
pub use frame::{SUMMARY, heading, problem_list, trouble_list};
pub use how_to::HowTo;
pub use landing::LandingPage;
pub use link::LinkPage;
pub use open::OpenPage;
pub use question::{QuestionPage, answer_inputs};
pub use sheet::SheetPage;
pub use start_again::StartAgainPage;
