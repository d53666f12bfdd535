//! The promise about a session: nothing in it lies above what was granted.

use bismar::prescription::{SessionPlan, Verdict, next_session_from};
use bismar::progression::{State, Status};
use bismar::quantity::Day;
use bismar::record::{LiftPlan, PLAN_FORMAT, PLAN_VERSION, Plan};
use bismar::value::Value;

/// A plan that names every lift of the state.
pub fn plan_of(state: &State) -> Plan {
    let lifts = state.parameters.iter().flat_map(|parameters| &parameters.lifts);
    let lifts = lifts.map(|lift| LiftPlan {
        lift: lift.name.clone(),
        reserve: None,
        sets: None,
        reps: None,
        reference: None,
        keep: false,
    });
    Plan {
        format: PLAN_FORMAT.into(),
        version: PLAN_VERSION,
        lifts: lifts.collect(),
        unavailable: Vec::new(),
        minutes: None,
        easy_week: false,
    }
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
            lift.sets <= decision.tuple.sets && lift.reps <= decision.tuple.reps,
            "{}: more work",
            lift.lift
        );
        let warm = lift.warm_up.iter().all(|set| lift.load.is_some_and(|load| set.load <= load));
        assert!(warm, "{}: a warm-up above the work", lift.lift);
        let made = lift.loaded.as_ref().map(|loaded| loaded.total);
        assert!(made.is_none() || made == lift.load, "{}: loaded otherwise than said", lift.lift);
        assert!(
            lift.status != Status::StoppedRefer || lift.verdict == Verdict::Stop,
            "{}: no stop",
            lift.lift
        );
        assert!(lift.verdict < Verdict::Rest || lift.load.is_none(), "{}: a load at rest", lift.lift);
        assert!(!lift.reasons.is_empty(), "{}: no reason", lift.lift);
        let words: String = lift.reasons.iter().map(bismar::text::reason).collect();
        assert!(!words.is_empty() && !bismar::text::one_line(lift).is_empty());
    }
    Value::write(&session).expect("a session holds no NaN");
    Some(session)
}

/// An error has a code and a sentence.
pub fn spoken(error: &bismar::Error) {
    assert!(!error.code().as_str().is_empty() && !bismar::text::error(error).is_empty());
}
