//! The fold over the log: tracks, states, guards, ladders. It decides the grant: the state of each lift, the
//! highest load allowed, and everything that stands in the way of a move.
//!
//! Uses every module above. A pure function of the log: no clock, no randomness; `today` is an argument.
//!
//! | the coach asks | the answer |
//! |---|---|
//! | Where does each lift stand after this log? | [`fold`] gives a [`State`] |
//! | And with one more event? | [`State::apply`] |
//! | What is granted today, what stands in the way, what would change it? | [`State::decide`] gives a [`Decision`] a lift |
//!
//! # Transitions
//!
#![doc = include_str!("../guide/transitions.md")]

mod clearance;
mod decision;
#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::unwrap_used, clippy::unreachable, reason = "a test may panic")]
mod exploration;
mod fold;
mod guard;
mod layoff;
mod loadable;
mod morning;
mod moves;
mod offer;
mod pain;
mod pair;
mod probe;
mod rename;
mod retraction;
mod session;
mod state;
mod status;
mod stored;
#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::unwrap_used, reason = "a test may panic")]
mod transitions;
mod waiting;

pub use decision::{Decision, MoveOutlook};
pub use fold::fold;
pub use guard::GUARD_NAMES;
pub use state::{ClearanceInForce, OverrideInForce, RegionState, Sitting, State, Stop, TrackState};
pub use status::Status;

// For the plan check, which climbs by the same rule.
#[cfg(feature = "rehearsal")]
pub(crate) use {loadable::Loadable, moves::next_tuple};

/// The load one step easier than this place, by the parameters in force.
pub(crate) fn one_step_back(from: crate::record::Tuple, at: usize, state: &State) -> crate::quantity::Mass {
    match state.parameters.as_deref() {
        Some(parameters) => moves::one_load_back(from, at, parameters, &state.loadable(at)),
        None => from.load,
    }
}

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
