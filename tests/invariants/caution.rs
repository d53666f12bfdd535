//! Stops, monotone caution, overrides.

use super::compare::*;
use super::course::*;
use super::moves::crate_cases;
use bismar::condition::DayClass;
use bismar::gate::Outcome;
use bismar::quantity::Mass;
use bismar::record::*;
use proptest::prelude::*;

proptest! {
    // About every second course leaves no pass to take back.
    #![proptest_config(ProptestConfig { max_global_rejects: 1024 + 4 * crate_cases(), ..ProptestConfig::with_cases(crate_cases()) })]

    #[test]
    fn invariant_04_stop_is_sticky(drawn in any_course()) {
        let course = Course::of(&drawn);
        let ids = course.states.iter().flat_map(|state| state.lifts().map(|lift| lift.id().clone()).collect::<Vec<_>>());
        for id in ids.collect::<std::collections::BTreeSet<_>>() {
            let (mut cleared, mut signed) = (false, false);
            for at in 1..course.states.len() {
                let status = |state| stands_of(state, &id).map_or("none", |lift| lift.status);
                let (was, is) = (status(&course.states[at - 1]), status(&course.states[at]));
                let event = &course.log.events[at].kind;
                if was != STOPPED { (cleared, signed) = (false, false); continue; }
                if let EventKind::ClearanceRecorded(clearance) = event { cleared = clearance.status != ClearanceStatus::NotCleared; }
                signed |= cleared && matches!(event, EventKind::CoachSignOff(_));
                // One that was set aside comes back by new parameters.
                let lets_go = matches!(event, EventKind::CoachSignOff(_) | EventKind::ParametersChanged(_));
                if is != STOPPED { prop_assert!(cleared && signed && lets_go, "left by {}", event.name()); }
            }
        }
    }

    #[test]
    fn invariant_05_global_symptom_stop(drawn in any_course()) {
        let mut course = Course::of(&drawn);
        course.step(&Step::Symptom);
        prop_assert!(course.all_stand().into_iter().all(|lift| lift.status == STOPPED));
    }

    #[test]
    fn invariant_14_missing_is_not_passing(drawn in any_course(), lifts in 1_u8..32) {
        let mut scored = Course::of(&drawn);
        scored.day = scored.day.plus(1).unwrap();
        let mut unscored = scored.clone();
        let passes = |course: &Course| -> Vec<usize> {
            let passed = |sittings: &[bismar::progression::Sitting]| sittings.iter().filter(|each| each.outcome == Outcome::Pass).count();
            course.all_stand().into_iter().map(|lift| passed(&lift.sittings)).collect()
        };
        let before = passes(&unscored);
        unscored.session(lifts, Quality::Unscored, Weight::AtLimit, None);
        for (before, after) in before.iter().zip(passes(&unscored)) { prop_assert!(after <= *before); }
        scored.session(lifts, Quality::Clean, Weight::AtLimit, Some(0));
        prop_assert_eq!(any_granted_more(&unscored, &scored, 0), None);
        // Nobody asked about pain: no move anywhere.
        for decision in unscored.state().decide(unscored.day).unwrap() {
            match decision.outlook {
                bismar::progression::MoveOutlook::Blocked { by, .. } => {
                    let unasked = by.iter().any(|reason| reason.code() == "pain_not_asked");
                    prop_assert!(unasked, "{:?}", by);
                }
                bismar::progression::MoveOutlook::OnOffer { .. } => prop_assert!(false, "a move without an answer about pain"),
            }
        }
    }

    #[test]
    fn invariant_15_time_alone_never_raises(drawn in any_course(), first in 0_i32..60, later in 0_i32..400) {
        let course = Course::of(&drawn);
        let (now, then) = (limits(&course, first), limits(&course, first + later));
        for (at, (now, then)) in now.iter().zip(&then).enumerate() {
            let peak = course.stands(at).peak;
            // An override downward that runs out gives back what was granted, and no more.
            prop_assert!(then <= now || *then <= peak, "{now} became {then} by waiting");
            let eased = course.stands(at).overruled.as_ref().is_some_and(|overruled| overruled.load < course.stands(at).grant.load());
            prop_assert!(then <= now || eased, "{now} became {then} by waiting");
        }
    }

    #[test]
    fn invariant_16_monotone_caution(drawn in any_course(), lifts in 1_u8..32, pain in 0_u8..=6, worse in 0_u8..4) {
        let mut good = Course::of(&drawn);
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
        prop_assert_eq!(any_granted_more(&bad, &good, 0), None);
    }

    #[test]
    fn invariant_17_monotone_layoff(drawn in any_course(), gap in 1_i32..400, longer in 0_i32..300) {
        let course = Course::of(&drawn);
        let (short, long) = (limits(&course, gap), limits(&course, gap + longer));
        for (at, (short, long)) in short.iter().zip(&long).enumerate() {
            if course.stands(at).overruled.is_none() { prop_assert!(long <= short); }
        }
    }

    #[test]
    fn invariant_19_return_cap(drawn in any_course()) {
        let course = Course::of(&drawn);
        for state in &course.states {
            for lift in all_stand(state) {
                if let (RETURNING, Some(cap)) = (lift.status, lift.cap()) { prop_assert!(lift.grant.load() <= cap); }
            }
        }
    }

    #[test]
    fn invariant_20_overrides_recorded(drawn in any_course()) {
        let course = Course::of(&drawn);
        for (state, event) in course.states.iter().zip(&course.log.events) {
            for (decision, lift) in state.decide(event.day).unwrap().iter().zip(all_stand(state)) {
                if decision.limit <= decision.grant.load() { continue; }
                let overruled = lift.overruled.as_ref().expect("a limit above the grant has an override");
                prop_assert!(overruled.expires >= event.day);
                let given = course.log.events.iter().find(|event| event.sequence == overruled.event).unwrap();
                let EventKind::CoachOverride(given) = &given.kind else { panic!("not an override") };
                prop_assert!(given.why.is_some() && given.expires.is_some());
                prop_assert!(lift.status != STOPPED);
            }
        }
    }

    #[test]
    fn invariant_21_override_is_local(drawn in any_course(), lift in 0_u8..5, days in 1_u8..20) {
        let mut plain = Course::of(&drawn);
        let mut overruled = plain.clone();
        // An event that changes nothing, so that time has passed in both.
        plain.step(&Step::Missed);
        overruled.step(&Step::Override { lift, up: true, days });
        let lift = plain.number(lift);
        for at in 0..plain.count() {
            if at != lift { prop_assert_eq!(plain.stands(at), overruled.stands(at)); }
        }
        let after = i32::from(days) + 1;
        let had_one = plain.stands(lift).overruled.is_some();
        if !had_one { prop_assert_eq!(limits(&plain, after), limits(&overruled, after)); }
    }

    #[test]
    fn invariant_22_override_down_is_always_allowed(drawn in any_course(), lift in 0_u8..5) {
        let mut course = Course::of(&drawn);
        let at = course.number(lift);
        let before = course.stands(at).grant.load();
        let events = course.log.events.len();
        course.step(&Step::Ease(lift));
        prop_assert_eq!(course.log.events.len(), events + 1, "refused");
        prop_assert!(course.stands(at).grant.load() < before || before == Mass::ZERO);
    }

    #[test]
    fn invariant_23_no_raise_on_a_day_above_the_usual(drawn in any_course()) {
        let mut ordinary = Course::of(&drawn);
        ordinary.day = ordinary.day.plus(1).unwrap();
        let mut good = ordinary.clone();
        ordinary.day_report(DayClass::Within, true);
        good.day_report(DayClass::Above, true);
        prop_assert_eq!(limits(&ordinary, 0), limits(&good, 0));
        prop_assert_eq!(super::prescription::loads(&ordinary), super::prescription::loads(&good));
    }

    #[test]
    fn invariant_36_retraction(drawn in any_course(), quality in prop_oneof![Just(Quality::Clean), Just(Quality::OneMiss)]) {
        let mut flared = Course::of(&drawn);
        flared.day = flared.day.plus(1).unwrap();
        let before = flared.clone();
        let at = flared.chosen(4)[0];
        flared.session(4, quality, Weight::AtLimit, Some(0));
        let passed = flared.stands(at).sittings.last().is_some_and(|last| last.outcome == Outcome::Pass);
        // More than any level that may be usual.
        let pain = Some(flared.pain_everywhere(3));
        flared.next_day(pain.clone());
        // There is a pass to take back, or there is nothing to test.
        prop_assume!(passed);
        let mut failed = before;
        failed.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
        failed.next_day(pain);
        let (flared, failed) = (flared.stands(at), failed.stands(at));
        prop_assert_eq!(flared.status, failed.status);
        prop_assert_eq!(flared.grant, failed.grant);
        prop_assert_eq!((flared.fails, flared.passes()), (failed.fails, failed.passes()));
    }
}
