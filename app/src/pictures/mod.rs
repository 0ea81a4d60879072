//! Pictures on canvas: they draw what the advice holds and compute nothing of the job.
//!
//! `chart` is what a picture holds, `ride_chart` makes two of them from a ride, `scene` puts the numbers into the
//! reader's units, `labels` finds room for words, `frame` lays the picture out, `plot` draws it on any plotters
//! backend, `backend` is that backend over a canvas, `palette`, `look` and `canvas` say in which colours and letters,
//! `watch` says when to draw again, `figure` is the component with its sentence and read-out, `table` is its numbers,
//! `poster` is the picture with all its words, and `save` hands both over as files.

mod backend;
mod canvas;
mod chart;
mod figure;
mod frame;
mod labels;
mod look;
mod palette;
mod plot;
mod poster;
mod ride_chart;
mod save;
mod scene;
mod table;
mod watch;

#[cfg(test)]
mod plot_test;

pub use backend::context_of;
pub use canvas::{device_pixels, look_of, room_of, set_dashes};
pub use chart::{Chart, Pen};
pub use figure::Figure;
pub use look::Look;
pub use palette::css_of;
pub use ride_chart::{before_key, ride_chart};
pub use table::scrolled;
pub use watch::{pixel_ratio, use_redraw_count};
