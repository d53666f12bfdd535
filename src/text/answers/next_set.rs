//! What comes after a set, in words.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::{NextSet, SetReason, SetWork, Then};
use crate::quantity::{Kilograms, Name};
use crate::record::{Place, SetRule};
use crate::text::capital;
use crate::text::phrases::Phrases;
use crate::text::place::{behind, with_place};
use crate::text::words::Words;

pub(in crate::text) const NEXT_SET: Phrases = &[
    ("next_set.begin", "{lift}, set {set} of {sets}: {load} x {reps}, leave {reserve}."),
    ("next_set.same", "{lift}, set {set} of {sets}: the same, {load} x {reps}, leave {reserve}."),
    ("next_set.down_to", "{lift}, set {set} of {sets}: down to {load} x {reps}, leave {reserve}."),
    (
        "next_set.up_to",
        "{lift}, set {set} of {sets}: up to {load} x {reps} is within today's load; leave {reserve}.",
    ),
    (
        "next_set.easier_rung",
        "{lift}, set {set} of {sets}: the easier rung, {rung}, {load} x {reps}, leave {reserve}.",
    ),
    ("next_set.stop", "{lift}: no more sets today."),
    ("next_set.instead", "To practise instead, with little or no load: {rung}."),
    ("next_set.instead_own", "To practise instead, with little or no load: the easier rung, {rung}."),
    ("next_set.own_rung", "{lift} itself"),
    ("set_reason.not_today", "Today's answer for this lift is to leave it."),
    ("set_reason.first_set", "The first set of today."),
    ("set_reason.pain_stops", "Pain of {score} in the {region}: the lift ends."),
    (
        "set_reason.pain_eases",
        "Pain of {score} in the {region}: one step less, and lower until {calm} or less, else stop this lift.",
    ),
    (
        "set_reason.pain_eases_low",
        "Pain of {score} in the {region}: one step less, and if it goes above {calm}, stop this lift.",
    ),
    ("set_reason.pain_eases_no_more", "Pain of {score} in the {region}: nothing more of this lift today."),
    ("set_reason.pain_holds", "Pain of {score} in the {region}, as known from before: nothing goes up."),
    ("set_reason.pain_not_asked", "Nobody asked about pain after the set: nothing goes up."),
    ("set_reason.critical_fault", "A critical point was lost: {criterion}."),
    ("set_reason.repetition_missed", "A repetition was missed."),
    ("set_reason.two_faults", "That is the second such set today: end on a clean repetition."),
    ("set_reason.not_marked", "Nobody marked technique of the last set: nothing goes up."),
    ("set_reason.all_sets_done", "All {sets} are done."),
    ("set_reason.effort_not_said", "Nobody said how hard the last set was."),
    ("set_reason.effort_says_nothing", "How hard the last set was is told too loosely to reckon with."),
    ("set_reason.as_asked", "The last set left as much as asked."),
    (
        "set_reason.by_effort",
        "The last set left {left}, and {asked} were asked for: by a published relation that is {part}.",
    ),
    (
        "set_reason.by_effort_of",
        "The last set left {left}, and {asked} were asked for: by a published relation that is {part} ({source}).",
    ),
    (
        "set_reason.by_plan",
        "The last set left {left}, and {asked} were asked for: by what the plan sets for each point that is {part}.",
    ),
    (
        "set_reason.by_own_curve",
        "The last set left {left}, and {asked} were asked for: by the lifter's own curve that is {part}.",
    ),
    ("relation.by_curve", "Epley 1985"),
    ("relation.by_point", "Helms 2018"),
    ("part.less", "{part} less"),
    ("part.more", "{part} more"),
    ("set_reason.below_reserve", "The last set left {left}; today {least} is the least."),
    ("set_reason.by_technique", "Only technique, pain and missed repetitions change the load here."),
    ("set_reason.below_range", "A set ended below {bottom} repetitions."),
    ("set_reason.within_range", "More repetitions come first, up to {top}."),
    (
        "set_reason.top_of_range",
        "{top} repetitions in every set. Whether the load moves is for the gate to say, not for this session.",
    ),
    ("set_reason.by_table", "By the table of repetitions: between {least} and {most}."),
    ("set_reason.rating_reached", "A rating of {rating} is reached, which ends the lift."),
    ("set_reason.rating_not_reached", "A rating of {rating} ends the lift; it is not reached."),
    ("set_reason.back_off", "The first set is done; the others are {part} lighter."),
    ("set_reason.limited", "Nothing goes above today's load, {load}."),
    ("set_reason.nothing_lighter", "Nothing lighter can be loaded within one step."),
];

impl Words<'_> {
    /// Why the next set is what it is, as a sentence.
    #[must_use]
    pub fn set_reason(&self, reason: &SetReason) -> String {
        self.set_reason_at(reason, "", None)
    }

    /// The same; a load of the lift with its place, and nothing that the answer contradicts.
    fn set_reason_at(&self, reason: &SetReason, place: &str, next: Option<&NextSet>) -> String {
        let mut key = reason.code();
        let with = match reason {
            SetReason::PainStops { region, score } | SetReason::PainHolds { region, score } => alloc::vec![
                ("region", self.region_name(region).to_string()),
                ("score", score.score().to_string()),
            ],
            SetReason::PainEases { region, score } => {
                // Of a lift that is over nothing is lowered, and what is that low already is not lowered further.
                if next.is_some_and(|next| next.then == Then::Stop) {
                    key = "pain_eases_no_more";
                } else if score.score() <= self.calm() {
                    key = "pain_eases_low";
                }
                alloc::vec![
                    ("region", self.region_name(region).to_string()),
                    ("score", score.score().to_string()),
                    ("calm", self.calm().to_string()),
                ]
            }
            SetReason::CriticalFault { criterion } => alloc::vec![("criterion", criterion.to_string())],
            SetReason::AllSetsDone { sets } => alloc::vec![("sets", self.count("set", u32::from(*sets)))],
            SetReason::ByEffort { left, asked, part, own_curve } => {
                let mut with = alloc::vec![
                    ("left", left.to_string()),
                    ("asked", asked.to_string()),
                    ("part", self.change_by(*part)),
                ];
                key = match next.map(|next| next.rule) {
                    _ if *own_curve => "by_own_curve",
                    Some(SetRule::FixedPerPoint { part: Some(_) }) => "by_plan",
                    Some(rule) => {
                        let fixed = matches!(rule, SetRule::FixedPerPoint { .. });
                        let of = if fixed { "relation.by_point" } else { "relation.by_curve" };
                        with.push(("source", self.say(of, &[])));
                        "by_effort_of"
                    }
                    None => key,
                };
                with
            }
            SetReason::BelowReserve { left, least } => {
                alloc::vec![("left", left.to_string()), ("least", least.to_string())]
            }
            SetReason::BelowRange { bottom } => alloc::vec![("bottom", bottom.to_string())],
            SetReason::WithinRange { top } | SetReason::TopOfRange { top } => {
                alloc::vec![("top", top.to_string())]
            }
            SetReason::RatingReached { rating } | SetReason::RatingNotReached { rating } => {
                alloc::vec![("rating", rating.to_string())]
            }
            SetReason::ByTable { least, most } => {
                alloc::vec![("least", self.step_of(*least)), ("most", self.step_of(*most))]
            }
            SetReason::BackOff { reduction } => alloc::vec![("part", self.percent(*reduction))],
            SetReason::Limited { to } => {
                alloc::vec![("load", with_place(self.mass(*to), place))]
            }
            SetReason::NotToday
            | SetReason::FirstSet
            | SetReason::PainNotAsked
            | SetReason::RepetitionMissed
            | SetReason::TwoFaults
            | SetReason::NotMarked
            | SetReason::EffortNotSaid
            | SetReason::EffortSaysNothing
            | SetReason::AsAsked
            | SetReason::ByTechnique
            | SetReason::NothingLighter => Vec::new(),
        };
        self.say(&format!("set_reason.{key}"), &with)
    }

    /// A step of the load, less or more.
    fn step_of(&self, step: Kilograms) -> String {
        let size = Kilograms::new(crate::numeric::fabs(step.value())).and_then(Kilograms::to_mass);
        let part = size.map(|size| self.mass(size)).unwrap_or_default();
        self.say(if step.value() < 0.0 { "part.less" } else { "part.more" }, &[("part", part)])
    }

    /// How much less or more, in whole percent.
    fn change_by(&self, part: f64) -> String {
        self.say(if part < 0.0 { "part.less" } else { "part.more" }, &[("part", self.percent(part))])
    }

    /// What comes after a set, in sentences: what to do, then why.
    #[must_use]
    pub fn next_set(&self, next: &NextSet) -> Vec<String> {
        self.for_lift(&next.lift).set_and_reasons(next)
    }

    fn set_and_reasons(&self, next: &NextSet) -> Vec<String> {
        let lift = capital(self.lift_name(&next.lift));
        let mut said = alloc::vec![match (&next.then, &next.work) {
            (Then::Begin, Some(work)) => self.set_line("begin", next, work, lift),
            (Then::Same, Some(work)) => self.set_line("same", next, work, lift),
            (Then::DownTo(_), Some(work)) => self.set_line("down_to", next, work, lift),
            (Then::UpTo(_), Some(work)) => self.set_line("up_to", next, work, lift),
            (Then::EasierRung(_), Some(work)) => self.set_line("easier_rung", next, work, lift),
            _ => self.say("next_set.stop", &[("lift", lift)]),
        }];
        let place = next.work.as_ref().map(|work| self.place(&next.lift, work.place)).unwrap_or_default();
        said.extend(next.reasons.iter().map(|reason| self.set_reason_at(reason, &place, Some(next))));
        said.extend(next.instead.as_ref().map(|rung| self.instead(&next.lift, rung)));
        self.end(&mut said, (&next.stops, next.today), &[], &next.cautions);
        said
    }

    /// The easier rung with the rest of its place. One that is called like the lift itself is told as that.
    fn easier_rung_said(&self, lift: &Name, at: Place, place: String) -> String {
        if self.rung_name(lift, at.rung) != self.lift_name(lift) {
            return place;
        }
        behind(self.own_rung(lift), &place)
    }

    fn own_rung(&self, lift: &Name) -> String {
        self.say("next_set.own_rung", &[("lift", self.lift_name(lift).to_string())])
    }

    /// A rung to practise on, by what it is called.
    fn instead(&self, lift: &Name, rung: &Name) -> String {
        let called = self.rung_called(lift, rung);
        let own = called == self.lift_name(lift);
        let key = if own { "next_set.instead_own" } else { "next_set.instead" };
        self.say(key, &[("rung", if own { self.own_rung(lift) } else { called })])
    }

    /// The line of the next set: the place stands behind the name of the lift, or is the easier one.
    fn set_line(&self, key: &str, next: &NextSet, work: &SetWork, lift: String) -> String {
        let easier = matches!(next.then, Then::EasierRung(_));
        let place = self.place(&next.lift, work.place);
        let lift = if easier { lift } else { behind(lift, &place) };
        let rung = if easier { self.easier_rung_said(&next.lift, work.place, place) } else { place };
        let with = [
            ("lift", lift),
            ("set", (u16::from(next.done) + 1).to_string()),
            ("sets", next.sets.to_string()),
            ("load", self.one_by_one(&next.lift, self.mass(work.load))),
            ("reps", work.reps.to_string()),
            ("reserve", work.reserve.to_string()),
            ("rung", rung),
        ];
        self.say(&format!("next_set.{key}"), &with)
    }
}
