//! The promise about a session: nothing in it lies above what was granted.

use bismar::prescription::{LiftToday, SessionPlan, Verdict, next_session_from};
use bismar::progression::State;
use bismar::quantity::Day;
use bismar::record::{Plan, StartsFrom};
use bismar::value::Value;

/// A plan that names every lift of the state.
pub fn plan_of(state: &State) -> Plan {
    Plan::of(state.lifts().map(|lift| lift.id().clone()))
}

/// Asks for the session of that day and holds every number of it against the grant; gives it where there is one.
pub fn below_the_grant(state: &State, plan: &Plan, today: Day) -> Option<SessionPlan> {
    let decisions = match state.decide(today) {
        Ok(decisions) => decisions,
        Err(error) => {
            spoken(&error);
            assert!(next_session_from(state, plan, today).is_err(), "a session without decisions");
            return None;
        }
    };
    let session = match next_session_from(state, plan, today) {
        Ok(session) => session,
        Err(error) => {
            spoken(&error);
            return None;
        }
    };
    for lift in &session.lifts {
        let decision = decisions.iter().find(|decision| decision.lift == lift.lift).expect("its decision");
        let most = decision.limit;
        assert!(
            lift.limit <= most && lift.load.is_none_or(|load| load <= most),
            "{}: above {most}",
            lift.lift
        );
        assert!(
            lift.sets <= decision.grant.work.sets && lift.reps <= decision.grant.work.reps,
            "{}: more work",
            lift.lift
        );
        keeps_its_place(state, lift);
        let warm = lift.warm_up.iter().all(|set| lift.load.is_some_and(|load| set.load <= load));
        assert!(warm, "{}: a warm-up above the work", lift.lift);
        let made = lift.loaded.as_ref().map(|loaded| loaded.total);
        assert!(made.is_none() || made == lift.load, "{}: loaded otherwise than said", lift.lift);
        assert!(!lift.status.is_stopped() || lift.verdict == Verdict::Stop, "{}: no stop", lift.lift);
        assert!(lift.verdict < Verdict::Rest || lift.load.is_none(), "{}: a load at rest", lift.lift);
        assert!(!lift.reasons.is_empty(), "{}: no reason", lift.lift);
        let words: String = lift.reasons.iter().map(bismar::text::reason).collect();
        assert!(!words.is_empty() && !bismar::text::one_line(lift).is_empty());
    }
    Value::write(&session).expect("a session holds no NaN");
    Some(session)
}

/// Work is done at the granted place or an easier one, and the bar begins at the height of that place.
fn keeps_its_place(state: &State, today: &LiftToday) {
    let lift = state.lift_state(&today.lift).expect("its lift");
    let (set, granted) = (lift.parameters(), today.granted.place);
    set.check_place(&today.place).expect("a place of its lists");
    assert!(
        today.place.range <= granted.range && today.place.tempo <= granted.tempo,
        "{}: a harder place than granted",
        today.lift
    );
    assert!(!set.is_harder(today.place.rung, granted.rung), "{}: a harder rung than granted", today.lift);
    let height = set.start_height(today.place);
    assert_eq!(today.height, height, "{}: another height", today.lift);
    assert!(
        today.blocks.is_none() || set.starts_from == StartsFrom::Floor,
        "{}: blocks for nothing",
        today.lift
    );
}

/// An error has a code and a sentence.
pub fn spoken(error: &bismar::Error) {
    assert!(!error.code().as_str().is_empty() && !bismar::text::error(error).is_empty());
}
