//! Playing the rules through.

use alloc::boxed::Box;
use alloc::string::ToString;
use alloc::vec::Vec;

use super::lifter::{Lifter, Stage};
use super::outcome::{Rehearsal, Tally};
use super::skill::SkillModel;
use super::week::{TrainingDay, WEEK};
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::gate::check_criteria;
use crate::numeric::generator::Generator;
use crate::quantity::{Day, Name};
use crate::record::{EventKind, Parameters, Plan};
use crate::source::{OURS, constant, formula, rows};

constant! {
    "rehearsal.most_lifter_weeks",
    /// Most lifters times weeks in one rehearsal.
    ///
    /// # Source
    /// Our choice (row `rehearsal.most_lifter_weeks`).
    pub const MOST_LIFTER_WEEKS: u32 = 20_800;
    source: OURS, place: "what-if", standing: OurChoice, seen: NotApplicable,
    domain: "400 lifters over a year, or 20 over twenty",
}

/// First day of a rehearsal, a Monday; the rules know days apart, not dates.
const FIRST: (i32, u8, u8) = (2001, 1, 1);
/// Name under which everything of a rehearsal is recorded.
const NOBODY: &str = "rehearsal";

formula! {
    "rehearsal.simulate",
    /// A lifter of this skill under these rules: how long until a milestone, how often held, how often back?
    ///
    /// Each lifter trains what [`next_session_from`](crate::prescription::next_session_from) prescribes, through
    /// [`State::apply`](crate::progression::State::apply), with every chance as the model states it. A rehearsal
    /// of the rules: it foretells nothing about a person.
    ///
    /// # Formula
    /// Each draw comes from a stream of its own for lifter, day and lift, so that lifters of different skill
    /// meet the same days. Centiles are the smallest days by which 10, 25, 50, 75 and 90 % of the lifters were
    /// there. A step on offer is taken on the lift's day of training; of lifts that share the days after a step (a pair, or a
    /// region), the one that moved last leaves the next step to one that has waited longer and has not let its day go by.
    ///
    /// # Domain
    /// At most [`MOST_LIFTER_WEEKS`] lifters times weeks. Nobody learns: skill stays as stated.
    ///
    /// # Errors
    /// `rehearsal_too_long`; `out_of_range` without a lifter or a week; `unknown_lift` for a lift of the week
    /// that the plan leaves out; what [`SkillModel::check`], [`Parameters::check`] and [`Plan::check`] report.
    ///
    /// # Source
    /// Our choice of model (row `rehearsal.simulate`); the generator is SplitMix64 (Steele, Lea & Flood 2014,
    /// doi 10.1145/2660193.2660195).
    ///
    /// # Examples
    /// ```
    /// # use bismar::{gate::*, loading::*, quantity::*, record::*};
    /// # let load = Mass::from_kg(40.0)?;
    /// # let squat = Name::new("squat")?;
    /// # let gate = Gate::new(Requirement::PassRun(PassRun::new(9, 10, 2)?))?;
    /// # let lift = LiftParameters::new(squat.clone(), Body::Lower, Name::new("bar")?, Grant::new(Work::new(2, 5, load)), gate)
    /// #     .with_regions(vec![Name::new("knee")?])
    /// #     .with_rungs(vec![Rung::new(Name::new("free")?, vec![])])
    /// #     .with_criteria(vec![Criterion::critical("brace held")?])
    /// #     .with_over_the_body(true);
    /// # let bar = Implement::Bar(Bar::new(Name::new("bar")?, Mass::from_kg(20.0)?, Mass::ZERO)?);
    /// # let stock = Stock::new(vec![Disc::new(Mass::from_kg(10.0)?, 4)?, Disc::new(Mass::from_kg(1.0)?, 8)?])?;
    /// # let parameters = Parameters::new(vec![Region::new(Name::new("knee")?)], vec![lift], vec![bar], stock);
    /// # let plan = Plan::of([squat.clone()]);
    /// use bismar::rehearsal::{LiftSkill, Milestone, SkillModel, TrainingDay, simulate};
    ///
    /// // A squat of 2 x 5 from 40 kg on two days a week, for somebody of whose repetitions 98 % are acceptable.
    /// let milestone = Some(Milestone::Load(Mass::from_kg(44.0)?));
    /// let day = |weekday| TrainingDay::new(weekday, vec![squat.clone()]);
    /// let model = SkillModel::new(vec![LiftSkill::of(squat.clone(), 0.98)
    ///     .with_milestone(milestone)], vec![day(0), day(3)])
    ///     .with_age(57)
    ///     .with_below_usual(0.05)
    ///     .with_missed_session(0.05)
    ///     .with_cleared_after_days(14);
    /// let played = simulate(&parameters, &plan, &model, 26, 10, 1)?;
    /// assert_eq!(played, simulate(&parameters, &plan, &model, 26, 10, 1)?);
    /// assert!(played.lifts[0].shares.held > 0.5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn simulate(
        parameters: &Parameters, plan: &Plan, model: &SkillModel, weeks: u32, lifters: u32, seed: u32,
    ) -> Result<Rehearsal, Error> {
        bounded(weeks, lifters)?;
        parameters.check()?;
        parameters.lifts.iter().try_for_each(|lift| check_criteria(&lift.criteria))?;
        plan.check()?;
        model.check(parameters)?;
        let (year, month, day) = FIRST;
        let first = Day::from_calendar(year, month, day)?;
        let who = Name::new(NOBODY)?;
        let born = model.age.map(|age| Day::from_calendar(year - i32::from(age), month, day)).transpose()?;
        let stage = Stage { parameters, model, plans: plans(plan, &model.week)?, first, born, who };
        let mut novice = Lifter::new(&stage);
        novice.add(first, EventKind::ParametersChanged(Box::new(parameters.clone())))?;
        novice.add(first, stage.clearance())?;
        let mut tallies: Vec<Tally> = model.lifts.iter().map(|_| Tally::default()).collect();
        for lifter in 0..lifters {
            let own = (Generator::stream(seed, lifter).bits() >> 32) as u32;
            novice.clone().play(weeks * u32::from(WEEK), own, &mut tallies)?;
        }
        let (version, digest) = novice.digest();
        let lifts = model.lifts.iter().zip(tallies);
        Ok(Rehearsal {
            lifters,
            weeks,
            seed,
            lifts: lifts
                .map(|(lift, tally)| tally.finish(lift.lift.clone(), lift.milestone.clone(), lifters))
                .collect(),
            cautions: Vec::from([Caution::RehearsalOfRules, Caution::HoldingIsGood]),
            version: version.to_string(),
            parameters: digest.to_string(),
        })
    }
    source: OURS, place: "what-if", standing: OurChoice, seen: NotApplicable,
    domain: "a made-up lifter of constant skill whose repetitions are independent",
}

fn bounded(weeks: u32, lifters: u32) -> Result<(), Error> {
    let most = f64::from(MOST_LIFTER_WEEKS);
    for (field, count) in [("weeks", weeks), ("lifters", lifters)] {
        if count == 0 {
            return Err(Error::range(Code::OutOfRange, field, count, 1.0, most, ""));
        }
    }
    let asked = u64::from(weeks) * u64::from(lifters);
    if asked > u64::from(MOST_LIFTER_WEEKS) {
        return Err(Error::range(Code::RehearsalTooLong, "lifters", asked, 1.0, most, "lifters times weeks"));
    }
    Ok(())
}

/// The plan of each day: the lifts of the day, in the order of the plan.
fn plans(plan: &Plan, week: &[TrainingDay]) -> Result<Vec<(u8, Plan)>, Error> {
    let missing = week
        .iter()
        .flat_map(|day| &day.lifts)
        .find(|lift| !plan.lifts.iter().any(|planned| planned.lift == **lift));
    if let Some(lift) = missing {
        let rule = Allowed::rule("a lift of the plan");
        return Err(Error::new(Code::UnknownLift, "week", lift.as_str(), rule));
    }
    let of_day = |day: &TrainingDay| {
        let lifts = plan.lifts.iter().filter(|lift| day.lifts.contains(&lift.lift)).cloned().collect();
        (day.weekday, Plan { lifts, ..plan.clone() })
    };
    Ok(week.iter().map(of_day).collect())
}

rows![MOST_LIFTER_WEEKS, simulate];
