//! The classic scale-free prediction equations, one a file: one set to failure in, the maximum out.
//!
//! Uses `quantity`, `source`, `numeric` and the curve of this module.
//!
//! Left out on purpose: Tucker et al. 2006 (its unit could not be confirmed). Welday 1988 is Epley's curve.

pub(super) mod adams;
pub(super) mod berger;
pub(super) mod brown;
pub(super) mod brzycki;
pub(super) mod brzycki_decimal;
pub(super) mod cummings_finn;
pub(super) mod epley;
pub(super) mod lander;
pub(super) mod lombardi;
pub(super) mod mayhew;
pub(super) mod oconner;
pub(super) mod wathan;

pub use adams::{adams_1998, adams_1998_load, adams_1998_reps};
pub use berger::{berger_1961, berger_1961_load, berger_1961_reps};
pub use brown::{brown_1992, brown_1992_load, brown_1992_reps};
pub use brzycki::{brzycki_1993, brzycki_1993_load, brzycki_1993_reps};
pub use brzycki_decimal::{brzycki_1993_decimal, brzycki_1993_decimal_load, brzycki_1993_decimal_reps};
pub use cummings_finn::{cummings_finn_1998, cummings_finn_1998_load, cummings_finn_1998_reps};
pub use epley::{epley_1985, epley_1985_load, epley_1985_reps};
pub use lander::{lander_1985, lander_1985_load, lander_1985_reps};
pub use lombardi::{lombardi_1989, lombardi_1989_load, lombardi_1989_reps};
pub use mayhew::{mayhew_1992, mayhew_1992_load, mayhew_1992_reps};
pub use oconner::{oconner_1989, oconner_1989_load, oconner_1989_reps};
pub use wathan::{wathan_1994, wathan_1994_load, wathan_1994_reps};
