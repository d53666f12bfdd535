//! The fold over the log: lifts, states, guards, ladders. It decides the grant: the state of each lift, the
//! highest load allowed, and everything that stands in the way of a move.
//!
//! Uses every module above. A pure function of the log: no clock, no randomness; `today` is an argument.
//!
//! | the coach asks | the answer |
//! |---|---|
//! | Where does each lift stand after this log? | [`fold`] gives a [`State`] |
//! | And with one more event? | [`State::apply`] |
//! | What is granted today, what stands in the way, what would change it? | [`State::decide`] gives a [`Decision`] a lift |
//! | Keep it for tomorrow? | [`State::to_json`](State), back by `State::from_json_or_fold` |
//!
//! # The walk from an event to a decision
//!
//! `fold` puts events in order and hands each to the file of its kind: `session` (judged by `judge`; what follows is in
//! `result` and `step_back`), `morning`, `day_report`, `asks`, `pain`, `stop`, `clearance`, `away` (breaks and illnesses as
//! noted), `acts` (what a coach does), `change` (new parameters; lifts left out are `set_aside`), `unused` (out of use by a role). They change a state through
//! `lift`, `status`, `shared` and `region`, and where a rule has something of its own to note through that rule: `offer`,
//! `waiting`, `layoff`, `pair`, `probe`, `kinds`. `decision` then reads: `guard` lists what stands in the way of a move, `moves` where it would go, `layoff` what a break leaves, and
//! what light work leaves (`held`), `offer`
//! what the gate says, `pair`, `probe` and `waiting` the rest. Every rule is a function of one lift, of what concerns all
//! lifts, and of the day: a `View`.
//!
//! # Transitions
//!
#![doc = include_str!("../guide/transitions.md")]

mod acts;
mod asked;
mod asks;
mod away;
mod bounds;
mod change;
mod clearance;
mod day_report;
mod day_start;
mod decision;
mod digest;
#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::unwrap_used, clippy::unreachable, reason = "a test may panic")]
mod exploration;
mod fold;
mod foreseen;
mod guard;
mod held;
mod judge;
mod kinds;
mod layoff;
mod lift;
mod loadable;
mod morning;
mod moves;
mod offer;
mod pain;
mod pair;
mod possible;
mod probe;
mod region;
mod result;
mod retraction;
mod session;
mod set_aside;
mod setup;
mod shared;
mod sitting;
mod state;
mod status;
mod step_back;
mod stop;
mod stored;
#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::unwrap_used, reason = "a test may panic")]
mod transitions;
mod unused;
mod view;
mod waiting;

pub(crate) use asked::{Easing, RESERVE, RESERVE_ALONE, reserve_of_limit};
pub use asks::OpenAsk;
pub use decision::{Decision, MoveOutlook};
pub use fold::fold;
pub(crate) use fold::{When, fold_on, fold_told};
pub use guard::GUARD_NAMES;
pub use held::Held;
pub(crate) use layoff::{gap, let_go, returned, row_today};
#[cfg(feature = "rehearsal")]
pub(crate) use lift::Lift;
pub use lift::Now;
pub(crate) use loadable::{HEAVIEST, Loadable, lighter_beside};
#[cfg(feature = "rehearsal")]
pub(crate) use moves::next_grant;
pub(crate) use moves::one_load_back;
pub(crate) use pain::STEADY_SESSIONS;
pub use pain::{PainZone, pain_zone};
pub(crate) use pair::rest_missing;
pub use region::RegionState;
pub(crate) use retraction::OPEN_SESSIONS;
pub use setup::SetupSeen;
pub use shared::ClearanceInForce;
pub(crate) use shared::{FALL_DAYS, FALL_PART};
pub(crate) use sitting::SITTINGS;
pub use sitting::Sitting;
pub use state::{LiftState, State};
pub use status::{Calibration, OverrideInForce, Purpose, Status, Stop, WayBack};
pub(crate) use stop::HALF_SESSIONS;
pub use stored::{STATE_FORMAT, StoredState};
pub(crate) use view::View;
pub(crate) use waiting::offer_end;

pub(crate) static DECLARED: crate::source::Declarations = &[];
