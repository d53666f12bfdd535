//! What a session says of the setup of a lift: kit, height, pins, and who or what would take the bar.

use alloc::boxed::Box;
use alloc::vec::Vec;

use super::judge::{Said, same_height};
use super::lift::{Lift, Now};
use crate::quantity::{Day, Length, Name};
use crate::reason::Restart;

/// How a lift was last said to be set up.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[non_exhaustive]
pub struct SetupSeen {
    /// Stance, box, shoes, belt, straps, in order of their names; absent where nobody ever said.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub kit: Option<Vec<Name>>,
    /// Height at which it began; absent where nobody ever measured.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub height: Option<Length>,
    /// Day of the last change.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub changed: Option<Day>,
    /// Height of the safety pins; absent where nobody ever said.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub pins: Option<Length>,
    /// Day on which the pins were last found moved, and their height before.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub pins_moved: Option<(Day, Length)>,
}

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
