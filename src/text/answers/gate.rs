//! What a gate asks for, in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::gate::{Evidence, EvidenceRule, Requirement};
use crate::text::phrases::Phrases;
use crate::text::words::Words;

pub(in crate::text) const GATE: Phrases = &[
    (
        "gate.pass_run",
        "{sessions} in a row that pass, each on another day, with at least {acceptable} of {of} repetitions acceptable",
    ),
    (
        "gate.sequential",
        "enough acceptable repetitions, of {reps} at most, to tell a share of {good} from one of {poor}, with passes on \
         {days}",
    ),
    (
        "gate.posterior",
        "enough acceptable repetitions, of {reps} at most, that a share of {rate} is {level} likely, with passes on \
         {days}",
    ),
    ("gate.effort_cap", "effort said, and under its cap"),
    ("gate.no_open_block", "no block open"),
    ("gate.dwell_sessions", "{sessions} at this place"),
    ("gate.dwell_days", "{days} at this place"),
    ("gate.spacing", "{days} since the last step"),
    ("gate.sign_off", "the coach's sign-off"),
    ("gate.pair", "the other lift of the pair not stopped"),
    ("gate.region", "its regions not stopped, and clear since they last hurt"),
    ("gate.all", "{all}"),
    ("gate.any", "one of these: {any}"),
    ("gate.at_least", "{count} of these: {any}"),
    ("gate.nothing", "nothing more"),
];

/// Things one after the other.
pub(super) fn listed(things: impl Iterator<Item = String>) -> String {
    things.collect::<Vec<_>>().join("; ")
}

impl Words<'_> {
    /// What a gate asks for, as part of a sentence.
    #[must_use]
    pub fn requirement(&self, requirement: &Requirement) -> String {
        match requirement {
            Requirement::PassRun(run) => self.say(
                "gate.pass_run",
                &[
                    ("sessions", self.count("session", u32::from(run.sessions()))),
                    ("acceptable", run.acceptable().to_string()),
                    ("of", run.of().to_string()),
                ],
            ),
            Requirement::Evidence(test) => self.evidence_asked(test),
            Requirement::EffortCap => self.say("gate.effort_cap", &[]),
            Requirement::NoOpenBlock => self.say("gate.no_open_block", &[]),
            Requirement::DwellSessions(count) => {
                self.say("gate.dwell_sessions", &[("sessions", self.count("session", u32::from(*count)))])
            }
            Requirement::DwellDays(count) => {
                self.say("gate.dwell_days", &[("days", self.count("day", u32::from(*count)))])
            }
            Requirement::Spacing(count) => {
                self.say("gate.spacing", &[("days", self.count("day", u32::from(*count)))])
            }
            Requirement::SignOff => self.say("gate.sign_off", &[]),
            Requirement::Pair => self.say("gate.pair", &[]),
            Requirement::Region => self.say("gate.region", &[]),
            Requirement::All(of) if of.is_empty() => self.say("gate.nothing", &[]),
            Requirement::All(of) => self.say("gate.all", &[("all", self.each(of))]),
            Requirement::Any(of) => self.say("gate.any", &[("any", self.each(of))]),
            Requirement::AtLeast { count, of } => {
                self.say("gate.at_least", &[("count", count.to_string()), ("any", self.each(of))])
            }
        }
    }

    fn each(&self, of: &[Requirement]) -> String {
        listed(of.iter().map(|requirement| self.requirement(requirement)))
    }

    fn evidence_asked(&self, test: &Evidence) -> String {
        let mut with = alloc::vec![
            ("reps", test.most_reps().to_string()),
            ("days", self.count("day", u32::from(test.days()))),
        ];
        match *test.rule() {
            EvidenceRule::Sequential { poor, good, .. } => {
                with.extend([("poor", self.percent(poor)), ("good", self.percent(good))]);
                self.say("gate.sequential", &with)
            }
            EvidenceRule::Posterior { rate, level, .. } => {
                with.extend([("rate", self.percent(rate)), ("level", self.percent(level))]);
                self.say("gate.posterior", &with)
            }
        }
    }
}
