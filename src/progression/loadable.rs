//! What the equipment of a lift can load, and what a part of a load is.

use alloc::vec::Vec;

use crate::error::Error;
use crate::loading::{Implement, Prepared};
use crate::quantity::Mass;
use crate::record::{Parameters, TrackParameters};

/// The heaviest load looked at: well above any load of a lifter whom this serves.
const HEAVIEST_KG: i32 = 500;

/// The loadable totals of one lift, rising, and what they are measured against.
///
/// Help counts below zero, so that less of it lies higher. What a lifter then moves is the body mass less the help:
/// parts of a load are parts of that. Without a body mass they are not known, and nothing goes up by them.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Loadable {
    totals: Vec<Mass>,
    /// Body mass under the help; absent where nothing helps.
    helped: Option<Option<Mass>>,
}

impl Loadable {
    pub(crate) fn of(
        track: &TrackParameters,
        parameters: &Parameters,
        body: Option<Mass>,
    ) -> Result<Loadable, Error> {
        let Some(implement) = parameters.implement(&track.implement) else { return Ok(Loadable::default()) };
        let heaviest = Mass::grams(HEAVIEST_KG * 1_000);
        let prepared = Prepared::new(implement, &parameters.stock, heaviest)?;
        let lightest = prepared.lightest().unwrap_or(heaviest);
        let helped = matches!(implement, Implement::Assistance(_)).then_some(body);
        Ok(Loadable { totals: prepared.totals(lightest, heaviest).collect(), helped })
    }

    /// Whether the implement helps and nobody knows what it helps to move.
    pub(crate) fn lacks_body_mass(&self) -> bool {
        self.helped == Some(None)
    }

    pub(crate) fn helps(&self) -> bool {
        self.helped.is_some()
    }

    /// Takes the body mass that is on record now.
    pub(crate) fn measure_against(&mut self, body: Mass) {
        self.helped = self.helped.map(|_| Some(body));
    }

    /// What is moved at this load: with help the body less the help, never less than nothing.
    fn moved(&self, load: Mass) -> Mass {
        match self.helped {
            None => Mass::from_nanograms(load.nanograms().abs()).unwrap_or(Mass::ZERO),
            Some(body) => body.and_then(|body| body.plus(load).ok()).unwrap_or(Mass::ZERO).max(Mass::ZERO),
        }
    }

    /// The load within a part of what is moved, above this one or below it.
    pub(crate) fn grown(&self, load: Mass, part: f64) -> Mass {
        let step = self.moved(load).scaled_down(part).unwrap_or(Mass::ZERO);
        load.plus(step).unwrap_or(load)
    }

    /// The load at which a part of what is moved is left; the most help where that is not known.
    pub(crate) fn share(&self, load: Mass, part: f64) -> Mass {
        match self.helped {
            None => load.scaled_down(part).unwrap_or(Mass::ZERO),
            Some(None) if part < 1.0 => self.lightest().unwrap_or(load),
            Some(_) => self.grown(load, part - 1.0),
        }
    }

    pub(crate) fn lightest(&self) -> Option<Mass> {
        self.totals.first().copied()
    }

    /// The heaviest load that is not above this one.
    pub(crate) fn not_above(&self, load: Mass) -> Option<Mass> {
        let end = self.totals.partition_point(|total| *total <= load);
        end.checked_sub(1).and_then(|at| self.totals.get(at)).copied()
    }

    /// The lightest load that is not below this one.
    pub(crate) fn not_below(&self, load: Mass) -> Option<Mass> {
        self.totals.get(self.totals.partition_point(|total| *total < load)).copied()
    }

    /// The heaviest load below this one.
    pub(crate) fn below(&self, load: Mass) -> Option<Mass> {
        let end = self.totals.partition_point(|total| *total < load);
        end.checked_sub(1).and_then(|at| self.totals.get(at)).copied()
    }

    /// The lightest load above this one.
    pub(crate) fn above(&self, load: Mass) -> Option<Mass> {
        self.totals.get(self.totals.partition_point(|total| *total <= load)).copied()
    }

    /// Rounded down to what can be loaded; the lightest where nothing lies below.
    pub(crate) fn rounded_down(&self, load: Mass) -> Mass {
        self.not_above(load).or_else(|| self.lightest()).unwrap_or(load)
    }
}
