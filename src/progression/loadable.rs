//! What the equipment of a lift can load at each of its heights, whether its start can be loaded, and what a part of a load is.

use alloc::vec::Vec;

use super::lift::Lift;
use crate::error::{Allowed, Code, Error};
use crate::loading::{AtHeight, Bar, Implement, Prepared};
use crate::quantity::{Length, Mass};
use crate::reason::Reason;
use crate::record::{LiftParameters, Parameters, Place, StartsFrom};

/// The heaviest load looked at: well above any load of a lifter whom this serves.
pub(crate) const HEAVIEST: Mass = Mass::grams(500_000);
/// A start that is lower by no more than this is no lower one (our choice: what a tape measures).
const LOWER_WITHIN_MM: f64 = 10.0;
/// The furthest that a recorded load may lie from the one printed and still be it: what rounding to half kilograms or
/// whole pounds makes (our choice).
const WRITTEN_WITHIN: Mass = Mass::grams(250);
/// What rounding to a tenth of a kilogram makes.
const TENTH_WITHIN: Mass = Mass::grams(50);

/// The loads that one lift can have, range by range where the discs carry the bar.
///
/// Help counts below zero, so that less of it lies higher. What a lifter then moves is the body mass less the help:
/// parts of a load are parts of that. Without a body mass they are not known, and nothing goes up by them.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Loadable {
    /// One list for every range of a lift from the floor, else a single one.
    heights: Vec<Height>,
    /// Body mass under the help; absent where nothing helps.
    helped: Option<Option<Mass>>,
    /// The lists are those of the ranges, so that one that is not there has no loads.
    by_range: bool,
}

/// The loads at one height.
#[derive(Clone, Debug, Default, PartialEq)]
struct Height {
    /// Rising.
    totals: Vec<Mass>,
    /// How far off the height the bar's centre lies, in mm; none where no disc tells.
    off_by_mm: Option<f64>,
    /// Where nothing lighter is made at the height: the lightest at the height nearest to it that is no lower, and how far
    /// off that lies.
    beside: Option<(Mass, f64)>,
}

/// The loads at a place.
#[derive(Clone, Copy)]
pub(crate) struct Loads<'a> {
    totals: &'a [Mass],
    /// The one lighter load at the nearest other height, where there is one.
    beside: Option<Mass>,
    helped: Option<Option<Mass>>,
}

impl Loadable {
    pub(crate) fn of(lift: &LiftParameters, all: &Parameters, body: Option<Mass>) -> Result<Loadable, Error> {
        let Some(implement) = all.implement(&lift.implement) else { return Ok(Loadable::default()) };
        let helped = matches!(implement, Implement::Assistance(_)).then_some(body);
        let heights = match (implement, lift.starts_from) {
            (Implement::Bar(bar), StartsFrom::Floor) => {
                let at = |height: &Length| {
                    let kept = AtHeight::new(bar, &all.stock, &all.blocks, *height, HEAVIEST)?;
                    let off_by_mm = kept.height_known().then(|| kept.off_by_mm());
                    let beside = lighter_beside(&kept, bar, all, *height);
                    let beside = beside.and_then(|other| Some((other.lightest()?, other.off_by_mm())));
                    Ok(Height { totals: kept.totals().collect(), off_by_mm, beside })
                };
                lift.ranges.iter().map(at).collect::<Result<Vec<Height>, Error>>()?
            }
            _ => {
                let prepared = Prepared::new(implement, &all.stock, HEAVIEST)?;
                let lightest = prepared.lightest().unwrap_or(HEAVIEST);
                let totals = prepared.totals(lightest, HEAVIEST).collect();
                alloc::vec![Height { totals, off_by_mm: Some(0.0), beside: None }]
            }
        };
        let by_range = lift.starts_from == StartsFrom::Floor && matches!(implement, Implement::Bar(_));
        Ok(Loadable { heights, helped, by_range })
    }

    /// Whether nobody has worked the loads out, as for a lift that is set aside.
    pub(crate) const fn is_unknown(&self) -> bool {
        self.heights.is_empty()
    }

    fn height(&self, place: Place) -> Option<&Height> {
        self.heights.get(if self.by_range { usize::from(place.range) } else { 0 })
    }

    /// The loads at a place.
    pub(crate) fn at(&self, place: Place) -> Loads<'_> {
        let height = self.height(place);
        let totals = height.map(|height| height.totals.as_slice()).unwrap_or_default();
        let beside = height.and_then(|height| height.beside).map(|(load, _)| load);
        Loads { totals, beside, helped: self.helped }
    }

    /// How far off its height the bar's centre lies at the nearest way to load it, in mm; none where nobody knows, since
    /// no disc tells its diameter.
    pub(crate) fn off_by_mm(&self, place: Place) -> Option<f64> {
        self.height(place).map_or(Some(0.0), |height| height.off_by_mm)
    }

    /// The same for that load, which may be lighter than any at the height.
    pub(crate) fn off_at(&self, place: Place, load: Mass) -> Option<f64> {
        let lightest = self.at(place).lightest();
        match self.height(place).and_then(|height| height.beside) {
            Some((beside, off)) if beside <= load && lightest.is_some_and(|lightest| load < lightest) => {
                Some(off)
            }
            _ => self.off_by_mm(place),
        }
    }

    /// The load that the start of the lift is made of at its height: as it is set, or the one meant by a number written down to a
    /// tenth of a kilogram. A start that cannot be loaded is refused, whatever the log has taken before: who loses discs says
    /// anew where the lift would begin, and what it has got to stays.
    ///
    /// # Errors
    /// `not_loadable`, with the loads beside it.
    pub(crate) fn start_of(&self, set: &LiftParameters) -> Result<Mass, Error> {
        let (load, loads) = (set.start.load(), self.at(set.start.place));
        let Some((lightest, heaviest)) = loads.lightest().zip(loads.heaviest()) else {
            let rule = Allowed::rule("an implement that makes some load");
            return Err(Error::new(Code::NotLoadable, "implement", set.implement.as_str(), rule));
        };
        let error = match (loads.not_above(load), loads.not_below(load)) {
            (Some(below), Some(above)) => match loads.written_as(load) {
                Some(made) => return Ok(made),
                None => {
                    let rule =
                        alloc::format!("{below} or {above}, made nearest to it at the height of the start");
                    Error::new(Code::NotLoadable, "load", load.kg(), Allowed::Rule(rule.into()))
                }
            },
            _ => {
                let (low, high) = (lightest.kg(), heaviest.kg());
                Error::range(Code::NotLoadable, "load", load.kg(), low, high, "kg at the height of the start")
            }
        };
        Err(error.within("work").within("start"))
    }

    /// A start on this equipment for a lift that was set on other: the same where it is made, else the next lighter load, else
    /// the lightest; none where nothing is made.
    pub(crate) fn start_made(&self, set: &LiftParameters) -> Option<Mass> {
        let (load, loads) = (set.start.load(), self.at(set.start.place));
        match loads.written_as(load) {
            Some(_) => Some(load),
            None => loads.not_above(load).or_else(|| loads.lightest()),
        }
    }

    pub(crate) const fn helps(&self) -> bool {
        self.helped.is_some()
    }

    /// Takes the body mass that is on record now.
    pub(crate) fn measure_against(&mut self, body: Mass) {
        self.helped = self.helped.map(|_| Some(body));
    }
}

impl Loads<'_> {
    /// Whether the implement helps and nobody knows what it helps to move.
    pub(crate) fn lacks_body_mass(&self) -> bool {
        self.helped == Some(None)
    }

    /// What is moved at this load: with help the body less the help, never less than nothing.
    fn moved(&self, load: Mass) -> Mass {
        match self.helped {
            None => Mass::from_nanograms(load.nanograms().abs()).unwrap_or(Mass::ZERO),
            Some(body) => body.and_then(|body| body.plus(load).ok()).unwrap_or(Mass::ZERO).max(Mass::ZERO),
        }
    }

    /// The load at which no more than that is moved; the most help where nobody knows what it helps to move.
    pub(crate) fn at_which_moved(&self, limit: Mass) -> Mass {
        match self.helped {
            None => limit,
            Some(body) => {
                let load = body.and_then(|body| limit.minus(body).ok());
                load.unwrap_or_else(|| self.lightest().unwrap_or(Mass::ZERO))
            }
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

    pub(crate) fn heaviest(&self) -> Option<Mass> {
        self.totals.last().copied()
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

    /// The load that somebody meant who wrote this one down, to a tenth of a kilogram or finer; none where none lies so near.
    pub(crate) fn written_as(&self, load: Mass) -> Option<Mass> {
        let apart = |made: &Mass| made.minus(load).map_or(i64::MAX, |gap| gap.nanograms().abs());
        let beside = [self.not_above(load), self.not_below(load)];
        let nearest = beside.into_iter().flatten().min_by_key(apart);
        nearest.filter(|made| apart(made) <= TENTH_WITHIN.nanograms())
    }

    /// Rounded down to what can be loaded; the lightest where nothing lies below.
    pub(crate) fn rounded_down(&self, load: Mass) -> Mass {
        self.within(load).or_else(|| self.lightest()).unwrap_or(load)
    }

    /// The same; none where everything that is made is heavier.
    pub(crate) fn within(&self, load: Mass) -> Option<Mass> {
        if self.totals.is_empty() {
            return Some(load);
        }
        self.not_above(load).or_else(|| self.beside.filter(|beside| *beside <= load))
    }

    /// The one lighter load at the nearest other height, where it is below this one.
    pub(crate) fn beside_below(&self, load: Mass) -> Option<Mass> {
        self.beside.filter(|beside| *beside < load)
    }

    /// A load below what is made of this one, at most that much or else the lightest: at the height, or else at the nearest
    /// other one; none where nothing is lighter.
    pub(crate) fn easier(&self, load: Mass, at_most: Mass) -> Option<Mass> {
        let made = self.rounded_down(load);
        let here = self.not_above(at_most).or_else(|| self.lightest());
        here.filter(|here| *here < made).or_else(|| self.beside_below(made))
    }

    /// The load that somebody wrote down as it is made: the one beside it that was meant, else the heaviest that is not above it.
    pub(crate) fn as_made(&self, written: Mass) -> Mass {
        let meant = self.not_below(written).filter(|above| self.is_as_printed(written, *above));
        meant.unwrap_or_else(|| self.rounded_down(written))
    }

    /// Whether a load as somebody wrote it down is the one that was printed: no other loadable load lies nearer, and the
    /// difference is no more than rounding makes.
    pub(crate) fn is_as_printed(&self, written: Mass, printed: Mass) -> bool {
        if written == printed {
            return true;
        }
        let apart = |from: Mass| from.minus(written).map_or(i64::MAX, |gap| gap.nanograms().abs());
        let others = [self.below(printed), self.above(printed)];
        let own = apart(printed);
        own <= WRITTEN_WITHIN.nanograms() && others.into_iter().flatten().all(|other| own < apart(other))
    }
}

impl Lift {
    /// The height of that place, where the bar starts so far off it that it is another one.
    pub(crate) fn height_not_made(&self, place: Place, off_mm: f64) -> Option<Reason> {
        let height = self.set.start_height(place).filter(|_| off_mm.abs() > LOWER_WITHIN_MM)?;
        Some(Reason::HeightNotMade { height, off_mm })
    }
}

/// What the bar is loaded with at the height that is nearest to this one and where something is lighter than everything
/// here; none where nothing is, or nobody knows the height. A bar that starts lower is no easier start, whatever it
/// weighs.
pub(crate) fn lighter_beside(
    kept: &AtHeight,
    bar: &Bar,
    all: &Parameters,
    height: Length,
) -> Option<AtHeight> {
    let below = kept.lightest()?.minus(Mass::grams(1)).ok()?;
    let other = AtHeight::new(bar, &all.stock, &all.blocks, height, below).ok()?;
    let known = kept.height_known() && other.height_known();
    (known && other.off_by_mm() >= -LOWER_WITHIN_MM).then_some(other)
}
