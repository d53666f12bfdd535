//! What a gate still misses.

use alloc::string::{String, ToString};

use super::phrases::Phrases;
use super::words::Words;
use crate::gate::Missing;

/// What a gate misses, by key: parts of sentences.
pub(super) const MISSING: Phrases = &[
    ("missing.passing_sessions", "{have} of {need} passing sessions in a row"),
    ("missing.passing_sessions_watch", "{have} of {need} passing sessions in a row; watch: {weakest}"),
    ("missing.evidence", "{misses} missed of {scored} repetitions so far"),
    (
        "missing.evidence_clean",
        "{misses} missed of {scored} repetitions so far; {clean} clean in a row would do",
    ),
    ("missing.evidence_against", "{misses} missed of {scored} by {day}: start again on something easier"),
    ("missing.passing_days", "{have} of {need} passing days"),
    ("missing.last_session_not_passed", "the session of {day} did not pass"),
    ("missing.next_morning_answer", "the answer of the morning after {day}"),
    ("missing.effort_cap", "effort was above its cap"),
    ("missing.effort_not_recorded", "effort was not recorded"),
    ("missing.open_block", "a block is open: {name}"),
    ("missing.dwell_sessions", "{have} of {need} sessions at this place"),
    ("missing.dwell_days", "{have} of {need} days at this place"),
    ("missing.spacing", "{have} of {need} days since the last step"),
    ("missing.sign_off", "the coach's sign-off"),
    ("missing.pair", "its partner: {name}"),
    ("missing.region", "its region: {name}"),
    ("missing.ways", "{have} of {need} ways open, of {of}"),
];

impl Words<'_> {
    /// What a gate still misses, as part of a sentence.
    #[must_use]
    pub fn missing(&self, missing: &Missing) -> String {
        let of = |key, have: u32, need: u32| {
            self.say(key, &[("have", have.to_string()), ("need", need.to_string())])
        };
        let on = |key, on| self.say(key, &[("day", self.day(on))]);
        let named = |key, name: &str| self.say(key, &[("name", name.to_string())]);
        match missing {
            Missing::PassingSessions { have, need, weakest: None, .. } => {
                of("missing.passing_sessions", *have, *need)
            }
            Missing::PassingSessions { have, need, weakest: Some(weakest), .. } => {
                let with = [
                    ("have", have.to_string()),
                    ("need", need.to_string()),
                    ("weakest", weakest.to_string()),
                ];
                self.say("missing.passing_sessions_watch", &with)
            }
            Missing::Evidence { scored, misses, clean_reps } => {
                let mut with = alloc::vec![("misses", misses.to_string()), ("scored", scored.to_string())];
                with.extend(clean_reps.map(|reps| ("clean", reps.to_string())));
                let key = if clean_reps.is_some() { "missing.evidence_clean" } else { "missing.evidence" };
                self.say(key, &with)
            }
            Missing::EvidenceAgainst { day: on, scored, misses } => {
                let with =
                    [("misses", misses.to_string()), ("scored", scored.to_string()), ("day", self.day(*on))];
                self.say("missing.evidence_against", &with)
            }
            Missing::PassingDays { have, need } => of("missing.passing_days", *have, *need),
            Missing::LastSessionNotPassed { day } => on("missing.last_session_not_passed", *day),
            Missing::NextMorningAnswer { day } => on("missing.next_morning_answer", *day),
            Missing::EffortCap { recorded: true } => self.say("missing.effort_cap", &[]),
            Missing::EffortCap { recorded: false } => self.say("missing.effort_not_recorded", &[]),
            Missing::OpenBlock { name } => named("missing.open_block", self.region_name(name)),
            Missing::DwellSessions { have, need } => of("missing.dwell_sessions", *have, *need),
            Missing::DwellDays { have, need } => of("missing.dwell_days", *have, *need),
            Missing::Spacing { have, need } => of("missing.spacing", *have, *need),
            Missing::SignOff => self.say("missing.sign_off", &[]),
            Missing::Pair { name } => named("missing.pair", self.lift_name(name)),
            Missing::Region { name } => named("missing.region", self.region_name(name)),
            Missing::Ways { have, need, of } => {
                let with = [("have", have.to_string()), ("need", need.to_string()), ("of", of.to_string())];
                self.say("missing.ways", &with)
            }
        }
    }
}
