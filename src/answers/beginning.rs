//! Beginnings by name: lifts to begin with, the right bar for each, a log that begins with them, other equipment later.

use alloc::string::{String, ToString};
#[cfg(feature = "serde")]
use alloc::vec::Vec;

use crate::error::Error;
use crate::loading::{Implement, Stock};
#[cfg(feature = "serde")]
use crate::prescription::BarOffer;
use crate::prescription::{self, first_lift, first_settings};
#[cfg(feature = "serde")]
use crate::progression::fold;
use crate::quantity::{Day, Length, Mass, Name};
#[cfg(feature = "serde")]
use crate::record::Parameters;
use crate::record::{Lifter, Log, Plan};

/// A lift to begin with, what it is done with, and its first load.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct FirstLift {
    /// One of [`first_lifts`](crate::prescription::first_lifts()).
    pub lift: String,
    /// Id of the implement.
    pub implement: Name,
    /// The first load: one of [`first_bars`](crate::prescription::first_bars) says which.
    pub load: Mass,
}

impl FirstLift {
    /// That lift with that implement from that load.
    #[must_use]
    pub fn new(lift: &str, implement: Name, load: Mass) -> FirstLift {
        FirstLift { lift: lift.to_string(), implement, load }
    }
}

/// A log with its first events, and the plan for the first session.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Beginning {
    /// What is set, and who said that training may begin, where somebody did.
    pub log: Log,
    /// Every lift of it.
    pub plan: Plan,
}

/// Ids of the lifts to begin with.
#[cfg(feature = "serde")]
pub(super) fn first_lifts() -> Result<Vec<String>, Error> {
    Ok(prescription::first_lifts().map(ToString::to_string).collect())
}

/// A log that begins with these lifts, as [`prescription::begin`], and its plan.
///
/// # Errors
/// `unknown_name` for a lift that is not one of [`first_lifts`](crate::prescription::first_lifts()); what
/// [`Log::check`] and [`fold`] report, so also a first load that the equipment does not make.
///
/// ```
/// use bismar::answers::{FirstLift, begin};
/// use bismar::loading::{Bar, Implement, Stock};
/// use bismar::quantity::{Mass, Name};
/// use bismar::record::Lifter;
///
/// let (name, load) = (Name::new("bar")?, Mass::from_kg(20.0)?);
/// let bar = Implement::Bar(Bar::new(name.clone(), load, Mass::ZERO)?);
/// let lifts = [FirstLift::new("seated press", name, load)];
/// let lifter = Lifter::new(Name::new("A")?);
/// let begun = begin(&lifter, "2026-01-05".parse()?, &lifts, &[bar], &Stock::new(Vec::new())?, &[], None)?;
/// assert_eq!((begun.log.events.len(), begun.plan.lifts.len()), (1, 1));
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn begin(
    lifter: &Lifter,
    day: Day,
    lifts: &[FirstLift],
    implements: &[Implement],
    stock: &Stock,
    blocks: &[Length],
    cleared_by: Option<&Name>,
) -> Result<Beginning, Error> {
    let set = lifts.iter().enumerate().map(|(at, own)| {
        let made = first_lift(&own.lift, own.implement.clone(), own.load);
        made.map_err(|error| error.within(&alloc::format!("lifts[{at}]")))
    });
    let settings = first_settings(set.collect::<Result<_, _>>()?, implements.to_vec(), stock.clone())?;
    let settings = settings.with_blocks(blocks.to_vec());
    let (log, plan) = prescription::begin(lifter.clone(), day, settings, cleared_by.cloned())?;
    Ok(Beginning { log, plan })
}

/// [`prescription::other_bars`] of a log.
#[cfg(feature = "serde")]
pub(super) fn other_bars(log: &Log, lift: &Name) -> Result<Vec<BarOffer>, Error> {
    prescription::other_bars(&fold(log)?, lift)
}

/// [`prescription::with_bar`] of a log.
#[cfg(feature = "serde")]
pub(super) fn with_bar(log: &Log, lift: &Name, implement: &Name) -> Result<Parameters, Error> {
    prescription::with_bar(&fold(log)?, lift, implement)
}

/// [`prescription::with_kit`] of a log.
#[cfg(feature = "serde")]
pub(super) fn with_kit(
    log: &Log,
    implements: &[Implement],
    stock: &Stock,
    blocks: &[Length],
) -> Result<Parameters, Error> {
    prescription::with_kit(&fold(log)?, implements.to_vec(), stock.clone(), blocks.to_vec())
}
