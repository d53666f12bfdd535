//! How a load is made, in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::capital;
use super::mass::face;
use super::phrases::Phrases;
use super::place::with_place;
use super::words::Words;
use crate::loading::{Implement, PlacedDisc, Setting};
use crate::prescription::LiftToday;
use crate::quantity::Mass;

/// How a load is made, by key.
pub(super) const LOADING: Phrases = &[
    ("loading.in_all", "{made}; {load} in all"),
    ("loading.each", "{made}; {load} each"),
    ("loading.on_blocks", "{made}; on blocks of {height}"),
    ("loading.piece", "{pieces}, {face} each"),
    ("loading.dumbbells", "dumbbells"),
    ("loading.empty_bar", "the empty bar"),
    ("loading.empty_handle", "the empty dumbbell handle"),
    ("loading.no_disc", "no disc"),
    ("loading.no_discs", "no discs"),
    ("loading.discs_on_bar", "each side, from the inside: {discs}"),
    ("loading.discs_on_handle", "each end of the dumbbell, from the inside: {discs}"),
    ("loading.discs_on_pin", "one above the other: {discs}"),
    ("loading.no_plate", "no plate of the stack"),
    ("loading.first_plate", "the first plate of the stack"),
    ("loading.plates", "the first {plates} plates of the stack"),
    ("loading.hung_on", "{stack}, with {masses} hung on"),
    ("loading.and", "{one} and {other}"),
    ("warm_up.line", "{warm_up}: {sets}"),
    ("warm_up.name", "Warm-up"),
    ("warm_up.set", "{load} x {reps}"),
    ("warm_up.fixed_set", "{load} x {reps} (the fixed set of every time)"),
];

impl Words<'_> {
    /// What goes where for the work sets, with the load and its place; none where nothing is loaded.
    ///
    /// Discs and dumbbells are called by what is written on them.
    #[must_use]
    pub fn loading(&self, lift: &LiftToday) -> Option<String> {
        let loaded = lift.loaded.as_ref()?;
        let load =
            with_place(self.for_lift(&lift.lift).mass(loaded.total), &self.place(&lift.lift, lift.place));
        let implement = self.lift(&lift.lift).and_then(|set| self.parameters()?.implement(&set.implement));
        let made = self.setting(&loaded.setting, implement);
        let of_load = |key| self.say(key, &[("made", made.clone()), ("load", load)]);
        let said = match &loaded.setting {
            Setting::Piece(_) => with_place(made, &self.place(&lift.lift, lift.place)),
            Setting::Discs(_) if is_handle(implement) => of_load("loading.each"),
            _ => of_load("loading.in_all"),
        };
        let said = match lift.blocks {
            Some(blocks) => {
                self.say("loading.on_blocks", &[("made", said), ("height", self.millimetres(blocks))])
            }
            None => said,
        };
        Some(capital(&said))
    }

    /// The warm-up sets, with their place; none where there are none.
    #[must_use]
    pub fn warm_up(&self, lift: &LiftToday) -> Option<String> {
        let words = self.for_lift(&lift.lift);
        let set = |set: &crate::prescription::WarmUpSet| {
            let key = if set.reference { "warm_up.fixed_set" } else { "warm_up.set" };
            self.say(key, &[("load", words.mass(set.load)), ("reps", set.reps.to_string())])
        };
        let sets: Vec<String> = lift.warm_up.iter().map(set).collect();
        let where_done = with_place(self.say("warm_up.name", &[]), &self.place(&lift.lift, lift.place));
        let with = [("warm_up", where_done), ("sets", sets.join(", "))];
        (!sets.is_empty()).then(|| self.say("warm_up.line", &with))
    }

    fn setting(&self, setting: &Setting, implement: Option<&Implement>) -> String {
        match setting {
            Setting::Discs(discs) => self.discs_on(discs, implement),
            Setting::Piece(piece) => {
                self.say("loading.piece", &[("pieces", self.pieces(implement)), ("face", face(*piece))])
            }
            Setting::Selected { plates, add_ons } => self.selected(*plates, add_ons),
        }
    }

    fn discs_on(&self, discs: &[PlacedDisc], implement: Option<&Implement>) -> String {
        let (empty, side) = match implement {
            Some(Implement::Bar(_)) => ("loading.empty_bar", "loading.discs_on_bar"),
            Some(Implement::Handle(_)) => ("loading.empty_handle", "loading.discs_on_handle"),
            Some(Implement::Pin(_)) => ("loading.no_disc", "loading.discs_on_pin"),
            _ => ("loading.no_discs", "loading.discs_on_bar"),
        };
        if discs.is_empty() {
            return self.say(empty, &[]);
        }
        let faces: Vec<String> = discs.iter().map(|disc| face(disc.nominal)).collect();
        self.say(side, &[("discs", faces.join(", "))])
    }

    /// The coach's own word for the pieces, else what they mostly are.
    fn pieces(&self, implement: Option<&Implement>) -> String {
        implement.map_or_else(|| self.say("loading.dumbbells", &[]), |implement| implement.id().to_string())
    }

    fn selected(&self, plates: u16, add_ons: &[Mass]) -> String {
        let stack = match plates {
            0 => self.say("loading.no_plate", &[]),
            1 => self.say("loading.first_plate", &[]),
            plates => self.say("loading.plates", &[("plates", plates.to_string())]),
        };
        let and = |one: String, other: String| self.say("loading.and", &[("one", one), ("other", other)]);
        match add_ons.iter().map(|mass| face(*mass)).reduce(and) {
            Some(masses) => self.say("loading.hung_on", &[("stack", stack), ("masses", masses)]),
            None => stack,
        }
    }
}

const fn is_handle(implement: Option<&Implement>) -> bool {
    matches!(implement, Some(Implement::Handle(_)))
}
