//! A longer range: what load does it start at, and how does it begin?

use alloc::boxed::Box;
use alloc::vec::Vec;

use super::first_lifts::{first_lift, first_settings};
use super::right_bar::limits_for;
use crate::error::{Code, Error};
use crate::loading::{Implement, Loaded, Prepared, Rounding, Stock};
use crate::progression::{MoveOutlook, State};
use crate::quantity::{Day, Length, Mass, Name};
use crate::record::{Dimension, Event, EventKind, Lifter, Policy};

/// How a longer range begins.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LongerRange {
    /// How its load is made; absent where that cannot be loaded.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub loaded: Option<Loaded>,
    /// The load at the new range; not above the one before.
    pub load: Mass,
    /// Passing sessions that settle the new range before its gate counts again.
    pub settle: u8,
    /// The part of the load with which a harder rung would start instead.
    pub rung_part: f64,
}

/// Any lift and any day: nothing here depends on them.
const ANY: &str = "box squat";
const DAY: i32 = 0;
/// One pass ends the settling in: that of [`Status::Consolidating`](crate::progression::Status::Consolidating).
const SETTLE: u8 = 1;

/// At what load does a longer range start, and how does it begin? The rules themselves are asked, of a lift that has these
/// two ranges and moves by range, by the usual policy.
///
/// # Errors
/// `negative_load` for a load that is not above 0; what [`State::apply`] and [`State::decide`] report.
///
/// ```
/// use bismar::loading::{Bar, Implement, Stock};
/// use bismar::prescription::longer_range;
/// use bismar::quantity::{Length, Mass, Name};
///
/// let bar = Implement::Bar(Bar::new(Name::new("bar")?, Mass::from_kg(20.0)?, Mass::ZERO)?);
/// let (from, to) = (Length::from_mm(100.0)?, Length::from_mm(50.0)?);
/// let step = longer_range(&bar, &Stock::new(Vec::new())?, Mass::from_kg(20.0)?, from, to)?;
/// assert_eq!((step.load.kg(), step.settle), (20.0, 1)); // only the range moves
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn longer_range(
    implement: &Implement,
    stock: &Stock,
    load: Mass,
    from: Length,
    to: Length,
) -> Result<LongerRange, Error> {
    if !load.is_positive() {
        let most = Mass::MAX.kg();
        return Err(Error::range(Code::NegativeLoad, "load", load.kg(), 0.0, most, "kg, above 0"));
    }
    let mut lift = first_lift(ANY, implement.id().clone(), load)?;
    lift.ranges = Vec::from([from, to]);
    lift.moving = Dimension::Range;
    let (name, policy) = (lift.id.clone(), Policy::default());
    let rung_part = policy.rung_load;
    let settings = first_settings(Vec::from([lift]), Vec::from([implement.clone()]), stock.clone())?;
    let day = Day::from_number(DAY)?;
    let mut state = State::new(Lifter::new(name.clone()));
    state.apply(&Event::new(1, day, EventKind::ParametersChanged(Box::new(settings.with_policy(policy)))))?;
    let decision = state.decide(day)?.into_iter().find(|decision| decision.lift == name);
    let to = decision.and_then(|decision| match decision.outlook {
        MoveOutlook::OnOffer { to } => Some(to),
        MoveOutlook::Blocked { to, .. } => to,
    });
    let load_there = to.map_or(load, |to| to.load()).min(load);
    let loaded = Prepared::new(implement, stock, load)?.load(load_there, Rounding::Below).ok();
    Ok(LongerRange { loaded, load: load_there, settle: SETTLE, rung_part })
}

/// The same for a lift of somebody whose log tells of limits: never above a limit of load that concerns the lift. Absent
/// under a limit of range, since whether a longer one keeps it is for whoever gave the limit to say.
///
/// # Errors
/// As [`longer_range`].
///
/// ```
/// use bismar::loading::{Bar, Implement, Stock};
/// use bismar::prescription::longer_range_of;
/// use bismar::progression::State;
/// use bismar::quantity::{Length, Mass, Name};
/// use bismar::record::Lifter;
///
/// let bar = Implement::Bar(Bar::new(Name::new("bar")?, Mass::from_kg(20.0)?, Mass::ZERO)?);
/// let (from, to) = (Length::from_mm(100.0)?, Length::from_mm(50.0)?);
/// let nothing_limited = State::new(Lifter::new(Name::new("A")?));
/// let (lift, stock) = (Name::new("squat")?, Stock::new(Vec::new())?);
/// let step = longer_range_of(&nothing_limited, &lift, &bar, &stock, Mass::from_kg(20.0)?, from, to)?;
/// assert_eq!(step.map(|step| step.load.kg()), Some(20.0));
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn longer_range_of(
    state: &State,
    lift: &Name,
    implement: &Implement,
    stock: &Stock,
    load: Mass,
    from: Length,
    to: Length,
) -> Result<Option<LongerRange>, Error> {
    let step = longer_range(implement, stock, load, from, to)?;
    let limits = limits_for(state, lift);
    if limits.iter().any(|limit| limit.range.is_some()) {
        return Ok(None);
    }
    let Some(most) = limits.iter().filter_map(|limit| limit.load).min().filter(|most| *most < step.load)
    else {
        return Ok(Some(step));
    };
    let loaded = Prepared::new(implement, stock, load)?.load(most, Rounding::Below).ok();
    Ok(Some(LongerRange { loaded, load: most, ..step }))
}
