//! Each act of the small world as the event that a log would hold.

use std::string::String;
use std::vec;
use std::vec::Vec;

use super::super::state::State;
use super::acts::Act;
use super::sessions::{Quality, session};
use super::world::{FORGIVING, LIFTS, LIMIT, STRICT, Set, any_day, find, kg, mm, name};
use crate::condition::DayClass;
use crate::quantity::{Day, Mass, Pain};
use crate::record::*;
use crate::sign::{Ask, StopSign};

impl Act {
    /// The event that it is, on that day; none where time passes.
    pub(super) fn event(self, state: &State, on: Day) -> Option<EventKind> {
        if let Some(set) = self.set() {
            return Some(EventKind::ParametersChanged(set.parameters().clone().into()));
        }
        let kinds = [Act::session, Act::report, Act::clinic, Act::coach, Act::moved, Act::other];
        kinds.iter().find_map(|kind| kind(self, state, on))
    }

    /// The kind of event that it is; none where time passes.
    pub(in super::super) fn kind_name(self, state: &State) -> Option<&'static str> {
        let corrected = correction(self, state, any_day()).map(|_| "correction");
        corrected.or_else(|| self.event(state, any_day()).map(|kind| kind.name()))
    }

    fn session(self, state: &State, on: Day) -> Option<EventKind> {
        let strict = |quality| Some(session((state, on), &[STRICT], quality, Some(vec![])));
        let both = |quality, pain| Some(session((state, on), &LIFTS, quality, Some(pain)));
        let forgiving = |quality| Some(session((state, on), &[FORGIVING], quality, Some(vec![])));
        let hurting =
            |quality, score| Some(session((state, on), &[STRICT], quality, Some(vec![pain(score)])));
        match self {
            Act::StrictClean | Act::StrictFlare => strict(Quality::Clean),
            // The second of the two is made where they are played.
            Act::StrictTwice => strict(Quality::OneSet),
            Act::StrictTwiceFails => strict(Quality::Clean),
            // What is said instead is made where they are played.
            Act::StrictCorrected | Act::StrictNever => strict(Quality::Clean),
            Act::StrictFail => strict(Quality::Fails),
            Act::StrictMissed => strict(Quality::Misses),
            Act::StrictUnscored => strict(Quality::Unscored),
            Act::StrictPainNotAsked => Some(session((state, on), &[STRICT], Quality::Clean, None)),
            Act::StrictPain => hurting(Quality::Clean, 2),
            Act::StrictCriticalPain => hurting(Quality::LosesCritical, 1),
            Act::StrictAlone => strict(Quality::Alone),
            Act::StrictEasierRung => strict(Quality::EasierRung),
            Act::StrictEasierTempo => strict(Quality::OtherTempo),
            Act::StrictOtherRange => strict(Quality::OtherRange),
            Act::StrictPlaceUnsaid => strict(Quality::PlaceUnsaid),
            Act::StrictLessRange => strict(Quality::LessRange),
            Act::StrictLighter => strict(Quality::Lighter),
            Act::StrictOneSet => strict(Quality::OneSet),
            Act::StrictFewerReps => strict(Quality::FewerReps),
            Act::StrictBelt => strict(Quality::Belt),
            Act::StrictNoBelt => strict(Quality::NoBelt),
            Act::StrictNoReserve => strict(Quality::NoReserve),
            Act::BothClean | Act::BothFlare | Act::BothFlareTold => both(Quality::Clean, vec![]),
            Act::BothPain => both(Quality::Clean, vec![pain(2)]),
            Act::BothFault => both(Quality::LosesCritical, vec![]),
            Act::ForgivingClean => forgiving(Quality::Clean),
            Act::ForgivingFail => forgiving(Quality::Fails),
            _ => None,
        }
    }

    fn report(self, state: &State, _: Day) -> Option<EventKind> {
        let day = |class, asks| {
            let report = DayReport { asks, ..DayReport::all_well(class) };
            Some(EventKind::DayReport(report))
        };
        let hurts = |answer| Some(EventKind::PainReport(answer));
        let featured = |features| PainAnswer { features, ..pain(1) };
        let morning = |pain| {
            let session = state.shared.sessions.last().map_or(0, |(session, _)| *session);
            Some(EventKind::NextDayReport(NextDayReport { session, pain, soreness: None }))
        };
        match self {
            Act::DayWithin => day(DayClass::Within, Some(vec![])),
            Act::DayAbove => day(DayClass::Above, Some(vec![])),
            Act::DayBelow => day(DayClass::Below, Some(vec![])),
            Act::DayBelowSingle => day(DayClass::BelowSingle, Some(vec![])),
            Act::DayFever => day(DayClass::Within, Some(vec![Ask::Fever])),
            Act::DayFall => day(DayClass::Within, Some(vec![Ask::Fall])),
            Act::DayNothingAsked => day(DayClass::Within, None),
            Act::DayPainNotAsked => {
                let report = DayReport { pain: None, ..DayReport::all_well(DayClass::Within) };
                Some(EventKind::DayReport(report))
            }
            Act::Morning => morning(Some(vec![])),
            Act::MorningNotAsked => morning(None),
            Act::PainLittle | Act::PainCorrected => hurts(pain(2)),
            Act::PainSome => hurts(pain(3)),
            Act::PainMuch => hurts(pain(7)),
            Act::PainNew => hurts(featured(Some(vec![PainFeature::New]))),
            Act::PainNotKnown => hurts(featured(None)),
            Act::PainSharp => hurts(featured(Some(vec![PainFeature::Sharp]))),
            Act::PainNeck => hurts(PainAnswer { region: name("neck"), ..pain(7) }),
            Act::PainBack => hurts(PainAnswer { region: name("back"), ..pain(7) }),
            Act::Symptom | Act::StopNever => {
                Some(EventKind::SymptomReport(SymptomReport { signs: vec![StopSign::Faint] }))
            }
            _ => None,
        }
    }

    fn clinic(self, _: &State, on: Day) -> Option<EventKind> {
        let who = name("coach");
        let clearance = |status, expires, limits| {
            Some(EventKind::ClearanceRecorded(Clearance { status, who: name("clinic"), expires, limits }))
        };
        let answer =
            |ask, clinician| Some(EventKind::AskAnswered(AskAnswered { ask, who: name("coach"), clinician }));
        let hip = || ClearanceLimits { region: Some(name("hip")), ..ClearanceLimits::default() };
        let limited = |limit| clearance(ClearanceStatus::ClearedWithLimits, None, vec![limit]);
        let sign_off = |scope| Some(EventKind::CoachSignOff(SignOff { who: name("coach"), scope }));
        match self {
            Act::Cleared => clearance(ClearanceStatus::Cleared, None, vec![]),
            Act::NotCleared => clearance(ClearanceStatus::NotCleared, None, vec![]),
            Act::Limited => limited(ClearanceLimits { load: Some(kg(LIMIT)), ..hip() }),
            Act::LimitedRange => limited(ClearanceLimits { range: Some(mm(300.0)), ..hip() }),
            Act::ClearedBefore => clearance(ClearanceStatus::Cleared, Some(on.plus(-1).unwrap()), vec![]),
            Act::ClearanceEnds => Some(EventKind::ClearanceExpired(who)),
            Act::FeverOver => answer(Ask::Fever, false),
            Act::FallAnsweredByCoach => answer(Ask::Fall, false),
            Act::FallCleared => answer(Ask::Fall, true),
            Act::SignOff => sign_off(SignOffScope::Everything),
            Act::SignOffRegion => sign_off(SignOffScope::Region(name("hip"))),
            Act::SignOffNeck => sign_off(SignOffScope::Region(name("neck"))),
            Act::SignOffBack => sign_off(SignOffScope::Region(name("back"))),
            Act::SignOffGate => sign_off(SignOffScope::Gate(name(STRICT))),
            Act::Usual => Some(EventKind::UsualPainAgreed(UsualPain {
                region: name("hip"),
                level: Pain::new(2).unwrap(),
                who,
                clinician: false,
            })),
            _ => None,
        }
    }

    fn coach(self, state: &State, on: Day) -> Option<EventKind> {
        let (_, above, below) = around(state);
        let tomorrow = on.plus(1).ok();
        let advance = |lift: &str| Advance { lift: name(lift), who: name("coach") };
        let overrule = |load, why: Option<&str>, expires| {
            let (lift, who, why) = (name(STRICT), name("coach"), why.map(String::from));
            Some(EventKind::CoachOverride(Override { lift, load, who, why, expires }))
        };
        let role =
            |role, not_below| Some(EventKind::RoleSet(RoleSet { lift: name(STRICT), role, not_below }));
        match self {
            Act::OverrideUp => overrule(above, Some("to see"), tomorrow),
            Act::OverrideNoReason => overrule(above, None, tomorrow),
            Act::EaseToday => overrule(below, None, tomorrow),
            Act::Ease => overrule(below, None, None),
            Act::AcceptStrict => Some(EventKind::AdvanceAccepted(advance(STRICT))),
            Act::AcceptForgiving => Some(EventKind::AdvanceAccepted(advance(FORGIVING))),
            Act::DeclineStrict => Some(EventKind::AdvanceDeclined(advance(STRICT))),
            Act::Maintain => role(Role::Maintain, None),
            Act::MaintainBand => role(Role::Maintain, Some(kg(16.0))),
            Act::Rest => role(Role::Rest, None),
            Act::Train => role(Role::Train, None),
            Act::Retire => role(Role::Retire, None),
            _ => None,
        }
    }

    /// The coach moves the strict lift by hand.
    fn moved(self, state: &State, _: Day) -> Option<EventKind> {
        let (granted, above, below) = around(state);
        let to = |to| Move { lift: name(STRICT), to, who: name("coach") };
        let variant = |grant| Some(EventKind::VariantChanged(to(grant)));
        let placed = |place| Some(EventKind::RangeChanged(to(Grant { place, ..granted })));
        let reps = |reps| variant(Grant { work: Work { reps, ..granted.work }, ..granted });
        let longer = Place { range: 1, ..granted.place };
        match self {
            Act::OneUp => variant(granted.with_load(above)),
            Act::TwoUp => variant(granted.with_load(next(state, above).0)),
            Act::RungDown => variant(granted.on_rung(0)),
            Act::RungUp => variant(granted.on_rung(1)),
            Act::RungUpLighter => variant(granted.on_rung(1).with_load(below)),
            Act::RungBeside => variant(granted.on_rung(2)),
            Act::RangeDown => placed(Place { range: 0, ..granted.place }),
            Act::RangeUp => placed(longer),
            Act::RangeUpHeavier => {
                Some(EventKind::RangeChanged(to(Grant { place: longer, ..granted.with_load(above) })))
            }
            Act::TempoDown => placed(Place { tempo: 0, ..granted.place }),
            Act::TempoUp => placed(Place { tempo: 1, ..granted.place }),
            Act::RepsDown => reps(3),
            Act::RepsUp => reps(4),
            _ => None,
        }
    }

    fn other(self, _: &State, on: Day) -> Option<EventKind> {
        let pause = |reason| Some(EventKind::LayoffNoted(Layoff { from: on, to: None, reason }));
        Some(match self {
            Act::BreakWell => return pause(LayoffReason::Well),
            Act::BreakPlanned => return pause(LayoffReason::Planned),
            Act::BreakIll => return pause(LayoffReason::Ill),
            Act::Missed => EventKind::SessionMissed(SessionMissed { reason: name("work") }),
            Act::Rater => EventKind::RaterChanged(BarChanged { lift: None, now: name("another coach") }),
            Act::Discs => {
                EventKind::BarOrDiscsChanged(BarChanged { lift: Some(name(STRICT)), now: name("others") })
            }
            Act::BodyMass => EventKind::BodyMassRecorded(kg(80.0)),
            Act::BlockStarts => EventKind::BlockStarted(name("block")),
            Act::BlockEnds => EventKind::BlockEnded(name("block")),
            Act::FunctionTest => {
                EventKind::FunctionTested(Measurement { test: EverydayTest::Grip, result: 40.0 })
            }
            Act::Unknown => {
                EventKind::Unknown(UnknownEvent { kind: "later".into(), body: crate::value::Value::Null })
            }
            _ => return None,
        })
    }
}

pub(super) fn pain(score: u8) -> PainAnswer {
    PainAnswer::plain(name("hip"), Pain::new(score).unwrap())
}

/// The next loads above and below at the place of the strict lift; the same where there are none.
fn next(state: &State, load: Mass) -> (Mass, Mass) {
    let Some(lift) = find(state, STRICT) else { return (load, load) };
    let loads = lift.loadable.at(lift.now.grant.place);
    (loads.above(load).unwrap_or(load), loads.below(load).unwrap_or(load))
}

/// What the strict lift is granted, with the next loads above and below.
fn around(state: &State) -> (Grant, Mass, Mass) {
    let start = || Set::First.lift(STRICT).map(|lift| lift.start);
    let granted = find(state, STRICT).map(|lift| lift.now.grant).or_else(start).unwrap();
    let (above, below) = next(state, granted.load());
    (granted, above, below)
}

/// The answer of a morning after that was worse, as an event about that session or about the day.
pub(super) fn worse_morning(act: Act, session: u32) -> EventKind {
    let answers: Vec<PainAnswer> = vec![pain(2)];
    if act == Act::BothFlareTold {
        return EventKind::PainReport(pain(2));
    }
    if act == Act::StrictFlare {
        let report = DayReport { pain: Some(answers), ..DayReport::all_well(DayClass::Within) };
        return EventKind::DayReport(report);
    }
    EventKind::NextDayReport(NextDayReport { session, pain: Some(answers), soreness: None })
}

/// The second session of a day on which the first was the act's own.
pub(super) fn second_session(act: Act, state: &State, on: Day) -> EventKind {
    let quality = if act == Act::StrictTwice { Quality::OneSet } else { Quality::Fails };
    session((state, on), &[STRICT], quality, Some(vec![]))
}

/// What is said later of an act that somebody wrote down wrong: other content, or that it did not happen.
pub(super) fn correction(act: Act, state: &State, on: Day) -> Option<Option<EventKind>> {
    match act {
        Act::StrictCorrected => Some(Some(session((state, on), &[STRICT], Quality::Fails, Some(vec![])))),
        Act::PainCorrected => Some(Some(EventKind::PainReport(pain(7)))),
        Act::StrictNever | Act::StopNever => Some(None),
        _ => None,
    }
}
