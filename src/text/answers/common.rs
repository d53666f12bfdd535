//! What the answers of several doors say.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::Lacking;
use crate::caution::Caution;
use crate::condition::MarkerKind;
use crate::numeric;
use crate::quantity::{Day, Mass, Name};
use crate::reason::Reason;
use crate::text::phrases::Phrases;
use crate::text::stop::cautions_beside;
use crate::text::words::Words;

pub(in crate::text) const COMMON: Phrases = &[
    ("count.day.one", "1 day"),
    ("count.day.other", "{count} days"),
    ("count.rep.one", "1 repetition"),
    ("count.rep.other", "{count} repetitions"),
    ("count.session.one", "1 session"),
    ("count.session.other", "{count} sessions"),
    ("count.set.one", "1 set"),
    ("count.set.other", "{count} sets"),
    ("count.time.one", "once"),
    ("count.time.other", "{count} times"),
    ("count.week.one", "1 week"),
    ("count.week.other", "{count} weeks"),
    ("lacking.session", "No session is in the log."),
    ("lacking.session_of", "No session of {lift} is in the log."),
    ("lacking.body_mass", "No body mass is in the log."),
    ("lacking.session_rating", "Rating or minutes are missing for {sessions}."),
    ("lacking.weeks", "Nothing is written for {weeks}, so {weeks} count as not trained."),
    (
        "lacking.usable_set",
        "No set of {lift} can speak about strength: near enough to failure, its reserve told, technique marked.",
    ),
    (
        "lacking.sets_for_curve",
        "{lift} has {sets} that can speak; three of them, three repetitions to failure apart, are the least for an own curve.",
    ),
    ("lacking.day_answers", "Nothing was answered about today."),
    ("lacking.conditions", "Nobody said at which load this was read: {marker}."),
    ("lacking.day_class", "No training day has a class."),
    ("lacking.missed_session", "No missed session is noted within the last 7 days."),
    ("lacking.next_session", "Nobody said when the next session is planned."),
    ("lacking.plan", "Without a plan nothing is said of what it would be."),
    ("marker.warm_up_velocity", "bar speed of the warm-up set"),
    ("marker.warm_up_effort", "effort of the warm-up set"),
    ("marker.recovery", "recovery"),
    ("marker.sleep", "sleep"),
    ("marker.freshness", "freshness"),
    ("marker.soreness", "muscle soreness"),
    ("marker.stress", "stress"),
    ("marker.mood", "mood"),
    ("marker.jump_height", "jump height"),
    ("marker.warm_up_technique", "technique of the warm-up"),
    ("lacking.second_rater", "No set in the log was marked by two people."),
    ("lacking.parameters", "No lifts and no equipment are in the log."),
    ("lacking.clearance", "No clearance is in the log."),
    ("lacking.function_test", "No test of everyday function is in the log."),
    ("lacking.birthday", "The day of birth is not in the log."),
    ("lacking.pass_of", "No session of {lift} that passed is in the log."),
    ("lacking.block", "No block of weeks was begun in the log."),
];

impl Words<'_> {
    /// A count with its noun.
    pub(in crate::text) fn count(&self, noun: &str, count: u32) -> String {
        let form = if count == 1 { "one" } else { "other" };
        self.say(&alloc::format!("count.{noun}.{form}"), &[("count", count.to_string())])
    }

    /// A part in whole percent.
    pub(in crate::text) fn percent(&self, part: f64) -> String {
        alloc::format!("{} %", numeric::tidy(numeric::round(numeric::fabs(part) * 100.0)))
    }

    /// What is asked or measured before training.
    pub(in crate::text) fn marker(&self, marker: MarkerKind) -> String {
        let key = match marker {
            MarkerKind::WarmUpVelocity => "marker.warm_up_velocity",
            MarkerKind::WarmUpEffort => "marker.warm_up_effort",
            MarkerKind::Recovery => "marker.recovery",
            MarkerKind::Sleep => "marker.sleep",
            MarkerKind::Freshness => "marker.freshness",
            MarkerKind::Soreness => "marker.soreness",
            MarkerKind::Stress => "marker.stress",
            MarkerKind::Mood => "marker.mood",
            MarkerKind::JumpHeight => "marker.jump_height",
            MarkerKind::WarmUpTechnique => "marker.warm_up_technique",
        };
        self.say(key, &[])
    }

    /// An estimate in the unit, to a tenth of it.
    pub(in crate::text) fn about(&self, kilograms: f64) -> String {
        let per_unit = Mass::from_unit(1.0, self.unit()).map_or(1.0, Mass::kg);
        alloc::format!("{} {}", self.rounded(kilograms / per_unit, 1), self.unit().symbol())
    }

    /// A number to so many decimals.
    pub(in crate::text) fn rounded(&self, value: f64, decimals: u8) -> String {
        let scale = (0..decimals).fold(1.0, |scale, _| scale * 10.0);
        numeric::tidy(numeric::round(value * scale) / scale).to_string()
    }

    /// Ends an answer with what is missing and what to show beside it. What stops comes before everything else, and then
    /// nothing is said of good results.
    pub(in crate::text) fn end(
        &self,
        said: &mut Vec<String>,
        (stops, today): (&[Reason], Day),
        missing: &[Lacking],
        cautions: &[Caution],
    ) {
        let first = self.stops_of("", stops, cautions, Some(today));
        self.end_below(first, said, missing, cautions);
    }

    /// The same below what stops, in words.
    pub(in crate::text) fn end_below(
        &self,
        first: Vec<String>,
        said: &mut Vec<String>,
        missing: &[Lacking],
        cautions: &[Caution],
    ) {
        let stopped = !first.is_empty();
        said.splice(0..0, first);
        said.extend(missing.iter().map(|lacking| self.lacking(lacking)));
        said.extend(cautions_beside(cautions, stopped).map(|caution| self.caution(caution)));
    }

    /// What the log does not hold, as a sentence.
    #[must_use]
    pub fn lacking(&self, lacking: &Lacking) -> String {
        let lift = |key, lift: &Name| self.say(key, &[("lift", self.lift_name(lift).to_string())]);
        match lacking {
            Lacking::Session => self.say("lacking.session", &[]),
            Lacking::SessionOf(id) => lift("lacking.session_of", id),
            Lacking::BodyMass => self.say("lacking.body_mass", &[]),
            Lacking::SessionRating { sessions } => {
                self.say("lacking.session_rating", &[("sessions", self.count("session", *sessions))])
            }
            Lacking::Weeks { weeks } => self.say("lacking.weeks", &[("weeks", self.count("week", *weeks))]),
            Lacking::UsableSet(lift) => {
                self.say("lacking.usable_set", &[("lift", self.lift_name(lift).to_string())])
            }
            Lacking::SetsForCurve { lift, usable } => self.say(
                "lacking.sets_for_curve",
                &[("lift", crate::text::capital(self.lift_name(lift))), ("sets", self.count("set", *usable))],
            ),
            Lacking::DayAnswers => self.say("lacking.day_answers", &[]),
            Lacking::Conditions(marker) => {
                self.say("lacking.conditions", &[("marker", self.marker(*marker))])
            }
            Lacking::DayClass => self.say("lacking.day_class", &[]),
            Lacking::MissedSession => self.say("lacking.missed_session", &[]),
            Lacking::NextSession => self.say("lacking.next_session", &[]),
            Lacking::Plan => self.say("lacking.plan", &[]),
            Lacking::SecondRater => self.say("lacking.second_rater", &[]),
            Lacking::Parameters => self.say("lacking.parameters", &[]),
            Lacking::Clearance => self.say("lacking.clearance", &[]),
            Lacking::FunctionTest => self.say("lacking.function_test", &[]),
            Lacking::Birthday => self.say("lacking.birthday", &[]),
            Lacking::PassOf(id) => lift("lacking.pass_of", id),
            Lacking::Block => self.say("lacking.block", &[]),
        }
    }
}
