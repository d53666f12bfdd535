//! What the cases by hand share: courses to a stated point, and what was decided there.

use super::course::*;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::loading::{Implement, MachineStack};
use bismar::progression::{Decision, MoveOutlook};
use bismar::quantity::{Day, Mass};
use bismar::reason::Reason;
use bismar::record::*;

/// The press with 20 kg of help from a stack of twelve plates of 5 kg, and no ceiling.
pub fn helped(mut all: Parameters) -> Parameters {
    let stack = MachineStack::new(name("helper"), Mass::ZERO, vec![kg(5.0); 12], Vec::new(), 1.0).unwrap();
    all.implements.push(Implement::Assistance(stack));
    all.lifts[PRESS].implement = name("helper");
    (all.lifts[PRESS].start.work.load, all.lifts[PRESS].ceiling) = (kg(-20.0), None);
    all
}

/// One clean week of the press alone, in which no move is taken.
pub fn press_week(course: &mut Course) {
    course.day_report(DayClass::Within, true);
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    course.morning(false);
    course.day = course.day.plus(6).unwrap();
}

/// The press has its move on offer, on an ordinary day on which pain was asked about.
pub fn ready(set: impl FnOnce(&mut Parameters)) -> Course {
    let mut all = parameters(1);
    set(&mut all);
    let mut course = Course::new(all);
    // The sessions of calibration count for the run of two that the gate asks for.
    for _ in 0..12 {
        if course.stands(PRESS).status != READY {
            press_week(&mut course);
        }
    }
    course.day_report(DayClass::Within, true);
    assert_eq!(course.stands(PRESS).status, READY);
    course
}

pub fn decision(course: &Course, at: usize) -> Decision {
    course.state().decide(course.day).unwrap().swap_remove(at)
}

/// Everything that stands in the way of the move.
pub fn blocked(course: &Course, at: usize) -> Vec<Reason> {
    match decision(course, at).outlook {
        MoveOutlook::Blocked { by, .. } => by,
        _ => Vec::new(),
    }
}

/// Where the lift would move, whatever stands in the way.
pub fn next(course: &Course, at: usize) -> Option<Grant> {
    match decision(course, at).outlook {
        MoveOutlook::OnOffer { to } => Some(to),
        MoveOutlook::Blocked { to, .. } => to,
    }
}

/// The sentence for a reason, where sentences are built in.
#[cfg(feature = "english")]
pub fn sentence(reason: &Reason) -> Option<String> {
    Some(bismar::text::reason(reason))
}

#[cfg(not(feature = "english"))]
pub fn sentence(_: &Reason) -> Option<String> {
    None
}

/// The error with which an event is turned away; none where it is taken.
pub fn turned_away(course: &Course, kind: EventKind) -> Option<Code> {
    let event = Event::new(course.next_number(), course.day, kind);
    course.state().clone().apply(&event).err().map(|error| error.code())
}

pub fn sign_off(course: &mut Course, scope: SignOffScope) {
    course.add(EventKind::CoachSignOff(SignOff::new(name("coach"), scope)));
}

/// A clearance, with limits where there are some, which ends so many days from now.
pub fn limited(course: &mut Course, days: i32, limits: Vec<ClearanceLimits>) {
    let expires = Some(course.day.plus(days).unwrap());
    let status =
        if limits.is_empty() { ClearanceStatus::Cleared } else { ClearanceStatus::ClearedWithLimits };
    let who = name("clinic");
    course.add(EventKind::ClearanceRecorded(
        Clearance::new(status, who).with_expires(expires).with_limits(limits),
    ));
}

/// A load for the press by the coach's word.
pub fn given(load: f64, why: Option<&str>, expires: Option<Day>) -> Override {
    Override::new(name("press"), kg(load), name("coach")).with_why(why.map(Into::into)).with_expires(expires)
}

/// The coach overrules for so many days, with a reason: whether it is taken and not refused.
pub fn overrule(course: &mut Course, load: f64, days: i32) -> bool {
    let (event, expires) = (course.next_number(), course.day.plus(days).unwrap());
    course.add(EventKind::CoachOverride(given(load, Some("to see how it moves"), Some(expires))));
    course.stands(PRESS).refused != Some(event)
}

/// The coach's move of the press to that place: whether it is taken. A refused one is noted and changes nothing.
pub fn coach_moves(course: &Course, to: Grant) -> bool {
    let mut course = course.clone();
    let (before, event) = (course.stands(PRESS).grant, course.next_number());
    course.add(EventKind::VariantChanged(Move::new(name("press"), to, name("coach"))));
    let (after, refused) = (course.stands(PRESS).grant, course.stands(PRESS).refused == Some(event));
    assert_eq!(after, if refused { before } else { to });
    !refused
}
