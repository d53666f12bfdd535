//! What a move upward must have behind it.

use super::course::*;
use bismar::gate::Outcome;
use bismar::progression::MoveOutlook;
use bismar::quantity::{Mass, Name};
use bismar::reason::Reason;
use bismar::record::*;
use proptest::prelude::*;

/// Parameters in force after that event, of the lift with that number.
fn set_at(course: &Course, at: usize, lift: usize) -> &LiftParameters {
    &course.states[at].parameters().unwrap().lifts[lift]
}

/// Kilograms that are moved at this load: with help the body less the help, none where nobody knows the body's mass.
fn moved(course: &Course, at: usize, lift: usize, load: Mass) -> f64 {
    let all = course.states[at].parameters().unwrap();
    let helped =
        matches!(all.implement(&all.lifts[lift].implement), Some(bismar::loading::Implement::Assistance(_)));
    let body = course.states[at].body_mass().map_or(0.0, |(_, mass)| mass.kg());
    if helped && body == 0.0 { 0.0 } else { load.kg() + if helped { body } else { 0.0 } }
}

/// Days of training without pain in that region, asked about, between the last pain of 3 or more there and that event;
/// none where it never hurt so.
fn clear_days_since_pain(course: &Course, at: usize, region: &Name) -> Option<usize> {
    let hurts = |answers: &[PainAnswer]| {
        answers.iter().any(|answer| answer.region == *region && answer.score.score() >= 3)
    };
    let mut clear = Vec::new();
    for (before, event) in course.log.events[..at].iter().enumerate().rev() {
        match &event.kind {
            EventKind::SessionRecorded(session) => {
                let pain = session.pain.as_deref().unwrap_or_default();
                if hurts(pain) {
                    return Some(clear.len());
                }
                let lifts = &course.states[before].parameters().unwrap().lifts;
                let done = |set: &&LiftParameters| session.lifts.iter().any(|done| done.lift == set.id);
                let loads = lifts.iter().filter(done).any(|set| set.regions.contains(region));
                let none = pain.iter().all(|answer| answer.region != *region || answer.score.score() == 0);
                if session.pain.is_some() && loads && none && !clear.contains(&event.day) {
                    clear.push(event.day);
                }
            }
            EventKind::PainReport(answer) if hurts(std::slice::from_ref(answer)) => return Some(clear.len()),
            EventKind::NextDayReport(report) if hurts(report.pain.as_deref().unwrap_or_default()) => {
                return Some(clear.len());
            }
            _ => {}
        }
    }
    None
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate_cases()))]

    #[test]
    fn invariant_01_no_double_step(drawn in any_course()) {
        let course = Course::of(&drawn);
        for (at, lift, _, _) in course.upward() {
            let before = stands(&course.states[at - 1], lift);
            prop_assert!(before.sittings.iter().any(|sitting| sitting.outcome == Outcome::Pass), "move at {at} without a pass");
        }
    }

    #[test]
    fn invariant_02_gate_before_load(drawn in any_course()) {
        let course = Course::of(&drawn);
        for (at, lift, _, _) in course.upward() {
            let before = stands(&course.states[at - 1], lift);
            let mut days = Vec::new();
            for sitting in before.sittings.iter().rev() {
                match sitting.outcome {
                    Outcome::Pass => days.push(sitting.day),
                    Outcome::Fail if !sitting.below_usual || sitting.critical => break,
                    _ => {}
                }
            }
            days.dedup();
            prop_assert!(days.len() >= RUN, "move at {at} after {} passing days", days.len());
        }
    }

    #[test]
    fn invariant_03_pain_blocks(drawn in any_course()) {
        let course = Course::of(&drawn);
        for (at, lift, _, _) in course.upward() {
            for region in &set_at(&course, at, lift).regions {
                let clear = clear_days_since_pain(&course, at, region);
                let needed = usize::from(Policy::default().clear_sessions);
                prop_assert!(clear.is_none_or(|clear| clear >= needed), "move at {at} after {clear:?} clear days");
            }
        }
    }

    #[test]
    fn invariant_06_one_dimension(drawn in any_course()) {
        let course = Course::of(&drawn);
        for (at, lift, from, to) in course.upward() {
            let set = set_at(&course, at, lift);
            let rung = set.is_harder(to.place.rung, from.place.rung);
            let (range, tempo) = (to.place.range > from.place.range, to.place.tempo > from.place.tempo);
            let (sets, reps) = (to.work.sets > from.work.sets, to.work.reps > from.work.reps);
            let up = [rung, range, tempo, sets, reps, to.load() > from.load()];
            prop_assert_eq!(up.iter().filter(|up| **up).count(), 1, "{:?} to {:?}", from, to);
            if rung {
                let (before, after) = (moved(&course, at, lift, from.load()), moved(&course, at, lift, to.load()));
                let lightest = course.loads_at(at, lift, to.place)[0];
                prop_assert!(after <= 0.8 * before + 1e-6 || to.load() == lightest, "{:?} to {:?}", from, to);
            }
        }
    }

    #[test]
    fn invariant_07_step_cap(drawn in any_course()) {
        let course = Course::of(&drawn);
        for (at, lift, from, to) in course.upward() {
            let cap = set_at(&course, at, lift).cap() * moved(&course, at, lift, from.load());
            prop_assert!(to.load().kg() <= from.load().kg() + cap + 1e-9, "{} to {}", from.load(), to.load());
        }
    }

    #[test]
    fn invariant_08_ceiling_by_plan(drawn in any_course()) {
        let course = Course::of_with(&drawn, |all| {
            for lift in &mut all.lifts {
                let start = lift.start.load();
                lift.ceiling = Some(start.plus(kg(1.0)).unwrap());
            }
        });
        for (state, event) in course.states.iter().zip(&course.log.events) {
            let set = &state.parameters().unwrap().lifts;
            for (decision, set) in state.decide(event.day).unwrap().iter().zip(set) {
                prop_assert!(set.ceiling.is_none_or(|ceiling| decision.limit <= ceiling));
            }
        }
    }

    #[test]
    fn invariant_24_cross_variant_cap(drawn in any_course()) {
        let paired = Drawn { world: World { paired: true, ..drawn.world }, steps: drawn.steps };
        let course = Course::of(&paired);
        let start = parameters(1).lifts[STRICT].start.load();
        let mut proven = start;
        for state in &course.states {
            let all = state.parameters().unwrap();
            // Without the pair, or with dumbbells or help in one of them, nothing is to be compared.
            let bars = |id: &str| all.lifts.iter().any(|lift| lift.id == name(id) && lift.implement == name("bar"));
            if all.pairs.is_empty() || !bars("strict") || !bars("forgiving") { break; }
            let of = |id: &str| stands_of(state, &name(id)).unwrap();
            if let Some(shown) = of("forgiving").proven { proven = proven.max(shown.1); }
            prop_assert!(of("strict").grant.load() <= proven);
        }
    }

    #[test]
    fn invariant_25_shared_region_pain(drawn in any_course(), score in 3_u8..=5) {
        let mut course = Course::of(&drawn);
        if !declares(course.set(), &name("hip")) { return Ok(()); }
        course.add(EventKind::PainReport(Course::pain("hip", score)));
        for (decision, set) in course.state().decide(course.day).unwrap().iter().zip(&course.set().lifts) {
            if !set.regions.contains(&name("hip")) { continue; }
            let MoveOutlook::Blocked { by, .. } = &decision.outlook else { panic!("a move with pain") };
            let block = by.iter().any(|reason| matches!(reason, Reason::PainBlock { region, .. } if *region == name("hip")));
            prop_assert!(block, "{:?}", by);
        }
    }

    #[test]
    fn invariant_26_moves_per_window(drawn in any_course()) {
        let course = Course::of(&drawn);
        let policy = Policy::default();
        let moves = course.upward();
        for (number, (at, lift, ..)) in moves.iter().enumerate() {
            for (before, other, ..) in &moves[..number] {
                let apart = course.log.events[*at].day.since(course.log.events[*before].day);
                let same = set_at(&course, *at, *lift).id == set_at(&course, *before, *other).id;
                if same { prop_assert!(apart >= i32::from(policy.cooling_off_days)); }
                let regions = &set_at(&course, *before, *other).regions;
                let shared = set_at(&course, *at, *lift).regions.iter().any(|region| regions.contains(region));
                if shared { prop_assert!(apart >= i32::from(policy.region_window_days)); }
            }
        }
    }

    #[test]
    fn invariant_27_variant_change_resets_evidence(drawn in any_course(), lift in 0_u8..5) {
        let mut course = Course::of(&drawn);
        let at = course.number(lift);
        let before = course.stands(at).grant;
        course.step(&Step::Rung { lift, up: false });
        let after = course.stands(at);
        if after.grant.place.rung != before.place.rung { prop_assert!(after.sittings.is_empty() && after.earlier == (0, 0)); }
        let flags: Vec<bool> = course.all_stand().iter().map(|lift| lift.other_rater).collect();
        course.step(&Step::Rater);
        // A gate that asks for one rater starts anew; any other says that another one judges.
        for (lift, flag) in course.all_stand().iter().zip(flags) {
            prop_assert!(lift.other_rater != flag);
            if drawn.world.one_rater { prop_assert!(lift.sittings.is_empty()); }
        }
    }

    #[test]
    fn invariant_33_progress_is_possible(weeks in 30_usize..60) {
        let mut set = parameters(1);
        set.policy.automatic_acceptance = true;
        for lift in &mut set.lifts { lift.ceiling = Some(kg(70.0)); }
        let course = Course::play_with(set.clone(), &vec![Step::CleanWeek; weeks]);
        for (lift, set) in course.all_stand().iter().zip(&set.lifts) {
            prop_assert!(lift.grant.load() > set.start.load(), "{} never moved", set.id.as_str());
            prop_assert!(lift.grant.load() <= kg(70.0));
        }
    }

    #[test]
    fn invariant_34_holding_is_stable(sessions in 10_usize..80) {
        // Good but not enough: every second session passes, every other is not scored.
        let mut course = Course::play(&vec![Step::CleanWeek; 3]);
        let start = course.stands(PRESS).grant;
        for number in 0..sessions {
            let quality = if number % 2 == 0 { Quality::Unscored } else { Quality::OneMiss };
            course.session(4, quality, Weight::AtLimit, None);
            course.day = course.day.plus(4).unwrap();
            let lift = course.stands(PRESS);
            prop_assert_eq!(lift.grant, start);
            prop_assert!(matches!(lift.status, HOLDING | READY));
        }
    }

    #[test]
    fn invariant_35_fail_debounce(drawn in any_course()) {
        let mut course = Course::of(&drawn);
        // On an ordinary footing, after a pass, one failed session without pain never lowers the grant.
        course.day = course.day.plus(1).unwrap();
        course.session(u8::MAX, Quality::Clean, Weight::AtLimit, Some(0));
        let before: Vec<(Grant, u8)> = course.all_stand().iter().map(|lift| (lift.grant, lift.fails)).collect();
        course.day = course.day.plus(1).unwrap();
        course.session(u8::MAX, Quality::ManyMisses, Weight::AtLimit, Some(0));
        for (lift, (grant, fails)) in course.all_stand().iter().zip(before) {
            if fails == 0 { prop_assert_eq!(lift.grant, grant); }
        }
    }

    #[test]
    fn invariant_18_step_back_is_bounded(drawn in any_course()) {
        let course = Course::of(&drawn);
        for at in 1..course.states.len() {
            // New parameters are no step back.
            if matches!(course.log.events[at].kind, EventKind::ParametersChanged(_)) { continue; }
            for lift in 0..course.states[at].lifts().len() {
                let (was, is) = (stands(&course.states[at - 1], lift), stands(&course.states[at], lift));
                let helps = is.grant.load() < Mass::ZERO;
                prop_assert!(helps || is.grant.load() >= Mass::ZERO);
                if is.status != STEPPING_BACK || is.grant.load() >= was.grant.load() { continue; }
                if [STOPPED, RETURNING].contains(&was.status) { continue; }
                let refolded = matches!(course.log.events[at].kind, EventKind::NextDayReport(_) | EventKind::DayReport(_));
                // From what is printed for the load: one step of the equipment, or 15 % of what is moved.
                let loads = course.loads_at(at, lift, was.grant.place);
                let lower = |than: Mass| loads.iter().copied().rfind(|load| *load < than);
                let printed = loads.iter().copied().rfind(|load| *load <= was.grant.load()).unwrap_or(loads[0]);
                let below = lower(printed).unwrap_or(loads[0]).kg();
                let floor = printed.kg() - 0.15 * moved(&course, at, lift, printed);
                prop_assert!(refolded || is.grant.load().kg() >= (if below < floor { below } else { floor }) - 1e-9, "{} to {}", was.grant.load(), is.grant.load());
            }
        }
    }
}

/// Cases of each property: few in the usual run, many where `BISMAR_CASES` says so.
pub fn crate_cases() -> u32 {
    std::env::var("BISMAR_CASES").ok().and_then(|cases| cases.parse().ok()).unwrap_or(48)
}
