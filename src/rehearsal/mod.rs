//! Checks a plan before anyone lifts, and plays it through with a seeded lifter.
//!
//! Uses every module above.
//!
//! | the coach asks | the answer |
//! |---|---|
//! | What is wrong with this plan before anyone lifts? | [`check()`], [`check_week`], [`check_clearance`] |
//! | A lifter of this skill under these rules: how long, how often held, how often back? | [`simulate`] |

mod advancing;
mod check;
mod clearance;
mod finding;
mod gates;
mod heights;
mod ladder;
mod lifter;
mod outcome;
mod planned;
mod play;
mod session;
mod skill;
mod week;

pub use check::{check, check_plan};
pub use clearance::check_clearance;
pub use finding::{Finding, Found, Severity};
pub use gates::{HIGH_SKILL, LONG_GATE, LOW_SKILL};
pub use outcome::{Centiles, LiftRehearsal, Rehearsal, Shares};
pub use play::{MOST_LIFTER_WEEKS, simulate};
pub use skill::{LiftSkill, Milestone, SkillModel};
pub use week::{TrainingDay, check_week};

pub(crate) static DECLARED: crate::source::Declarations =
    &[check::DECLARED, clearance::DECLARED, gates::DECLARED, play::DECLARED, week::DECLARED];
