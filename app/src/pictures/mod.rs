//! Pictures on canvas: they draw what the advice holds and compute nothing of the job.
//!
//! `scene` puts the numbers into the reader's units, `labels` finds room for words, `frame` lays the picture
//! out, `force_plot` draws it on any plotters backend, `backend` is that backend over a canvas, `palette` and
//! `look` say in which colours and letters, `watch` says when to draw again, `force_figure` is the component
//! with its sentence, read-out and table.

mod backend;
mod force_figure;
mod force_plot;
mod frame;
mod labels;
mod look;
mod palette;
mod scene;
mod watch;

#[cfg(test)]
mod force_plot_test;

pub use force_figure::ForceFigure;
