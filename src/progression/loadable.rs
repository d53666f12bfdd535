//! What the equipment of a lift can load.

use alloc::vec::Vec;

use crate::error::Error;
use crate::loading::Prepared;
use crate::quantity::Mass;
use crate::record::{Parameters, TrackParameters};

/// The heaviest load looked at: well above any load of a lifter whom this serves.
const HEAVIEST_KG: i32 = 500;

/// The loadable totals of one lift, rising.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Loadable(Vec<Mass>);

impl Loadable {
    pub(crate) fn of(track: &TrackParameters, parameters: &Parameters) -> Result<Loadable, Error> {
        let Some(implement) = parameters.implement(&track.implement) else { return Ok(Loadable::default()) };
        let heaviest = Mass::grams(HEAVIEST_KG * 1_000);
        let prepared = Prepared::new(implement, &parameters.stock, heaviest)?;
        let lightest = prepared.lightest().unwrap_or(heaviest);
        Ok(Loadable(prepared.totals(lightest, heaviest).collect()))
    }

    pub(crate) fn lightest(&self) -> Option<Mass> {
        self.0.first().copied()
    }

    /// The heaviest load that is not above this one.
    pub(crate) fn not_above(&self, load: Mass) -> Option<Mass> {
        let end = self.0.partition_point(|total| *total <= load);
        end.checked_sub(1).and_then(|at| self.0.get(at)).copied()
    }

    /// The heaviest load below this one.
    pub(crate) fn below(&self, load: Mass) -> Option<Mass> {
        let end = self.0.partition_point(|total| *total < load);
        end.checked_sub(1).and_then(|at| self.0.get(at)).copied()
    }

    /// The lightest load above this one.
    pub(crate) fn above(&self, load: Mass) -> Option<Mass> {
        self.0.get(self.0.partition_point(|total| *total <= load)).copied()
    }

    /// Rounded down to what can be loaded; the lightest where nothing lies below.
    pub(crate) fn rounded_down(&self, load: Mass) -> Mass {
        self.not_above(load).or_else(|| self.lightest()).unwrap_or(load)
    }
}
