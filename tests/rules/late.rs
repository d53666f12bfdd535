//! Told late: a word closes only what had been told when it was given, whatever day it is of.

use bismar::condition::DayClass;
use bismar::prescription::Verdict;
use bismar::quantity::{Day, Pain};
use bismar::reason::{Reason, SignOffRefusal};
use bismar::record::*;
use bismar::sign::{PainFeature, StopSign};
use bismar::value::Value;

use crate::world::{World, kg, lift, name, parameters, says};

/// Enters what happened so many days ago, today.
fn late(world: &mut World, days: i32, kind: EventKind) {
    world.wait(-days).add(kind);
    world.wait(days);
}

pub fn correct(world: &mut World, replaces: u32, with: EventKind) {
    let said = Correction::new(replaces).with_kind(Some(Box::new(with)));
    world.add(EventKind::Correction(said));
}

pub fn last_number(world: &World) -> u32 {
    world.log.events.iter().map(|event| event.sequence).max().unwrap()
}

fn report(ask: Ask) -> EventKind {
    EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(vec![ask]))
}

fn answer(ask: Ask) -> EventKind {
    EventKind::AskAnswered(AskAnswered::new(ask, name("clinic"), true))
}

fn knee(score: u8, features: Vec<PainFeature>) -> EventKind {
    let answer = PainAnswer::plain(name("knee"), Pain::new(score).unwrap()).with_features(features);
    EventKind::PainReport(answer)
}

fn is_open(world: &World, ask: Ask) -> bool {
    world.state().asks().iter().any(|open| open.ask == ask)
}

fn of_the_knee() -> SignOffScope {
    SignOffScope::Region(name("knee"))
}

fn ill_from(from: &str, to: Option<&str>) -> EventKind {
    let day = |text: &str| text.parse::<Day>().unwrap();
    EventKind::LayoffNoted(Layoff::new(day(from), LayoffReason::Ill).with_to(to.map(day)))
}

/// The clinic's answers, and the coach's sign-off of everything and of the knee.
fn answer_and_sign_everything(world: &mut World) {
    world.add(answer(Ask::Fever));
    world.add(answer(Ask::Fall));
    world.sign_off(SignOffScope::Everything);
    world.sign_off(of_the_knee());
}

/// Whether the knee is stopped with what came with the pain.
fn stopped_numb(world: &World) -> bool {
    let state = world.state();
    let stop = state.region(&name("knee")).unwrap().stop.as_ref();
    assert_eq!(stop.is_some(), world.today("squat").verdict == Verdict::Stop);
    stop.is_some_and(|stop| stop.features.contains(&PainFeature::Numbness))
}

/// A fall, and the clinician's word on it; four days later somebody writes down a second fall, of before that word.
#[test]
fn an_answer_does_not_close_a_fall_that_is_told_after_it() {
    for ask in [Ask::Fall, Ask::Fever] {
        let mut world = World::new(parameters());
        world.add(report(ask));
        world.wait(3).add(answer(ask));
        assert!(!is_open(&world, ask));
        world.wait(4);
        late(&mut world, 5, report(ask));
        assert!(is_open(&world, ask), "{ask:?} told late");
        world.add(answer(ask));
        assert!(!is_open(&world, ask), "{ask:?} answered since");
    }
}

#[test]
fn a_clearance_answers_no_fever_and_no_illness_that_is_told_after_it() {
    let mut world = World::new(parameters());
    world.wait(3).clear();
    world.wait(4);
    late(&mut world, 5, report(Ask::Fever));
    let ill = Layoff::new(world.day.plus(-5).unwrap(), LayoffReason::Ill);
    late(&mut world, 5, EventKind::LayoffNoted(ill));
    assert!(is_open(&world, Ask::Fever) && world.state().ill_since().is_some());
    world.clear();
    assert!(!is_open(&world, Ask::Fever) && world.state().ill_since().is_none());
}

/// A knee that was cleared and signed off.
fn cleared_knee() -> World {
    let mut world = World::new(parameters());
    world.add(knee(7, Vec::new()));
    world.wait(3).clear();
    world.wait(1).sign_off(of_the_knee());
    assert!(world.state().stops().is_empty());
    world.wait(3);
    world
}

#[test]
fn a_stop_that_is_told_late_is_not_lifted_by_a_word_given_before() {
    let mut world = cleared_knee();
    late(&mut world, 5, knee(9, vec![PainFeature::Numbness]));
    assert!(stopped_numb(&world));
    // It says of the sign-off that it came before.
    let today = world.today("squat");
    assert!(says(&today, "sign_off_refused"), "{:?}", today.reasons);
    let why = today.reasons.iter().find_map(|reason| match reason {
        Reason::SignOffRefused { why, .. } => Some(*why),
        _ => None,
    });
    assert_eq!(why, Some(SignOffRefusal::ToldLater));
    // The word given since lifts it, both parts of it.
    world.clear();
    assert!(stopped_numb(&world));
    world.sign_off(of_the_knee());
    assert!(world.state().stops().is_empty());
}

#[test]
fn a_report_that_is_corrected_to_a_stop_is_told_when_it_is_corrected() {
    let mut world = World::new(parameters());
    world.wait(2);
    world.add(knee(2, Vec::new()));
    let first = last_number(&world);
    world.wait(1).add(knee(7, Vec::new()));
    world.wait(2).clear();
    world.wait(1).sign_off(of_the_knee());
    world.wait(3);
    correct(&mut world, first, knee(9, vec![PainFeature::Numbness]));
    assert!(stopped_numb(&world));
    let day = world.day.plus(-8).unwrap();
    let on_another_day = EventKind::Correction(Correction::new(first).with_day(Some(day)));
    // A second correction that says the day alone takes nothing back,
    let mut uncleared = world.clone();
    uncleared.add(on_another_day.clone());
    assert!(stopped_numb(&uncleared));
    // and tells nothing anew.
    world.clear();
    world.sign_off(of_the_knee());
    assert!(world.state().stops().is_empty());
    world.add(on_another_day);
    assert!(world.state().stops().is_empty());
    for world in [uncleared, world] {
        let effective = world.log.effective().unwrap();
        let told = effective.iter().find(|event| event.sequence == first).unwrap();
        assert_eq!((told.day, &told.kind), (day, &knee(9, vec![PainFeature::Numbness])));
    }
}

/// Whoever corrects an event names its own number, whether or not somebody corrected it before: what was said last is what is
/// corrected.
#[test]
fn a_second_correction_of_the_event_itself_goes_on_from_the_first() {
    let mut world = World::new(parameters());
    world.wait(2).add(knee(2, Vec::new()));
    let first = last_number(&world);
    world.wait(1);
    correct(&mut world, first, knee(9, vec![PainFeature::Numbness]));
    assert!(stopped_numb(&world));
    let day = world.day.plus(-2).unwrap();
    world.add(EventKind::Correction(Correction::new(first).with_day(Some(day))));
    assert!(stopped_numb(&world));
    // The day that a correction said is kept by a later one of the content alone.
    correct(&mut world, first, knee(8, vec![PainFeature::Numbness]));
    assert!(stopped_numb(&world));
    let effective = world.log.effective().unwrap();
    assert!(effective.iter().any(|event| event.sequence == first && event.day == day));
}

/// What was taken back and is said again was told by whoever said it again: no word given meanwhile knew of it.
#[test]
fn what_is_said_again_after_it_was_taken_back_is_told_anew() {
    let symptom = EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain]));
    let numb = knee(7, vec![PainFeature::Numbness]);
    for said in [symptom, numb, report(Ask::Fever), report(Ask::Fall), ill_from("2026-01-05", None)] {
        let mut world = World::new(parameters());
        world.add(said.clone());
        let first = last_number(&world);
        let stops = world.state().stops();
        assert_eq!(stops.len(), 1, "{said:?}");
        world.wait(1).add(EventKind::Correction(Correction::new(first)));
        assert!(world.state().stops().is_empty(), "{said:?}");
        world.wait(1).clear();
        answer_and_sign_everything(&mut world);
        world.wait(1);
        correct(&mut world, first, said.clone());
        assert_eq!(world.state().stops(), stops, "{said:?}");
        world.clear();
        answer_and_sign_everything(&mut world);
        assert!(world.state().stops().is_empty(), "{said:?}");
    }
}

/// Limits that were taken back and are said again are not replaced by a clearance given meanwhile.
#[test]
fn limits_said_again_after_they_were_taken_back_are_told_anew() {
    let limit = ClearanceLimits::default().with_region(name("knee")).with_load(kg(40.0));
    let limited = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic")).with_limits(vec![limit]);
    let mut world = World::new(parameters());
    world.add(EventKind::ClearanceRecorded(limited.clone()));
    let first = last_number(&world);
    world.wait(1).add(EventKind::Correction(Correction::new(first)));
    world.wait(1).clear();
    assert_eq!(world.today("squat").limit, kg(60.0));
    world.wait(1);
    correct(&mut world, first, EventKind::ClearanceRecorded(limited));
    assert_eq!(world.today("squat").limit, kg(40.0));
}

/// Pain of a session that was cleared and signed off is not told anew by mending another slip of that session, nor by less pain.
#[test]
fn a_correction_that_opens_nothing_opens_nothing_again() {
    let mut world = World::new(parameters());
    let session = |load: f64, score| {
        let done = LiftSession::as_granted(name("squat"), World::sets(kg(load), 2, true));
        let answer = PainAnswer::plain(name("knee"), Pain::new(score).unwrap());
        EventKind::SessionRecorded(Session::new(vec![done]).with_pain(vec![answer]))
    };
    world.add(session(60.0, 7));
    let first = last_number(&world);
    world.wait(3).clear();
    world.wait(1).sign_off(of_the_knee());
    assert!(world.state().stops().is_empty());
    for (load, score, open) in [(62.0, 7, false), (60.0, 6, false), (60.0, 8, true)] {
        correct(&mut world, first, session(load, score));
        assert_eq!(!world.state().stops().is_empty(), open, "{load} kg, {score}");
    }
}

/// Of a stop that is told twice the later telling counts, in whatever order the days are.
#[test]
fn a_stop_told_late_before_another_one_keeps_both_closed() {
    let mut world = World::new(parameters());
    world.wait(2).add(knee(7, Vec::new()));
    world.wait(1).clear();
    world.wait(1).sign_off(of_the_knee());
    world.wait(3);
    late(&mut world, 6, knee(9, vec![PainFeature::Numbness]));
    assert!(stopped_numb(&world));
}

#[test]
fn a_symptom_that_is_told_late_is_not_lifted_by_a_word_given_before() {
    let symptom = |sign| EventKind::SymptomReport(SymptomReport::new(vec![sign]));
    let mut world = World::new(parameters());
    world.add(symptom(StopSign::Faint));
    world.wait(3).clear();
    world.wait(1).sign_off(SignOffScope::Everything);
    assert!(world.state().stop().is_none());
    world.wait(3);
    late(&mut world, 5, symptom(StopSign::ChestPain));
    assert_eq!(world.state().stop().unwrap().signs, [StopSign::Faint, StopSign::ChestPain]);
    // A clearance that is written down late was given before the sign-off, and still not after what it is to lift was told.
    world.wait(-4).clear();
    world.wait(4);
    assert!(world.state().stop().is_some(), "signed off before the chest pain was told");
    world.sign_off(SignOffScope::Everything);
    assert!(world.state().stop().is_none());
}

/// A clearance that was meant for a stop told before it lifts that stop, on whatever day its record is written down.
#[test]
fn a_word_that_is_written_down_late_lifts_what_was_told_before_it() {
    let mut world = World::new(parameters());
    world.add(knee(7, vec![PainFeature::Numbness]));
    world.wait(4).sign_off(of_the_knee());
    world.wait(2);
    assert!(stopped_numb(&world));
    world.wait(-3).clear();
    world.wait(3);
    assert!(world.state().stops().is_empty());
}

#[test]
fn a_corrected_word_is_as_old_as_the_word() {
    let mut world = World::new(parameters());
    world.add(knee(7, Vec::new()));
    world.wait(3).clear();
    let clearance = last_number(&world);
    world.wait(1).sign_off(of_the_knee());
    let sign_off = last_number(&world);
    world.wait(3);
    late(&mut world, 5, knee(9, vec![PainFeature::Numbness]));
    // A slip in the name is mended afterwards.
    let cleared = Clearance::new(ClearanceStatus::Cleared, name("the clinic"));
    let expires = world.day.plus(100).unwrap();
    correct(&mut world, clearance, EventKind::ClearanceRecorded(cleared.with_expires(expires)));
    correct(&mut world, sign_off, EventKind::CoachSignOff(SignOff::new(name("a coach"), of_the_knee())));
    assert!(stopped_numb(&world));
}

/// A clearance refused on an earlier day, written down after one that was given.
#[test]
fn a_clearance_refused_or_limited_that_is_told_late_is_not_replaced_by_one_given_before() {
    let mut world = World::new(parameters());
    world.wait(3).clear();
    world.wait(1).sign_off(SignOffScope::Everything);
    world.wait(3);
    let refused = Clearance::new(ClearanceStatus::NotCleared, name("clinic"));
    let mut stopped = world.clone();
    late(&mut stopped, 5, EventKind::ClearanceRecorded(refused));
    assert!(stopped.state().stop().is_some());
    let limit = ClearanceLimits::default().with_region(name("knee")).with_load(kg(40.0));
    let limited = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic")).with_limits(vec![limit]);
    late(&mut world, 5, EventKind::ClearanceRecorded(limited));
    assert_eq!(world.today("squat").limit, kg(40.0));
    world.clear();
    assert_eq!(world.today("squat").limit, kg(60.0));
}

/// The answer of the next set follows the same log.
#[test]
fn the_next_set_knows_what_was_told_by_a_correction() {
    use bismar::answers::{SetsToday, next_set};
    let mut all = parameters();
    all.lifts.push(lift("lunge", "knee", 30.0));
    let mut world = World::new(all);
    world.add(knee(2, Vec::new()));
    let first = last_number(&world);
    world.wait(3).clear();
    world.wait(1).sign_off(of_the_knee());
    world.wait(3).day_report(DayClass::Within);
    world.train("squat", true);
    correct(&mut world, first, knee(9, vec![PainFeature::Numbness]));
    let plan = Plan::of([name("squat")]);
    let done = SetsToday::new(name("squat"), World::sets(kg(60.0), 1, true));
    let answer = next_set(&world.log, &plan, world.day, &done).unwrap();
    assert!(!answer.stops.is_empty(), "{answer:?}");
}

/// A diary looks through what is in force, and knows all the same what a correction told: the answer given before it closes
/// nothing, so that the one given since answers what is open.
#[test]
fn the_review_of_a_diary_knows_what_was_told_by_a_correction() {
    use bismar::answers::{Diary, Odd, review};
    let mut world = World::new(parameters());
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within)));
    let first = last_number(&world);
    world.wait(3).add(answer(Ask::Fall));
    correct(&mut world, first, report(Ask::Fall));
    assert!(is_open(&world, Ask::Fall));
    world.wait(1).add(answer(Ask::Fall));
    assert!(!is_open(&world, Ask::Fall));
    let anew = review(&world.log, world.day).unwrap();
    assert!(!anew.findings.iter().any(|found| matches!(found.what, Odd::AnswerWithoutQuestion { .. })));
    assert_eq!(Diary::of(&world.log).unwrap().review(world.day), anew);
    assert_eq!(Diary::of(&world.log).unwrap().into_owned().review(world.day), anew);
}

pub fn of_a_newer_version() -> EventKind {
    EventKind::Unknown(UnknownEvent::new("of_a_newer_version".into(), Value::Bool(true)))
}

fn world_of_a_newer_version() -> World {
    let mut world = World::new(parameters());
    world.log.version = VERSION + 1;
    world
}

/// What nobody here can read closes nothing that was open before it: it is counted, and what was said before it stands.
#[test]
fn a_correction_of_a_kind_that_is_not_known_erases_no_stop() {
    let symptom = EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain]));
    let numb = knee(7, vec![PainFeature::Numbness]);
    let refused = Clearance::new(ClearanceStatus::NotCleared, name("clinic"));
    let ill = ill_from("2026-01-05", None);
    let opened =
        [symptom, numb, report(Ask::Fever), report(Ask::Fall), ill, EventKind::ClearanceRecorded(refused)];
    for said in opened {
        let mut world = world_of_a_newer_version();
        world.add(said.clone());
        let (first, day) = (last_number(&world), world.day);
        let stops = world.state().stops();
        assert!(!stops.is_empty(), "{said:?}");
        world.wait(1);
        // The day that comes with it is the day of what is not known.
        for day in [None, Some(world.day)] {
            let before = world.clone();
            let unread = Some(Box::new(of_a_newer_version()));
            world.add(EventKind::Correction(Correction::new(first).with_day(day).with_kind(unread)));
            assert_eq!(
                (world.state().stops(), world.state().unknown_events()),
                (stops.clone(), 1),
                "{said:?}"
            );
            // A state of the log before it is not taken for one of the log with it.
            let stored = before.state().to_json().unwrap();
            let read = bismar::progression::State::from_json_or_fold(&stored, &world.log).unwrap();
            assert!(read == world.state());
        }
        let effective = world.log.effective().unwrap();
        let kept: Vec<_> = effective.iter().filter(|event| event.sequence == first).collect();
        assert_eq!((kept.len(), kept[0].day, &kept[0].kind), (1, day, &said));
        // Taken back it opens nothing, and is no longer counted.
        world.add(EventKind::Correction(Correction::new(first)));
        assert!(world.state().stops().is_empty(), "{said:?}");
        assert_eq!(world.state().unknown_events(), 0);
    }
}

/// Two logs that differ only in whether a correction could be read have not the same state.
#[test]
fn a_state_is_not_taken_for_one_of_a_log_in_which_more_is_not_known() {
    let mut world = world_of_a_newer_version();
    world.add(report(Ask::Fever));
    let first = last_number(&world);
    let (mut read, mut unread) = (world.clone(), world);
    correct(&mut read, first, report(Ask::Fever));
    correct(&mut unread, first, of_a_newer_version());
    let stored = read.state().to_json().unwrap();
    let state = bismar::progression::State::from_json_or_fold(&stored, &unread.log).unwrap();
    assert_eq!(state.unknown_events(), 1);
}

#[test]
fn limits_stand_where_their_correction_is_not_known() {
    let limit = ClearanceLimits::default().with_region(name("knee")).with_load(kg(40.0));
    let limited = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic")).with_limits(vec![limit]);
    let mut world = world_of_a_newer_version();
    world.add(EventKind::ClearanceRecorded(limited));
    let first = last_number(&world);
    correct(&mut world, first, of_a_newer_version());
    assert_eq!((world.today("squat").limit, world.state().unknown_events()), (kg(40.0), 1));
    // What opens nothing is replaced as before: nobody can say that a clearance which was corrected still holds.
    let mut world = world_of_a_newer_version();
    let clearance = last_number(&world);
    correct(&mut world, clearance, of_a_newer_version());
    assert!(world.state().clearance().is_none());
    assert_eq!(world.state().unknown_events(), 1);
}

/// A clearance that was ended is not given back by what nobody here can read.
#[test]
fn a_clearance_that_ended_stays_ended_where_its_correction_is_not_known() {
    let mut world = world_of_a_newer_version();
    world.wait(1).add(EventKind::ClearanceExpired(name("clinic")));
    let first = last_number(&world);
    let expires = |world: &World| world.state().clearance().map(|given| given.expires);
    let ended = expires(&world);
    assert!(ended.is_some_and(|day| day < world.day));
    correct(&mut world, first, of_a_newer_version());
    assert_eq!((expires(&world), world.state().unknown_events()), (ended, 1));
    world.add(EventKind::Correction(Correction::new(first)));
    assert!(expires(&world).is_some_and(|day| day > world.day));
}

/// What is known again after it stands in its place, and is compared with what stood before it.
#[test]
fn a_known_correction_after_one_that_is_not_known_speaks() {
    let mut world = world_of_a_newer_version();
    world.add(knee(7, vec![PainFeature::Numbness]));
    let first = last_number(&world);
    world.wait(1).clear();
    world.sign_off(of_the_knee());
    assert!(world.state().stops().is_empty());
    correct(&mut world, first, of_a_newer_version());
    assert!(world.state().stops().is_empty(), "it was cleared before");
    correct(&mut world, first, knee(7, vec![PainFeature::Numbness]));
    assert!(world.state().stops().is_empty(), "it tells nothing anew");
    assert_eq!(world.state().unknown_events(), 0);
    correct(&mut world, first, knee(8, vec![PainFeature::Numbness]));
    assert!(stopped_numb(&world));
}
