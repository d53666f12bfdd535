//! What a move upward must have behind it.

use super::course::*;
use bismar::gate::Outcome;
use bismar::loading::{Policy as Rounding, load_on};
use bismar::progression::{MoveOutlook, Status};
use bismar::quantity::Mass;
use bismar::record::*;
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate_cases()))]

    #[test]
    fn invariant_01_no_double_step(steps in any_course()) {
        let course = Course::play(&steps);
        for (at, lift, _, _) in course.upward() {
            let before = &course.states[at - 1].lifts[lift];
            prop_assert!(before.sittings.iter().any(|sitting| sitting.outcome == Outcome::Pass), "move at {at} without a pass");
        }
    }

    #[test]
    fn invariant_02_gate_before_load(steps in any_course()) {
        let course = Course::play(&steps);
        for (at, lift, _, _) in course.upward() {
            let before = &course.states[at - 1].lifts[lift];
            let mut days = Vec::new();
            for sitting in before.sittings.iter().rev() {
                match sitting.outcome {
                    Outcome::Pass => days.push(sitting.day),
                    Outcome::Fail if !sitting.bad_day || sitting.critical => break,
                    _ => {}
                }
            }
            days.dedup();
            prop_assert!(days.len() >= RUN, "move at {at} after {} passing days", days.len());
        }
    }

    #[test]
    fn invariant_03_pain_blocks(steps in any_course()) {
        let course = Course::play(&steps);
        for (at, lift, _, _) in course.upward() {
            let region = if lift == PRESS { "shoulder" } else { "hip" };
            let needed = Policy::default().clear_sessions;
            let (mut clear, mut blocked) = (0, false);
            for event in course.log.events[..at].iter().rev() {
                let hurts = |answers: &[PainAnswer]| answers.iter().any(|answer| answer.region.as_str() == region && answer.score.score() >= 3);
                match &event.kind {
                    EventKind::SessionRecorded(session) => {
                        let pain = session.pain.as_deref().unwrap_or_default();
                        if hurts(pain) { blocked = true; break; }
                        let loads = session.lifts.iter().any(|lift| (lift.lift.as_str() == "press") == (region == "shoulder"));
                        let none = pain.iter().all(|answer| answer.region.as_str() != region || answer.score.score() == 0);
                        if session.pain.is_some() && loads && none { clear += 1; }
                    }
                    EventKind::PainReport(answer) if hurts(std::slice::from_ref(answer)) => { blocked = true; break; }
                    _ => {}
                }
            }
            prop_assert!(!blocked || clear >= needed, "move at {at} after {clear} clear sessions");
        }
    }

    #[test]
    fn invariant_06_one_dimension(steps in any_course()) {
        let course = Course::play(&steps);
        for (_, lift, from, to) in course.upward() {
            let set = &course.state().parameters.as_ref().unwrap().lifts[lift];
            let rung = set.is_harder(to.rung, from.rung);
            let up = [rung, to.range > from.range, to.tempo > from.tempo, to.sets > from.sets, to.reps > from.reps, to.load > from.load];
            prop_assert_eq!(up.iter().filter(|up| **up).count(), 1, "{:?} to {:?}", from, to);
            if rung { prop_assert!(to.load <= from.load.scaled_down(0.8).unwrap()); }
        }
    }

    #[test]
    fn invariant_07_step_cap(steps in any_course()) {
        let course = Course::play(&steps);
        for (_, lift, from, to) in course.upward() {
            let cap = course.state().parameters.as_ref().unwrap().lifts[lift].cap();
            prop_assert!(to.load.kg() <= from.load.kg() * (1.0 + cap) + 1e-9, "{} to {}", from.load, to.load);
        }
    }

    #[test]
    fn invariant_08_ceiling_by_plan(steps in any_course()) {
        let mut set = parameters(1);
        for lift in &mut set.lifts { lift.ceiling = Some(kg(61.0)); }
        let course = Course::play_with(set, &steps);
        for (state, event) in course.states.iter().zip(&course.log.events) {
            for decision in state.decide(event.day).unwrap() { prop_assert!(decision.limit <= kg(61.0)); }
        }
    }

    #[test]
    fn invariant_09_loadability(steps in any_course()) {
        let course = Course::play(&steps);
        for (_, lift, _, to) in course.upward() {
            let all = course.state().parameters.as_ref().unwrap();
            let implement = all.implement(&all.lifts[lift].implement).unwrap();
            let loaded = load_on(implement, &all.stock, to.load, Rounding::Exact).unwrap();
            prop_assert_eq!(loaded.total, to.load);
        }
    }

    #[test]
    fn invariant_24_cross_variant_cap(steps in any_course()) {
        let course = Course::play(&steps);
        let start = parameters(1).lifts[STRICT].start.load;
        let mut proven = start;
        for state in &course.states {
            if let Some(shown) = state.lifts.get(FORGIVING).and_then(|lift| lift.proven) { proven = proven.max(shown.1); }
            if let Some(strict) = state.lifts.get(STRICT) { prop_assert!(strict.tuple.load <= proven); }
        }
    }

    #[test]
    fn invariant_25_shared_region_pain(steps in any_course(), score in 3_u8..=5) {
        let mut course = Course::play(&steps);
        course.add(EventKind::PainReport(Course::pain("hip", score)));
        for at in [STRICT, FORGIVING] {
            let decision = course.state().decide(course.day).unwrap().swap_remove(at);
            let blocked = matches!(decision.outlook, MoveOutlook::Blocked { .. });
            prop_assert!(blocked, "pain in the hip must block {}", decision.lift);
        }
    }

    #[test]
    fn invariant_26_moves_per_window(steps in any_course()) {
        let course = Course::play(&steps);
        let policy = Policy::default();
        let moves: Vec<_> = course.upward().into_iter().map(|(at, lift, _, _)| (course.log.events[at].day, lift)).collect();
        for (number, (day, lift)) in moves.iter().enumerate() {
            for (earlier, other) in &moves[..number] {
                let apart = day.since(*earlier);
                if lift == other { prop_assert!(apart >= i32::from(policy.cooling_off_days)); }
                let same_region = (*lift == PRESS) == (*other == PRESS);
                if same_region { prop_assert!(apart >= i32::from(policy.region_window_days)); }
            }
        }
    }

    #[test]
    fn invariant_27_variant_change_resets_evidence(steps in any_course(), lift in 0_u8..3) {
        let mut course = Course::play(&steps);
        let before = course.state().lifts[usize::from(lift)].tuple;
        course.step(&Step::Rung { lift, up: false });
        let after = &course.state().lifts[usize::from(lift)];
        if after.tuple.rung != before.rung { prop_assert!(after.sittings.is_empty() && after.earlier == (0, 0)); }
        course.step(&Step::Rater);
        prop_assert!(course.state().lifts.iter().all(|lift| lift.sittings.is_empty()));
    }

    #[test]
    fn invariant_33_progress_is_possible(weeks in 30_usize..60) {
        let mut set = parameters(1);
        set.policy.automatic_acceptance = true;
        for lift in &mut set.lifts { lift.ceiling = Some(kg(70.0)); }
        let course = Course::play_with(set.clone(), &vec![Step::CleanWeek; weeks]);
        for (at, lift) in course.state().lifts.iter().enumerate() {
            prop_assert!(lift.tuple.load > set.lifts[at].start.load, "{} never moved", set.lifts[at].name);
            prop_assert!(lift.tuple.load <= kg(70.0));
        }
    }

    #[test]
    fn invariant_34_holding_is_stable(sessions in 10_usize..80) {
        // Good but not enough: every second session passes, every other is not scored.
        let mut course = Course::play(&vec![Step::CleanWeek; 3]);
        let start = course.state().lifts[PRESS].tuple;
        for number in 0..sessions {
            let quality = if number % 2 == 0 { Quality::Unscored } else { Quality::OneMiss };
            course.session(4, quality, Weight::AtLimit, None);
            course.day = course.day.plus(4).unwrap();
            let lift = &course.state().lifts[PRESS];
            prop_assert_eq!(lift.tuple, start);
            prop_assert!(matches!(lift.status, Status::Holding | Status::ReadyToAdvance));
        }
    }

    #[test]
    fn invariant_35_fail_debounce(steps in any_course()) {
        let mut course = Course::play(&steps);
        // On an ordinary footing, after a pass, one failed session without pain never lowers the grant.
        course.day = course.day.plus(1).unwrap();
        course.session(7, Quality::Clean, Weight::AtLimit, Some(0));
        let before: Vec<Tuple> = course.state().lifts.iter().map(|lift| lift.tuple).collect();
        let fails: Vec<u8> = course.state().lifts.iter().map(|lift| lift.fails).collect();
        course.day = course.day.plus(1).unwrap();
        course.session(7, Quality::ManyMisses, Weight::AtLimit, Some(0));
        for (at, lift) in course.state().lifts.iter().enumerate() {
            if fails[at] == 0 { prop_assert_eq!(lift.tuple.load, before[at].load, "{}", at); }
        }
    }

    #[test]
    fn invariant_18_step_back_is_bounded(steps in any_course()) {
        let course = Course::play(&steps);
        for at in 1..course.states.len() {
            let (before, after) = (&course.states[at - 1], &course.states[at]);
            for (lift, (was, is)) in before.lifts.iter().zip(&after.lifts).enumerate() {
                prop_assert!(is.tuple.load >= Mass::ZERO);
                if is.status != Status::SteppingBack || is.tuple.load >= was.tuple.load { continue; }
                if was.status == Status::StoppedRefer || was.status == Status::Returning { continue; }
                let refolded = matches!(course.log.events[at].kind, EventKind::NextDayReport(_) | EventKind::DayReport(_));
                let all = after.parameters.as_ref().unwrap();
                let implement = all.implement(&all.lifts[lift].implement).unwrap();
                let below = load_on(implement, &all.stock, was.tuple.load.minus(Mass::grams(1)).unwrap(), Rounding::Below).unwrap().total;
                let floor = below.min(was.tuple.load.scaled_down(0.85).unwrap());
                prop_assert!(refolded || is.tuple.load >= floor, "{} to {}", was.tuple.load, is.tuple.load);
            }
        }
    }
}

/// Cases of each property: few in the usual run, many where `BISMAR_CASES` says so.
pub fn crate_cases() -> u32 {
    std::env::var("BISMAR_CASES").ok().and_then(|cases| cases.parse().ok()).unwrap_or(48)
}
