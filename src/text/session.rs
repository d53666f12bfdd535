//! One lift of a session in single lines.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::phrases::{Phrases, english_in};
use super::stop::is_stop;
use super::words::Words;
use crate::condition::DayClass;
use crate::loading::Implement;
use crate::prescription::{LiftToday, Verdict};
use crate::progression::{MoveOutlook, Status};
use crate::quantity::{Mass, Name};
use crate::reason::Reason;

/// Verdicts, states of a lift and classes of a day, by key.
pub(super) const COURSE: Phrases = &[
    ("verdict.train", "train"),
    ("verdict.ease_off", "ease off"),
    ("verdict.technique_only", "technique only"),
    ("verdict.rest", "rest"),
    ("verdict.stop", "stop"),
    ("status.learning", "learning"),
    ("status.holding", "holding"),
    ("status.ready_to_advance", "a step is earned"),
    ("status.consolidating", "settling in after a step"),
    ("status.stepping_back", "one step easier, to look again"),
    ("status.resting", "resting"),
    ("status.returning", "coming back"),
    ("status.maintaining", "kept where it is"),
    ("status.stopped_refer", "stopped, see a clinician"),
    ("status.retired", "no longer used"),
    ("day_class.below", "a day below the usual"),
    ("day_class.below_single", "a day with one sign below the usual"),
    ("day_class.within", "a day within the usual"),
    ("day_class.above", "a day above the usual"),
    ("day_class.unknown", "a day that nobody compared with the usual"),
];

/// The line of a lift, and the one verdict about a step, by key.
pub(super) const LINES: Phrases = &[
    ("line.lift", "{lift}: {verdict}, {load}, {effort}"),
    ("line.rest", "{lift}: {verdict}"),
    ("line.effort", "{sets} x {reps}, leave {reserve}"),
    ("line.no_load", "no load"),
    ("line.each", "{load} each"),
    ("line.day", "{day}, {class}"),
    ("line.gate", "gate: {missing}"),
    ("step.none", "No step today."),
    ("step.on_offer", "A step to {to} is on offer; staying is as good."),
    ("step.on_offer_until", "A step to {to} is on offer until {day}; staying is as good."),
    // Beside a stop of other lifts nothing is called good.
    ("step.on_offer_beside_a_stop", "A step to {to} is on offer; it may be left."),
    ("step.on_offer_until_beside_a_stop", "A step to {to} is on offer until {day}; it may be left."),
];

/// A verdict in a word or two.
#[must_use]
pub fn verdict(verdict: Verdict) -> &'static str {
    english_of("verdict.", verdict.as_str())
}

/// Where a lift stands in its course, in a few words.
#[must_use]
pub fn status(status: &Status) -> &'static str {
    english_of("status.", status.as_str())
}

/// The class of a day against the lifter's own.
#[must_use]
pub fn day_class(class: DayClass) -> &'static str {
    english_of("day_class.", class.as_str())
}

/// The English of a key in two parts.
fn english_of(kind: &str, name: &str) -> &'static str {
    english_in(COURSE, &format!("{kind}{name}"))
}

/// Sets, repetitions and reserve: `3 x 5, leave 3`.
#[must_use]
pub fn effort(lift: &LiftToday) -> String {
    Words::plain().effort(lift)
}

/// The status as it is told beside what is said of a step: where none is for today, none is called earned, and the lift holds.
pub(super) const fn status_beside<'s>(status: &'s Status, outlook: &MoveOutlook) -> &'s Status {
    match outlook {
        MoveOutlook::Blocked { .. } if status.is_ready() => &Status::Holding,
        _ => status,
    }
}

impl Words<'_> {
    /// A verdict in a word or two.
    #[must_use]
    pub fn verdict(&self, verdict: Verdict) -> String {
        self.say(&format!("verdict.{}", verdict.as_str()), &[])
    }

    /// Where a lift stands in its course, in a few words.
    #[must_use]
    pub fn status(&self, status: &Status) -> String {
        self.say(&format!("status.{}", status.as_str()), &[])
    }

    /// The class of a day against the lifter's own.
    #[must_use]
    pub fn day_class(&self, class: DayClass) -> String {
        self.say(&format!("day_class.{}", class.as_str()), &[])
    }

    /// The whole answer for a lift in one line: name, place, verdict, load, sets. A stop says why, and what to do now.
    #[must_use]
    pub fn lift_line(&self, lift: &LiftToday) -> String {
        let name = ("lift", self.lift_name(&lift.lift).to_string());
        let verdict = ("verdict", self.verdict(lift.verdict));
        match (lift.verdict, self.stop(lift)) {
            (Verdict::Stop, Some(stop)) if !stop.is_empty() => self.say("stop.line", &[("stop", stop), name]),
            (Verdict::Stop, _) => self.say("stop.line_alone", &[name]),
            (Verdict::Rest, _) => self.say("line.rest", &[name, verdict]),
            _ => {
                let at = ("lift", self.lift_at(&lift.lift, lift.place));
                let load = ("load", self.work_load(lift));
                self.say("line.lift", &[at, verdict, load, ("effort", self.effort(lift))])
            }
        }
    }

    /// Sets, repetitions and reserve: `3 x 5, leave 3`.
    #[must_use]
    pub fn effort(&self, lift: &LiftToday) -> String {
        let with = [
            ("sets", lift.sets.to_string()),
            ("reps", lift.reps.to_string()),
            ("reserve", lift.reserve.to_string()),
        ];
        self.say("line.effort", &with)
    }

    /// Today's load as it is lifted: dumbbells count one by one.
    fn work_load(&self, lift: &LiftToday) -> String {
        let Some(load) = lift.load.filter(|load| *load != Mass::ZERO) else {
            return self.say("line.no_load", &[]);
        };
        self.load_of(&lift.lift, load)
    }

    /// A load of that lift: dumbbells count one by one.
    pub(super) fn one_by_one(&self, lift: &Name, said: String) -> String {
        let implement = self.lift(lift).and_then(|set| self.parameters()?.implement(&set.implement));
        match implement {
            Some(Implement::Handle(_) | Implement::Pieces(_)) => self.say("line.each", &[("load", said)]),
            _ => said,
        }
    }

    /// "Why not today?" in one line: that a step is on offer, or everything against one and what it needs. A stop says
    /// only why, and what to do now.
    #[must_use]
    pub fn one_line(&self, lift: &LiftToday) -> String {
        if lift.verdict == Verdict::Stop {
            return self.lift_line(lift);
        }
        let mut said = alloc::vec![self.step(lift)];
        if let MoveOutlook::Blocked { by, .. } = &lift.outlook {
            said.extend(by.iter().map(|reason| self.reason_for(lift, reason)));
            said.extend(self.changes(lift));
        }
        said.join(" ")
    }

    /// The one verdict about a step.
    #[must_use]
    pub fn step(&self, lift: &LiftToday) -> String {
        self.step_beside(lift, false)
    }

    /// The same; beside a stop of other lifts nothing is called good.
    pub(super) fn step_beside(&self, lift: &LiftToday, stopped: bool) -> String {
        match &lift.outlook {
            MoveOutlook::OnOffer { to } if lift.verdict < Verdict::Rest => {
                let until = lift.reasons.iter().find_map(|reason| match reason {
                    Reason::MoveOnOffer { until } => Some(self.day(*until)),
                    _ => None,
                });
                let key = match (until.is_some(), stopped) {
                    (false, false) => "step.on_offer",
                    (true, false) => "step.on_offer_until",
                    (false, true) => "step.on_offer_beside_a_stop",
                    (true, true) => "step.on_offer_until_beside_a_stop",
                };
                let to = ("to", self.step_to(lift, *to));
                self.say(key, &[to, ("day", until.unwrap_or_default())])
            }
            _ => self.say("step.none", &[]),
        }
    }

    /// The reasons of a lift that its other lines do not tell already. Beside its own stop, nothing is said of work.
    pub(super) fn why(&self, lift: &LiftToday, stopped: bool) -> Vec<String> {
        let halted = lift.verdict == Verdict::Stop;
        let tells = |reason: &&Reason| match reason {
            Reason::MoveOnOffer { .. } => false,
            Reason::Holding { .. } | Reason::DayAbove => !stopped,
            _ => !is_stop(reason) && (!halted || holds_beside_a_stop(reason)),
        };
        lift.reasons.iter().filter(tells).map(|reason| self.reason_for(lift, reason)).collect()
    }
}

/// What a coach must know of a lift that is stopped: clearances, and pain that stays.
const fn holds_beside_a_stop(reason: &Reason) -> bool {
    matches!(
        reason,
        Reason::NotCleared
            | Reason::ClearanceMissing
            | Reason::ClearanceExpired { .. }
            | Reason::NoLoadedFlexion
            | Reason::PainPersists { .. }
            | Reason::UsualPainReview { .. }
            | Reason::UnknownEventPresent { .. }
            | Reason::SignOffRefused { .. }
            | Reason::MoveRefused { .. }
            | Reason::OverrideRefused { .. }
            | Reason::OverridePast { .. }
    )
}
