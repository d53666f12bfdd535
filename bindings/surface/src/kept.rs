//! States kept by a number, for languages that hold a number instead of the state. No number is used twice, so that one
//! that was closed never means another lifter; each state has a lock of its own, so that two lifters never wait for
//! each other.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use bismar::Error;
use bismar::progression::State;
use bismar::value::Value;

use crate::doors::{self, Request};

type Shared = Arc<Mutex<State>>;

/// States by their numbers.
#[derive(Debug, Default)]
pub struct Kept {
    inner: Mutex<Inner>,
}

#[derive(Debug, Default)]
struct Inner {
    last: u64,
    states: BTreeMap<u64, Shared>,
}

/// A request that is refused leaves the state as it was, so that a lock is never left with half a change.
fn locked<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Kept {
    /// None yet.
    #[must_use]
    pub const fn new() -> Kept {
        Kept { inner: Mutex::new(Inner { last: 0, states: BTreeMap::new() }) }
    }

    /// Folds the argument `log`, or takes the argument `state` where it is of use, and keeps the state: its number, from
    /// 1 on.
    ///
    /// # Errors
    /// What reading the log and folding it report.
    pub fn open(&self, given: &Value) -> Result<u64, Error> {
        let state = Arc::new(Mutex::new(doors::open(given)?));
        let mut inner = locked(&self.inner);
        inner.last += 1;
        let number = inner.last;
        inner.states.insert(number, state);
        Ok(number)
    }

    /// Asks a kept state; the request [`Request::Apply`] changes it.
    ///
    /// # Errors
    /// `not_ready` for a number that is closed or never was; what the request reports.
    pub fn ask(&self, number: u64, request: Request, given: &Value) -> Result<Value, Error> {
        let state = locked(&self.inner).states.get(&number).cloned().ok_or_else(doors::gone)?;
        let mut state = locked(&state);
        doors::ask(&mut state, request, given)
    }

    /// Gives a state back: whether there was one.
    pub fn close(&self, number: u64) -> bool {
        locked(&self.inner).states.remove(&number).is_some()
    }

    /// How many are kept.
    #[must_use]
    pub fn count(&self) -> usize {
        locked(&self.inner).states.len()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use bismar::Code;

    fn empty_log() -> Value {
        let lifter = Value::Map(vec![("id".into(), Value::Text("a".into()))]);
        let log = Value::Map(vec![
            ("format".into(), Value::Text("bismar-log".into())),
            ("version".into(), Value::Number(1.0)),
            ("lifter".into(), lifter),
            ("events".into(), Value::List(Vec::new())),
        ]);
        Value::Map(vec![("log".into(), log)])
    }

    #[test]
    fn a_closed_number_is_never_used_again() {
        let kept = Kept::new();
        let first = kept.open(&empty_log()).unwrap();
        assert!(kept.ask(first, Request::State, &Value::Map(Vec::new())).is_ok());
        assert!(kept.close(first));
        assert!(!kept.close(first));
        let second = kept.open(&empty_log()).unwrap();
        assert_ne!(first, second);
        let error = kept.ask(first, Request::State, &Value::Map(Vec::new())).unwrap_err();
        assert_eq!(error.code(), Code::NotReady);
        assert_eq!(kept.count(), 1);
    }

    #[test]
    fn two_threads_ask_one_state() {
        let kept = Kept::new();
        let number = kept.open(&empty_log()).unwrap();
        std::thread::scope(|scope| {
            for _ in 0..2 {
                scope.spawn(|| {
                    for _ in 0..200 {
                        assert!(kept.ask(number, Request::State, &Value::Map(Vec::new())).is_ok());
                        let other = kept.open(&empty_log()).unwrap();
                        assert!(kept.close(other));
                    }
                });
            }
        });
        assert_eq!(kept.count(), 1);
    }
}
