//! What a gate still misses.

use alloc::format;
use alloc::string::{String, ToString};

use super::day::day;
use super::words::Words;
use crate::gate::Missing;

impl Words<'_> {
    /// What a gate still misses, as part of a sentence.
    #[must_use]
    pub fn missing(&self, missing: &Missing) -> String {
        match missing {
            Missing::OpenBlock { name } => format!("a block is open: {}", self.region_name(name)),
            Missing::Pair { name } => format!("its partner: {}", self.lift_name(name)),
            Missing::Region { name } => format!("its region: {}", self.region_name(name)),
            _ => counted(missing),
        }
    }
}

fn counted(missing: &Missing) -> String {
    match missing {
        Missing::PassingSessions { have, need, weakest, .. } => {
            let watch = weakest.as_ref().map(|name| format!("; watch: {name}")).unwrap_or_default();
            format!("{have} of {need} passing sessions in a row{watch}")
        }
        Missing::Evidence { scored, misses, clean_reps } => {
            let more = clean_reps.map(|reps| format!("; {reps} clean in a row would do")).unwrap_or_default();
            format!("{misses} missed of {scored} repetitions so far{more}")
        }
        Missing::EvidenceAgainst { day: on, scored, misses } => {
            format!("{misses} missed of {scored} by {}: start again on something easier", day(*on))
        }
        Missing::PassingDays { have, need } => format!("{have} of {need} passing days"),
        Missing::LastSessionNotPassed { day: on } => format!("the session of {} did not pass", day(*on)),
        Missing::NextMorningAnswer { day: on } => format!("the answer of the morning after {}", day(*on)),
        Missing::EffortCap { recorded: true } => "effort was above its cap".to_string(),
        Missing::EffortCap { recorded: false } => "effort was not recorded".to_string(),
        Missing::DwellSessions { have, need } => format!("{have} of {need} sessions at this place"),
        Missing::DwellDays { have, need } => format!("{have} of {need} days at this place"),
        Missing::Spacing { have, need } => format!("{have} of {need} days since the last step"),
        Missing::SignOff => "the coach's sign-off".to_string(),
        Missing::Ways { have, need, of } => format!("{have} of {need} ways open, of {of}"),
        Missing::OpenBlock { .. } | Missing::Pair { .. } | Missing::Region { .. } => String::new(),
    }
}
