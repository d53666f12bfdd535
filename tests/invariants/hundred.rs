//! Lifts of 100 kg on pieces of every 5 kg, for rules whose numbers are to be read off by hand.

use super::course::*;
use bismar::condition::DayClass;
use bismar::loading::{Implement, Pieces};
use bismar::progression::Decision;
use bismar::quantity::{Day, Mass, Pain};
use bismar::record::*;

/// Every lift starts at its ceiling of 100 kg on the middle rung, so that nothing moves up; a step is 5 %.
pub fn hundred() -> Parameters {
    let mut all = parameters(1);
    let masses = (1..=24).map(|number| kg(5.0 * f64::from(number))).collect();
    all.implements.push(Implement::Pieces(Pieces::new(name("pieces"), masses).unwrap()));
    for lift in &mut all.lifts {
        lift.implement = name("pieces");
        lift.start.work.load = kg(100.0);
        (lift.step, lift.ceiling) = (Some(StepPolicy::Part(0.05)), Some(kg(100.0)));
    }
    all
}

pub fn kilograms(mass: Mass) -> i64 {
    mass.nanograms() / kg(1.0).nanograms()
}

pub fn lift(course: &Course, at: usize) -> Stands<'_> {
    course.stands(at)
}

pub fn on(course: &Course, at: usize, day: Day) -> Decision {
    course.state().decide(day).unwrap().swap_remove(at)
}

pub fn wait(course: &mut Course, days: i32) {
    course.day = course.day.plus(days).unwrap();
}

/// Days after the last session of the press.
pub fn after_session(course: &mut Course, days: i32) {
    course.day = lift(course, PRESS).last_session.unwrap().plus(days).unwrap();
}

/// One clean session of these lifts at their limits, with an answer about pain, on a day of that class.
pub fn clean(course: &mut Course, lifts: u8, class: DayClass) {
    course.day_report(class, true);
    course.session(lifts, Quality::Clean, Weight::AtLimit, Some(0));
}

pub fn set_of(load: Mass, reps: u8) -> WorkSet {
    Course::set_of(load, reps, Quality::Clean)
}

/// One session of one lift with these sets and these answers about pain.
pub fn sets(course: &mut Course, at: usize, sets: Vec<WorkSet>, pain: Option<Vec<PainAnswer>>) {
    let lift = LiftSession::as_granted(course.lift_name(at as u8), sets);
    course.train(vec![lift], pain);
}

pub fn role(course: &mut Course, at: usize, role: Role) {
    let lift = course.lift_name(at as u8);
    course.add(EventKind::RoleSet(RoleSet::new(lift, role)));
}

/// Born so that age asks for nothing: of whom nothing is known counts as older.
pub const YOUNG: Option<&str> = Some("1975-07-01");

/// All lifts trained once, on 6 January 2025, by a lifter born on that day.
pub fn trained(parameters: Parameters, born: Option<&str>) -> Course {
    let mut course = Course::of_lifter_born(parameters, born);
    clean(&mut course, 7, DayClass::Within);
    course
}

/// All lifts trained twice, which ends calibration; two days after the second session.
pub fn holding(parameters: Parameters) -> Course {
    let mut course = trained(parameters, YOUNG);
    wait(&mut course, 2);
    clean(&mut course, 7, DayClass::Within);
    wait(&mut course, 2);
    assert_eq!(lift(&course, PRESS).status, HOLDING);
    course
}

/// The level of pain that is usual in a region from now on.
pub fn agree(course: &mut Course, label: &str, level: u8) {
    let (region, level) = (name(label), Pain::new(level).unwrap());
    course
        .add(EventKind::UsualPainAgreed(UsualPain::new(region, level, name("clinic")).with_clinician(true)));
}

pub fn report(course: &mut Course, label: &str, score: u8, features: &[PainFeature]) {
    let features = Some(features.to_vec());
    course.add(EventKind::PainReport(Course::pain(label, score).with_features(features)));
}
