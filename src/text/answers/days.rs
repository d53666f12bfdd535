//! The day, the verdicts about past days, easy weeks and missed sessions, in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::{DayAnswer, EasyLift, EasyWeek, Missed, MissedLift, Verdicts};
use crate::condition::{ClassCalibration, DayClass, VerdictSkill, Vote};
use crate::dose::{EasyWeekStatus, MissedSession};
use crate::text::capital;
use crate::text::phrases::Phrases;
use crate::text::words::Words;

pub(in crate::text) const DAYS: Phrases = &[
    ("day.below", "A day below this lifter's usual: less load, fewer sets."),
    ("day.below_single", "One sign lies below the usual: go on, and look again after the first work set."),
    ("day.within", "A day within the usual: the planned work."),
    ("day.above", "A day above the usual: the planned load all the same."),
    ("day.unknown", "Too little to compare today with: the planned work, and no step up."),
    ("day.technique", "A critical point of technique dropped in the warm-up, which decides alone."),
    ("day.vote_below", "Below the usual: {marker}."),
    ("day.vote_above", "Above the usual: {marker}."),
    ("day.vote_short", "Too few days like today to compare: {marker}."),
    ("day.vote_open", "Not answered: {marker}."),
    ("day.false_alarm", "By these rules {agreeing} of ordinary days look like one below the usual."),
    ("verdicts.not_enough_sessions", "Too few days with a verdict to say how good the verdicts are."),
    ("verdicts.nothing_to_compare", "All days went the same way, so nothing can be said of the verdicts."),
    ("verdicts.no_better_than_chance", "The verdicts were no better than chance: do not steer by them."),
    ("verdicts.better_than_chance", "The verdicts were better than chance."),
    (
        "verdicts.counts",
        "Of {short} that fell short, {hits} were called; of {well} that went well, {alarms} were called.",
    ),
    ("verdicts.right", "{right} were right, {low} to {high} with 95 % confidence."),
    ("easy_week.not_yet", "The last easy week is {weeks} back: nothing to add."),
    ("easy_week.planned_absence_counts", "A break is noted in {weeks}, which does for an easy week."),
    ("easy_week.consider", "{weeks} without an easy one: it may be thought of. The coach decides."),
    ("easy_week.unknown", "A week is not written down, so nobody knows."),
    (
        "easy_week.practice",
        "Coaches report {days_low} to {days_high} days every {weeks_low} to {weeks_high} weeks, with fewer sets and more \
         in reserve.",
    ),
    ("easy_week.lift", "It would be {lift}: {sets} instead of {usual}, {load} x {reps}, leave {reserve}."),
    ("missed.session", "A session was missed on {day}: {reason}."),
    ("missed.by_habit", "The next session is taken to be on {day}, as usual."),
    ("missed.shift", "{lift}: as planned, on {day}."),
    ("missed.merge", "{lift}: as planned, within the session of {day}."),
    ("missed.drop", "{lift}: let it go and carry on."),
    ("missed.stopped", "{lift}: stopped, so nothing is made up."),
    ("missed.never", "Nothing is added to make up for it, neither load nor sets."),
];

impl Words<'_> {
    /// The day against the lifter's own days.
    #[must_use]
    pub fn day_answer(&self, day: &DayAnswer) -> Vec<String> {
        let mut said = Vec::new();
        if let Some(verdict) = &day.verdict {
            let key = match verdict.class {
                DayClass::Below => "day.below",
                DayClass::BelowSingle => "day.below_single",
                DayClass::Within => "day.within",
                DayClass::Above => "day.above",
                DayClass::Unknown => "day.unknown",
            };
            said.push(self.say(key, &[]));
            if verdict.technique_decided {
                said.push(self.say("day.technique", &[]));
            }
            for vote in &verdict.votes {
                let key = match vote.vote {
                    Vote::Below => "day.vote_below",
                    Vote::Above => "day.vote_above",
                    Vote::NotEnoughHistory => "day.vote_short",
                    Vote::NotAnswered => "day.vote_open",
                    Vote::Within => continue,
                };
                said.push(self.say(key, &[("marker", self.marker(vote.kind))]));
            }
            if verdict.usable > 0 {
                let agreeing = self.percent(verdict.false_alarms.agreeing);
                said.push(self.say("day.false_alarm", &[("agreeing", agreeing)]));
            }
        }
        self.end(&mut said, (&day.stops, day.today), &day.missing, &day.cautions);
        said
    }

    /// How often the verdicts about the day were right.
    #[must_use]
    pub fn verdicts(&self, verdicts: &Verdicts) -> Vec<String> {
        let mut said = Vec::new();
        if let Some(found) = &verdicts.calibration {
            let key = match found.skill {
                VerdictSkill::NotEnoughSessions => "verdicts.not_enough_sessions",
                VerdictSkill::NothingToCompare => "verdicts.nothing_to_compare",
                VerdictSkill::NoBetterThanChance => "verdicts.no_better_than_chance",
                VerdictSkill::BetterThanChance => "verdicts.better_than_chance",
            };
            said.push(self.say(key, &[]));
            said.extend(self.calibration(found));
        }
        self.end(&mut said, (&verdicts.stops, verdicts.today), &verdicts.missing, &verdicts.cautions);
        said
    }

    fn calibration(&self, found: &ClassCalibration) -> Vec<String> {
        let days = |count: u32| self.count("day", count);
        let with = [
            ("short", days(found.hits + found.misses)),
            ("hits", found.hits.to_string()),
            ("well", days(found.false_alarms + found.quiet)),
            ("alarms", found.false_alarms.to_string()),
        ];
        let mut said = alloc::vec![self.say("verdicts.counts", &with)];
        let total = found.hits + found.misses + found.false_alarms + found.quiet;
        said.extend(found.right.filter(|_| total > 0).map(|right| {
            let share = f64::from(found.hits + found.quiet) / f64::from(total);
            let with = [
                ("right", self.percent(share)),
                ("low", self.percent(right.low())),
                ("high", self.percent(right.high())),
            ];
            self.say("verdicts.right", &with)
        }));
        said
    }

    /// Whether an easy week is due, and what it would be.
    #[must_use]
    pub fn easy_week(&self, week: &EasyWeek) -> Vec<String> {
        let mut said = Vec::new();
        if let Some(status) = week.status {
            let weeks = |count: u16| [("weeks", self.count("week", u32::from(count)))];
            said.push(match status {
                EasyWeekStatus::NotYet { weeks_since } => self.say("easy_week.not_yet", &weeks(weeks_since)),
                EasyWeekStatus::PlannedAbsenceCounts { in_weeks } => {
                    self.say("easy_week.planned_absence_counts", &weeks(in_weeks))
                }
                EasyWeekStatus::Consider { weeks_since } => {
                    self.say("easy_week.consider", &weeks(weeks_since))
                }
                EasyWeekStatus::Unknown => self.say("easy_week.unknown", &[]),
            });
            let with = [
                ("days_low", week.practice.days_low.to_string()),
                ("days_high", week.practice.days_high.to_string()),
                ("weeks_low", week.practice.every_weeks_low.to_string()),
                ("weeks_high", week.practice.every_weeks_high.to_string()),
            ];
            said.push(self.say("easy_week.practice", &with));
            said.extend(week.would_be.iter().filter_map(|lift| self.easy_lift(lift)));
        }
        self.end(&mut said, (&week.stops, week.today), &week.missing, &week.cautions);
        said
    }

    fn easy_lift(&self, lift: &EasyLift) -> Option<String> {
        let with = [
            ("lift", self.lift_at(&lift.lift, lift.place)),
            ("sets", self.count("set", u32::from(lift.sets))),
            ("usual", lift.usual_sets.to_string()),
            ("load", self.one_by_one(&lift.lift, self.for_lift(&lift.lift).mass(lift.load?))),
            ("reps", lift.reps.to_string()),
            ("reserve", lift.reserve.to_string()),
        ];
        Some(self.say("easy_week.lift", &with))
    }

    /// What becomes of a missed session.
    #[must_use]
    pub fn missed(&self, missed: &Missed) -> Vec<String> {
        let mut said = Vec::new();
        if let Some((day, reason)) = missed.missed.zip(missed.reason.as_ref()) {
            let with = [("day", self.day(day)), ("reason", reason.as_str().to_string())];
            said.push(self.say("missed.session", &with));
            if let Some(next) = missed.next.as_ref().filter(|_| missed.by_habit) {
                said.push(self.say("missed.by_habit", &[("day", self.day(next.day))]));
            }
            said.extend(missed.lifts.iter().map(|lift| self.missed_lift(lift)));
            said.push(self.say("missed.never", &[]));
        }
        self.end(&mut said, (&missed.stops, missed.today), &missed.missing, &missed.cautions);
        said
    }

    fn missed_lift(&self, lift: &MissedLift) -> String {
        let named = ("lift", capital(self.lift_name(&lift.lift)));
        match lift.then {
            Some(MissedSession::ShiftTo(day)) => self.say("missed.shift", &[named, ("day", self.day(day))]),
            Some(MissedSession::MergeInto(day)) => self.say("missed.merge", &[named, ("day", self.day(day))]),
            Some(MissedSession::Drop) => self.say("missed.drop", &[named]),
            None => self.say("missed.stopped", &[named]),
        }
    }
}
