//! One call for each of many texts. A lifter's fold needs every event, so that a lifter is the smallest piece of work:
//! whoever is free takes the next one.

use std::sync::Mutex;
use std::sync::PoisonError;
use std::sync::atomic::{AtomicUsize, Ordering};

use bismar::Error;

/// How many threads the machine can run at once.
#[must_use]
pub fn processors() -> usize {
    std::thread::available_parallelism().map_or(1, usize::from)
}

/// Answers in the order of what was given, worked out on so many threads (as many as the machine has where none are
/// named); an error in the place of each that is refused.
pub fn each<T: Sync, R: Send>(
    given: &[T],
    threads: Option<usize>,
    call: impl Fn(&T) -> Result<R, Error> + Sync,
) -> Vec<Result<R, Error>> {
    let next = AtomicUsize::new(0);
    let done = Mutex::new(Vec::with_capacity(given.len()));
    let work = || {
        let mut own = Vec::new();
        while let Some((at, one)) =
            Some(next.fetch_add(1, Ordering::Relaxed)).and_then(|at| Some((at, given.get(at)?)))
        {
            own.push((at, call(one)));
        }
        done.lock().unwrap_or_else(PoisonError::into_inner).append(&mut own);
    };
    let threads = threads.unwrap_or_else(processors).clamp(1, given.len().max(1));
    std::thread::scope(|scope| {
        for _ in 1..threads {
            scope.spawn(work);
        }
        work();
    });
    let mut done = done.into_inner().unwrap_or_else(PoisonError::into_inner);
    done.sort_unstable_by_key(|(at, _)| *at);
    done.into_iter().map(|(_, answer)| answer).collect()
}

#[cfg(part = "whole")]
#[cfg(test)]
mod tests {
    use super::each;
    use crate::calls::call_json;

    #[test]
    fn one_that_is_refused_loses_no_other_and_order_is_kept() {
        let texts: Vec<String> = (0..100)
            .map(|at| if at == 40 { "{".into() } else { format!(r#"{{"load":{{"kg":{at}.5}},"reps":1}}"#) })
            .collect();
        let on = |threads| each(&texts, Some(threads), |text| call_json("one_rm.lombardi_1989", text));
        let one = on(1);
        assert_eq!(one, on(3));
        assert_eq!(one.iter().filter(|answer| answer.is_err()).count(), 1);
        assert!(one[40].is_err());
        // One repetition to the power 0.1 is one.
        assert_eq!(one[99], Ok(r#"{"kg":99.5}"#.to_string()));
    }
}
