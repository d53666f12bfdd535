//! Stops, monotone caution, overrides.

use super::course::*;
use super::moves::crate_cases;
use bismar::condition::DayClass;
use bismar::gate::Outcome;
use bismar::progression::Status;
use bismar::quantity::Mass;
use bismar::reason::Reason;
use bismar::record::*;
use proptest::prelude::*;

fn limits(course: &Course, days: i32) -> Vec<Mass> {
    let today = course.day.plus(days).unwrap();
    course.state().decide(today).unwrap().iter().map(|decision| decision.limit).collect()
}

proptest! {
    // About every second course leaves no pass to take back.
    #![proptest_config(ProptestConfig { max_global_rejects: 1024 + 4 * crate_cases(), ..ProptestConfig::with_cases(crate_cases()) })]

    #[test]
    fn invariant_04_stop_is_sticky(steps in any_course()) {
        let course = Course::play(&steps);
        for lift in 0..3 {
            let mut cleared = false;
            for at in 1..course.states.len() {
                let (was, is) = (course.states[at - 1].lifts[lift].status, course.states[at].lifts[lift].status);
                let event = &course.log.events[at].kind;
                if was != Status::StoppedRefer { cleared = false; continue; }
                if let EventKind::ClearanceRecorded(clearance) = event { cleared = clearance.status == ClearanceStatus::Cleared; }
                if is != Status::StoppedRefer {
                    prop_assert!(cleared && matches!(event, EventKind::CoachSignOff(_)), "left by {}", event.name());
                }
            }
        }
    }

    #[test]
    fn invariant_05_global_symptom_stop(steps in any_course()) {
        let mut course = Course::play(&steps);
        course.step(&Step::Symptom);
        prop_assert!(course.state().lifts.iter().all(|lift| lift.status == Status::StoppedRefer));
    }

    #[test]
    fn invariant_14_missing_is_not_passing(steps in any_course(), lifts in 1_u8..8) {
        let mut scored = Course::play(&steps);
        scored.day = scored.day.plus(1).unwrap();
        let mut unscored = scored.clone();
        let passes = |course: &Course| -> Vec<usize> {
            let passed = |sittings: &[bismar::progression::Sitting]| sittings.iter().filter(|each| each.outcome == Outcome::Pass).count();
            course.state().lifts.iter().map(|lift| passed(&lift.sittings)).collect()
        };
        let before = passes(&unscored);
        unscored.session(lifts, Quality::Unscored, Weight::AtLimit, None);
        for (before, after) in before.iter().zip(passes(&unscored)) { prop_assert!(after <= *before); }
        scored.session(lifts, Quality::Clean, Weight::AtLimit, Some(0));
        for (scored, unscored) in limits(&scored, 0).iter().zip(limits(&unscored, 0)) { prop_assert!(unscored <= *scored); }
        // Nobody asked about pain: no move anywhere.
        for decision in unscored.state().decide(unscored.day).unwrap() {
            match decision.outlook {
                bismar::progression::MoveOutlook::Blocked { by, .. } => prop_assert!(by.contains(&Reason::PainNotAsked)),
                bismar::progression::MoveOutlook::OnOffer { .. } => prop_assert!(false, "a move without an answer about pain"),
            }
        }
    }

    #[test]
    fn invariant_15_time_alone_never_raises(steps in any_course(), first in 0_i32..60, later in 0_i32..400) {
        let course = Course::play(&steps);
        let (now, then) = (limits(&course, first), limits(&course, first + later));
        for (at, (now, then)) in now.iter().zip(&then).enumerate() {
            let peak = course.state().lifts[at].peak;
            // An override downward that runs out gives back what was granted, and no more.
            prop_assert!(then <= now || *then <= peak, "{now} became {then} by waiting");
            let eased = course.state().lifts[at].overruled.as_ref().is_some_and(|overruled| overruled.load < course.state().lifts[at].tuple.load);
            prop_assert!(then <= now || eased, "{now} became {then} by waiting");
        }
    }

    #[test]
    fn invariant_16_monotone_caution(steps in any_course(), lifts in 1_u8..8, pain in 0_u8..=6, worse in 0_u8..4) {
        let mut good = Course::play(&steps);
        good.day = good.day.plus(1).unwrap();
        let mut bad = good.clone();
        good.session(lifts, Quality::OneMiss, Weight::AtLimit, Some(pain.min(2)));
        let (quality, pain) = match worse {
            0 => (Quality::ManyMisses, pain.min(2)),
            1 => (Quality::CriticalLost, pain.min(2)),
            2 => (Quality::OneMiss, pain.max(3)),
            _ => (Quality::CriticalLost, pain.max(3)),
        };
        bad.session(lifts, quality, Weight::AtLimit, Some(pain));
        for (good, bad) in limits(&good, 0).iter().zip(limits(&bad, 0)) {
            prop_assert!(bad <= *good, "worse gave {bad}, better {good}");
        }
    }

    #[test]
    fn invariant_17_monotone_layoff(steps in any_course(), gap in 1_i32..400, longer in 0_i32..300) {
        let course = Course::play(&steps);
        let (short, long) = (limits(&course, gap), limits(&course, gap + longer));
        for (at, (short, long)) in short.iter().zip(&long).enumerate() {
            if course.state().lifts[at].overruled.is_none() { prop_assert!(long <= short); }
        }
    }

    #[test]
    fn invariant_19_return_cap(steps in any_course()) {
        let course = Course::play(&steps);
        for state in &course.states {
            for lift in &state.lifts {
                if let (Status::Returning, Some(cap)) = (lift.status, lift.return_cap) { prop_assert!(lift.tuple.load <= cap); }
            }
        }
    }

    #[test]
    fn invariant_20_overrides_recorded(steps in any_course()) {
        let course = Course::play(&steps);
        for (state, event) in course.states.iter().zip(&course.log.events) {
            for (decision, lift) in state.decide(event.day).unwrap().iter().zip(&state.lifts) {
                if decision.limit <= decision.tuple.load { continue; }
                let overruled = lift.overruled.as_ref().expect("a limit above the grant has an override");
                prop_assert!(overruled.expires >= event.day);
                let given = course.log.events.iter().find(|event| event.sequence == overruled.event).unwrap();
                let EventKind::CoachOverride(given) = &given.kind else { panic!("not an override") };
                prop_assert!(given.why.is_some() && given.expires.is_some());
                prop_assert!(lift.status != Status::StoppedRefer);
            }
        }
    }

    #[test]
    fn invariant_21_override_is_local(steps in any_course(), lift in 0_u8..3, days in 1_u8..20) {
        let mut plain = Course::play(&steps);
        let mut overruled = plain.clone();
        // An event that changes nothing, so that time has passed in both.
        plain.step(&Step::Missed);
        overruled.step(&Step::Override { lift, up: true, days });
        for at in 0..3 {
            if at != usize::from(lift) { prop_assert_eq!(&plain.state().lifts[at], &overruled.state().lifts[at]); }
        }
        let after = i32::from(days) + 1;
        let had_one = plain.state().lifts[usize::from(lift)].overruled.is_some();
        if !had_one { prop_assert_eq!(limits(&plain, after), limits(&overruled, after)); }
    }

    #[test]
    fn invariant_22_override_down_is_always_allowed(steps in any_course(), lift in 0_u8..3) {
        let mut course = Course::play(&steps);
        let before = course.state().lifts[usize::from(lift)].tuple.load;
        let events = course.log.events.len();
        course.step(&Step::Ease(lift));
        prop_assert_eq!(course.log.events.len(), events + 1, "refused");
        prop_assert!(course.state().lifts[usize::from(lift)].tuple.load < before || before == Mass::ZERO);
    }

    #[test]
    fn invariant_23_no_raise_on_a_good_day(steps in any_course()) {
        let mut ordinary = Course::play(&steps);
        ordinary.day = ordinary.day.plus(1).unwrap();
        let mut good = ordinary.clone();
        ordinary.day_report(DayClass::Ordinary, true);
        good.day_report(DayClass::Good, true);
        prop_assert_eq!(limits(&ordinary, 0), limits(&good, 0));
        prop_assert_eq!(super::prescription::loads(&ordinary), super::prescription::loads(&good));
    }

    #[test]
    fn invariant_36_retraction(steps in any_course(), quality in prop_oneof![Just(Quality::Clean), Just(Quality::OneMiss)]) {
        let mut flared = Course::play(&steps);
        flared.day = flared.day.plus(1).unwrap();
        let before = flared.clone();
        flared.session(4, quality, Weight::AtLimit, Some(0));
        let passed = flared.state().lifts[PRESS].sittings.last().is_some_and(|last| last.outcome == Outcome::Pass);
        flared.morning(true);
        // There is a pass to take back, or there is nothing to test.
        prop_assume!(passed);
        let mut failed = before;
        failed.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
        failed.morning(true);
        let (flared, failed) = (&flared.state().lifts[PRESS], &failed.state().lifts[PRESS]);
        prop_assert_eq!(flared.status, failed.status);
        prop_assert_eq!(flared.tuple, failed.tuple);
        prop_assert_eq!((flared.fails, flared.passes), (failed.fails, failed.passes));
    }
}
