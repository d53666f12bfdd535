//! The invented lifter: somebody of 57 who rebuilds five lifts on a small set of discs.
//!
//! The log ends with the questions of a training day, on which, with the plan of that day, one lift is held, one has a
//! step on offer, one is eased and one comes back after a break.

#![allow(dead_code, reason = "shared by several programs, each of which uses a part")]

use bismar::condition::DayClass;
use bismar::error::Error;
use bismar::gate::{Criterion, Mark, Rater, SetMarks};
use bismar::prescription::{LiftToday, Verdict, next_session_from};
use bismar::progression::{Decision, MoveOutlook, State, Status, fold};
use bismar::quantity::{Day, Length, Mass, Name, Pain, Reps, Rir, Rpe};
use bismar::record::{
    Advance, ByTheBar, Clearance, ClearanceLimits, ClearanceStatus, Correction, DayReport, Dimension, Effort,
    Event, EventKind, Layoff, LayoffReason, LiftSession, Lifter, Log, NextDayReport, Override, PainAnswer,
    Parameters, Plan, Session, SessionMissed, Setup, WorkSet,
};
use bismar::value::Value;

#[path = "dice.rs"]
mod dice;
#[path = "lifts.rs"]
pub mod lifts;
use dice::Dice;
pub use lifts::parameters;
use lifts::{BOX_SQUAT, DEADLIFT, KINDS, STRICT_PRESS, SUPPORTED_ROW, kg, kind, name, plan_of_day};

/// Repetitions that the invented coach asks to leave in the last set.
const ASKED: u8 = 2;

/// What to make.
pub struct Wanted {
    pub seed: u32,
    pub years: u32,
    pub lifts: u32,
}

impl Default for Wanted {
    fn default() -> Self {
        Wanted { seed: 7, years: 2, lifts: KINDS.len() as u32 }
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

/// One day of training: which, and how many weeks of it are still to come.
#[derive(Clone, Copy)]
struct Training {
    day: Day,
    week: i32,
    weeks_left: i32,
    session: usize,
}

/// Writes the log event by event, following what the library prescribes.
struct Writer {
    log: Log,
    state: State,
    parameters: Parameters,
    dice: Dice,
}

/// Makes the log and the plan.
pub fn make(wanted: &Wanted) -> Result<Made, Error> {
    let first = Day::from_calendar(2024, 9, 2)?;
    let born = Some(Day::from_calendar(1967, 5, 20)?);
    let lifter = Lifter::new(name("invented-lifter")?).with_born(born).with_invented(true);
    let parameters = parameters(wanted.lifts)?;
    let plan = plan_of_day(&parameters, 1)?;
    let (log, state) = (Log::new(lifter.clone()), State::new(lifter));
    let mut writer = Writer { log, state, parameters, dice: Dice::new(wanted.seed) };
    writer.begin(first)?;
    let weeks = i32::try_from(wanted.years.max(1)).unwrap_or(40) * 52;
    for week in 0..weeks {
        writer.week(first.plus(week * 7)?, week, weeks - 1 - week)?;
    }
    let last_day = first.plus((weeks - 1) * 7 + 3)?;
    writer.last_questions(last_day)?;
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

fn clearance() -> Result<EventKind, Error> {
    let limit = ClearanceLimits::default().with_effort(Rpe::new(8.0)?).with_no_breath_hold(true);
    Ok(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("invented clinic")?).with_limits(vec![limit]),
    ))
}

/// Pain of that much in one region, none elsewhere.
fn only(region: &str, score: u8) -> Result<Vec<PainAnswer>, Error> {
    Ok(vec![PainAnswer::plain(name(region)?, Pain::new(score)?)])
}

impl Writer {
    fn add(&mut self, day: Day, kind: EventKind, note: Option<&str>) -> Result<u32, Error> {
        let sequence = self.log.events.len() as u32 + 1;
        let event = Event::new(sequence, day, kind).with_note(note.map(String::from));
        let applied = self.state.apply(&event);
        self.log.events.push(event);
        if applied.is_err() {
            // The past changed: fold anew.
            self.state = fold(&self.log)?;
        }
        Ok(sequence)
    }

    fn begin(&mut self, first: Day) -> Result<(), Error> {
        let parameters = EventKind::ParametersChanged(Box::new(self.parameters.clone()));
        self.add(first, parameters, Some("Invented data: nobody lifted this."))?;
        self.add(first, clearance()?, None)?;
        self.add(first, EventKind::BodyMassRecorded(kg(78.0)?), None)?;
        Ok(())
    }

    fn week(&mut self, monday: Day, week: i32, weeks_left: i32) -> Result<(), Error> {
        // One break of three weeks in the second autumn.
        if (60..63).contains(&week) {
            if week == 60 {
                let layoff = Layoff::new(monday, LayoffReason::Well).with_to(monday.plus(20)?);
                self.add(monday, EventKind::LayoffNoted(layoff), Some("Three weeks away."))?;
            }
            return Ok(());
        }
        if week % 50 == 49 {
            self.add(monday, clearance()?, None)?;
        }
        if week % 26 == 25 {
            self.add(monday, EventKind::BodyMassRecorded(kg(78.0 + f64::from(week % 3))?), None)?;
        }
        for (session, offset) in [(0, 0), (1, 3)] {
            let training = Training { day: monday.plus(offset)?, week, weeks_left, session };
            if weeks_left == 0 && session == 1 {
                continue;
            }
            // Nothing is missed in the last weeks, so that the last day is what it is meant to be.
            if self.dice.below(0.04) && weeks_left > 5 {
                let missed = SessionMissed::new(name("work")?);
                self.add(training.day, EventKind::SessionMissed(missed), None)?;
                continue;
            }
            self.train(training)?;
        }
        Ok(())
    }

    /// The questions of the last day, answered before anything is lifted: the shoulder hurts a little.
    fn last_questions(&mut self, day: Day) -> Result<(), Error> {
        let shoulder = self.parameters.lifts.iter().any(|lift| lift.id.as_str() == STRICT_PRESS);
        let pain = if shoulder { only("shoulder", 3)? } else { Vec::new() };
        let report = DayReport::all_well(DayClass::Within).with_pain(pain).with_minutes(75);
        self.add(day, EventKind::DayReport(report), Some("Shoulder 3 of 10 since the garden."))?;
        Ok(())
    }

    fn train(&mut self, training: Training) -> Result<(), Error> {
        let day = training.day;
        let class = match self.dice.roll() {
            _ if training.weeks_left < 4 => DayClass::Within,
            chance if chance < 0.05 => DayClass::Below,
            chance if chance < 0.12 => DayClass::BelowSingle,
            chance if chance > 0.93 => DayClass::Above,
            _ => DayClass::Within,
        };
        self.add(day, EventKind::DayReport(DayReport::all_well(class)), None)?;
        self.answer_offers(training)?;
        self.lower_once_it_lies_on_the_floor(day)?;
        if training.week == 40 && training.session == 0 {
            self.overrule(day)?;
        }
        let hurts = training.week == 30 && training.session == 0;
        let session = self.done(training, if hurts { only("knee", 3)? } else { Vec::new() })?;
        let kind = EventKind::SessionRecorded(session);
        let number = self.add(day, kind.clone(), self.note(training))?;
        if training.week == 20 && training.session == 1 {
            self.correct(number, kind, day)?;
        }
        let flare = training.week == 70 && training.session == 0;
        let pain = Some(if flare { only("shoulder", 2)? } else { Vec::new() });
        let report = NextDayReport::new(number).with_pain(pain);
        let note = flare.then_some("Shoulder up the next morning.");
        self.add(day.plus(1)?, EventKind::NextDayReport(report), note)?;
        Ok(())
    }

    fn note(&self, training: Training) -> Option<&'static str> {
        match (training.week, training.weeks_left, training.session) {
            (30, _, 0) => Some("Knee 3 of 10 from the second set on."),
            (_, 4, 1) => Some("The floor is being mended: no deadlift until it is done."),
            _ => None,
        }
    }

    /// The coach takes what is on offer, one after the other, since a move may have to wait for the one before; in one
    /// winter the press stays where it is, and the row's last offer is left for the last day.
    fn answer_offers(&mut self, training: Training) -> Result<(), Error> {
        let ids: Vec<Name> = self.parameters.lifts.iter().map(|lift| lift.id.clone()).collect();
        for lift in ids {
            let decisions = self.state.decide(training.day)?;
            let offered = |decision: &Decision| matches!(decision.outlook, MoveOutlook::OnOffer { .. });
            let waits = lift.as_str() == SUPPORTED_ROW && training.weeks_left < 4;
            if waits || !decisions.iter().any(|decision| decision.lift == lift && offered(decision)) {
                continue;
            }
            let stays = lift.as_str() == STRICT_PRESS && (10..14).contains(&training.week);
            let advance = Advance::new(lift, name("invented coach")?);
            let (kind, note) = if stays {
                (EventKind::AdvanceDeclined(advance), Some("Stays here while the mornings are cold."))
            } else {
                (EventKind::AdvanceAccepted(advance), None)
            };
            self.add(training.day, kind, note)?;
        }
        Ok(())
    }

    /// Once the deadlift has come down to the floor and holds there, its load moves from then on.
    fn lower_once_it_lies_on_the_floor(&mut self, day: Day) -> Result<(), Error> {
        let stands = |lift: bismar::progression::LiftState<'_>| {
            let lowest = usize::from(lift.grant().place.range) + 1 == lift.parameters().ranges.len();
            lift.id().as_str() == DEADLIFT && lowest && *lift.status() == Status::Holding
        };
        if !self.state.lifts().any(stands) {
            return Ok(());
        }
        let deadlifts = self.parameters.lifts.iter_mut().filter(|lift| lift.id.as_str() == DEADLIFT);
        for lift in deadlifts {
            if lift.moving == Dimension::Load {
                return Ok(());
            }
            lift.moving = Dimension::Load;
        }
        let parameters = EventKind::ParametersChanged(Box::new(self.parameters.clone()));
        self.add(day, parameters, Some("The bar lies on the floor now. The load moves next."))?;
        Ok(())
    }

    /// The coach lowers the press for a week.
    fn overrule(&mut self, day: Day) -> Result<(), Error> {
        let Some(press) = self.state.lift_state(&name(STRICT_PRESS)?) else { return Ok(()) };
        let given =
            Override::new(press.id().clone(), press.grant().load().minus(kg(1.0)?)?, name("invented coach")?)
                .with_why(Some("A lighter week, as agreed before the walking holiday.".into()))
                .with_expires(day.plus(6)?);
        self.add(day, EventKind::CoachOverride(given), None)?;
        Ok(())
    }

    /// A set was written down with one repetition too many.
    fn correct(&mut self, number: u32, kind: EventKind, day: Day) -> Result<(), Error> {
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
        let correction = Correction::new(number).with_kind(with);
        self.add(day, EventKind::Correction(correction), Some("The last set had four repetitions."))?;
        Ok(())
    }

    /// What is prescribed for the day, done.
    fn done(&mut self, training: Training, pain: Vec<PainAnswer>) -> Result<Session, Error> {
        let plan = plan_of_day(&self.parameters, training.session)?;
        let today = next_session_from(&self.state, &plan, training.day)?;
        let mut lifts = Vec::new();
        for lift in &today.lifts {
            // While the floor is mended nothing is lifted from it.
            let mended = lift.lift.as_str() == DEADLIFT && training.weeks_left < 5;
            if let (false, true, Some(load)) = (mended, lift.verdict < Verdict::Rest, lift.load) {
                lifts.push(self.lifted(lift, load, training)?);
            }
        }
        let minutes = Some(50 + (self.dice.roll() * 25.0) as u16);
        Ok(Session::new(lifts).with_pain(pain).with_minutes(minutes))
    }

    fn lifted(&mut self, lift: &LiftToday, load: Mass, training: Training) -> Result<LiftSession, Error> {
        let at = self.parameters.lifts.iter().position(|set| set.id == lift.lift).unwrap_or_default();
        let set = self.parameters.lifts.get(at);
        let criteria: Vec<Criterion> = set.map(|set| set.criteria.clone()).unwrap_or_default();
        let over_the_body = set.is_some_and(|set| set.over_the_body);
        let mut sets = Vec::new();
        for number in 0..lift.sets {
            let chance = skill(at, training, number, &lift.status);
            let marks = self.marks(lift, &criteria, chance)?;
            let reserve = (3.0 - f64::from(number) * 0.5).clamp(1.0, 3.0);
            sets.push(
                WorkSet::done(load, Reps::whole(u16::from(lift.reps))?)
                    .with_effort(Effort::Rir(Rir::new(reserve)?))
                    .with_marks(marks),
            );
        }
        // Said once; what is not said again stays.
        let new = self.state.lift_state(&lift.lift).is_some_and(|state| state.last_session().is_none());
        let setup = if new { Some(rack(over_the_body)?) } else { None };
        let place = (lift.place != lift.granted.place).then_some(lift.place);
        let done = LiftSession::as_granted(lift.lift.clone(), sets).with_reserve_asked(Rir::whole(ASKED));
        Ok(done.with_place(place).with_setup(setup))
    }

    fn marks(&mut self, lift: &LiftToday, criteria: &[Criterion], chance: f64) -> Result<SetMarks, Error> {
        let held: Vec<bool> = (0..lift.reps).map(|_| self.dice.below(chance)).collect();
        let acceptable = held.iter().filter(|held| **held).count() as u16;
        let mut marks = SetMarks::scored(u16::from(lift.reps), acceptable, Rater::Coach);
        marks.rater_id = Some(name("invented coach")?);
        if let Some(first) = held.iter().position(|held| !held) {
            marks = marks.first_failing(first as u16 + 1);
        }
        for criterion in criteria {
            let lost = if criterion.critical {
                self.dice.below((1.0 - chance) * 0.1)
            } else {
                acceptable < u16::from(lift.reps) && self.dice.below(0.5)
            };
            marks = marks.with(criterion.id.as_str(), if lost { Mark::NotMet } else { Mark::Met })?;
        }
        Ok(marks)
    }
}

/// Somebody is about; under the bar pins are set as well.
fn rack(over_the_body: bool) -> Result<Setup, Error> {
    let pins = if over_the_body { Some(Length::from_mm(700.0)?) } else { None };
    Ok(Setup::default().with_pins(pins).with_company(ByTheBar::Others).with_kit(vec![name("flat shoes")?]))
}

/// Chance that a repetition is acceptable: it grows with the weeks, slower in the strict squat, and starts lower again
/// after each step. In the last weeks it is certain where the last day needs it: the row holds, and once in the box squat
/// and once in the press technique slipped in the second set.
fn skill(at: usize, training: Training, set: u8, status: &Status) -> f64 {
    let kind = kind(at);
    let last_but_one = training.weeks_left == 1 && training.session == 1;
    let slipped = set == 1
        && match kind.id {
            BOX_SQUAT | STRICT_PRESS => last_but_one,
            SUPPORTED_ROW => training.weeks_left == 3,
            _ => false,
        };
    let certain = training.weeks_left < 4 && [BOX_SQUAT, SUPPORTED_ROW].contains(&kind.id);
    if slipped || certain {
        return if slipped { 0.0 } else { 1.0 };
    }
    let (start, a_week) = kind.skill;
    let grown = start + f64::from(training.week) * a_week;
    let fresh = matches!(status, Status::Consolidating | Status::Learning);
    (if fresh { grown - 0.01 } else { grown }).clamp(0.5, 0.985)
}
