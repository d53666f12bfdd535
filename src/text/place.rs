//! Where a lift is done, and what a step would change.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::phrases::Phrases;
use super::words::Words;
use crate::prescription::LiftToday;
use crate::quantity::{Mass, Name};
use crate::reason::NamedPlace;
use crate::record::{Grant, LiftParameters, Place, StartsFrom};

/// Where a lift is done and what a step would change, by key.
pub(super) const PLACES: Phrases = &[
    ("place.rung", "rung {number}"),
    ("place.range", "range {number}"),
    ("place.tempo", "tempo {number}"),
    ("place.range_of", "range {length}"),
    ("place.bar_at", "bar at {length}"),
    ("move.next_rung", "the next rung"),
    ("move.other_rung", "another rung"),
    ("move.lower_start", "a lower start"),
    ("move.longer_range", "a longer range"),
    ("move.other_tempo", "another tempo"),
    ("move.to", "{what} at {load}"),
    ("move.to_work", "{what} at {load}, {sets} x {reps}"),
    ("move.work", "{sets} x {reps} at {load}"),
];

impl Words<'_> {
    /// A place in words: rung, range and tempo, as far as the lift has them; a rung that is called like the lift itself
    /// is not named again. Empty where there is nothing to tell apart.
    ///
    /// Counted where the lift is not known.
    #[must_use]
    pub fn place(&self, lift: &Name, place: Place) -> String {
        match self.lift(lift) {
            Some(set) => self.named(Some(set), &set.named_place(place)),
            None => self.counted_place(place),
        }
    }

    /// A place in words that is told by what it is; without the lift by its ids.
    pub(super) fn named_place(&self, lift: Option<&Name>, place: &NamedPlace) -> String {
        self.named(lift.and_then(|lift| self.lift(lift)), place)
    }

    /// What people call a rung, by its id.
    pub(super) fn rung_called(&self, lift: &Name, rung: &Name) -> String {
        rung_label(self.lift(lift), rung).to_string()
    }

    /// A load with its place behind it.
    pub(super) fn load_at(&self, lift: &Name, place: Place, load: Mass) -> String {
        with_place(self.load_of(lift, load), &self.place(lift, place))
    }

    /// The load of an override as the coach wrote it, with its place behind it.
    pub(super) fn written_at(&self, lift: &Name, place: Place, load: Mass) -> String {
        let said = self.one_by_one(lift, self.for_lift(lift).written(load));
        with_place(said, &self.place(lift, place))
    }

    /// A load as it is lifted: dumbbells count one by one.
    pub(super) fn load_of(&self, lift: &Name, load: Mass) -> String {
        self.one_by_one(lift, self.for_lift(lift).mass(load))
    }

    /// The name of a lift, and where it is done.
    pub(super) fn lift_at(&self, lift: &Name, place: Place) -> String {
        behind(self.lift_name(lift).into(), &self.place(lift, place))
    }

    /// The same, where the place is told by what it is, or not known.
    pub(super) fn lift_at_named(&self, lift: &Name, place: Option<&NamedPlace>) -> String {
        let place = place.map(|place| self.named_place(Some(lift), place)).unwrap_or_default();
        behind(self.lift_name(lift).into(), &place)
    }

    /// What a step would change: to where, and with which load.
    ///
    /// A harder rung mostly starts with less, so the rung stands before the load.
    #[must_use]
    pub fn step_to(&self, lift: &LiftToday, to: Grant) -> String {
        self.step_from(&lift.lift, lift.granted, to)
    }

    /// What a step from there would change.
    pub(super) fn step_from(&self, id: &Name, from: Grant, to: Grant) -> String {
        let lower = self.lift(id).is_some_and(|set| set.starts_from != StartsFrom::Rack);
        let harder = |set: &LiftParameters| set.is_harder(to.place.rung, from.place.rung);
        let same_work = (to.work.sets, to.work.reps) == (from.work.sets, from.work.reps);
        let what = if to.place.rung != from.place.rung {
            if self.lift(id).is_some_and(harder) { "move.next_rung" } else { "move.other_rung" }
        } else if to.place.range != from.place.range {
            if lower { "move.lower_start" } else { "move.longer_range" }
        } else if to.place.tempo != from.place.tempo {
            "move.other_tempo"
        } else if same_work {
            return self.load_at(id, to.place, to.load());
        } else {
            return self.work_at(id, to);
        };
        let what = ("what", with_place(self.say(what, &[]), &self.place(id, to.place)));
        let key = if same_work { "move.to" } else { "move.to_work" };
        self.say(key, &[what, ("load", self.load_of(id, to.load())), sets(to), reps(to)])
    }

    /// Work in sets and repetitions at its load and place.
    pub(super) fn work_at(&self, id: &Name, work: Grant) -> String {
        self.say("move.work", &[("load", self.load_at(id, work.place, work.load())), sets(work), reps(work)])
    }

    fn named(&self, set: Option<&LiftParameters>, place: &NamedPlace) -> String {
        let rung = place.rung.as_ref().map(|id| rung_label(set, id));
        let rung = rung.filter(|rung| set.is_none_or(|set| set.label() != *rung)).map(ToString::to_string);
        let from_rack = set.is_none_or(|set| set.starts_from == StartsFrom::Rack);
        let key = if from_rack { "place.range_of" } else { "place.bar_at" };
        let range = place.range.map(|range| self.say(key, &[("length", self.range(range))]));
        let pace = place.tempo.map(|tempo| self.tempo(tempo));
        [rung, range, pace].into_iter().flatten().collect::<Vec<_>>().join(", ")
    }

    /// Of a lift that is not known nobody can tell whether it has ranges and tempos at all: the first ones go unsaid.
    fn counted_place(&self, place: Place) -> String {
        let number = |key, number| self.say(key, &[("number", (u16::from(number) + 1).to_string())]);
        let mut parts = alloc::vec![number("place.rung", place.rung)];
        for (key, at) in [("place.range", place.range), ("place.tempo", place.tempo)] {
            if at > 0 {
                parts.push(number(key, at));
            }
        }
        parts.join(", ")
    }
}

fn sets(to: Grant) -> (&'static str, String) {
    ("sets", to.work.sets.to_string())
}

fn reps(to: Grant) -> (&'static str, String) {
    ("reps", to.work.reps.to_string())
}

/// Something with its place in parentheses.
pub(super) fn with_place(said: String, place: &str) -> String {
    if place.is_empty() { said } else { format!("{said} ({place})") }
}

/// A name with the place behind it.
pub(super) fn behind(name: String, place: &str) -> String {
    if place.is_empty() { name } else { format!("{name}, {place}") }
}

/// What people call a rung, by its id.
fn rung_label<'a>(set: Option<&'a LiftParameters>, rung: &'a Name) -> &'a Name {
    let known = set.and_then(|set| set.rungs.iter().find(|known| known.id == *rung));
    known.map_or(rung, |known| known.label())
}
