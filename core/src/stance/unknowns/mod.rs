//! How far an answer could be off because not everything is known.
//!
//! **The method.** Everything that an answer rests on and that is not known exactly is an [`Input`] with a distribution: a
//! normal one about the likeliest value for what is measured or typical, even chances over the kinds for a choice nobody
//! made. [`draws`] takes a few dozen bikes and riders from all of them at once, spread evenly by a scrambled Sobol
//! sequence, and every number is worked out for each of them, so that numbers which move together do so in their ranges
//! too. A [`Range`] holds four of five draws: from the 10th to the 90th percentile. The number itself stays that of the
//! likeliest bike and rider, not the middle of the draws.
//!
//! Sampling by a scrambled net: A. B. Owen, *SIAM Journal on Numerical Analysis* 34 (1997) 1884–1910 (from memory).
//! Percentiles put the i-th of n values at (i − ½)/n: R. J. Hyndman and Y. Fan, *The American Statistician* 50 (1996)
//! 361–365, their fifth definition (from memory).
//!
//! **What it comes from.** Each input is put to a few of its values with all others at their likeliest ([`around`]); the
//! variance that makes, as a share of the sum over all inputs, is what the input adds to the range ([`shares`]). Where the
//! inputs act independently, as they nearly do here, that is the first-order index of I. M. Sobol, *Mathematics and
//! Computers in Simulation* 55 (2001) 271–280 (from memory). The draws themselves could tell it, but a hundred of them blur
//! it by several hundredths.
//!
//! **Limits.** The inputs are independent, which riders are not: heavy riders buy heavy bikes. With [`DRAWS`] draws an end
//! of a range is good to about a thirtieth of its width, at worst to an eighth. Kinds of fork and shock that were not told
//! stay those of the class, since most of the card depends on them. Measured sags do not narrow anything: they speak on the
//! causes. Today's air does not enter, since a fork filled where it is ridden does not feel it, and neither do hours since
//! service, which widen the band in which friction lets a sag stop but leave its middle. How well the model itself fits a
//! bike is in none of it.

mod draws;
mod input;
mod kinds;
mod moves;
mod range;

pub use draws::{DRAWS, Draw, SEED, around, draws};
pub use input::{FOUR_IN_FIVE, Input, Spread};
pub use moves::{Move, moves};
pub use range::{Alone, Range, Ranged, Share, ranged, shares};
