//! The arithmetic at the rack: bars, discs, exact loads, heights, warm-up steps, a shared bar.
//!
//! Uses `error`, `numeric`, `source`, `quantity`, `caution`, `reason`. Everything here is exact: masses are
//! whole nanograms, the search never guesses, and every loop has a stated bound.
//!
//! | question at the rack | function |
//! |---|---|
//! | What goes on each side? | [`load()`], [`load_on`], or [`Prepared`] for many questions about one stock |
//! | What is the next load up? | [`step_up`] |
//! | What can this gym make, and where is the largest gap? | [`reachable()`] |

mod bar;
mod change;
mod disc;
mod implement;
mod loaded;
mod prepared;
mod shared;
mod solve;
mod stacks;
mod table;
mod warming;

pub use bar::{Bar, BarKind};
pub use change::{Change, load_from};
pub use disc::{Disc, Stock};
pub use implement::{Handle, Implement, MachineStack, Pieces, Pin};
pub use loaded::{Loaded, PlacedDisc, Policy, Setting};
pub use prepared::Prepared;
pub use shared::{SharedBar, SharedLifter, SharedSet, Turn, shared_bar};
pub use solve::{Gap, Reachable, load, load_on, reachable, step_up};
pub use stacks::EndMoves;
pub use warming::{WarmUp, WarmUpSet, WarmUpStep, warm_up, warm_up_steps};

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[solve::ROWS, change::ROWS, warming::ROWS, shared::ROWS];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] =
    &[solve::ENTRIES, change::ENTRIES, warming::ENTRIES, shared::ENTRIES];
