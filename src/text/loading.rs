//! How a load is made, in words.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::capital;
use super::day::millimetres;
use super::mass::face;
use super::place::with_place;
use super::words::Words;
use crate::loading::{Implement, PlacedDisc, Setting};
use crate::prescription::LiftToday;
use crate::quantity::Mass;

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
        let said = setting(&loaded.setting, implement);
        let said = match &loaded.setting {
            Setting::Piece(_) => with_place(said, &self.place(&lift.lift, lift.place)),
            Setting::Discs(_) if is_handle(implement) => format!("{said}; {load} each"),
            _ => format!("{said}; {load} in all"),
        };
        let blocks =
            lift.blocks.map(|blocks| format!("; on blocks of {}", millimetres(blocks))).unwrap_or_default();
        Some(capital(&format!("{said}{blocks}")))
    }

    /// The warm-up sets, with their place; none where there are none.
    #[must_use]
    pub fn warm_up(&self, lift: &LiftToday) -> Option<String> {
        let words = self.for_lift(&lift.lift);
        let set = |set: &crate::prescription::WarmUpSet| {
            let fixed = if set.reference { " (the fixed set of every time)" } else { "" };
            format!("{} x {}{fixed}", words.mass(set.load), set.reps)
        };
        let sets: Vec<String> = lift.warm_up.iter().map(set).collect();
        let where_done = with_place("Warm-up".to_string(), &self.place(&lift.lift, lift.place));
        (!sets.is_empty()).then(|| format!("{where_done}: {}", sets.join(", ")))
    }
}

const fn is_handle(implement: Option<&Implement>) -> bool {
    matches!(implement, Some(Implement::Handle(_)))
}

fn setting(setting: &Setting, implement: Option<&Implement>) -> String {
    match setting {
        Setting::Discs(discs) => discs_on(discs, implement),
        Setting::Piece(piece) => format!("{}, {} each", pieces(implement), face(*piece)),
        Setting::Selected { plates, add_ons } => selected(*plates, add_ons),
    }
}

fn discs_on(discs: &[PlacedDisc], implement: Option<&Implement>) -> String {
    let (empty, side) = match implement {
        Some(Implement::Bar(_)) => ("the empty bar", "each side, from the inside"),
        Some(Implement::Handle(_)) => {
            ("the empty dumbbell handle", "each end of the dumbbell, from the inside")
        }
        Some(Implement::Pin(_)) => ("no disc", "one above the other"),
        _ => ("no discs", "each side, from the inside"),
    };
    if discs.is_empty() {
        return empty.to_string();
    }
    let faces: Vec<String> = discs.iter().map(|disc| face(disc.nominal)).collect();
    format!("{side}: {}", faces.join(", "))
}

/// The coach's own word for the pieces, else what they mostly are.
fn pieces(implement: Option<&Implement>) -> String {
    implement.map_or("dumbbells", |implement| implement.id().as_str()).to_string()
}

fn selected(plates: u16, add_ons: &[Mass]) -> String {
    let stack = match plates {
        0 => "no plate of the stack".to_string(),
        1 => "the first plate of the stack".to_string(),
        plates => format!("the first {plates} plates of the stack"),
    };
    let hung: Vec<String> = add_ons.iter().map(|mass| face(*mass)).collect();
    if hung.is_empty() { stack } else { format!("{stack}, with {} hung on", hung.join(" and ")) }
}
