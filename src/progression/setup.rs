//! What a session says of the setup of a lift: kit, height, pins, and who or what would take the bar.

use alloc::boxed::Box;
use alloc::vec::Vec;

use super::judge::{Said, same_height};
use super::lift::{Lift, Now, SetupSeen};
use crate::quantity::{Day, Name};
use crate::reason::Restart;

/// A changed setup starts the comparison anew. What nobody spoke of leaves what was last said.
pub(crate) fn note_setup(now: &mut Now, said: &Said<'_>, on: Day) {
    let mut kit: Option<Vec<Name>> = said.setups().filter_map(|setup| setup.kit.clone()).last();
    kit.iter_mut().for_each(|kit| crate::numeric::sort::sort(kit));
    let (height, pins) = (said.height(), said.pins());
    if kit.is_none() && height.is_none() && pins.is_none() {
        return;
    }
    let seen = now.setup.get_or_insert_with(Box::<SetupSeen>::default);
    if let (Some(before), Some(after)) = (seen.pins, pins)
        && !same_height(before, after)
    {
        seen.pins_moved = Some((on, before));
        seen.pins = Some(after);
    }
    // Held against where the comparison began: many small changes are one large one.
    seen.pins = seen.pins.or(pins);
    let other_kit = matches!((&seen.kit, &kit), (Some(before), Some(after)) if before != after);
    let other_height =
        matches!((seen.height, height), (Some(before), Some(after)) if !same_height(before, after));
    seen.kit = kit.or_else(|| seen.kit.take());
    seen.height = if other_height { height } else { seen.height.or(height) };
    if other_kit || other_height {
        seen.changed = Some(on);
        now.restart(on, Restart::SetupChanged);
    }
}

/// Nothing said about the rack leaves what was last said.
pub(crate) fn note_rack(lift: &mut Lift, said: &Said<'_>) {
    let spoken = said.setups().filter_map(crate::record::Setup::is_unguarded).last();
    lift.now.rack_said |= spoken.is_some();
    lift.now.unguarded = spoken.unwrap_or(lift.now.unguarded);
}
