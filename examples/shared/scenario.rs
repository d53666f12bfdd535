//! The invented lifter: somebody of 57 who rebuilds the squat and the press on a small set of discs.

#![allow(dead_code, reason = "shared by several programs, each of which uses a part")]

use bismar::condition::DayClass;
use bismar::error::Error;
use bismar::gate::{Criterion, Gate, Mark, PassRules, PassRun, Rater, Requirement, SetMarks};
use bismar::loading::{Bar, Disc, Implement, Stock};
use bismar::prescription::{LiftToday, Verdict, next_session_from};
use bismar::progression::{MoveOutlook, State, fold};
use bismar::quantity::{Day, Length, Mass, Name, Pain, Reps, Rir};
use bismar::record::{
    Advance, Body, Clearance, ClearanceStatus, Correction, DayReport, Dimension, Effort, Event, EventKind,
    Layoff, LayoffReason, LiftParameters, LiftPlan, LiftSession, Lifter, Log, NextDayReport, Override,
    PLAN_FORMAT, PLAN_VERSION, PainAnswer, Pair, Parameters, Plan, Policy, Rung, Session, SessionMissed,
    StepPolicy, Tuple, WorkSet,
};
use bismar::value::Value;

/// What to make.
pub struct Wanted {
    pub seed: u32,
    pub years: u32,
    pub lifts: u32,
}

impl Default for Wanted {
    fn default() -> Self {
        Wanted { seed: 7, years: 2, lifts: 3 }
    }
}

/// What was made.
pub struct Made {
    pub log: Log,
    pub plan: Plan,
    pub log_json: String,
    pub plan_json: String,
    pub last_day: Day,
}

/// A small generator of its own, so that the log does not depend on the library's.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u32) -> Dice {
        Dice(u64::from(seed).wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    /// Uniform in 0..1.
    pub fn roll(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, chance: f64) -> bool {
        self.roll() < chance
    }
}

fn name(text: &str) -> Result<Name, Error> {
    Name::new(text)
}

fn kg(value: f64) -> Result<Mass, Error> {
    Mass::from_kg(value)
}

fn rung(text: &str, harder_than: &[&str]) -> Result<Rung, Error> {
    let harder_than = harder_than.iter().map(|text| name(text)).collect::<Result<_, _>>()?;
    Ok(Rung { name: name(text)?, harder_than, own_ratio: None })
}

/// Equipment of a small room: two bars, and discs of both units with few small ones.
pub fn equipment() -> Result<(Vec<Implement>, Stock), Error> {
    let bar = |id: &str, mass: f64| -> Result<Implement, Error> {
        Ok(Implement::Bar(Bar::new(name(id)?, kg(mass)?, Mass::ZERO)?))
    };
    let disc = |mass: Mass, count: u16, diameter: f64, thickness: f64| -> Result<Disc, Error> {
        Disc::new(mass, count)?
            .with_diameter(Length::from_mm(diameter)?)?
            .with_thickness(Length::from_mm(thickness)?)
    };
    let stock = Stock::new(vec![
        disc(kg(20.0)?, 2, 450.0, 54.0)?,
        disc(kg(10.0)?, 4, 450.0, 33.0)?,
        disc(kg(5.0)?, 2, 230.0, 26.0)?,
        disc(Mass::from_lb(5.0)?, 2, 200.0, 20.0)?,
        disc(kg(1.25)?, 2, 160.0, 12.0)?,
        disc(kg(0.5)?, 2, 130.0, 10.0)?,
    ])?;
    Ok((vec![bar("bar 20", 20.0)?, bar("bar 15", 15.0)?], stock))
}

struct Lift {
    name: &'static str,
    body: Body,
    regions: &'static [&'static str],
    implement: &'static str,
    rungs: &'static [(&'static str, &'static [&'static str])],
    criteria: &'static [(&'static str, bool)],
    load: f64,
    sessions: u8,
    over: bool,
}

/// The lifts of the scenario; more than three repeat them under another name.
const LIFTS: [Lift; 3] = [
    Lift {
        name: "front-held squat",
        body: Body::Lower,
        regions: &["knee", "lower back"],
        implement: "bar 20",
        rungs: &[
            ("to a high box", &[]),
            ("to a parallel box", &["to a high box"]),
            ("free", &["to a parallel box"]),
        ],
        criteria: &[("brace held", true), ("depth reached", false), ("knees track feet", false)],
        load: 30.0,
        sessions: 3,
        over: true,
    },
    Lift {
        name: "box squat",
        body: Body::Lower,
        regions: &["knee", "lower back"],
        implement: "bar 20",
        rungs: &[("high box", &[]), ("parallel box", &["high box"])],
        criteria: &[("brace held", true), ("even left and right", false)],
        load: 40.0,
        sessions: 2,
        over: true,
    },
    Lift {
        name: "strict press",
        body: Body::Upper,
        regions: &["shoulder"],
        implement: "bar 15",
        rungs: &[("standing", &[])],
        criteria: &[("ribs down", true), ("bar path over mid-foot", false)],
        load: 20.0,
        sessions: 2,
        over: false,
    },
];

fn lift(lift: &Lift, label: &str) -> Result<LiftParameters, Error> {
    let tuple = Tuple { rung: 0, range: 0, tempo: 0, sets: 3, reps: 5, load: kg(lift.load)? };
    let rungs = lift.rungs.iter().map(|(text, below)| rung(text, below)).collect::<Result<_, _>>()?;
    let criteria = lift
        .criteria
        .iter()
        .map(|(text, critical)| if *critical { Criterion::critical(text) } else { Criterion::ordinary(text) })
        .collect::<Result<_, _>>()?;
    let pass = PassRules::default();
    let run = PassRun::new(9, 10, lift.sessions)?;
    Ok(LiftParameters {
        name: name(label)?,
        body: lift.body,
        regions: lift.regions.iter().map(|text| name(text)).collect::<Result<_, _>>()?,
        implement: name(lift.implement)?,
        rungs,
        ranges: Vec::new(),
        tempos: Vec::new(),
        start: tuple,
        moving: Dimension::Load,
        criteria,
        pass,
        gate: Gate::new(Requirement::All(vec![Requirement::PassRun(run), Requirement::NoOpenBlock]))?,
        step: Some(StepPolicy::SmallestLoadable),
        step_cap: Some(if lift.body == Body::Upper { 0.05 } else { 0.06 }),
        ceiling: None,
        reps_top: None,
        sets_top: None,
        learning_sessions: None,
        over_the_body: lift.over,
    })
}

/// The parameters of the scenario with so many lifts.
pub fn parameters(lifts: u32) -> Result<Parameters, Error> {
    let (implements, stock) = equipment()?;
    let mut lifts = Vec::new();
    for (at, lift) in (0..lifts.clamp(1, 16)).zip(LIFTS.iter().cycle()) {
        let label = if at < 3 { lift.name.to_string() } else { format!("{} {}", lift.name, at / 3 + 1) };
        lifts.push(lift(lift, &label)?);
    }
    let pairs = if lifts.len() >= 2 {
        vec![Pair { strict: name(LIFTS[0].name)?, forgiving: name(LIFTS[1].name)?, ratio_cap: 1.0 }]
    } else {
        Vec::new()
    };
    Ok(Parameters { lifts, pairs, implements, stock, policy: Policy::default() })
}

/// The plan that goes with it.
pub fn plan(parameters: &Parameters) -> Result<Plan, Error> {
    let lifts = parameters
        .lifts
        .iter()
        .map(|lift| {
            Ok(LiftPlan {
                lift: lift.name.clone(),
                reserve: Some(Rir::whole(3)),
                sets: None,
                reps: None,
                reference: Some(kg(20.0)?),
                keep: false,
            })
        })
        .collect::<Result<_, Error>>()?;
    Ok(Plan {
        format: PLAN_FORMAT.into(),
        version: PLAN_VERSION,
        lifts,
        unavailable: Vec::new(),
        minutes: None,
        easy_week: false,
    })
}

/// Writes the log event by event, following what the library prescribes.
struct Writer {
    log: Log,
    state: State,
    sequence: u32,
}

impl Writer {
    fn add(&mut self, day: Day, kind: EventKind, note: Option<&str>) -> Result<u32, Error> {
        self.sequence += 1;
        let event = Event { sequence: self.sequence, day, kind, note: note.map(String::from) };
        let applied = self.state.apply(&event);
        self.log.events.push(event);
        if applied.is_err() {
            // The past changed: fold anew.
            self.state = fold(&self.log)?;
        }
        Ok(self.sequence)
    }
}

/// Makes the log and the plan.
pub fn make(wanted: &Wanted) -> Result<Made, Error> {
    let first = Day::from_calendar(2024, 9, 2)?;
    let lifter =
        Lifter { id: name("invented-lifter")?, born: Some(Day::from_calendar(1967, 5, 20)?), invented: true };
    let parameters = parameters(wanted.lifts)?;
    let plan = plan(&parameters)?;
    let mut writer = Writer { log: Log::new(lifter), state: State::new(None), sequence: 0 };
    let mut dice = Dice::new(wanted.seed);
    let note = "Invented data: nobody lifted this.";
    writer.add(first, EventKind::ParametersChanged(Box::new(parameters.clone())), Some(note))?;
    let clearance = |status| -> Result<EventKind, Error> {
        Ok(EventKind::ClearanceRecorded(Clearance {
            status,
            who: name("invented clinic")?,
            expires: None,
            limits: Vec::new(),
        }))
    };
    writer.add(first, clearance(ClearanceStatus::Cleared)?, None)?;
    let weeks = i32::try_from(wanted.years.max(1)).unwrap_or(40) * 52;
    let mut last_day = first;
    for week in 0..weeks {
        // One break of three weeks in the second autumn, and one planned week every tenth.
        let away = (60..63).contains(&week);
        if week == 60 {
            let from = first.plus(week * 7)?;
            let layoff = Layoff { from, to: Some(from.plus(20)?), reason: LayoffReason::Well };
            writer.add(from, EventKind::LayoffNoted(layoff), Some("Three weeks away."))?;
        }
        if week % 50 == 49 {
            writer.add(first.plus(week * 7)?, clearance(ClearanceStatus::Cleared)?, None)?;
        }
        for (session, offset) in [(0, 0), (1, 3)] {
            if away {
                continue;
            }
            let day = first.plus(week * 7 + offset)?;
            if dice.below(0.04) {
                writer.add(day, EventKind::SessionMissed(SessionMissed { reason: name("work")? }), None)?;
                continue;
            }
            last_day = train(&mut writer, &plan, &mut dice, week, session, day)?;
        }
    }
    Ok(Made {
        log_json: document(&writer.log)?,
        plan_json: format!("{}\n", Value::write(&plan)?.to_json_pretty()),
        log: writer.log,
        plan,
        last_day,
    })
}

/// One event a line: readable, and a changed event is a changed line.
fn document(log: &Log) -> Result<String, Error> {
    let events = log
        .events
        .iter()
        .map(|event| Value::write(event).map(|value| value.to_json()))
        .collect::<Result<Vec<_>, _>>()?;
    let lifter = Value::write(&log.lifter)?.to_json();
    let head = format!(
        "{{\"format\":\"{}\",\"version\":{},\n\"lifter\":{lifter},\n\"events\":[\n",
        log.format, log.version
    );
    Ok(format!("{head}{}\n]}}\n", events.join(",\n")))
}

/// Chance that a repetition is acceptable: it grows with the weeks, slower in the strict squat, and starts
/// lower again after each step.
fn skill(lift: usize, week: i32, status: bismar::progression::Status) -> f64 {
    let (start, a_week) = match lift % 3 {
        0 => (0.93, 0.0004),
        1 => (0.965, 0.0002),
        _ => (0.955, 0.0002),
    };
    let grown = start + f64::from(week) * a_week;
    let fresh =
        matches!(status, bismar::progression::Status::Consolidating | bismar::progression::Status::Learning);
    (if fresh { grown - 0.01 } else { grown }).clamp(0.5, 0.985)
}

fn train(
    writer: &mut Writer,
    plan: &Plan,
    dice: &mut Dice,
    week: i32,
    session: usize,
    day: Day,
) -> Result<Day, Error> {
    let class = match dice.roll() {
        chance if chance < 0.05 => DayClass::BadAgreeing,
        chance if chance < 0.12 => DayClass::BadSingle,
        chance if chance > 0.93 => DayClass::Good,
        _ => DayClass::Ordinary,
    };
    let report = DayReport { class: Some(class), pain: Some(Vec::new()), ..DayReport::default() };
    writer.add(day, EventKind::DayReport(report), None)?;
    accept_offers(writer, day)?;
    if week == 40 && session == 0 {
        overrule(writer, day)?;
    }
    let today = next_session_from(&writer.state, plan, day)?;
    let mut lifts = Vec::new();
    for (at, lift) in today.lifts.iter().enumerate() {
        // The strict squat on the first day of the week, the forgiving one on the second, the rest on both.
        let trained = match at % 3 {
            0 => session == 0,
            1 => session == 1,
            _ => true,
        };
        if let (true, true, Some(load)) = (trained, lift.verdict < Verdict::Rest, lift.load) {
            lifts.push(done(writer, lift, at, load, week, dice)?);
        }
    }
    let hurts = week == 30 && session == 0;
    let pain = if hurts {
        vec![PainAnswer { region: name("knee")?, score: Pain::new(3)?, features: Vec::new() }]
    } else {
        Vec::new()
    };
    let minutes = Some(50 + (dice.roll() * 25.0) as u16);
    let kind = EventKind::SessionRecorded(Session { lifts, pain: Some(pain), minutes, effort: None });
    let number = writer.add(day, kind.clone(), hurts.then_some("Knee 3 of 10 from the second set on."))?;
    if week == 20 && session == 1 {
        correct(writer, number, kind, day)?;
    }
    let flare = week == 70 && session == 0;
    let pain = if flare {
        vec![PainAnswer { region: name("shoulder")?, score: Pain::new(2)?, features: Vec::new() }]
    } else {
        Vec::new()
    };
    let report = NextDayReport { session: number, pain, soreness: None };
    writer.add(
        day.plus(1)?,
        EventKind::NextDayReport(report),
        flare.then_some("Shoulder up the next morning."),
    )?;
    day.plus(1)
}

fn accept_offers(writer: &mut Writer, day: Day) -> Result<(), Error> {
    for decision in writer.state.decide(day)? {
        if matches!(decision.outlook, MoveOutlook::OnOffer { .. }) {
            let advance = Advance { lift: decision.lift, who: name("invented coach")? };
            writer.add(day, EventKind::AdvanceAccepted(advance), None)?;
        }
    }
    Ok(())
}

/// The coach lets the press try one heavier week, with a reason and an end.
fn overrule(writer: &mut Writer, day: Day) -> Result<(), Error> {
    let Some(lift) = writer.state.lifts.last() else { return Ok(()) };
    let given = Override {
        lift: writer
            .state
            .decide(day)?
            .last()
            .map(|decision| decision.lift.clone())
            .unwrap_or(name("strict press")?),
        load: lift.tuple.load.plus(kg(1.0)?)?,
        who: name("invented coach")?,
        why: Some(
            "Wants to feel one heavier week before the holiday; marks have been clean for a month.".into(),
        ),
        expires: Some(day.plus(6)?),
    };
    writer.add(day, EventKind::CoachOverride(given), None)?;
    Ok(())
}

/// A set was written down with one repetition too many.
fn correct(writer: &mut Writer, number: u32, kind: EventKind, day: Day) -> Result<(), Error> {
    let EventKind::SessionRecorded(mut session) = kind else { return Ok(()) };
    if let Some(set) = session.lifts.last_mut().and_then(|lift| lift.sets.last_mut()) {
        set.reps = Reps::whole(4)?;
        if let Some(marks) = &mut set.marks {
            marks.reps = 4;
            marks.acceptable = marks.acceptable.map(|acceptable| acceptable.min(4));
            marks.first_failing_rep = marks.first_failing_rep.filter(|rep| *rep <= 4);
        }
    }
    let with = Some(Box::new(EventKind::SessionRecorded(session)));
    let correction = Correction { replaces: number, day: None, with };
    writer.add(day, EventKind::Correction(correction), Some("The last set had four repetitions."))?;
    Ok(())
}

fn done(
    writer: &Writer,
    lift: &LiftToday,
    at: usize,
    load: Mass,
    week: i32,
    dice: &mut Dice,
) -> Result<LiftSession, Error> {
    let criteria =
        writer.state.parameters.as_ref().and_then(|all| all.lifts.iter().find(|lift| lift.name == lift.lift));
    let criteria: Vec<Criterion> = criteria.map(|lift| lift.criteria.clone()).unwrap_or_default();
    let chance = skill(at, week, lift.status);
    let mut sets = Vec::new();
    for number in 0..lift.sets {
        let held: Vec<bool> = (0..lift.reps).map(|_| dice.below(chance)).collect();
        let acceptable = held.iter().filter(|held| **held).count() as u16;
        let mut marks = SetMarks::scored(u16::from(lift.reps), acceptable, Rater::Coach);
        marks.rater_id = Some(name("invented coach")?);
        if let Some(first) = held.iter().position(|held| !held) {
            marks = marks.first_failing(first as u16 + 1);
        }
        for criterion in &criteria {
            let lost = if criterion.critical {
                dice.below((1.0 - chance) * 0.1)
            } else {
                acceptable < u16::from(lift.reps) && dice.below(0.5)
            };
            marks = marks.with(criterion.id.as_str(), if lost { Mark::NotMet } else { Mark::Met })?;
        }
        let reserve = (3.0 - f64::from(number) * 0.5).clamp(1.0, 3.0);
        sets.push(WorkSet {
            load,
            reps: Reps::whole(u16::from(lift.reps))?,
            effort: Some(Effort::Rir(Rir::new(reserve)?)),
            failed: false,
            marks: Some(marks),
        });
    }
    Ok(LiftSession { lift: lift.lift.clone(), sets, setup: None, cue: None })
}
