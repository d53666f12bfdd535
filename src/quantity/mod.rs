//! Validated values: what a coach reads off the bar, the page or the lifter.
//!
//! Uses `error` and `numeric`. Every type checks at construction, so that functions which take it need not.
//!
//! | type | meaning | unit, exactness |
//! |---|---|---|
//! | [`Mass`] | a mass on a bar | whole nanograms, kg and lb in and out |
//! | [`Kilograms`] | a calculated mass, such as an estimate | kg, `f64` |
//! | [`Name`] | a short name chosen by the host | 1 to 40 characters |
//! | [`Length`] | a height or thickness | whole micrometres |
//! | [`Day`] | a calendar day in the lifter's own calendar | civil day number |
//! | [`Reps`] | repetitions | whole or half |
//! | [`Rir`], [`Rpe`], [`Reserve`] | effort | half steps |
//! | [`Fraction`] | part of the one-repetition maximum | `f64` |
//! | [`Pain`] | pain from 0 to 10 | whole |
//! | [`Tempo`] | seconds down, held and up | whole |
//! | [`Interval`] | a lower and an upper end with a level | `f64` |

mod day;
mod decimal;
mod effort;
mod interval;
mod kilograms;
mod length;
mod mass;
mod name;
mod pound;
mod rounding;
mod scalar;
mod tempo;

pub use day::Day;
pub(crate) use decimal::decimal;
pub use effort::{Reserve, Rir, Rpe};
pub use interval::Interval;
pub use kilograms::Kilograms;
pub use length::Length;
/// A mass as it is written on a disc: in either unit.
#[cfg(feature = "schema")]
pub(crate) use mass::wire::Wire as Face;
pub use mass::{Mass, Unit};
pub use name::Name;
pub use pound::{POUND, mass_in_pounds};
pub use scalar::{Fraction, Pain, Reps};
pub use tempo::Tempo;

pub(crate) static DECLARED: crate::source::Declarations = &[pound::DECLARED];
