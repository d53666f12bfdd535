//! What is in force, and what would open, in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::{HigherLoad, InForce, Opens, Restriction, StopGone};
use crate::quantity::Name;
use crate::record::{ClearanceLimits, Grant};
use crate::sign::StopSign;
use crate::text::capital;
use crate::text::phrases::Phrases;
use crate::text::place::with_place;
use crate::text::words::Words;

pub(in crate::text) const IN_FORCE: Phrases = &[
    ("restriction.not_to_train", "the answer about clearance was not to train"),
    ("restriction.pain", "pain in {region}"),
    ("restriction.limit_without_lift", "a limit for {region}, which no lift here loads"),
    ("restriction.illness", "an illness or operation, with no new clearance yet"),
    ("restriction.limit_load", "a limit of {load} for {whom} at every place"),
    ("restriction.limit_effort", "a limit of effort {rating} of 10 for {whom}"),
    ("restriction.limit_range", "a limit of range at {range} for {whom}"),
    ("restriction.limit_flexion", "a limit of no loaded bending of the spine for {whom}"),
    ("restriction.limit_breath", "a limit of no long breath-holding for {whom}"),
    ("restriction.every_lift", "every lift"),
    ("restriction.region", "the {region}"),
    ("restriction.break_until", "the planned break until {day}"),
    ("restriction.break", "the planned break without a last day"),
    ("restriction.ill_until", "the illness noted until {day}"),
    ("restriction.rest", "the rest of {lift}"),
    ("restriction.word", "the word of {who} for {lift} at {load}"),
    ("restriction.ceiling", "the ceiling of {load} for {lift} at every place"),
    (
        "restriction.unknown_events",
        "entries of a newer version, which cannot be read here and hold every step",
    ),
    ("in_force.one", "In force: {what}."),
    ("in_force.ahead", "From {day} on: {what}."),
    ("in_force.nothing", "Nothing that is written down stops or narrows a lift."),
    ("opens.lifted", "A stop would no longer be in force: {what}, since {day}."),
    (
        "opens.taken_back",
        "A stop would no longer be in force: {what}, since {day}. What reported it would no longer be in the log: only where \
         it was a slip.",
    ),
    ("opens.gone", "{what} is no longer in force then."),
    ("opens.granted", "{lift}: a working load of {to} then, and not {from}."),
    ("opens.granted_work", "{lift}: work of {to} then, and not {from}."),
    ("opens.today", "{lift}: {to} today then, and not {from}."),
    ("opens.today_left_out", "{lift}: {to} today then; now it is left out."),
    ("opens.unsets", "Nothing would be set for the lifts any more."),
    ("opens.nothing", "Nothing that is in force would end, and no load would be higher and no work more."),
];

impl Words<'_> {
    /// What is in force, in sentences: each thing that narrows a lift or will stop it, below what stops.
    #[must_use]
    pub fn in_force(&self, found: &InForce) -> Vec<String> {
        let mut said: Vec<String> = Vec::new();
        for one in &found.restrictions {
            let what = ("what", self.restriction(one));
            match one.stops_since() {
                None => said.push(self.say("in_force.one", &[what])),
                Some(since) if since > found.today => {
                    said.push(self.say("in_force.ahead", &[("day", self.day(since)), what]));
                }
                Some(_) => {}
            }
        }
        if found.restrictions.is_empty() && found.missing.is_empty() {
            said.push(self.say("in_force.nothing", &[]));
        }
        self.end(&mut said, (&found.stops, found.today), &found.missing, &found.cautions);
        said
    }

    /// What would open, in sentences: stops first, then whatever else would end, then loads.
    #[must_use]
    pub fn opens(&self, found: &Opens) -> Vec<String> {
        let mut said: Vec<String> = found.stops_gone.iter().map(|gone| self.stop_gone(gone)).collect();
        said.extend(found.gone.iter().map(|one| self.gone(one)));
        said.extend(found.higher.iter().map(|one| self.higher_load(one)));
        said.extend(found.unsets.then(|| self.say("opens.unsets", &[])));
        if said.is_empty() {
            said.push(self.say("opens.nothing", &[]));
        }
        self.end(&mut said, (&found.stops, found.today), &found.missing, &found.cautions);
        said
    }

    /// A stop that would be gone, as a sentence.
    #[must_use]
    pub fn stop_gone(&self, gone: &StopGone) -> String {
        let key = if gone.taken_back { "opens.taken_back" } else { "opens.lifted" };
        let day = gone.stop.stops_since().map(|day| self.day(day)).unwrap_or_default();
        self.say(key, &[("what", self.restriction(&gone.stop)), ("day", day)])
    }

    /// What would no longer be in force, as a sentence.
    #[must_use]
    pub fn gone(&self, restriction: &Restriction) -> String {
        self.say("opens.gone", &[("what", capital(&self.restriction(restriction)))])
    }

    /// A load that would be higher, as a sentence.
    #[must_use]
    pub fn higher_load(&self, higher: &HigherLoad) -> String {
        let at = |lift: &Name, grant: &Grant| self.load_at(lift, grant.place, grant.load());
        let name = |lift: &Name| ("lift", capital(self.lift_name(lift)));
        let in_sets =
            |from: &Grant, to: &Grant| (from.work.sets, from.work.reps) != (to.work.sets, to.work.reps);
        // Sets and repetitions are said where they change.
        let both = |lift: &Name, from: &Grant, to: &Grant| {
            let said = |grant: &Grant| {
                if in_sets(from, to) { self.work_at(lift, *grant) } else { at(lift, grant) }
            };
            [name(lift), ("from", said(from)), ("to", said(to))]
        };
        match higher {
            HigherLoad::Granted { lift, from, to } => {
                let key = if in_sets(from, to) { "opens.granted_work" } else { "opens.granted" };
                self.say(key, &both(lift, from, to))
            }
            HigherLoad::Today { lift, from: Some(from), to } => {
                self.say("opens.today", &both(lift, from, to))
            }
            HigherLoad::Today { lift, from: None, to } => {
                self.say("opens.today_left_out", &[name(lift), ("to", at(lift, to))])
            }
        }
    }

    /// What stops or narrows, as a part of a sentence: `a limit of 30 kg for the knee at every place`.
    #[must_use]
    pub fn restriction(&self, restriction: &Restriction) -> String {
        let region = |id: &Name| ("region", self.the_region(id));
        let called = |lift: &Name| ("lift", self.lift_name(lift).to_string());
        match restriction {
            Restriction::Sign { sign, .. } => self.stop_signs(core::slice::from_ref::<StopSign>(sign)),
            Restriction::NotToTrain { .. } => self.say("restriction.not_to_train", &[]),
            Restriction::Pain { region: id, .. } => self.say("restriction.pain", &[region(id)]),
            Restriction::LimitWithoutLift { region: id, .. } => {
                self.say("restriction.limit_without_lift", &[region(id)])
            }
            Restriction::Illness { .. } => self.say("restriction.illness", &[]),
            Restriction::Asked { ask, .. } => self.ask(*ask),
            Restriction::Limit { limit } => self.limit_part(limit),
            Restriction::PlannedBreak { until: Some(until) } => {
                self.say("restriction.break_until", &[("day", self.day(*until))])
            }
            Restriction::PlannedBreak { until: None } => self.say("restriction.break", &[]),
            Restriction::IllUntil { until } => {
                self.say("restriction.ill_until", &[("day", self.day(*until))])
            }
            Restriction::UnknownEvents => self.say("restriction.unknown_events", &[]),
            Restriction::Rest { lift } => self.say("restriction.rest", &[called(lift)]),
            Restriction::Word { who, lift, place, load, .. } => {
                let load = with_place(self.most_of(lift, *load), &self.place(lift, *place));
                self.say("restriction.word", &[("who", who.to_string()), called(lift), ("load", load)])
            }
            Restriction::Ceiling { lift, load } => {
                self.say("restriction.ceiling", &[called(lift), ("load", self.most_of(lift, *load))])
            }
        }
    }

    /// A load of a lift that is not to be passed, as it is lifted.
    fn most_of(&self, lift: &Name, load: crate::quantity::Mass) -> String {
        self.one_by_one(lift, self.for_lift(lift).at_most(load))
    }

    /// A region with its article; some call it with one.
    fn the_region(&self, region: &Name) -> String {
        let name = self.region_name(region);
        let named = || self.say("restriction.region", &[("region", name.to_string())]);
        if name.starts_with("the ") { name.to_string() } else { named() }
    }

    fn limit_part(&self, part: &ClearanceLimits) -> String {
        let whom = match &part.region {
            None => self.say("restriction.every_lift", &[]),
            Some(region) => self.the_region(region),
        };
        let of = |key: &str, with: Option<(&str, String)>| {
            let with: Vec<(&str, String)> = with.into_iter().chain([("whom", whom.clone())]).collect();
            self.say(key, &with)
        };
        if let Some(load) = part.load {
            of("restriction.limit_load", Some(("load", self.at_most(load))))
        } else if let Some(effort) = part.effort {
            of("restriction.limit_effort", Some(("rating", effort.to_string())))
        } else if let Some(range) = part.range {
            of("restriction.limit_range", Some(("range", self.range(range))))
        } else if part.no_loaded_flexion {
            of("restriction.limit_flexion", None)
        } else {
            of("restriction.limit_breath", None)
        }
    }
}
