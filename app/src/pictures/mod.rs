//! Pictures on canvas: they draw what the advice holds and compute nothing of the job.
//!
//! `scene` puts the numbers into the reader's units, `labels` finds room for words, `force_plot` draws on any
//! plotters backend, `backend` is that backend over a canvas, `palette` reads the colours, `watch` says when
//! to draw again, `force_figure` is the component with its sentence, read-out and table.

mod backend;
mod force_figure;
mod force_plot;
mod labels;
mod palette;
mod scene;
mod watch;

pub use force_figure::ForceFigure;
