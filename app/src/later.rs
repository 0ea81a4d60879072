//! What may come a moment after the rest of the page, so that no single task holds the page up for long.

use gloo::timers::callback::Timeout;
use yew::prelude::*;

/// What comes later.
#[derive(Debug, PartialEq, Properties)]
pub struct Props {
    /// It.
    pub children: Html,
}

/// Its children, drawn in a task of their own once the rest stands.
#[component]
pub fn Later(props: &Props) -> Html {
    let here = use_state_eq(|| false);
    {
        let set = here.setter();
        use_effect_with((), move |()| {
            let task = Timeout::new(0, move || set.set(true));
            // Leaving the page takes the task back.
            move || drop(task)
        });
    }
    if *here {
        props.children.clone()
    } else {
        Html::default()
    }
}
