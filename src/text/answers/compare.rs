//! How two places compare, in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::gate::listed;
use crate::answers::Comparison;
use crate::quantity::Name;
use crate::record::{Dimension, Grant};
use crate::text::capital;
use crate::text::phrases::Phrases;
use crate::text::words::Words;

pub(in crate::text) const COMPARE: Phrases = &[
    ("compare.from_to", "{lift}: from {from} to {to}."),
    ("compare.work", "{sets} x {reps} at {load}"),
    ("compare.harder", "Harder: {what}."),
    ("compare.easier", "Easier: {what}."),
    ("compare.sideways", "Another rung that is neither the harder nor the easier one."),
    ("compare.same", "Neither harder nor easier in anything that is compared."),
    ("compare.several", "More than one thing gets harder; a step changes one."),
    ("dimension.variant", "rung"),
    ("dimension.range", "range"),
    ("dimension.tempo", "tempo"),
    ("dimension.sets", "sets"),
    ("dimension.reps", "repetitions"),
    ("dimension.load", "load"),
];

impl Words<'_> {
    /// How a dimension is called.
    pub(in crate::text) fn dimension(&self, dimension: Dimension) -> String {
        let key = match dimension {
            Dimension::Variant => "dimension.variant",
            Dimension::Range => "dimension.range",
            Dimension::Tempo => "dimension.tempo",
            Dimension::Sets => "dimension.sets",
            Dimension::Reps => "dimension.reps",
            Dimension::Load => "dimension.load",
        };
        self.say(key, &[])
    }

    fn work_there(&self, lift: &Name, grant: &Grant) -> String {
        let with = [
            ("sets", grant.work.sets.to_string()),
            ("reps", grant.work.reps.to_string()),
            ("load", self.load_at(lift, grant.place, grant.work.load)),
        ];
        self.say("compare.work", &with)
    }

    /// How two places of a lift compare, in sentences.
    #[must_use]
    pub fn comparison(&self, found: &Comparison) -> Vec<String> {
        let with = [
            ("lift", capital(self.lift_name(&found.lift))),
            ("from", self.work_there(&found.lift, &found.from)),
            ("to", self.work_there(&found.lift, &found.to)),
        ];
        let mut said = alloc::vec![self.say("compare.from_to", &with)];
        for (key, what) in [("compare.harder", &found.harder), ("compare.easier", &found.easier)] {
            if !what.is_empty() {
                said.push(self.say(key, &[("what", listed(what.iter().map(|one| self.dimension(*one))))]));
            }
        }
        if found.sideways {
            said.push(self.say("compare.sideways", &[]));
        } else if found.harder.is_empty() && found.easier.is_empty() {
            said.push(self.say("compare.same", &[]));
        }
        if found.harder.len() > 1 {
            said.push(self.say("compare.several", &[]));
        }
        self.end(&mut said, (&found.stops, found.today), &[], &found.cautions);
        said
    }
}
