//! Turns a grant and the day into sets, only ever downward, and rounds.
//!
//! Uses every module above. The order is fixed: stops, clearance, layoff, gate, the day, effort, caps, rounding
//! down, caps once more. Nothing here can raise the load above what was granted.
//!
//! | the coach asks | the answer |
//! |---|---|
//! | What does this lifter do today? | [`next_session`], or [`next_session_from`] a kept state: a [`LiftToday`] a lift |
//! | First day: which lifts, which bar, which rung, what load? | [`first_lifts()`], [`first_bars`], [`first_rung`], [`first_load`]; a log that begins so: [`begin`] |
//! | Which limits concern a lift that is not planned, or not begun? | [`limits_for`], [`first_bars_of`] |
//! | Another bar, other discs? | [`other_bars`], [`with_bar`], [`with_kit`] |
//! | A longer range: what load? | [`longer_range`]; under limits [`longer_range_of`] |
//! | Sore, short of kit: what instead? | [`sideways`] |
//! | That set is done: what load for the next? | [`next_set_by_curve`], [`next_set_fixed`], [`back_off_load`] |
//! | Stop here? | [`technique_stop`], [`stop_at_target_effort`] |
//! | By a published rule for the step? | [`acsm_2009_step`], [`two_for_two`], [`knight_1979`], [`double_progression`] |

mod change;
mod draft;
mod ease;
mod equipment;
mod first_day;
mod first_lifts;
mod lift;
mod longer_range;
mod mind;
mod next;
mod right_bar;
mod rules;
mod set_to_set;
mod stage;
mod time;
mod warm_up;
mod way_back;

pub use change::Change;
pub(crate) use equipment::Equipment;
pub use first_day::{first_load, first_rung, sideways};
pub use first_lifts::{begin, first_lift, first_lifts, first_settings};
pub use lift::{LiftToday, Verdict};
pub use longer_range::{LongerRange, longer_range, longer_range_of};
pub use next::{SessionPlan, next_session, next_session_from};
pub use right_bar::{BarOffer, first_bars, first_bars_of, limits_for, other_bars, with_bar, with_kit};
pub use rules::{
    NextStep, StepRange, TechniqueStop, acsm_2009_step, double_progression, knight_1979, technique_stop,
    two_for_two,
};
pub(crate) use set_to_set::next_set_by_own_curve;
pub use set_to_set::{
    LARGEST_ADJUSTMENT, PART_PER_POINT, back_off_load, next_set_by_curve, next_set_fixed,
    stop_at_target_effort,
};
pub use warm_up::WarmUpSet;

pub(crate) static DECLARED: crate::source::Declarations =
    &[set_to_set::DECLARED, rules::DECLARED, first_day::DECLARED];
