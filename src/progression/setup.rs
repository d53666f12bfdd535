//! What a session says of the setup of a lift: kit, height, pins, and who or what would take the bar. Two parts of a day that differ
//! in it are two sessions (`foreseen`).

use alloc::boxed::Box;
use alloc::vec::Vec;

use super::judge::{Said, same_height};
use super::lift::{Lift, Now};
use crate::quantity::{Day, Length, Name};
use crate::reason::Restart;
use crate::record::{LiftSession, Setup};

/// How a lift was last said to be set up.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
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

/// A changed setup starts the comparison anew.
pub(crate) fn note_setup(now: &mut Now, said: &Said<'_>, on: Day) {
    let spoken = said.parts.iter().filter(|part| says_anything(part));
    let mut changed = false;
    for part in spoken {
        changed |= now.setup.get_or_insert_with(Box::<SetupSeen>::default).take(part, on);
    }
    if changed {
        now.restart(on, Restart::SetupChanged);
    }
}

fn says_anything(part: &LiftSession) -> bool {
    let said = |setup: &Setup| setup.kit.is_some() || setup.pins.is_some();
    part.height.is_some() || part.setup.as_ref().is_some_and(said)
}

impl SetupSeen {
    /// Takes what was said of one part of a day; whether kit or height is another than before. What nobody spoke of leaves what was
    /// last said.
    pub(crate) fn take(&mut self, part: &LiftSession, on: Day) -> bool {
        let setup = part.setup.as_ref();
        let mut kit = setup.and_then(|setup| setup.kit.clone());
        kit.iter_mut().for_each(|kit| crate::numeric::sort::sort(kit));
        let (height, pins) = (part.height, setup.and_then(|setup| setup.pins));
        if let (Some(before), Some(after)) = (self.pins, pins)
            && !same_height(before, after)
        {
            self.pins_moved = Some((on, before));
            self.pins = Some(after);
        }
        // Held against where the comparison began: many small changes are one large one.
        self.pins = self.pins.or(pins);
        let other_kit = matches!((&self.kit, &kit), (Some(before), Some(after)) if before != after);
        let other_height =
            matches!((self.height, height), (Some(before), Some(after)) if !same_height(before, after));
        self.kit = kit.or_else(|| self.kit.take());
        self.height = if other_height { height } else { self.height.or(height) };
        if other_kit || other_height {
            self.changed = Some(on);
        }
        other_kit || other_height
    }
}

/// Nothing said about the rack leaves what was last said.
pub(crate) fn note_rack(lift: &mut Lift, said: &Said<'_>) {
    let spoken = said.setups().filter_map(Setup::is_unguarded).last();
    lift.now.rack_said |= spoken.is_some();
    lift.now.unguarded = spoken.unwrap_or(lift.now.unguarded);
}
