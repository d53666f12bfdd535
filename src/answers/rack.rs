//! At the rack: how each load of today is made, disc by disc, and how large the next step would be.

use alloc::vec::Vec;

use super::diary::Diary;
use super::lacking::Lacking;
use super::strength::{Sessions, enough_of_a_curve};
use crate::caution::Caution;
use crate::error::Error;
use crate::loading::{
    Bar, BridgeOptions, EndMoves, GripHeight, HandlingOrder, IMBALANCE_LIMIT, Implement, MassBand,
    PlacedDisc, StepReality, Tolerance, WarmUpStep, grip_height, handling_order, read_bar, step_reality,
    warm_up,
};
use crate::one_rm::{CurveForm, Equation, own_curve_load};
use crate::prescription::{Equipment, LiftToday, next_session_from};
use crate::progression::View;
use crate::quantity::{Day, Kilograms, Mass, Name, Reps};
use crate::reason::Reason;
use crate::record::{Log, Place, Plan, StartsFrom};

/// Longest table of what can be done for how many repetitions.
const MOST_REPS: u16 = 30;

/// One load of today and how the bar gets there from the one before.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RackSet {
    /// The load.
    pub load: Mass,
    /// Repetitions.
    pub reps: u8,
    /// A warm-up set; else the work sets.
    pub warm_up: bool,
    /// Discs that come off and go on at each end; absent where the load is not made of discs on a bar.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub moves: Option<EndMoves>,
    /// In which order, the ends in turn, and how much heavier one end is on the way; absent where a disc is heavier than
    /// one end may be.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub handling: Option<HandlingOrder>,
}

/// The loads of one lift today, at the rack.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Rack {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Id of the lift.
    pub lift: Name,
    /// Where it is done today.
    pub place: Place,
    /// Warm-up sets rising to the work sets; empty where nothing is lifted today.
    pub sets: Vec<RackSet>,
    /// Discs handled at each end in all.
    pub moves_each_end: u32,
    /// No other way to make these loads handles fewer; false where the height decides which discs are used.
    pub proved: bool,
    /// The least and the most that the work load may weigh; absent without a rule of tolerance, or a bar.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub weighs: Option<MassBand>,
    /// Where the hands are, for a bar that begins at a height.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub grip: Option<GripHeight>,
    /// The next load that the equipment makes, how large a step that is, and at how many repetitions here it is bridged.
    /// A fact about the equipment: whether there is a step is for the gate to say.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub step: Option<StepReality>,
    /// The repetitions are by the lifter's own curve; else by a published equation (Epley 1985).
    pub own_curve: bool,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows of the registry that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// How is each load of today made, with the fewest discs handled; what may it weigh; how large would the next step be?
///
/// # Errors
/// What [`next_session_from`] reports; `unknown_lift` for a lift that is not in the plan; those of [`Tolerance::band`].
///
/// # Examples
/// ```
/// use bismar::answers::rack;
/// use bismar::quantity::Name;
/// use bismar::record::{Lifter, Log, Plan};
///
/// let (empty, squat) = (Log::new(Lifter::new(Name::new("A")?)), Name::new("squat")?);
/// let error = rack(&empty, &Plan::of([squat.clone()]), &squat, "2026-03-02".parse()?, None);
/// assert_eq!(error.unwrap_err().code().as_str(), "no_parameters");
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn rack(
    log: &Log,
    plan: &Plan,
    lift: &Name,
    today: Day,
    tolerance: Option<&Tolerance>,
) -> Result<Rack, Error> {
    Diary::of(log)?.rack(plan, lift, today, tolerance)
}

impl Diary<'_> {
    /// How is each load of today made? See [`rack`].
    ///
    /// # Errors
    /// As [`rack`].
    pub fn rack(
        &self,
        plan: &Plan,
        lift: &Name,
        today: Day,
        tolerance: Option<&Tolerance>,
    ) -> Result<Rack, Error> {
        let session = next_session_from(self.state(), plan, today)?;
        let of_today = session.lifts.into_iter().find(|planned| planned.lift == *lift);
        let of_today = of_today.ok_or_else(|| super::not_in_plan(lift))?;
        let then = self.state().as_of(today);
        let view = then.view(lift, today)?;
        let stock = &view.all.stock;
        let mut answer = Rack {
            stops: session.stops,
            today,
            lift: lift.clone(),
            place: of_today.place,
            sets: Vec::new(),
            moves_each_end: 0,
            proved: false,
            weighs: None,
            grip: None,
            step: None,
            own_curve: false,
            missing: Vec::new(),
            sources: alloc::vec!["loading.warm_up", "loading.handling_order", "loading.step_reality"],
            cautions: super::cautions_of_lift(self.state(), &of_today, today),
        };
        let (Some(load), Some(implement)) = (of_today.load, view.all.implement(&view.lift.set.implement))
        else {
            return Ok(answer);
        };
        let side = match implement {
            Implement::Bar(bar) => {
                (answer.sets, answer.proved) = on_bar(&view, &of_today, bar)?;
                let height = of_today.height;
                answer.grip = height.map(|height| grip_height(bar, height)).transpose()?;
                answer.sets.last().and_then(|set| set.moves.as_ref()).map(|moves| (bar, kinds(&moves.side)))
            }
            _ => {
                answer.sets = plain(&of_today, load);
                None
            }
        };
        let handled = |set: &RackSet| set.moves.as_ref().map_or(0, |moves| moves.off.len() + moves.on.len());
        answer.moves_each_end = answer.sets.iter().map(|set| handled(set) as u32).sum();
        if let (Some(tolerance), Some((bar, side))) = (tolerance, side) {
            answer.weighs = Some(read_bar(bar, stock, &side, &side, false, *tolerance)?.band);
            answer.sources.push("loading.read_bar");
        }
        let own = self.curve_at(lift, of_today.place, today);
        if load.is_positive() {
            let (discs, capacity) = (Vec::new(), capacity(own)?);
            let options = BridgeOptions { discs, reps: Reps::whole(u16::from(of_today.reps))?, capacity };
            // At the top of the equipment there is no next load.
            answer.step = step_reality(implement, stock, load, &options).ok();
        }
        answer.own_curve = own.is_some();
        answer.sources.push(if own.is_some() { "one_rm.own_curve" } else { "one_rm.epley_1985" });
        Ok(answer)
    }

    /// Form and slope of the own curve on that rung and in that range, where there is enough of one.
    pub(super) fn curve_at(&self, lift: &Name, place: Place, today: Day) -> Option<(CurveForm, f64)> {
        let sets = Sessions::at(self, lift, place).of_curve(today);
        enough_of_a_curve(&sets).map(|own| (own.form, own.slope))
    }
}

/// The loads of today without discs.
fn plain(today: &LiftToday, load: Mass) -> Vec<RackSet> {
    let set = |load, reps, warm_up| RackSet { load, reps, warm_up, moves: None, handling: None };
    let warm = today.warm_up.iter().filter(|set| set.load < load).map(|warm| set(warm.load, warm.reps, true));
    warm.chain([set(load, today.reps, false)]).collect()
}

/// The loads of today on a bar, each with the moves from the one before, and whether none needs fewer.
fn on_bar(view: &View<'_>, today: &LiftToday, bar: &Bar) -> Result<(Vec<RackSet>, bool), Error> {
    let load = today.load.unwrap_or(Mass::ZERO);
    let mut sets = plain(today, load);
    let (moves, proved) = if view.lift.set.starts_from == StartsFrom::Floor {
        (at_height(view, today, &sets)?, false)
    } else {
        let steps: Vec<WarmUpStep> =
            sets.iter().filter(|set| set.warm_up).map(step).collect::<Result<_, _>>()?;
        let found = warm_up(bar, &view.all.stock, load, &steps)?;
        (found.sets.into_iter().map(|set| set.moves).collect::<Vec<_>>(), found.proved)
    };
    let mut before: Vec<u16> = Vec::new();
    for (set, moves) in sets.iter_mut().zip(moves) {
        let after = kinds(&moves.side);
        set.handling = handling_order(&view.all.stock, &before, &after, IMBALANCE_LIMIT).ok();
        set.moves = Some(moves);
        before = after;
    }
    Ok((sets, proved))
}

fn step(set: &RackSet) -> Result<WarmUpStep, Error> {
    let reps = Reps::whole(u16::from(set.reps))?;
    Ok(WarmUpStep { target: set.load, tolerance: Mass::ZERO, reps, reference: false })
}

/// From stack to stack as the height asks for them: what both have from the inside out stays on.
fn at_height(view: &View<'_>, today: &LiftToday, sets: &[RackSet]) -> Result<Vec<EndMoves>, Error> {
    let equipment = Equipment::of(view, today.place)?;
    let mut before: Vec<PlacedDisc> = Vec::new();
    let mut all = Vec::new();
    for set in sets {
        let Some(made) = equipment.load(set.load) else { break };
        let moves = EndMoves::between(&before, &made.loaded);
        before.clone_from(&moves.side);
        all.push(moves);
    }
    Ok(all)
}

fn kinds(side: &[PlacedDisc]) -> Vec<u16> {
    side.iter().map(|disc| disc.kind).collect()
}

/// Parts of the maximum that can be done for 1, 2, 3, ... repetitions.
fn capacity(own: Option<(CurveForm, f64)>) -> Result<Vec<f64>, Error> {
    let whole = Kilograms::new(1.0)?;
    let part = |reps: u16| match own {
        Some((form, slope)) => own_curve_load(form, slope, whole, Reps::whole(reps)?).map(Kilograms::value),
        None => Equation::Epley1985.fraction(Reps::whole(reps)?).map(|part| part.value()),
    };
    (1..=MOST_REPS).map(part).collect()
}
