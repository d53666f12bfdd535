//! Determinism, order, corrections, parameters, storage.

use super::course::*;
use super::moves::crate_cases;
use bismar::error::Code;
use bismar::progression::{State, Status, fold};
use bismar::quantity::{Day, Mass};
use bismar::record::*;
use bismar::value::Value;
use proptest::prelude::*;

fn bytes(state: &State) -> Vec<u8> {
    Value::write(state).unwrap().canonical_bytes()
}

fn shifted(log: &Log, days: i32) -> Log {
    let mut log = log.clone();
    log.lifter.born = log.lifter.born.map(|born| born.plus(days).unwrap());
    log.lifter.age = log.lifter.age.map(|age| age.with_on(age.on.plus(days).unwrap()));
    for event in &mut log.events {
        event.day = event.day.plus(days).unwrap();
        match &mut event.kind {
            EventKind::LayoffNoted(layoff) => layoff.from = layoff.from.plus(days).unwrap(),
            EventKind::CoachOverride(given) => {
                given.expires = given.expires.map(|day| day.plus(days).unwrap())
            }
            _ => {}
        }
    }
    log
}

#[test]
fn a_stored_state_that_was_altered_or_is_of_another_version_is_refused() {
    let course = Course::play(&[Step::CleanWeek, Step::CleanWeek]);
    let text = course.state().to_json().unwrap();
    let code = |altered: &str| {
        // Whoever keeps the log folds it anew.
        assert_eq!(State::from_json_or_fold(altered, &course.log).as_ref(), Ok(course.state()));
        State::from_json(altered).err().map(|error| error.code())
    };
    let refused = |from: &str, to: &str| {
        assert!(text.contains(from), "{from}");
        code(&text.replacen(from, to, 1))
    };
    let version = format!("\"version\":\"{}\"", course.state().version());
    for other in ["99.0.0", "0.0.9", "later"] {
        assert_eq!(refused(&version, &format!("\"version\":\"{other}\"")), Some(Code::OtherVersion));
    }
    assert_eq!(refused("bismar-state", "another-state"), Some(Code::WrongFormat));
    assert_eq!(refused("\"cooling_off_days\":7", "\"cooling_off_days\":1"), Some(Code::ParametersAltered));
    assert_eq!(refused(course.state().digest(), "0"), Some(Code::ParametersAltered));
    for more in [false, true] {
        let mut stored = Value::write(course.state()).unwrap();
        let Value::Map(fields) = &mut stored else { panic!("a map") };
        let lifts = fields.iter_mut().find(|(key, _)| key == "lifts");
        let Some((_, Value::List(lifts))) = lifts else { panic!("a list") };
        if more {
            lifts.push(lifts[0].clone())
        } else {
            drop(lifts.pop())
        }
        let wrong = if more { Code::DuplicateLift } else { Code::OutOfRange };
        assert_eq!(code(&stored.to_json()), Some(wrong));
    }
    assert_eq!(code(&text), None);
    // A state that is not the one after the last event of the log is of no use either.
    let earlier = course.states[course.states.len() - 2].to_json().unwrap();
    assert_eq!(State::from_json_or_fold(&earlier, &course.log).as_ref(), Ok(course.state()));
}

/// The bytes of a state but for the number of events that its log told, since a correction tells one more, and the seal over it.
fn but_how_much_was_told(state: &State) -> Vec<u8> {
    let Value::Map(mut fields) = Value::write(state).unwrap() else { panic!("a map") };
    let before = fields.len();
    fields.retain(|(key, _)| key != "told" && key != "seal");
    assert_eq!(fields.len() + 2, before);
    Value::Map(fields).canonical_bytes()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate_cases()))]

    #[test]
    fn invariant_10_determinism(drawn in any_course()) {
        let course = Course::of(&drawn);
        let (one, two) = (fold(&course.log).unwrap(), fold(&course.log.clone()).unwrap());
        prop_assert_eq!(bytes(&one), bytes(&two));
        prop_assert_eq!(
            Value::write(&one.decide(course.day).unwrap()).unwrap().canonical_bytes(),
            Value::write(&two.decide(course.day).unwrap()).unwrap().canonical_bytes()
        );
    }

    #[test]
    fn invariant_11_replay_and_prefix(drawn in any_course(), cut in 0.0_f64..1.0) {
        let course = Course::of(&drawn);
        let at = ((course.log.events.len() as f64) * cut) as usize;
        let mut prefix = course.log.clone();
        prefix.events.truncate(at);
        let mut state = fold(&prefix).unwrap();
        for event in &course.log.events[at..] {
            prefix.events.push(event.clone());
            match state.apply(event) {
                Ok(()) => {}
                Err(error) if error.code() == Code::NeedsRefold => state = fold(&prefix).unwrap(),
                Err(error) => panic!("{error}"),
            }
        }
        prop_assert_eq!(bytes(&state), bytes(&fold(&course.log).unwrap()));
        prop_assert_eq!(bytes(course.state()), bytes(&state));
    }

    #[test]
    fn invariant_12_idempotence(drawn in any_course(), again in any::<prop::sample::Index>()) {
        let course = Course::of(&drawn);
        let mut twice = course.log.clone();
        let repeated = again.get(&course.log.events).clone();
        twice.events.push(repeated.clone());
        prop_assert_eq!(bytes(&fold(&course.log).unwrap()), bytes(&fold(&twice).unwrap()));
        // One more of the same number by itself is refused and changes nothing.
        let mut state = course.state().clone();
        prop_assert_eq!(state.apply(&repeated).unwrap_err().code(), Code::NeedsRefold);
        prop_assert_eq!(&state, course.state());
    }

    #[test]
    fn invariant_13_order_safety(drawn in any_course(), seed in any::<u64>()) {
        let course = Course::of(&drawn);
        let mut shuffled = course.log.clone();
        let count = shuffled.events.len() as u64;
        for at in 0..shuffled.events.len() {
            let other = (seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(at as u64 * 97) % count) as usize;
            shuffled.events.swap(at, other);
        }
        prop_assert_eq!(bytes(&fold(&course.log).unwrap()), bytes(&fold(&shuffled).unwrap()));
    }

    #[test]
    fn invariant_29_scale_sanity(drawn in any_course()) {
        let (one, two) = (Course::of(&drawn), Course::of_scaled(&drawn, 2));
        prop_assert_eq!(one.log.events.len(), two.log.events.len());
        for (one, two) in one.all_stand().into_iter().zip(two.all_stand()) {
            prop_assert_eq!(one.status, two.status);
            prop_assert_eq!(one.moves.len(), two.moves.len());
            prop_assert_eq!((one.grant.place, one.grant.work.sets, one.grant.work.reps), (two.grant.place, two.grant.work.sets, two.grant.work.reps));
            let doubled = Mass::from_nanograms(2 * one.grant.load().nanograms()).unwrap();
            // Parts of a load are cut to whole nanograms, so one may be lost.
            prop_assert!(doubled.nanograms().abs_diff(two.grant.load().nanograms()) <= 4);
        }
    }

    #[test]
    fn invariant_30_date_shift(drawn in any_course(), days in -3000_i32..3000) {
        let course = Course::of(&drawn);
        // Whole 400-year cycles keep weekdays and birthdays alike; here ages are kept by moving the birth too.
        let moved = fold(&shifted(&course.log, days)).unwrap();
        let today = course.day.plus(days).unwrap();
        let (here, there) = (course.state().decide(course.day).unwrap(), moved.decide(today).unwrap());
        for (here, there) in here.iter().zip(&there) {
            let later = |day: &mut Day| *day = day.plus(days).unwrap();
            let mut status = here.status.clone();
            match &mut status {
                Status::ReadyToAdvance { since } => later(since),
                Status::Returning { way, .. } => way.reopened.iter_mut().for_each(later),
                Status::Resting { way } | Status::StoppedRefer { way } => {
                    way.iter_mut().filter_map(|way| way.reopened.as_mut()).for_each(later);
                }
                _ => {}
            }
            prop_assert_eq!(&status, &there.status);
            prop_assert_eq!(here.grant, there.grant);
            prop_assert_eq!(here.limit, there.limit);
        }
    }

    #[test]
    fn invariant_31_idle_fixpoint(drawn in any_course(), days in 0_i32..100) {
        let course = Course::of(&drawn);
        let today = course.day.plus(days).unwrap();
        let before = course.state().clone();
        prop_assert_eq!(course.state().decide(today).unwrap(), course.state().decide(today).unwrap());
        prop_assert_eq!(&before, course.state());
    }

    #[test]
    fn invariant_37_correction_is_rewrite(drawn in any_course(), which in any::<prop::sample::Index>(), remove in any::<bool>()) {
        let course = Course::of(&drawn);
        let place = which.index(course.log.events.len());
        let target = course.log.events[place].clone();
        let with = match &target.kind {
            _ if remove && !matches!(target.kind, EventKind::ParametersChanged(_)) => None,
            EventKind::SessionRecorded(session) => {
                let mut session = session.clone();
                session.lifts.truncate(1);
                Some(EventKind::SessionRecorded(session))
            }
            other => Some(other.clone()),
        };
        let mut corrected = course.log.clone();
        let correction = Correction::new(target.sequence).with_kind(with.clone().map(Box::new));
        let number = course.next_number();
        corrected.events.push(Event::new(number, course.day, EventKind::Correction(correction)));
        let mut rewritten = course.log.clone();
        match with {
            Some(kind) => rewritten.events[place].kind = kind,
            None => drop(rewritten.events.remove(place)),
        }
        match (fold(&corrected), fold(&rewritten)) {
            (Ok(one), Ok(two)) => prop_assert_eq!(but_how_much_was_told(&one), but_how_much_was_told(&two)),
            (one, two) => prop_assert_eq!(one.is_err(), two.is_err()),
        }
        prop_assert!(corrected.events.contains(&target), "the original stays");
    }

    #[test]
    fn invariant_38_parameters_are_versioned(drawn in any_course()) {
        let mut course = Course::of(&drawn);
        let (before, states) = (course.state().clone(), course.states.len());
        let mut changed = course.set().clone();
        changed.policy.cooling_off_days = 10;
        course.add(EventKind::ParametersChanged(Box::new(changed)));
        prop_assert!(before.digest() != course.state().digest());
        // States before the change are what they were.
        let mut prefix = course.log.clone();
        prefix.events.truncate(states);
        prop_assert_eq!(bytes(&before), bytes(&fold(&prefix).unwrap()));
        for decision in course.state().decide(course.day).unwrap() { prop_assert_eq!(&decision.parameters, course.state().digest()); }
    }

    #[test]
    fn invariant_39_total_function(drawn in any_course(), drop_first in any::<bool>(), days in 0_i32..2000) {
        let mut log = Course::of(&drawn).log;
        if drop_first { log.events.remove(0); }
        match fold(&log) {
            Ok(state) => {
                let today = log.events.iter().map(|event| event.day).max().map(|day| day.plus(days).unwrap());
                let written = Value::write(&state).unwrap();
                prop_assert!(!written.to_json().contains("null"));
                if let Some(today) = today { let _ = state.decide(today); }
            }
            Err(error) => prop_assert!(!error.code().as_str().is_empty()),
        }
    }

    #[test]
    fn invariant_40_serial_round_trip(drawn in any_course(), back in any::<bool>()) {
        let mut course = Course::of(&drawn);
        // A set of parameters is the last that the log tells: lifts come back, and nothing has looked at them since.
        if back { course.step(&Step::Parameters(Change::TakeBack)); }
        let after = State::from_json(&course.state().to_json().unwrap());
        prop_assert_eq!(after.map(|state| bytes(&state)), Ok(bytes(course.state())));
        course.step(&Step::Unknown);
        let text = course.state().to_json().unwrap();
        let read = State::from_json(&text).unwrap();
        prop_assert_eq!(bytes(course.state()), bytes(&read));
        prop_assert!(text.len() < 16 * 1024, "{} bytes", text.len());
        // A state read back goes on as if it had never been stored.
        let (mut stored, mut kept) = (read, course.state().clone());
        let event = Event::new(course.next_number(), course.day, EventKind::BlockStarted(name("b")));
        stored.apply(&event).unwrap();
        kept.apply(&event).unwrap();
        prop_assert_eq!(stored, kept);
        let log = Value::write(&course.log).unwrap().to_json();
        prop_assert_eq!(Log::from_json(&log).unwrap(), course.log);
    }
}
