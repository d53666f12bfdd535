//! The history of lifts in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::{GrantStep, History, LiftOutcome, SessionDone};
use crate::gate::Outcome;
use crate::text::capital;
use crate::text::phrases::Phrases;
use crate::text::place::with_place;
use crate::text::words::Words;

pub(in crate::text) const HISTORY: Phrases = &[
    ("history.session", "{day}: {lift}, {load}: {outcome}."),
    ("history.no_load", "no work set"),
    ("history.scored", "{outcome}, {acceptable} of {scored} repetitions acceptable"),
    ("history.taken_back", "{outcome}, since what was told of its pain took the pass back"),
    ("history.step", "{day}: {lift} stands at {load}: {status}."),
];

impl Words<'_> {
    /// What was done and how the grant moved, in sentences: every session, then every step.
    #[must_use]
    pub fn history(&self, found: &History) -> Vec<String> {
        let sessions = found.sessions.iter();
        let mut said: Vec<String> = sessions
            .flat_map(|session| session.lifts.iter().map(|lift| self.lift_outcome(session, lift)))
            .collect();
        said.extend(found.steps.iter().map(|step| self.grant_step(step)));
        self.end(&mut said, (&found.stops, found.today), &found.missing, &found.cautions);
        said
    }

    /// What one lift of a session came to, as a sentence.
    #[must_use]
    pub fn lift_outcome(&self, session: &SessionDone, done: &LiftOutcome) -> String {
        let place = done.place.as_ref().map(|place| self.named_place(Some(&done.lift), place));
        let load = done.load.map(|load| self.load_of(&done.lift, load));
        let load = load.unwrap_or_else(|| self.say("history.no_load", &[]));
        let key = match done.outcome {
            Outcome::Pass => "outcome.pass",
            Outcome::Fail => "outcome.fail",
            Outcome::NotScored => "outcome.not_scored",
        };
        let outcome = ("outcome", self.say(key, &[]));
        let outcome = if done.taken_back {
            self.say("history.taken_back", &[outcome])
        } else if done.scored > 0 {
            let counts = [("acceptable", done.acceptable.to_string()), ("scored", done.scored.to_string())];
            let [acceptable, scored] = counts;
            self.say("history.scored", &[outcome, acceptable, scored])
        } else {
            outcome.1
        };
        let with = [
            ("day", self.day(session.day)),
            ("lift", capital(self.lift_name(&done.lift))),
            ("load", with_place(load, &place.unwrap_or_default())),
            ("outcome", outcome),
        ];
        self.say("history.session", &with)
    }

    /// Where a lift stood, as a sentence.
    #[must_use]
    pub fn grant_step(&self, step: &GrantStep) -> String {
        let place = self.named_place(Some(&step.lift), &step.place);
        let with = [
            ("day", self.day(step.day)),
            ("lift", capital(self.lift_name(&step.lift))),
            ("load", with_place(self.load_of(&step.lift, step.load), &place)),
            ("status", self.status(&step.status)),
        ];
        self.say("history.step", &with)
    }
}
