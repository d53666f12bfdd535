//! How today's load is made at its height: by discs that carry the bar there, on blocks, or with whatever else the lift is
//! loaded by.

use crate::error::Error;
use crate::loading::{AtHeight, Implement, Loaded, Policy, Prepared};
use crate::progression::{HEAVIEST, View};
use crate::quantity::{Length, Mass};
use crate::record::{Place, StartsFrom};

/// Least load that is looked at, so that a small grant still finds the lightest implement.
const AT_LEAST: Mass = Mass::grams(1_000);

/// What loads the lift at its place.
pub(super) enum Equipment {
    /// Discs carry the bar at a height.
    Height(AtHeight),
    /// The height is no part of it.
    Plain(Prepared),
    /// Nothing is known that would load it.
    Nothing,
}

/// A load as it is made.
pub(super) struct Made {
    pub(super) loaded: Loaded,
    /// Blocks under each end.
    pub(super) blocks: Option<Length>,
}

impl Equipment {
    pub(super) fn of(view: &View<'_>, place: Place) -> Result<Equipment, Error> {
        let set = &view.lift.set;
        let highest = view.limit().max(AT_LEAST);
        Ok(match (view.all.implement(&set.implement), set.start_height(place)) {
            (Some(Implement::Bar(bar)), Some(height)) if set.starts_from == StartsFrom::Floor => {
                Equipment::Height(AtHeight::new(bar, &view.all.stock, &view.all.blocks, height, HEAVIEST)?)
            }
            (Some(implement), _) => Equipment::Plain(Prepared::new(implement, &view.all.stock, highest)?),
            (None, _) => Equipment::Nothing,
        })
    }

    /// The lightest load at this height.
    pub(super) fn lightest(&self) -> Option<Mass> {
        match self {
            Equipment::Height(kept) => kept.lightest(),
            Equipment::Plain(prepared) => prepared.lightest(),
            Equipment::Nothing => None,
        }
    }

    /// That load or the nearest below it.
    pub(super) fn load(&self, load: Mass) -> Option<Made> {
        match self {
            Equipment::Height(kept) => {
                let kept = kept.load(load, Policy::Below).ok()?;
                Some(Made { loaded: kept.loaded, blocks: kept.blocks })
            }
            Equipment::Plain(prepared) => {
                Some(Made { loaded: prepared.load(load, Policy::Below).ok()?, blocks: None })
            }
            Equipment::Nothing => None,
        }
    }

    /// The total that this load is rounded down to.
    pub(super) fn below(&self, load: Mass) -> Option<Mass> {
        self.load(load).map(|made| made.loaded.total)
    }
}
