//! The rack in words: loads, discs that move, the next step, a shared bar.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::{Rack, RackSet, Share};
use crate::loading::{EndMoves, PlacedDisc, StepSize};
use crate::text::phrases::Phrases;
use crate::text::place::with_place;
use crate::text::stop::{in_order, of_stops};
use crate::text::words::Words;
use crate::text::{capital, face};

pub(in crate::text) const RACK: Phrases = &[
    ("rack.nothing", "{lift}: nothing is lifted today."),
    ("rack.heading", "{lift}, set by set:"),
    ("rack.warm_up", "Warm-up {load} x {reps}."),
    ("rack.work", "{lift}: {load} x {reps}."),
    ("rack.moves", "{off} off, {on} on at each end."),
    ("rack.on", "{on} on at each end."),
    ("rack.off", "{off} off at each end."),
    ("rack.in_turn", "The ends in turn, so that neither is ever more than {most} heavier."),
    ("rack.weighs", "The work load may weigh {low} to {high}."),
    ("rack.step", "The next load here is {next}, {percent} % more."),
    (
        "rack.step_large",
        "The next load here is {next}, {percent} % more: above the published range of steps.",
    ),
    ("rack.bridge", "About {reps} repetitions at the present load stand for the same at that one."),
    ("share.nobody", "Nobody lifts today."),
    ("share.turn", "{lifter}: {load}."),
    ("share.blocks", "{load}, on blocks of {height}"),
    ("share.moves", "Discs handled at each end: {moves}."),
];

fn percent_of(words: &Words<'_>, percent: f64) -> String {
    words.rounded(percent, 1)
}

fn discs(discs: &[PlacedDisc]) -> String {
    discs.iter().map(|disc| face(disc.nominal)).collect::<Vec<_>>().join(" + ")
}

impl Words<'_> {
    /// How the loads of today are made, in sentences.
    #[must_use]
    pub fn rack(&self, rack: &Rack) -> Vec<String> {
        let lift = capital(self.lift_name(&rack.lift));
        if rack.sets.is_empty() {
            let mut said = alloc::vec![self.say("rack.nothing", &[("lift", lift)])];
            self.end(&mut said, (&rack.stops, rack.today), &rack.missing, &rack.cautions);
            return said;
        }
        self.for_lift(&rack.lift).rack_at(rack)
    }

    /// The loads of a lift that is done: the place stands in the heading of the warm-up sets, and beside every other load.
    fn rack_at(&self, rack: &Rack) -> Vec<String> {
        let (lift, place) =
            (capital(&self.lift_at(&rack.lift, rack.place)), self.place(&rack.lift, rack.place));
        let mut said = Vec::new();
        if rack.sets.iter().any(|set| set.warm_up) {
            said.push(self.say("rack.heading", &[("lift", lift.clone())]));
        }
        for set in &rack.sets {
            said.push(self.rack_set(&lift, rack, set));
            said.extend(set.moves.as_ref().and_then(|moves| self.rack_moves(moves)));
        }
        let most =
            rack.sets.iter().filter_map(|set| set.handling.as_ref()).map(|way| way.most_imbalance).max();
        let most = most.filter(|most| most.is_positive());
        said.extend(most.map(|most| self.say("rack.in_turn", &[("most", self.at_least(most))])));
        said.extend(rack.weighs.map(|band| {
            let high = with_place(self.at_least(band.high), &place);
            self.say("rack.weighs", &[("low", self.at_most(band.low)), ("high", high)])
        }));
        if let Some(step) = &rack.step {
            let key = if step.size == StepSize::AboveRange { "rack.step_large" } else { "rack.step" };
            let next = with_place(self.one_by_one(&rack.lift, self.mass(step.next.total)), &place);
            let with = [("next", next), ("percent", percent_of(self, step.percent))];
            said.push(self.say(key, &with));
            let reps = step.reps_first.filter(|_| step.size == StepSize::AboveRange);
            said.extend(reps.map(|reps| self.say("rack.bridge", &[("reps", reps.value().to_string())])));
        }
        self.end(&mut said, (&rack.stops, rack.today), &rack.missing, &rack.cautions);
        said
    }

    fn rack_set(&self, lift: &str, rack: &Rack, set: &RackSet) -> String {
        let key = if set.warm_up { "rack.warm_up" } else { "rack.work" };
        let load = self.one_by_one(&rack.lift, self.mass(set.load));
        let mut with = alloc::vec![("load", load), ("reps", set.reps.to_string())];
        if !set.warm_up {
            with.push(("lift", lift.to_string()));
        }
        self.say(key, &with)
    }

    fn rack_moves(&self, moves: &EndMoves) -> Option<String> {
        let (off, on) = (("off", discs(&moves.off)), ("on", discs(&moves.on)));
        match (moves.off.is_empty(), moves.on.is_empty()) {
            (true, true) => None,
            (true, false) => Some(self.say("rack.on", &[on])),
            (false, true) => Some(self.say("rack.off", &[off])),
            (false, false) => Some(self.say("rack.moves", &[off, on])),
        }
    }

    /// One bar for several, in sentences.
    #[must_use]
    pub fn share(&self, share: &Share) -> Vec<String> {
        self.share_by_names(share, &[])
    }

    /// The same, each lifter's lifts and regions by the names of their own words, where there are any.
    pub(in crate::text) fn share_by_names(&self, share: &Share, each: &[Words<'_>]) -> Vec<String> {
        let Some(bar) = &share.bar else {
            let mut said = alloc::vec![self.say("share.nobody", &[])];
            self.end_below(self.stops_of_all(share, each), &mut said, &[], &share.cautions);
            return said;
        };
        let mut said = Vec::new();
        for turn in &bar.turns {
            let loads = share.lifters.get(usize::from(turn.lifter));
            let who = loads.map(|loads| capital(loads.lifter.as_str()));
            let own = each.get(usize::from(turn.lifter)).unwrap_or(self);
            let lift = loads.map(|loads| own.lift_at_named(&loads.lift, Some(&loads.place)));
            let load = with_place(self.mass(turn.moves.total), &lift.unwrap_or_default());
            let blocks = loads.and_then(|loads| loads.blocks.get(usize::from(turn.set)));
            let blocks = blocks.filter(|height| height.mm() > 0.0);
            let load = match blocks {
                Some(height) => {
                    self.say("share.blocks", &[("load", load), ("height", self.millimetres(*height))])
                }
                None => load,
            };
            let with = [("lifter", who.unwrap_or_default()), ("load", load)];
            said.push(self.say("share.turn", &with));
            said.extend(self.rack_moves(&turn.moves));
        }
        said.push(self.say("share.moves", &[("moves", bar.moves_each_end.to_string())]));
        self.end_below(self.stops_of_all(share, each), &mut said, &[], &share.cautions);
        said
    }

    /// What stops each of them and until when, by name; then the signs of an emergency and the once.
    fn stops_of_all(&self, share: &Share, each: &[Words<'_>]) -> Vec<String> {
        let (mut said, mut cautions) = (Vec::new(), share.cautions.clone());
        for (at, one) in share.lifters.iter().enumerate() {
            let own = each.get(at).unwrap_or(self);
            let whose = alloc::format!("{}: ", capital(one.lifter.as_str()));
            let stops = in_order(one.stops.iter());
            said.extend(own.halts(&whose, &stops, Some(share.today)));
            said.extend(own.clinician(&stops).map(|until| alloc::format!("{whose}{until}")));
            cautions.extend(of_stops(&stops));
        }
        said.extend(self.end_of_stops(&[], &cautions, said.is_empty()));
        said
    }
}
