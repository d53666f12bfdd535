//! Where a lift is done, and what a step would change.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::day::{millimetres, tempo};
use super::words::Words;
use crate::prescription::LiftToday;
use crate::quantity::{Mass, Name};
use crate::record::{Grant, LiftParameters, Place, StartsFrom};

impl Words<'_> {
    /// A place in words: rung, range and tempo, as far as the lift has them; a rung that is called like the lift itself
    /// is not named again. Empty where there is nothing to tell apart.
    ///
    /// Counted where the lift is not known.
    #[must_use]
    pub fn place(&self, lift: &Name, place: Place) -> String {
        let parts = self.lift(lift).map_or_else(|| counted_parts(place), |set| named_parts(set, place));
        parts.join(", ")
    }

    /// A load with its place behind it.
    pub(super) fn load_at(&self, lift: &Name, place: Place, load: Mass) -> String {
        with_place(self.for_lift(lift).mass(load), &self.place(lift, place))
    }

    /// What a step would change: to where, and with which load.
    ///
    /// A harder rung mostly starts with less, so the rung stands before the load.
    #[must_use]
    pub fn step_to(&self, lift: &LiftToday, to: Grant) -> String {
        let (from, id) = (lift.granted, &lift.lift);
        let there = |what: &str| {
            format!(
                "{} at {}",
                with_place(what.into(), &self.place(id, to.place)),
                self.for_lift(id).mass(to.load())
            )
        };
        let lower = self.lift(id).is_some_and(|set| set.starts_from != StartsFrom::Rack);
        let harder = |set: &LiftParameters| set.is_harder(to.place.rung, from.place.rung);
        let said = if to.place.rung != from.place.rung {
            there(if self.lift(id).is_some_and(harder) { "the next rung" } else { "another rung" })
        } else if to.place.range != from.place.range {
            there(if lower { "a lower start" } else { "a longer range" })
        } else if to.place.tempo != from.place.tempo {
            there("another tempo")
        } else if (to.work.sets, to.work.reps) != (from.work.sets, from.work.reps) {
            let load = self.load_at(id, to.place, to.load());
            return format!("{} x {} at {load}", to.work.sets, to.work.reps);
        } else {
            return self.load_at(id, to.place, to.load());
        };
        let same_work = (to.work.sets, to.work.reps) == (from.work.sets, from.work.reps);
        if same_work { said } else { format!("{said}, {} x {}", to.work.sets, to.work.reps) }
    }
}

/// Something with its place in parentheses.
pub(super) fn with_place(said: String, place: &str) -> String {
    if place.is_empty() { said } else { format!("{said} ({place})") }
}

fn named_parts(set: &LiftParameters, place: Place) -> Vec<String> {
    let rung = set.rungs.get(usize::from(place.rung)).map(|rung| rung.label());
    let rung = rung.filter(|rung| *rung != set.label()).map(|rung| String::from(rung.as_str()));
    let range = set.ranges.get(usize::from(place.range)).map(|range| match set.starts_from {
        StartsFrom::Rack => format!("range {}", millimetres(*range)),
        StartsFrom::Floor | StartsFrom::Pins => format!("bar at {}", millimetres(*range)),
    });
    let pace = set.tempos.get(usize::from(place.tempo)).map(|pace| tempo(*pace));
    [rung, range, pace].into_iter().flatten().collect()
}

/// Of a lift that is not known nobody can tell whether it has ranges and tempos at all: the first ones go unsaid.
fn counted_parts(place: Place) -> Vec<String> {
    let mut parts = alloc::vec![format!("rung {}", u16::from(place.rung) + 1)];
    for (what, number) in [("range", place.range), ("tempo", place.tempo)] {
        if number > 0 {
            parts.push(format!("{what} {}", u16::from(number) + 1));
        }
    }
    parts
}
