//! One try at a gate: when it opens, when it ends without opening, and what follows if each end is followed by
//! a new try.

use alloc::vec::Vec;

use super::acceptable_reps::Session;
use super::evidence::Evidence;
use crate::numeric::sum::sum;

/// Sessions looked at before a median is given up; at two a week that is a century.
pub(super) const MOST_SESSIONS: u32 = 10_000;

/// Chances by session, the first session at place 0.
pub(super) struct Attempt {
    /// The gate opens at this session.
    opens: Vec<f64>,
    /// The try ends at this session and the gate stays shut.
    ends: Vec<f64>,
}

impl Attempt {
    /// A pass-run: it ends at the first session that does not pass.
    pub(super) fn pass_run(sessions: u8, pass: f64) -> Attempt {
        let mut attempt = Attempt { opens: Vec::new(), ends: Vec::new() };
        let mut held = 1.0;
        for session in 1..=sessions {
            attempt.ends.push(held * (1.0 - pass));
            held *= pass;
            attempt.opens.push(if session == sessions { held } else { 0.0 });
        }
        attempt
    }

    /// A test of evidence, looked at after each session of `reps` repetitions; a session passes with its first
    /// repetitions clean and at most `allowed` misses.
    pub(super) fn evidence(test: &Evidence, reps: u16, session: &Session, allowed: u32) -> Attempt {
        let mut attempt = Attempt { opens: Vec::new(), ends: Vec::new() };
        let mut going = Vec::from([Going { misses: 0, passes: 0, chance: 1.0 }]);
        let steps = steps(reps, session, allowed);
        // A session that neither opens the gate nor ends the test passes, or misses: both can be counted.
        let longest = u32::from(test.most_reps()) * 2 + u32::from(test.days()) + 2;
        for scored in (1..=longest).map(|done| done * u32::from(reps)) {
            let (mut opened, mut ended, mut next) = (0.0, 0.0, Vec::new());
            for from in &going {
                for step in &steps {
                    let to = from.after(step, test.days());
                    if test.ends_at(scored).is_some_and(|end| to.misses >= end) {
                        ended += to.chance;
                    } else if step.passed && to.opens(test, scored) {
                        opened += to.chance;
                    } else {
                        next.push(to);
                    }
                }
            }
            attempt.opens.push(opened);
            attempt.ends.push(ended);
            going = merged(next);
            if going.is_empty() {
                break;
            }
        }
        attempt
    }

    /// Chance that one try opens the gate.
    pub(super) fn chance(&self) -> f64 {
        crate::numeric::smaller(sum(self.opens.iter().copied()), 1.0)
    }

    /// Mean number of sessions of one try, whichever way it goes.
    pub(super) fn mean(&self) -> f64 {
        let each = self.opens.iter().zip(&self.ends).zip(1_u32..);
        sum(each.map(|((open, end), session)| (open + end) * f64::from(session)))
    }

    /// Chance that the gate has opened by each session, for as long as `go_on` says, if a new try follows
    /// each that ended.
    fn by_session(&self, mut go_on: impl FnMut(u32, f64) -> bool) {
        // Chance that the gate opens at exactly this session: in the first try, or in the tries that begin
        // anew after the first one ended at an earlier session.
        let mut exactly: Vec<f64> = Vec::new();
        let mut opened = crate::numeric::sum::Sum::default();
        for session in 1..=MOST_SESSIONS {
            let now = self.opens.get(exactly.len()).copied().unwrap_or(0.0);
            let anew = sum(self.ends.iter().zip(exactly.iter().rev()).map(|(end, later)| end * later));
            exactly.push(now + anew);
            opened.add(now + anew);
            if !go_on(session, crate::numeric::smaller(opened.value(), 1.0)) {
                break;
            }
        }
    }

    /// Chance that the gate opens within so many sessions, and the session by which it has opened for half.
    pub(super) fn within(&self, sessions: u32) -> (f64, Option<u32>) {
        let (mut within, mut median) = (0.0, None);
        self.by_session(|session, opened| {
            if session <= sessions {
                within = opened;
            }
            if median.is_none() && opened >= 0.5 {
                median = Some(session);
            }
            session < sessions || median.is_none()
        });
        (within, median)
    }
}

/// A test that goes on: misses, passing days as far as they matter, and the chance of it.
#[derive(Clone, Copy)]
struct Going {
    misses: u32,
    passes: u8,
    chance: f64,
}

impl Going {
    fn after(&self, step: &Step, days: u8) -> Going {
        let passes = if step.passed && self.passes < days { self.passes + 1 } else { self.passes };
        Going { misses: self.misses + step.misses, passes, chance: self.chance * step.chance }
    }

    fn opens(&self, test: &Evidence, scored: u32) -> bool {
        self.passes >= test.days() && test.opens_at(scored).is_some_and(|most| self.misses <= most)
    }
}

/// The same states with equal ones put together; what has underflowed to no chance at all is gone.
fn merged(mut states: Vec<Going>) -> Vec<Going> {
    states.retain(|state| state.chance > 0.0);
    crate::numeric::sort::sort_by_key(&mut states, |state| (state.misses, state.passes));
    states.dedup_by(|later, kept| {
        let same = (later.misses, later.passes) == (kept.misses, kept.passes);
        if same {
            kept.chance += later.chance;
        }
        same
    });
    states
}

struct Step {
    misses: u32,
    passed: bool,
    chance: f64,
}

fn steps(reps: u16, session: &Session, allowed: u32) -> Vec<Step> {
    let reps = u32::from(reps);
    let of = |chances: &[f64], clean: bool| {
        let each = (0..=reps).zip(chances);
        let steps = each.map(|(acceptable, chance)| {
            let misses = reps - acceptable;
            Step { misses, passed: clean && misses <= allowed, chance: *chance }
        });
        steps.filter(|step| step.chance > 0.0).collect::<Vec<_>>()
    };
    let mut steps = of(&session.clean, true);
    steps.extend(of(&session.not_clean, false));
    steps
}
