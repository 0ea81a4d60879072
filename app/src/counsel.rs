//! Those who work the advice out, as every page that shows it sees them.

use yew::prelude::*;

use crate::advising::Adviser;
use crate::riding::Rider;

/// Who is asked. Both remember what they were asked last, whatever page is shown.
#[derive(Clone, Default, PartialEq)]
pub struct Counsel {
    /// The one who works the advice out.
    pub adviser: Adviser,
    /// The one who rides it out.
    pub rider: Rider,
}

/// The counsel. Only for components inside its provider.
#[hook]
pub fn use_counsel() -> Counsel {
    #[expect(
        clippy::expect_used,
        reason = "every page that shows advice is drawn inside its context provider"
    )]
    use_context::<Counsel>().expect("advice is shown with a counsel")
}
