//! A session in one line a lift.

use alloc::format;
use alloc::string::{String, ToString};

use super::{change, mass, reason};
use crate::prescription::{LiftToday, Verdict};
use crate::progression::MoveOutlook;

/// A verdict in a word or two.
#[must_use]
pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Train => "train",
        Verdict::EaseOff => "ease off",
        Verdict::TechniqueOnly => "technique only",
        Verdict::Rest => "rest",
        Verdict::Stop => "stop",
    }
}

/// Sets, repetitions and reserve: `3 x 5, leave 3`.
#[must_use]
pub fn effort(lift: &LiftToday) -> String {
    format!("{} x {}, leave {}", lift.sets, lift.reps, lift.reserve)
}

/// The whole answer for a lift: verdict, load, sets.
#[must_use]
pub fn lift_line(lift: &LiftToday) -> String {
    match (lift.verdict, lift.load) {
        (Verdict::Stop | Verdict::Rest, _) => format!("{}: {}", lift.lift, verdict(lift.verdict)),
        (_, Some(load)) => {
            format!("{}: {}, {}, {}", lift.lift, verdict(lift.verdict), mass(load), effort(lift))
        }
        (_, None) => format!("{}: {}, no load, {}", lift.lift, verdict(lift.verdict), effort(lift)),
    }
}

/// "Why not today?" in one line: every reason against a step up, or that one is on offer.
#[must_use]
pub fn one_line(lift: &LiftToday) -> String {
    match &lift.outlook {
        MoveOutlook::OnOffer { to } => {
            format!("A step to {} is on offer; staying is as good.", mass(to.load()))
        }
        MoveOutlook::Blocked { by, .. } => {
            let reasons: String = by.iter().map(|each| format!("{} ", reason(each))).collect();
            let changes: alloc::vec::Vec<String> = lift.would_change.iter().map(change).collect();
            format!("{}What would change it: {}.", reasons, changes.join("; ")).trim().to_string()
        }
    }
}
