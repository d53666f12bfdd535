//! What may happen in the small world.

use core::fmt;
use std::string::String;
use std::vec;
use std::vec::Vec;

use super::super::foreseen::Foreseen;
use super::super::retraction::Retractions;
use super::super::state::State;
use super::small_world::{FORGIVING, STRICT, find, kg, name, parameters, parameters_of, today};
use crate::condition::DayClass;
use crate::gate::{Mark, Rater, SetMarks};
use crate::quantity::{Length, Pain, Reps};
use crate::record::*;

/// The world before anything has happened in it.
pub(super) fn world(without: Option<&'static str>) -> State {
    // Somebody young enough, and a log of a newer version, so that unknown events are kept.
    let mut lifter = Lifter::new(name("invented"));
    lifter.born = Some(today().plus(-15_000).unwrap());
    let mut state = State::new(lifter).with_guard_taken_out(without);
    state.log_version = VERSION + 1;
    take(&mut state, EventKind::ParametersChanged(parameters().into()), &Foreseen::default());
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
    DayFall "a day after a fall",
    DayNotAsked "ordinary day, nothing asked",
    FeverOver "the coach says that the fever is over",
    FallCleared "a clinician's word about the fall",
    StrictClean "strict clean",
    StrictFail "strict fails",
    StrictUnscored "strict not scored, pain not asked",
    StrictCriticalPain "strict loses a critical point with pain",
    StrictAlone "strict clean, alone without pins",
    StrictEasierRung "strict clean, on the easier rung",
    StrictLessRange "strict clean, short of its range",
    StrictLighter "strict clean, lighter",
    StrictBelt "strict clean, with a belt",
    StrictNoBelt "strict clean, without a belt",
    StrictNoReserve "strict clean, nothing in reserve",
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
    PainNeck "pain 7 where no lift loads",
    Usual "pain 2 agreed as usual",
    Symptom "stop sign",
    BreakWell "a break, well",
    BreakPlanned "a planned break",
    BreakIll "a break, ill",
    Cleared "cleared",
    NotCleared "not cleared",
    Limited "cleared up to 20 kg for the hip",
    ClearanceEnds "the clearance ends",
    SignOff "sign-off for everything",
    SignOffRegion "sign-off for the region",
    SignOffNeck "sign-off for the neck",
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
    SameParameters "the first parameters anew",
    StrictLeftOut "strict left out",
    OtherRegion "both lifts on another region",
    OtherImplement "strict with another kind of implement",
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
                let foreseen = Foreseen::retracting(retractions);
                take(state, self.kind(state), &foreseen);
                super::codec::wait(state, 1);
                let pain = Some(vec![PainAnswer::plain(name("hip"), Pain::new(2).unwrap())]);
                take(
                    state,
                    EventKind::NextDayReport(NextDayReport { session, pain, soreness: None }),
                    &foreseen,
                );
            }
            _ => take(state, self.kind(state), &Foreseen::default()),
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
        let granted = find(state, STRICT).map_or(parameters().lifts[0].start, |lift| lift.now.grant);
        let pause = |reason| EventKind::LayoffNoted(Layoff { from: today(), to: None, reason });
        let ranged = |to| EventKind::RangeChanged(Move { lift: name("strict"), to, who: name("coach") });
        let moved = |to| EventKind::VariantChanged(Move { lift: name("strict"), to, who: name("coach") });
        let pain = |score| PainAnswer::plain(name("hip"), Pain::new(score).unwrap());
        let day = |class, asks| {
            EventKind::DayReport(DayReport {
                class: Some(class),
                pain: Some(vec![]),
                asks,
                ..DayReport::default()
            })
        };
        match self {
            Act::DayOrdinary => day(DayClass::Ordinary, Some(vec![])),
            Act::DayBad => day(DayClass::BadAgreeing, Some(vec![])),
            Act::DayFever => day(DayClass::Ordinary, Some(vec![Ask::Fever])),
            Act::DayFall => day(DayClass::Ordinary, Some(vec![Ask::Fall])),
            Act::DayNotAsked => day(DayClass::Ordinary, None),
            Act::FeverOver => EventKind::AskAnswered(AskAnswered { ask: Ask::Fever, who, clinician: false }),
            Act::FallCleared => EventKind::AskAnswered(AskAnswered { ask: Ask::Fall, who, clinician: true }),
            Act::StrictClean => session(state, &[STRICT], Quality::Clean, Some(vec![])),
            Act::StrictFail => session(state, &[STRICT], Quality::Fails, Some(vec![])),
            Act::StrictUnscored => session(state, &[STRICT], Quality::Unscored, None),
            Act::StrictCriticalPain => session(state, &[STRICT], Quality::Critical, Some(vec![pain(1)])),
            Act::StrictAlone => session(state, &[STRICT], Quality::Alone, Some(vec![])),
            Act::StrictEasierRung => session(state, &[STRICT], Quality::EasierRung, Some(vec![])),
            Act::StrictLessRange => session(state, &[STRICT], Quality::LessRange, Some(vec![])),
            Act::StrictLighter => session(state, &[STRICT], Quality::Lighter, Some(vec![])),
            Act::StrictBelt => session(state, &[STRICT], Quality::Belt, Some(vec![])),
            Act::StrictNoBelt => session(state, &[STRICT], Quality::NoBelt, Some(vec![])),
            Act::StrictNoReserve => session(state, &[STRICT], Quality::NoReserve, Some(vec![])),
            Act::BothFlare | Act::BothClean => {
                session(state, &[STRICT, FORGIVING], Quality::Clean, Some(vec![]))
            }
            Act::BothFault => session(state, &[STRICT, FORGIVING], Quality::Critical, Some(vec![])),
            Act::ForgivingClean => session(state, &[FORGIVING], Quality::Clean, Some(vec![])),
            Act::ForgivingFail => session(state, &[FORGIVING], Quality::Fails, Some(vec![])),
            Act::Morning => {
                let last =
                    state.lifts.iter().flat_map(|lift| &lift.now.sittings).map(|sitting| sitting.session);
                let session = last.max().unwrap_or(0);
                EventKind::NextDayReport(NextDayReport { session, pain: Some(vec![]), soreness: None })
            }
            Act::Missed => EventKind::SessionMissed(SessionMissed { reason: name("work") }),
            Act::PainLittle => EventKind::PainReport(pain(2)),
            Act::PainSome => EventKind::PainReport(pain(3)),
            Act::PainMuch => EventKind::PainReport(pain(7)),
            Act::PainNeck => EventKind::PainReport(PainAnswer { region: name("neck"), ..pain(7) }),
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
                let (region, load) = (Some(name("hip")), Some(kg(20.0)));
                let limit = ClearanceLimits { region, load, ..ClearanceLimits::default() };
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
            Act::SignOffNeck => {
                EventKind::CoachSignOff(SignOff { who, scope: SignOffScope::Region(name("neck")) })
            }
            Act::OverrideUp => EventKind::CoachOverride(Override {
                lift: name("strict"),
                load: kg(22.0),
                who,
                why: Some(String::from("to see")),
                expires: Some(today().plus(1).unwrap()),
            }),
            Act::Ease => {
                let load = if granted.load() > kg(20.0) { kg(20.0) } else { kg(18.0) };
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
            Act::JumpStrict => moved(granted.with_load(kg(24.0))),
            Act::RungDown => moved(granted.on_rung(0)),
            Act::RungUp => moved(granted.on_rung(1).with_load(kg(22.0))),
            Act::RangeDown => ranged(at_range(granted, 0)),
            Act::RangeUp => ranged(at_range(granted, 1)),
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
            Act::SameParameters => EventKind::ParametersChanged(parameters_of(0).into()),
            Act::StrictLeftOut => EventKind::ParametersChanged(parameters_of(1).into()),
            Act::OtherRegion => EventKind::ParametersChanged(parameters_of(2).into()),
            Act::OtherImplement => EventKind::ParametersChanged(parameters_of(3).into()),
            Act::Unknown => {
                EventKind::Unknown(UnknownEvent { kind: "later".into(), body: crate::value::Value::Null })
            }
            Act::Nothing | Act::WaitOne | Act::WaitThree => unreachable!("not an event"),
        }
    }
}

fn at_range(grant: Grant, range: u8) -> Grant {
    Grant { place: Place { range, ..grant.place }, ..grant }
}

fn next_number(state: &State) -> u32 {
    state.last.map_or(1, |(_, last)| last + 1)
}

/// Takes an event; one that names what is not there is turned away and leaves the state as it was.
fn take(state: &mut State, kind: EventKind, foreseen: &Foreseen) {
    let event = Event { sequence: next_number(state), day: today(), kind, note: None };
    let mut next = state.clone();
    if next.take(&event, foreseen).is_ok() {
        *state = next;
    }
}

#[derive(Clone, Copy, PartialEq)]
enum Quality {
    Clean,
    Fails,
    Unscored,
    Critical,
    Alone,
    EasierRung,
    LessRange,
    Lighter,
    Belt,
    NoBelt,
    NoReserve,
}

fn session(state: &State, lifts: &[&str], quality: Quality, pain: Option<Vec<PainAnswer>>) -> EventKind {
    let lifts = lifts.iter().map(|id| {
        let limit = state.view(&name(id), today()).map_or(kg(20.0), |view| view.limit());
        let load = if quality == Quality::Lighter { kg(18.0) } else { limit };
        let acceptable = if quality == Quality::Fails { 1 } else { 3 };
        let brace = if quality == Quality::Critical { Mark::NotMet } else { Mark::Met };
        let mut marks = SetMarks::scored(3, acceptable, Rater::Coach);
        marks.first_failing_rep = (quality == Quality::Fails).then_some(2);
        let marks = (quality != Quality::Unscored).then(|| marks.with("brace", brace).unwrap());
        let reps = Reps::whole(3).unwrap();
        let effort = (quality == Quality::NoReserve).then(|| Effort::Rir(crate::quantity::Rir::whole(0)));
        let set = WorkSet { load, reps, effort, failed: false, marks };
        let kit = match quality {
            Quality::Belt => Some(vec![name("belt")]),
            Quality::NoBelt => Some(vec![]),
            _ => None,
        };
        let company = Some(if quality == Quality::Alone { ByTheBar::Alone } else { ByTheBar::Others });
        let place = (quality == Quality::EasierRung).then_some(Place { rung: 0, range: 1, tempo: 0 });
        let reached = (quality == Quality::LessRange).then(|| Length::from_mm(200.0).unwrap());
        let setup = Some(Setup { company, kit, pins: None });
        LiftSession { place, reached, setup, ..LiftSession::as_granted(name(id), vec![set]) }
    });
    EventKind::SessionRecorded(Session { lifts: lifts.collect(), pain, minutes: None, effort: None })
}
