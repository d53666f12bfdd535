//! How today's load is made at its height: by discs that carry the bar there, on blocks, or with whatever else the lift is
//! loaded by.

use alloc::boxed::Box;

use super::draft::Draft;
use super::lift::Verdict;
use crate::error::Error;
use crate::loading::{AtHeight, Implement, LoadAtHeight, Loaded, Prepared, Rounding};
use crate::progression::{HEAVIEST, View, lighter_beside};
use crate::quantity::{Length, Mass};
use crate::reason::Reason;
use crate::record::{Place, StartsFrom};

/// Least load that is looked at, so that a small grant still finds the lightest implement.
const AT_LEAST: Mass = Mass::grams(1_000);

/// What loads the lift at its place.
pub(crate) enum Equipment {
    /// Discs carry the bar at a height.
    Height {
        /// What is made at that height.
        kept: AtHeight,
        /// What is lighter at the nearest other one.
        beside: Option<Box<AtHeight>>,
    },
    /// The height is no part of it.
    Plain(Prepared),
    /// Nothing is known that would load it.
    Nothing,
}

/// A load as it is made.
pub(crate) struct Made {
    pub(crate) loaded: Loaded,
    /// Blocks under each end.
    pub(crate) blocks: Option<Length>,
    /// How far off the height the bar's centre lies, in mm.
    pub(crate) off_by_mm: f64,
}

impl Equipment {
    pub(crate) fn of(view: &View<'_>, place: Place) -> Result<Equipment, Error> {
        let set = &view.lift.set;
        let highest = view.limit().max(AT_LEAST);
        Ok(match (view.all.implement(&set.implement), set.start_height(place)) {
            (Some(Implement::Bar(bar)), Some(height)) if set.starts_from == StartsFrom::Floor => {
                let all = view.all;
                let kept = AtHeight::new(bar, &all.stock, &all.blocks, height, HEAVIEST)?;
                let beside = lighter_beside(&kept, bar, all, height).map(Box::new);
                Equipment::Height { kept, beside }
            }
            (Some(implement), _) => Equipment::Plain(Prepared::new(implement, &view.all.stock, highest)?),
            (None, _) => Equipment::Nothing,
        })
    }

    /// The lightest load at this height.
    pub(crate) fn lightest(&self) -> Option<Mass> {
        match self {
            Equipment::Height { kept, .. } => kept.lightest(),
            Equipment::Plain(prepared) => prepared.lightest(),
            Equipment::Nothing => None,
        }
    }

    /// That load or the nearest below it; below all that is made at the height, the lightest at the nearest other one.
    pub(crate) fn load(&self, load: Mass) -> Option<Made> {
        match self {
            Equipment::Height { kept, beside } => {
                let other = |other: &AtHeight| {
                    let lightest = other.lightest().filter(|lightest| *lightest <= load)?;
                    other.load(lightest, Rounding::Exact).ok()
                };
                let here = kept.load(load, Rounding::Below).ok();
                let LoadAtHeight { loaded, blocks, off_by_mm } =
                    here.or_else(|| beside.as_deref().and_then(other))?;
                Some(Made { loaded, blocks, off_by_mm })
            }
            Equipment::Plain(prepared) => {
                let loaded = prepared.load(load, Rounding::Below).ok()?;
                Some(Made { loaded, blocks: None, off_by_mm: 0.0 })
            }
            Equipment::Nothing => None,
        }
    }

    /// The total that this load is rounded down to, at the height: a warm-up is done where the work is.
    pub(crate) fn below(&self, load: Mass) -> Option<Mass> {
        match self {
            Equipment::Height { kept, .. } => Some(kept.load(load, Rounding::Below).ok()?.loaded.total),
            _ => self.load(load).map(|made| made.loaded.total),
        }
    }
}

/// Rounds down to what can be loaded at the height, and looks at the cap once more.
pub(super) fn round(draft: &mut Draft, equipment: &Equipment) -> Option<Made> {
    match equipment.load(draft.load) {
        Some(made) if made.loaded.total <= draft.load => {
            if made.loaded.total < draft.load {
                draft.say(Reason::RoundedDown { from: draft.load, to: made.loaded.total });
            }
            if made.off_by_mm != 0.0 {
                draft.say(Reason::HeightOff { mm: made.off_by_mm });
            }
            Some(made)
        }
        _ => {
            let lightest: Mass = equipment.lightest().unwrap_or(draft.load);
            draft.at_least(Verdict::Rest, Reason::NothingLoadable { lightest });
            None
        }
    }
}
