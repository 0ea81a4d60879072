//! Pictures on canvas: they draw what the advice holds and compute nothing of the job.
//!
//! `chart` is what a picture holds, `ride_chart` makes two of them from a ride, `scene` puts the numbers into the
//! reader's units, `labels` finds room for words, `frame` lays the picture out, `plot` draws it on any plotters
//! backend, `backend` is that backend over a canvas, `palette` and `look` say in which colours and letters, `watch`
//! says when to draw again, `figure` is the component with its sentence, read-out and table.

mod backend;
mod chart;
mod figure;
mod frame;
mod labels;
mod look;
mod palette;
mod plot;
mod ride_chart;
mod scene;
mod watch;

#[cfg(test)]
mod plot_test;

pub use chart::Chart;
pub use figure::Figure;
pub use ride_chart::ride_chart;
