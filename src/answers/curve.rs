//! This lifter's own curve of repetitions and load, and whether there is enough for one.

use alloc::vec::Vec;

use super::diary::Diary;
use super::lacking::Lacking;
use super::strength::{LEARNED, Sessions, own_curve_of};
use crate::caution::Caution;
use crate::error::Error;
use crate::one_rm::{CurveForm, CurvePrior, EstimateOptions, OwnCurve, SetRefusal, usable_sets};
use crate::quantity::{Day, Name};
use crate::reason::Reason;
use crate::record::{Log, Place};

/// Sets that could not speak, by the first reason against them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RefusedSets {
    /// The reason.
    pub why: SetRefusal,
    /// How many sets.
    pub sets: u32,
}

/// The own curve of one lift.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LiftCurve {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Id of the lift.
    pub lift: Name,
    /// Where the sets were done: on the rung and in the range of the last session.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub place: Option<Place>,
    /// The curve with the interval of its slope; absent where the sets cannot tell one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub curve: Option<OwnCurve>,
    /// What is taken in its place until then.
    pub prior: CurvePrior,
    /// Whether the own sets have taken away at least half of what was uncertain, so that the curve is used.
    pub enough: bool,
    /// Sets of the last year at this place, at most 200.
    pub sets: u32,
    /// Of these, such as could speak.
    pub usable: u32,
    /// Why the others could not.
    pub refused: Vec<RefusedSets>,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows of the registry that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// What is this lifter's own curve of repetitions and load in this lift, how sure is it, and is there enough?
///
/// # Rules
/// Sets of the last year (the newest 200) on the rung and in the range of the last session, that passed technique and told
/// their reserve. Enough is when they took away half of what was uncertain of the slope (our choice).
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`; `unknown_lift`.
///
/// # Examples
/// ```
/// use bismar::answers::curve;
/// use bismar::quantity::Name;
/// use bismar::record::{Lifter, Log};
///
/// let empty = Log::new(Lifter::new(Name::new("A")?));
/// let found = curve(&empty, &Name::new("squat")?, "2026-03-02".parse()?)?;
/// assert!(found.curve.is_none() && !found.enough);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn curve(log: &Log, lift: &Name, today: Day) -> Result<LiftCurve, Error> {
    Diary::of(log)?.curve(lift, today)
}

impl Diary<'_> {
    /// What is this lifter's own curve? See [`curve`].
    ///
    /// # Errors
    /// `before_last_event`; `unknown_lift`.
    pub fn curve(&self, lift: &Name, today: Day) -> Result<LiftCurve, Error> {
        self.check_today(today)?;
        self.check_lift(lift)?;
        let sessions = Sessions::of(self, lift);
        let sets = sessions.of_curve(today);
        let uses = usable_sets(&sets, &EstimateOptions::default())?;
        let mut refused: Vec<RefusedSets> = Vec::new();
        for why in uses.iter().filter_map(|set| set.refusals.first()) {
            match refused.iter_mut().find(|known| known.why == *why) {
                Some(known) => known.sets += 1,
                None => refused.push(RefusedSets { why: *why, sets: 1 }),
            }
        }
        let usable = uses.iter().filter(|set| set.refusals.is_empty()).count() as u32;
        let found = own_curve_of(&sets);
        let mut missing = Vec::new();
        if sessions.done.is_empty() {
            missing.push(Lacking::SessionOf(lift.clone()));
        } else if found.is_none() {
            missing.push(Lacking::SetsForCurve { lift: lift.clone(), usable });
        }
        missing.extend((sessions.unweighed > 0).then_some(Lacking::BodyMass));
        let mut cautions = self.cautions(today);
        cautions.push(Caution::EstimatesAreRanges);
        Ok(LiftCurve {
            stops: self.state().stops_on(today),
            today,
            lift: lift.clone(),
            place: sessions.place,
            enough: found.as_ref().is_some_and(|curve| curve.learned >= LEARNED),
            curve: found,
            prior: CurveForm::Exponential.prior(),
            sets: sets.len() as u32,
            usable,
            refused,
            missing,
            sources: alloc::vec!["one_rm.own_curve", "one_rm.usable_sets", "one_rm.prior_slope_exponential"],
            cautions,
        })
    }
}
