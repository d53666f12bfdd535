//! Courses of events for the invariants: short scripts that shrink well, played into logs.

use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::gate::{Criterion, Gate, Mark, PassRules, PassRun, Rater, Requirement, SetMarks};
use bismar::loading::{Bar, Disc, Implement, Stock};
use bismar::progression::{MoveOutlook, State, fold};
use bismar::quantity::{Day, Mass, Name, Pain, Reps};
use bismar::record::*;
use proptest::prelude::*;

/// Sessions in a row that the gates of these courses ask for.
pub const RUN: usize = 2;
pub const STRICT: usize = 0;
pub const FORGIVING: usize = 1;
pub const PRESS: usize = 2;

pub fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

pub fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

fn lift(label: &str, body: Body, region: &str, load: Mass) -> LiftParameters {
    let rung = |text: &str, below: &[&str]| Rung {
        name: name(text),
        harder_than: below.iter().map(|text| name(text)).collect(),
        own_ratio: None,
    };
    LiftParameters {
        name: name(label),
        body,
        regions: vec![name(region)],
        implement: name("bar"),
        rungs: vec![rung("easy", &[]), rung("middle", &["easy"]), rung("hard", &["middle"])],
        ranges: Vec::new(),
        tempos: Vec::new(),
        start: Tuple { rung: 1, range: 0, tempo: 0, sets: 2, reps: 5, load },
        moving: Dimension::Load,
        criteria: vec![Criterion::critical("brace").unwrap(), Criterion::ordinary("depth").unwrap()],
        pass: PassRules::default(),
        gate: Gate::new(Requirement::PassRun(PassRun::new(9, 10, RUN as u8).unwrap())).unwrap(),
        step: None,
        step_cap: Some(0.10),
        ceiling: None,
        reps_top: Some(8),
        sets_top: Some(4),
        learning_sessions: Some(2),
        over_the_body: true,
    }
}

/// Masses multiplied by `scale`: bar, discs and loads alike.
pub fn parameters(scale: u32) -> Parameters {
    let times = |value: f64| kg(value).times(scale).unwrap();
    let disc = |value: f64, count: u16| Disc::new(times(value), count).unwrap();
    let bar = Bar::new(name("bar"), times(20.0), Mass::ZERO).unwrap();
    let discs = vec![disc(20.0, 4), disc(10.0, 4), disc(5.0, 2), disc(2.5, 2), disc(1.25, 2), disc(0.5, 4)];
    Parameters {
        lifts: vec![
            lift("strict", Body::Lower, "hip", times(50.0)),
            lift("forgiving", Body::Lower, "hip", times(60.0)),
            lift("press", Body::Upper, "shoulder", times(40.0)),
        ],
        pairs: vec![Pair { strict: name("strict"), forgiving: name("forgiving"), ratio_cap: 1.0 }],
        implements: vec![Implement::Bar(bar)],
        stock: Stock::new(discs).unwrap(),
        policy: Policy::default(),
    }
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Quality {
    Clean,
    OneMiss,
    ManyMisses,
    CriticalLost,
    Unscored,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Weight {
    AtLimit,
    Lighter,
    Heavier,
}

/// One thing that happens. Each becomes at most a few events.
#[derive(Clone, Debug, PartialEq)]
pub enum Step {
    Wait(u8),
    /// A whole clean week: day report, moves taken, session, next morning.
    CleanWeek,
    Session {
        lifts: u8,
        quality: Quality,
        weight: Weight,
        pain: Option<u8>,
    },
    Morning {
        flare: bool,
    },
    Day {
        class: u8,
        asked: bool,
    },
    Pain {
        score: u8,
        sharp: bool,
        region: bool,
    },
    Usual(u8),
    Symptom,
    Clearance {
        cleared: bool,
    },
    SignOff(u8),
    Override {
        lift: u8,
        up: bool,
        days: u8,
    },
    Ease(u8),
    /// A little easier for some days, without a reason.
    EaseFor {
        lift: u8,
        days: u8,
    },
    Accept(u8),
    Decline(u8),
    Layoff(u8),
    Rung {
        lift: u8,
        up: bool,
    },
    Role {
        lift: u8,
        role: u8,
    },
    Rater,
    Unknown,
    Missed,
}

pub fn any_step() -> impl Strategy<Value = Step> {
    let quality = prop_oneof![
        5 => Just(Quality::Clean),
        2 => Just(Quality::OneMiss),
        2 => Just(Quality::ManyMisses),
        1 => Just(Quality::CriticalLost),
        1 => Just(Quality::Unscored),
    ];
    let weight =
        prop_oneof![6 => Just(Weight::AtLimit), 1 => Just(Weight::Lighter), 1 => Just(Weight::Heavier)];
    let pain = prop_oneof![6 => Just(Some(0)), 2 => (1_u8..=6).prop_map(Some), 1 => Just(None)];
    prop_oneof![
        14 => Just(Step::CleanWeek),
        4 => (1_u8..50).prop_map(Step::Wait),
        8 => (1_u8..8, quality, weight, pain)
            .prop_map(|(lifts, quality, weight, pain)| Step::Session { lifts, quality, weight, pain }),
        4 => prop::bool::weighted(0.2).prop_map(|flare| Step::Morning { flare }),
        4 => (0_u8..5, any::<bool>()).prop_map(|(class, asked)| Step::Day { class, asked }),
        1 => (0_u8..=8, any::<bool>(), any::<bool>()).prop_map(|(score, sharp, region)| Step::Pain { score, sharp, region }),
        1 => (1_u8..=2).prop_map(Step::Usual),
        1 => Just(Step::Symptom),
        2 => prop::bool::weighted(0.9).prop_map(|cleared| Step::Clearance { cleared }),
        2 => (0_u8..4).prop_map(Step::SignOff),
        1 => (0_u8..3, any::<bool>(), 0_u8..20).prop_map(|(lift, up, days)| Step::Override { lift, up, days }),
        1 => (0_u8..3).prop_map(Step::Ease),
        1 => (0_u8..3, 0_u8..60).prop_map(|(lift, days)| Step::EaseFor { lift, days }),
        5 => (0_u8..3).prop_map(Step::Accept),
        1 => (0_u8..3).prop_map(Step::Decline),
        1 => (0_u8..3).prop_map(Step::Layoff),
        1 => (0_u8..3, any::<bool>()).prop_map(|(lift, up)| Step::Rung { lift, up }),
        1 => (0_u8..3, 0_u8..4).prop_map(|(lift, role)| Step::Role { lift, role }),
        1 => Just(Step::Rater),
        1 => prop::bool::weighted(0.1).prop_map(|unknown| if unknown { Step::Unknown } else { Step::Missed }),
    ]
}

pub fn any_course() -> impl Strategy<Value = Vec<Step>> {
    prop::collection::vec(any_step(), 1..40)
}

/// A log while it grows, with the state after each event.
#[derive(Clone)]
pub struct Course {
    pub log: Log,
    pub day: Day,
    /// The state after each event of the log; as the fold of the log up to it leaves it.
    pub states: Vec<State>,
}

impl Course {
    pub fn new(parameters: Parameters) -> Course {
        Course::of_lifter_born(parameters, Some("1966-03-01"))
    }

    /// The first two events of a lifter who was born on that day: parameters, and a clearance.
    pub fn of_lifter_born(parameters: Parameters, born: Option<&str>) -> Course {
        let born = born.map(|day| day.parse().unwrap());
        let lifter = Lifter { id: name("invented"), born, invented: true };
        let mut course =
            Course { log: Log::new(lifter), day: "2025-01-06".parse().unwrap(), states: Vec::new() };
        course.add(EventKind::ParametersChanged(Box::new(parameters)));
        course.clear(true);
        course
    }

    pub fn play(steps: &[Step]) -> Course {
        Course::play_with(parameters(1), steps)
    }

    pub fn play_with(parameters: Parameters, steps: &[Step]) -> Course {
        let mut course = Course::new(parameters);
        steps.iter().for_each(|step| course.step(step));
        course
    }

    pub fn state(&self) -> &State {
        self.states.last().unwrap()
    }

    pub fn next_number(&self) -> u32 {
        self.log.events.len() as u32 + 1
    }

    /// An event that the log takes; whoever expects that one is turned away asks `turned_away`.
    pub fn add(&mut self, kind: EventKind) {
        let event = Event { sequence: self.next_number(), day: self.day, kind, note: None };
        let mut state = self.states.last().cloned().unwrap_or_else(|| State::new(self.log.lifter.born));
        let applied = state.apply(&event);
        self.log.events.push(event);
        match applied {
            Ok(()) => self.states.push(state),
            Err(error) if error.code() == Code::NeedsRefold => self.states.push(fold(&self.log).unwrap()),
            Err(error) => panic!("turned away: {error} {:?}", self.log.events.last()),
        }
    }

    pub fn clear(&mut self, cleared: bool) {
        let status = if cleared { ClearanceStatus::Cleared } else { ClearanceStatus::NotCleared };
        self.add(EventKind::ClearanceRecorded(Clearance {
            status,
            who: name("clinic"),
            expires: None,
            limits: Vec::new(),
        }));
    }

    pub fn lift_name(&self, at: u8) -> Name {
        name(["strict", "forgiving", "press"][usize::from(at % 3)])
    }

    pub fn limit(&self, at: usize) -> Mass {
        self.state().decide(self.day).unwrap()[at].limit
    }

    pub fn pain(region: &str, score: u8) -> PainAnswer {
        PainAnswer { region: name(region), score: Pain::new(score).unwrap(), features: Vec::new() }
    }

    pub fn set(load: Mass, quality: Quality) -> WorkSet {
        let (reps, acceptable, first) = match quality {
            Quality::Clean | Quality::CriticalLost => (5, Some(5), None),
            Quality::OneMiss => (5, Some(4), Some(4)),
            Quality::ManyMisses => (5, Some(2), Some(1)),
            Quality::Unscored => (5, None, None),
        };
        let marks = acceptable.map(|acceptable| {
            let brace = if quality == Quality::CriticalLost { Mark::NotMet } else { Mark::Met };
            let mut marks = SetMarks::scored(reps, acceptable, Rater::Coach);
            marks.first_failing_rep = first;
            marks.with("brace", brace).unwrap().with("depth", Mark::Met).unwrap()
        });
        WorkSet { load, reps: Reps::whole(reps).unwrap(), effort: None, failed: false, marks }
    }

    pub fn lift(&self, at: usize, quality: Quality, weight: Weight) -> LiftSession {
        let limit = self.limit(at);
        let step = self.state().parameters.as_ref().unwrap().lifts[at].start.load.scaled_down(0.1).unwrap();
        let load = match weight {
            Weight::AtLimit => limit,
            Weight::Lighter => limit.minus(step).unwrap().max(Mass::ZERO),
            Weight::Heavier => limit.plus(step).unwrap(),
        };
        // A single miss belongs to one set only.
        let second = if quality == Quality::OneMiss { Quality::Clean } else { quality };
        let sets = vec![Course::set(load, second), Course::set(load, quality)];
        LiftSession { lift: self.lift_name(at as u8), sets, setup: None, cue: None }
    }

    pub fn session(&mut self, lifts: u8, quality: Quality, weight: Weight, pain: Option<u8>) {
        let lifts: Vec<LiftSession> =
            (0..3).filter(|at| lifts >> at & 1 == 1).map(|at| self.lift(at, quality, weight)).collect();
        let region = if lifts.iter().any(|lift| lift.lift.as_str() == "press") { "shoulder" } else { "hip" };
        let pain = pain.map(|score| if score == 0 { Vec::new() } else { vec![Course::pain(region, score)] });
        self.add(EventKind::SessionRecorded(Session { lifts, pain, minutes: None, effort: None }));
    }

    pub fn day_report(&mut self, class: DayClass, asked: bool) {
        let pain = asked.then(Vec::new);
        self.add(EventKind::DayReport(DayReport { class: Some(class), pain, ..DayReport::default() }));
    }

    pub fn morning(&mut self, flare: bool) {
        let session =
            self.log.events.iter().rev().find(|event| matches!(event.kind, EventKind::SessionRecorded(_)));
        let Some(session) = session.map(|event| event.sequence) else { return };
        let pain = if flare { vec![Course::pain("hip", 2), Course::pain("shoulder", 2)] } else { Vec::new() };
        self.day = self.day.plus(1).unwrap();
        self.add(EventKind::NextDayReport(NextDayReport { session, pain, soreness: None }));
    }

    pub fn accept(&mut self, at: u8) {
        let advance = Advance { lift: self.lift_name(at), who: name("coach") };
        self.add(EventKind::AdvanceAccepted(advance));
    }

    pub fn clean_week(&mut self) {
        self.day_report(DayClass::Ordinary, true);
        for at in 0..3_u8 {
            let offered = matches!(
                self.state().decide(self.day).unwrap()[usize::from(at)].outlook,
                MoveOutlook::OnOffer { .. }
            );
            if offered {
                self.accept(at);
            }
        }
        self.session(7, Quality::Clean, Weight::AtLimit, Some(0));
        self.morning(false);
        self.day = self.day.plus(6).unwrap();
    }

    pub fn step(&mut self, step: &Step) {
        match *step {
            Step::Wait(days) => self.day = self.day.plus(i32::from(days)).unwrap(),
            Step::CleanWeek => self.clean_week(),
            Step::Session { lifts, quality, weight, pain } => self.session(lifts, quality, weight, pain),
            Step::Morning { flare } => self.morning(flare),
            Step::Day { class, asked } => self.day_report(DayClass::ALL[usize::from(class % 5)], asked),
            Step::Pain { score, sharp, region } => {
                let mut answer = Course::pain(if region { "hip" } else { "shoulder" }, score);
                if sharp {
                    answer.features.push(PainFeature::Sharp);
                }
                self.add(EventKind::PainReport(answer));
            }
            Step::Usual(level) => self.add(EventKind::UsualPainAgreed(UsualPain {
                region: name("hip"),
                level: Pain::new(level).unwrap(),
                who: name("coach"),
                clinician: false,
            })),
            Step::Symptom => {
                self.add(EventKind::SymptomReport(SymptomReport { signs: vec![StopSign::ChestPain] }))
            }
            Step::Clearance { cleared } => self.clear(cleared),
            Step::SignOff(scope) => {
                let scope = match scope {
                    0 => SignOffScope::Everything,
                    1 => SignOffScope::Region(name("hip")),
                    2 => SignOffScope::Region(name("shoulder")),
                    _ => SignOffScope::Gate(name("strict")),
                };
                self.add(EventKind::CoachSignOff(SignOff { who: name("coach"), scope }));
            }
            Step::Override { lift, up, days } => {
                let granted = self.state().lifts[usize::from(lift)].tuple.load;
                let load = granted.scaled_down(if up { 1.1 } else { 0.9 }).unwrap();
                let expires = Some(self.day.plus(i32::from(days)).unwrap());
                let why = Some(String::from("to see how it moves"));
                let (lift, who) = (self.lift_name(lift), name("coach"));
                self.add(EventKind::CoachOverride(Override { lift, load, who, why, expires }));
            }
            Step::Ease(lift) => {
                let load = self.state().lifts[usize::from(lift)].tuple.load.scaled_down(0.9).unwrap();
                let (lift, who) = (self.lift_name(lift), name("coach"));
                self.add(EventKind::CoachOverride(Override { lift, load, who, why: None, expires: None }));
            }
            Step::EaseFor { lift, days } => {
                let load = self.state().lifts[usize::from(lift)].tuple.load.scaled_down(0.98).unwrap();
                let expires = Some(self.day.plus(i32::from(days)).unwrap());
                let (lift, who) = (self.lift_name(lift), name("coach"));
                self.add(EventKind::CoachOverride(Override { lift, load, who, why: None, expires }));
            }
            Step::Accept(lift) => self.accept(lift),
            Step::Decline(lift) => {
                let advance = Advance { lift: self.lift_name(lift), who: name("coach") };
                self.add(EventKind::AdvanceDeclined(advance));
            }
            Step::Layoff(reason) => {
                let reason =
                    [LayoffReason::Well, LayoffReason::Planned, LayoffReason::Ill][usize::from(reason % 3)];
                self.add(EventKind::LayoffNoted(Layoff { from: self.day, to: None, reason }));
            }
            Step::Rung { lift, up } => {
                let mut to = self.state().lifts[usize::from(lift)].tuple;
                to.rung = if up { (to.rung + 1).min(2) } else { to.rung.saturating_sub(1) };
                let (lift, who) = (self.lift_name(lift), name("coach"));
                self.add(EventKind::VariantChanged(Move { lift, to, who }));
            }
            Step::Role { lift, role } => {
                let role = [Role::Train, Role::Maintain, Role::Rest, Role::Retire][usize::from(role % 4)];
                self.add(EventKind::RoleSet(RoleSet { lift: self.lift_name(lift), role, not_below: None }));
            }
            Step::Rater => {
                self.add(EventKind::RaterChanged(BarChanged { lift: None, now: name("another coach") }))
            }
            Step::Unknown => {
                let body =
                    bismar::value::Value::Map(vec![("rung".into(), bismar::value::Value::Number(3.0))]);
                self.add(EventKind::Unknown(UnknownEvent { kind: "hologram_recorded".into(), body }));
            }
            Step::Missed => self.add(EventKind::SessionMissed(SessionMissed { reason: name("work") })),
        }
    }

    /// Every upward change: number of the event that made it (as a place in the log), lift, tuple before and
    /// after. Going back to the load before a short break is a return, not a move.
    pub fn upward(&self) -> Vec<(usize, usize, Tuple, Tuple)> {
        let mut found = Vec::new();
        for at in 1..self.states.len() {
            let (before, after) = (&self.states[at - 1], &self.states[at]);
            for lift in 0..after.lifts.len().min(before.lifts.len()) {
                let (was, is) = (&before.lifts[lift], &after.lifts[lift]);
                let set = &after.parameters.as_ref().unwrap().lifts[lift];
                let harder = is.tuple.load > was.tuple.load
                    || set.is_harder(is.tuple.rung, was.tuple.rung)
                    || is.tuple.sets > was.tuple.sets
                    || is.tuple.reps > was.tuple.reps;
                let returned =
                    was.return_cap.is_some_and(|cap| is.tuple.load <= cap) && is.tuple.rung == was.tuple.rung;
                // A fold that retracts may change a past grant; that is no move of this event.
                if harder && !returned && is.moves.len() > was.moves.len() {
                    found.push((at, lift, was.tuple, is.tuple));
                }
            }
        }
        found
    }
}
