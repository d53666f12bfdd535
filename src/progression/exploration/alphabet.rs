//! The small world and what may happen in it.

use core::fmt;
use std::string::String;
use std::vec;
use std::vec::Vec;

use super::super::retraction::Retractions;
use super::super::state::State;
use crate::condition::DayClass;
use crate::gate::{Criterion, Gate, Mark, PassRules, PassRun, Rater, Requirement, SetMarks};
use crate::loading::{Implement, Pieces, Stock};
use crate::quantity::{Day, Length, Mass, Name, Pain, Reps};
use crate::record::*;

pub(super) const STRICT: usize = 0;
pub(super) const FORGIVING: usize = 1;

/// Today, always: waiting moves everything else into the past instead.
pub(super) fn today() -> Day {
    Day::from_number(20_000).unwrap()
}

fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

pub(super) fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

fn lift(label: &str, load: f64, ceiling: f64) -> LiftParameters {
    let rung = |text: &str, below: Vec<Name>| Rung { name: name(text), harder_than: below, own_ratio: None };
    LiftParameters {
        name: name(label),
        body: Body::Lower,
        regions: vec![name("hip")],
        implement: name("bells"),
        rungs: vec![rung("easy", vec![]), rung("full", vec![name("easy")])],
        ranges: vec![Length::from_mm(300.0).unwrap(), Length::from_mm(400.0).unwrap()],
        tempos: vec![],
        start: Tuple { rung: 1, range: 1, tempo: 0, sets: 1, reps: 3, load: kg(load) },
        moving: Dimension::Load,
        criteria: vec![Criterion::critical("brace").unwrap()],
        pass: PassRules::default(),
        gate: Gate::new(Requirement::PassRun(PassRun::new(3, 3, 2).unwrap().with_neutral_fails(1).unwrap()))
            .unwrap(),
        step: Some(StepPolicy::SmallestLoadable),
        step_cap: Some(0.10),
        ceiling: Some(kg(ceiling)),
        reps_top: None,
        sets_top: None,
        learning_sessions: Some(1),
        over_the_body: true,
    }
}

pub(super) fn parameters() -> Parameters {
    let row = |from_days, load_left, easier_rung| LayoffRow {
        from_days,
        load_left,
        easier_rung,
        relearn: false,
        restart: false,
    };
    Parameters {
        lifts: vec![lift("strict", 20.0, 22.0), lift("forgiving", 20.0, 24.0)],
        pairs: vec![Pair { strict: name("strict"), forgiving: name("forgiving"), ratio_cap: 1.0 }],
        implements: vec![Implement::Pieces(
            Pieces::new(name("bells"), [18.0, 20.0, 22.0, 24.0, 30.0].map(kg).to_vec()).unwrap(),
        )],
        stock: Stock::default(),
        policy: Policy {
            cooling_off_days: 3,
            region_window_days: 2,
            window_days: 4,
            freshness_days: 3,
            offer_days: 4,
            learning_sessions: 1,
            clear_sessions: 1,
            return_passes: 1,
            neutral_fails: 1,
            proof_days: 4,
            clearance_days: 4,
            usual_review_days: 4,
            layoff: vec![row(4, 1.0, false), row(6, 0.9, true)],
            ..Policy::default()
        },
    }
}

/// The world before anything has happened in it.
pub(super) fn world(without: Option<&'static str>) -> State {
    let mut state = State::new(None).with_guard_taken_out(without);
    let event = Event {
        sequence: 1,
        day: today(),
        kind: EventKind::ParametersChanged(parameters().into()),
        note: None,
    };
    state.take(&event, &Retractions::default()).unwrap();
    state
}

macro_rules! acts {
    ($($act:ident $text:literal),+ $(,)?) => {
        /// One thing that may happen.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub(in super::super) enum Act {
            /// Nothing; stands before the first.
            Nothing,
            $($act),+
        }

        impl Act {
            pub(in super::super) const ALL: [Act; [$($text),+].len()] = [$(Act::$act),+];
        }

        impl fmt::Display for Act {
            fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
                out.write_str(match self { Act::Nothing => "nothing", $(Act::$act => $text),+ })
            }
        }
    };
}

acts! {
    WaitOne "wait a day",
    WaitThree "wait three days",
    DayOrdinary "ordinary day, no pain",
    DayBad "bad day, no pain",
    DayFever "a day with fever",
    StrictClean "strict clean",
    StrictFail "strict fails",
    StrictUnscored "strict not scored, pain not asked",
    StrictCriticalPain "strict loses a critical point with pain",
    StrictAlone "strict clean, alone without pins",
    BothClean "both clean",
    BothFault "both lose the same critical point",
    ForgivingClean "forgiving clean",
    ForgivingFail "forgiving fails",
    BothFlare "both clean, and worse the next morning",
    Morning "good morning after",
    Missed "session missed",
    PainLittle "pain 2",
    PainSome "pain 3",
    PainMuch "pain 7",
    Usual "pain 2 agreed as usual",
    Symptom "stop sign",
    BreakWell "a break, well",
    BreakPlanned "a planned break",
    BreakIll "a break, ill",
    Cleared "cleared",
    NotCleared "not cleared",
    Limited "cleared up to 20 kg",
    ClearanceEnds "the clearance ends",
    SignOff "sign-off for everything",
    SignOffRegion "sign-off for the region",
    SignOffGate "sign-off for the gate",
    OverrideUp "override up",
    Ease "ease for good",
    AcceptStrict "accept strict",
    AcceptForgiving "accept forgiving",
    DeclineStrict "decline strict",
    JumpStrict "coach asks for a jump of two steps",
    RungDown "easier rung",
    RungUp "harder rung with more load",
    RangeDown "shorter range",
    RangeUp "longer range",
    Rater "another rater",
    Discs "other discs",
    Maintain "strict is kept",
    MaintainBand "strict is kept, down to 18 kg",
    Rest "strict rests",
    Train "strict is trained",
    Retire "strict is retired",
    BodyMass "body mass",
    BlockStarts "a block starts",
    BlockEnds "a block ends",
    FunctionTest "a test of function",
    SameParameters "the same parameters anew",
    Unknown "unknown event",
}

impl Act {
    /// Plays the act on a state whose today is [`today`].
    pub(in super::super) fn apply(self, state: &mut State) {
        match self {
            Act::Nothing => {}
            Act::WaitOne => super::codec::wait(state, 1),
            Act::WaitThree => super::codec::wait(state, 3),
            Act::BothFlare => {
                let session = next_number(state);
                let retractions = Retractions::of(session, today().plus(-1).unwrap(), name("hip"));
                take(state, self.kind(state), &retractions);
                super::codec::wait(state, 1);
                let score = Pain::new(2).unwrap();
                let answer = PainAnswer { region: name("hip"), score, features: vec![] };
                let report = NextDayReport { session, pain: vec![answer], soreness: None };
                take(state, EventKind::NextDayReport(report), &retractions);
            }
            _ => take(state, self.kind(state), &Retractions::default()),
        }
    }

    /// The kind of event that it is; none where time passes.
    pub(in super::super) fn kind_name(self, state: &State) -> Option<&'static str> {
        match self {
            Act::Nothing | Act::WaitOne | Act::WaitThree => None,
            _ => Some(self.kind(state).name()),
        }
    }

    fn kind(self, state: &State) -> EventKind {
        let who = name("coach");
        let advance = |lift: &str| Advance { lift: name(lift), who: name("coach") };
        let clearance = |status, limits| {
            EventKind::ClearanceRecorded(Clearance { status, who: name("clinic"), expires: None, limits })
        };
        let role = |role| EventKind::RoleSet(RoleSet { lift: name("strict"), role, not_below: None });
        let granted = state.lifts[STRICT].tuple;
        let pause = |reason| EventKind::LayoffNoted(Layoff { from: today(), to: None, reason });
        let ranged = |to| EventKind::RangeChanged(Move { lift: name("strict"), to, who: name("coach") });
        let moved = |to| EventKind::VariantChanged(Move { lift: name("strict"), to, who: name("coach") });
        let pain =
            |score| PainAnswer { region: name("hip"), score: Pain::new(score).unwrap(), features: vec![] };
        match self {
            Act::DayOrdinary | Act::DayBad => {
                let class = if self == Act::DayBad { DayClass::BadAgreeing } else { DayClass::Ordinary };
                EventKind::DayReport(DayReport {
                    class: Some(class),
                    pain: Some(vec![]),
                    ..DayReport::default()
                })
            }
            Act::DayFever => {
                let class = Some(DayClass::Ordinary);
                EventKind::DayReport(DayReport {
                    class,
                    pain: Some(vec![]),
                    asks: vec![Ask::Fever],
                    ..DayReport::default()
                })
            }
            Act::StrictClean => session(state, &[STRICT], Quality::Clean, Some(vec![])),
            Act::StrictFail => session(state, &[STRICT], Quality::Fails, Some(vec![])),
            Act::StrictUnscored => session(state, &[STRICT], Quality::Unscored, None),
            Act::StrictCriticalPain => session(state, &[STRICT], Quality::Critical, Some(vec![pain(1)])),
            Act::StrictAlone => session(state, &[STRICT], Quality::Alone, Some(vec![])),
            Act::BothFlare | Act::BothClean => {
                session(state, &[STRICT, FORGIVING], Quality::Clean, Some(vec![]))
            }
            Act::BothFault => session(state, &[STRICT, FORGIVING], Quality::Critical, Some(vec![])),
            Act::ForgivingClean => session(state, &[FORGIVING], Quality::Clean, Some(vec![])),
            Act::ForgivingFail => session(state, &[FORGIVING], Quality::Fails, Some(vec![])),
            Act::Morning => {
                let last =
                    state.lifts.iter().flat_map(|lift| &lift.sittings).map(|sitting| sitting.session).max();
                EventKind::NextDayReport(NextDayReport {
                    session: last.unwrap_or(0),
                    pain: vec![],
                    soreness: None,
                })
            }
            Act::Missed => EventKind::SessionMissed(SessionMissed { reason: name("work") }),
            Act::PainLittle => EventKind::PainReport(pain(2)),
            Act::PainSome => EventKind::PainReport(pain(3)),
            Act::PainMuch => EventKind::PainReport(pain(7)),
            Act::Usual => EventKind::UsualPainAgreed(UsualPain {
                region: name("hip"),
                level: Pain::new(2).unwrap(),
                who,
                clinician: false,
            }),
            Act::BreakWell => pause(LayoffReason::Well),
            Act::BreakPlanned => pause(LayoffReason::Planned),
            Act::BreakIll => pause(LayoffReason::Ill),
            Act::Symptom => EventKind::SymptomReport(SymptomReport { signs: vec![StopSign::Faint] }),
            Act::Cleared => clearance(ClearanceStatus::Cleared, vec![]),
            Act::NotCleared => clearance(ClearanceStatus::NotCleared, vec![]),
            Act::Limited => {
                let limit = ClearanceLimits { load: Some(kg(20.0)), ..ClearanceLimits::default() };
                clearance(ClearanceStatus::ClearedWithLimits, vec![limit])
            }
            Act::ClearanceEnds => EventKind::ClearanceExpired(who),
            Act::SignOffGate => {
                EventKind::CoachSignOff(SignOff { who, scope: SignOffScope::Gate(name("strict")) })
            }
            Act::SignOff => EventKind::CoachSignOff(SignOff { who, scope: SignOffScope::Everything }),
            Act::SignOffRegion => {
                EventKind::CoachSignOff(SignOff { who, scope: SignOffScope::Region(name("hip")) })
            }
            Act::OverrideUp => EventKind::CoachOverride(Override {
                lift: name("strict"),
                load: kg(22.0),
                who,
                why: Some(String::from("to see")),
                expires: Some(today().plus(1).unwrap()),
            }),
            Act::Ease => {
                let load = if granted.load > kg(20.0) { kg(20.0) } else { kg(18.0) };
                EventKind::CoachOverride(Override {
                    lift: name("strict"),
                    load,
                    who,
                    why: None,
                    expires: None,
                })
            }
            Act::AcceptStrict => EventKind::AdvanceAccepted(advance("strict")),
            Act::AcceptForgiving => EventKind::AdvanceAccepted(advance("forgiving")),
            Act::DeclineStrict => EventKind::AdvanceDeclined(advance("strict")),
            Act::JumpStrict => moved(Tuple { load: kg(24.0), ..granted }),
            Act::RungDown => moved(Tuple { rung: 0, ..granted }),
            Act::RungUp => moved(Tuple { rung: 1, load: kg(22.0), ..granted }),
            Act::RangeDown => ranged(Tuple { range: 0, ..granted }),
            Act::RangeUp => ranged(Tuple { range: 1, ..granted }),
            Act::Rater => EventKind::RaterChanged(BarChanged { lift: None, now: name("another coach") }),
            Act::Discs => {
                EventKind::BarOrDiscsChanged(BarChanged { lift: Some(name("strict")), now: name("others") })
            }
            Act::Maintain => role(Role::Maintain),
            Act::MaintainBand => EventKind::RoleSet(RoleSet {
                lift: name("strict"),
                role: Role::Maintain,
                not_below: Some(kg(18.0)),
            }),
            Act::Rest => role(Role::Rest),
            Act::Train => role(Role::Train),
            Act::Retire => role(Role::Retire),
            Act::BodyMass => EventKind::BodyMassRecorded(kg(80.0)),
            Act::BlockStarts => EventKind::BlockStarted(name("block")),
            Act::BlockEnds => EventKind::BlockEnded(name("block")),
            Act::FunctionTest => {
                EventKind::FunctionTested(Measurement { test: FunctionTest::Grip, result: 40.0 })
            }
            Act::SameParameters => EventKind::ParametersChanged(parameters().into()),
            Act::Unknown => {
                EventKind::Unknown(UnknownEvent { kind: "later".into(), body: crate::value::Value::Null })
            }
            Act::Nothing | Act::WaitOne | Act::WaitThree => unreachable!("not an event"),
        }
    }
}

fn next_number(state: &State) -> u32 {
    state.last.map_or(1, |(_, last)| last + 1)
}

fn take(state: &mut State, kind: EventKind, retractions: &Retractions) {
    let event = Event { sequence: next_number(state), day: today(), kind, note: None };
    state.take(&event, retractions).unwrap();
}

#[derive(Clone, Copy, PartialEq)]
enum Quality {
    Clean,
    Fails,
    Unscored,
    Critical,
    Alone,
}

fn session(state: &State, lifts: &[usize], quality: Quality, pain: Option<Vec<PainAnswer>>) -> EventKind {
    let lifts = lifts.iter().map(|at| {
        let load = state.limit(*at, today());
        let acceptable = if quality == Quality::Fails { 1 } else { 3 };
        let brace = if quality == Quality::Critical { Mark::NotMet } else { Mark::Met };
        let mut marks = SetMarks::scored(3, acceptable, Rater::Coach);
        marks.first_failing_rep = (quality == Quality::Fails).then_some(2);
        let marks = (quality != Quality::Unscored).then(|| marks.with("brace", brace).unwrap());
        let reps = Reps::whole(3).unwrap();
        let set = WorkSet { load, reps, effort: None, failed: false, marks };
        let setup = Setup { alone: quality == Quality::Alone, ..Setup::default() };
        let lift = name(["strict", "forgiving"][*at]);
        LiftSession { lift, sets: vec![set], setup: Some(setup), cue: None }
    });
    EventKind::SessionRecorded(Session { lifts: lifts.collect(), pain, minutes: None, effort: None })
}

/// The forgiving lift moves, then the strict one, then the forgiving one to its top.
static TO_THE_TOP: &[Act] = [
    [Act::Cleared, Act::DayOrdinary, Act::BothClean, Act::Morning, Act::WaitOne],
    [Act::DayOrdinary, Act::BothClean, Act::Morning, Act::WaitOne, Act::Nothing],
    [Act::DayOrdinary, Act::BothClean, Act::Morning, Act::WaitOne, Act::Nothing],
    [Act::DayOrdinary, Act::AcceptForgiving, Act::BothClean, Act::Morning, Act::WaitOne],
    [Act::DayOrdinary, Act::BothClean, Act::Morning, Act::WaitOne, Act::Nothing],
    [Act::DayOrdinary, Act::AcceptStrict, Act::BothClean, Act::Morning, Act::WaitOne],
    [Act::Cleared, Act::DayOrdinary, Act::BothClean, Act::Morning, Act::WaitOne],
    [Act::DayOrdinary, Act::AcceptForgiving, Act::BothClean, Act::Morning, Act::WaitOne],
    [Act::DayOrdinary, Act::BothClean, Act::Morning, Act::WaitOne, Act::Nothing],
]
.as_flattened();

/// The strict lift goes down a rung and proves itself there.
static DOWN_A_RUNG: &[Act] = [
    [Act::Cleared, Act::RungDown, Act::DayOrdinary, Act::BothClean, Act::Morning],
    [Act::WaitOne, Act::DayOrdinary, Act::BothClean, Act::Morning, Act::WaitOne],
    [Act::DayOrdinary, Act::BothClean, Act::Morning, Act::WaitOne, Act::DayOrdinary],
    [Act::AcceptForgiving, Act::BothClean, Act::Morning, Act::WaitOne, Act::DayOrdinary],
    [Act::BothClean, Act::Morning, Act::WaitOne, Act::DayOrdinary, Act::Nothing],
]
.as_flattened();

pub(super) const TRUNKS: &[&[Act]] = &[TO_THE_TOP, DOWN_A_RUNG];
