//! What is due this year, how function stands to its floors, and what must still be there in later years.

use alloc::vec::Vec;

use super::diary::{Diary, LiftDone};
use super::lacking::Lacking;
use crate::caution::Caution;
use crate::error::Error;
use crate::horizon::{
    Age, BodyMassOn, CardSettings, DatedFloor, Floor, FloorMargin, FloorPlan, FunctionTest, Outlook, Person,
    Phase, ScenarioBands, ScenarioSettings, Sex, TestDone, Training, YearlyCard, YearlyFacts, ewgsop2_floor,
    floor_margin, long_plan, scenario, yearly_card,
};
use crate::progression::State;
use crate::quantity::{Day, Mass, Name};
use crate::reason::{NamedPlace, Reason};
use crate::record::{Event, EventKind, EverydayTest, LoadToKeep, Log, Plan, Weighing, YearsAhead};
use crate::sign::Ask;

/// Days that a card looks back for falls, new medicines and body masses.
const LOOK_BACK: i32 = 365;

/// The last result of a test, against its published floor.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TestedFunction {
    /// Which test.
    pub test: FunctionTest,
    /// The same by the name that the log has for it.
    pub written: EverydayTest,
    /// When it was last done.
    pub on: Day,
    /// Its result, in the unit of the test.
    pub result: f64,
    /// When it was done before that, and with what result.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub before: Option<(Day, f64)>,
    /// The published floor; absent where none is here for this test.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub floor: Option<Floor>,
    /// How far the result lies from it.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub margin: Option<FloorMargin>,
}

/// A load that must still be there at a later age.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct KeptLoad {
    /// As planned.
    pub planned: LoadToKeep,
    /// What the lift has last shown in a session that passed, and when.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub shown: Option<(Day, Mass)>,
    /// Where that was.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub place: Option<NamedPlace>,
    /// What is needed now, and what margin is left; absent where nothing was shown or the birthday is not known.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub plan: Option<FloorPlan>,
    /// What the phases asked about would leave, with the part of the courses at or above the load; absent where none were
    /// asked about, nothing was shown or the birthday is not known.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub what_if: Option<ScenarioBands>,
}

/// The yearly answer.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Year {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// What is due, by day, and what is worth a talk.
    pub card: YearlyCard,
    /// Tests that were done, against their floors.
    pub tests: Vec<TestedFunction>,
    /// Loads to keep for later years.
    pub keep: Vec<KeptLoad>,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// What is due this year: clearance, tests of everyday function against their floors, weighings, lifts to swap and by when,
/// planned gaps; and what must still be there at a later age?
///
/// Swaps, gaps, weighings and loads to keep come from the plan's [`YearsAhead`], all else from the log. A load to keep is
/// held against what the lift last showed in a session that passed, by the planning bands for people who keep training. With
/// phases, each load to keep is also held against what these would leave: what if strength is held, gained, lost for a while?
///
/// # Errors
/// What [`fold`](crate::progression::fold), [`Plan::check`], [`yearly_card`], [`long_plan`] and [`scenario`] report; `before_last_event`;
/// `unknown_name` for an implement called unavailable that is not there.
pub fn year(
    log: &Log,
    plan: &Plan,
    today: Day,
    sex: Option<Sex>,
    phases: Option<&Vec<Phase>>,
) -> Result<Year, Error> {
    Diary::of(log)?.year(plan, today, sex, phases)
}

impl Diary<'_> {
    /// What is due this year? See [`year`].
    ///
    /// # Errors
    /// As [`year`].
    pub fn year(
        &self,
        plan: &Plan,
        today: Day,
        sex: Option<Sex>,
        phases: Option<&Vec<Phase>>,
    ) -> Result<Year, Error> {
        plan.check()?;
        self.state().parameters().map_or(Ok(()), |all| plan.check_against(all))?;
        self.check_today(today)?;
        let state = self.state();
        let events: Vec<&Event> = self.events().collect();
        let none = YearsAhead::default();
        let ahead = plan.years.as_ref().unwrap_or(&none);
        let tests = last_tests(&events);
        let mut settings = CardSettings::default();
        if let Some(given) = state.clearance() {
            settings.clearance_days = u16::try_from(given.expires.since(given.given)).unwrap_or(0);
        }
        let card = yearly_card(&facts(state, ahead, &tests, &events, today)?, today, &settings)?;
        let mut missing = Vec::new();
        if state.clearance().is_none() {
            missing.push(Lacking::Clearance);
        }
        if state.body_mass().is_none() {
            missing.push(Lacking::BodyMass);
        }
        if tests.is_empty() {
            missing.push(Lacking::FunctionTest);
        }
        if state.lifter().born.is_none() && !ahead.keep.is_empty() {
            missing.push(Lacking::Birthday);
        }
        let tests =
            tests.into_iter().map(|tested| against_floor(tested, sex)).collect::<Result<Vec<_>, _>>()?;
        let keep = ahead.keep.iter().enumerate();
        let keep = keep.map(|(at, planned)| {
            kept(self, planned, today, (sex, phases))
                .map_err(|error| error.within(&alloc::format!("years.keep[{at}]")))
        });
        let keep: Vec<KeptLoad> = keep.collect::<Result<_, _>>()?;
        let unseen = keep.iter().filter(|kept| kept.shown.is_none());
        missing.extend(unseen.map(|kept| Lacking::PassOf(kept.planned.lift.clone())));
        let cautions = cautions(state, &card, &tests, &keep, today);
        let mut sources = alloc::vec!["horizon.yearly_card"];
        if tests.iter().any(|tested| tested.floor.is_some()) {
            sources.extend(["horizon.ewgsop2_floor", "horizon.floor_margin"]);
        }
        if keep.iter().any(|kept| kept.plan.is_some()) {
            sources.extend(["horizon.long_plan", "horizon.planning_bands"]);
        }
        if keep.iter().any(|kept| kept.what_if.is_some()) {
            sources.push("horizon.scenario");
        }
        Ok(Year { stops: state.stops_on(today), today, card, tests, keep, missing, sources, cautions })
    }
}

/// A test with its last result and the one before.
struct LastTest {
    written: EverydayTest,
    on: Day,
    result: f64,
    before: Option<(Day, f64)>,
}

/// The test by the name of the tables of floors.
const fn by_floor(written: EverydayTest) -> FunctionTest {
    match written {
        EverydayTest::ChairRiseSeconds => FunctionTest::FiveChairRises,
        EverydayTest::ChairRiseCount => FunctionTest::ChairStandsIn30Seconds,
        EverydayTest::GaitSpeed => FunctionTest::GaitSpeed,
        EverydayTest::Grip => FunctionTest::Grip,
        EverydayTest::FloorRise => FunctionTest::FloorRise,
    }
}

/// The last result of each test.
fn last_tests(events: &[&Event]) -> Vec<LastTest> {
    let mut tests: Vec<LastTest> = Vec::new();
    for event in events {
        let EventKind::FunctionTested(done) = &event.kind else { continue };
        let known = tests.iter().position(|known| known.written == done.test).map(|at| tests.remove(at));
        let before = known.map(|known| (known.on, known.result));
        tests.push(LastTest { written: done.test, on: event.day, result: done.result, before });
    }
    tests
}

fn facts(
    state: &State,
    ahead: &YearsAhead,
    tests: &[LastTest],
    events: &[&Event],
    today: Day,
) -> Result<YearlyFacts, Error> {
    let recent = || events.iter().filter(|event| today.since(event.day) <= LOOK_BACK);
    let masses = events.iter().filter_map(|event| match event.kind {
        EventKind::BodyMassRecorded(mass) => Some(BodyMassOn { on: event.day, mass }),
        _ => None,
    });
    let last = masses.clone().next_back();
    let mut body_masses: Vec<BodyMassOn> = masses.filter(|one| today.since(one.on) <= LOOK_BACK).collect();
    if body_masses.is_empty() {
        body_masses.extend(last);
    }
    let said = |wanted: Ask| {
        recent().any(|event| match &event.kind {
            EventKind::DayReport(report) => report.asks.iter().flatten().any(|ask| *ask == wanted),
            _ => false,
        })
    };
    Ok(YearlyFacts {
        clearance: state.clearance().map(|given| given.given),
        tests: tests.iter().map(|last| TestDone { test: by_floor(last.written), on: last.on }).collect(),
        equipment: equipment(state, ahead)?,
        swaps: ahead.swaps.clone(),
        gaps: ahead.gaps.clone(),
        body_masses,
        mass_loss_intended: ahead.mass_loss_intended,
        fall: said(Ask::Fall),
        new_medicine: said(Ask::NewMedicine),
    })
}

/// Every bar, machine and set of discs in use, and when it was last weighed.
fn equipment(state: &State, ahead: &YearsAhead) -> Result<Vec<Weighing>, Error> {
    let mut all = ahead.weighed.clone();
    let Some(parameters) = state.parameters() else { return Ok(all) };
    let mut used: Vec<Name> = parameters.implements.iter().map(|implement| implement.id().clone()).collect();
    if !parameters.stock.discs().is_empty() {
        used.push(Name::new("discs")?);
    }
    for equipment in used {
        if !all.iter().any(|known| known.equipment == equipment) {
            all.push(Weighing { equipment, on: None });
        }
    }
    Ok(all)
}

fn against_floor(last: LastTest, sex: Option<Sex>) -> Result<TestedFunction, Error> {
    let LastTest { written, on, result, before } = last;
    let test = by_floor(written);
    // A test that the source has no floor for is told without one.
    let floor = ewgsop2_floor(test, sex).ok();
    let margin = floor.as_ref().map(|floor| floor_margin(result, floor)).transpose()?;
    Ok(TestedFunction { test, written, on, result, before, floor, margin })
}

fn kept(
    diary: &Diary<'_>,
    planned: &LoadToKeep,
    today: Day,
    (sex, phases): (Option<Sex>, Option<&Vec<Phase>>),
) -> Result<KeptLoad, Error> {
    let state = diary.state();
    if let Some(all) = state.parameters() {
        all.check_id(&planned.lift)?;
    }
    let lift = state.lift_state(&planned.lift);
    let shown = lift.and_then(|lift| lift.now().proven).filter(|(_, load)| load.is_positive());
    let (mut plan, mut what_if) = (None, None);
    if let (Some((_, load)), Some(born), true) = (shown, state.lifter().born, planned.load.is_positive()) {
        let floor = DatedFloor {
            name: planned.name.clone(),
            floor: planned.load.kg(),
            at: Age::new(f64::from(planned.at_age))?,
            capacity: load.kg(),
        };
        let outlook = Outlook::Planning(Training::Consistent);
        plan = long_plan(&[floor], &Person { born, sex }, today, &outlook, None)?.into_iter().next();
        if let Some(phases) = phases {
            let settings = ScenarioSettings { floor: Some(planned.load.kg()), ..ScenarioSettings::default() };
            what_if = Some(scenario(load.kg(), Age::on(born, today)?, phases, &outlook, sex, &settings)?);
        }
    }
    let on = |day: Day| diary.sessions_of(&planned.lift).filter(move |done| done.day == day);
    // Of several sessions of a day the first one carries what all of them came to.
    let passed = |done: &LiftDone<'_>| done.passed();
    let place = shown.and_then(|(day, _)| on(day).find(passed).or_else(|| on(day).next())?.named_place());
    Ok(KeptLoad { planned: planned.clone(), shown, place, plan, what_if })
}

fn cautions(
    state: &State,
    card: &YearlyCard,
    tests: &[TestedFunction],
    keep: &[KeptLoad],
    today: Day,
) -> Vec<Caution> {
    let mut cautions = super::cautions_of(state, today);
    let margins =
        tests.iter().filter_map(|tested| tested.margin.as_ref()).flat_map(|margin| &margin.cautions);
    let plans = keep.iter().filter_map(|kept| kept.plan.as_ref()).flat_map(|plan| &plan.cautions);
    let what_if = keep.iter().filter_map(|kept| kept.what_if.as_ref()).flat_map(|bands| &bands.cautions);
    for caution in card.cautions.iter().chain(margins).chain(plans).chain(what_if) {
        if !cautions.contains(caution) {
            cautions.push(*caution);
        }
    }
    cautions
}
