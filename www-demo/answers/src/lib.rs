//! What the offline page asks of the library: answers over a whole log, each with its sentences.
//!
//! The page draws and keeps; every number comes from here or from the library's own functions. Each answer is an
//! entry of the dispatch table, so the page calls it as it calls any function of the package. Logs and plans come
//! as JSON text, the form in which they are kept and exchanged.
//!
//! | file | which question it answers |
//! |---|---|
//! | `today` | what does this lifter do on that day, and why? (with a supposed event, or after days away) |
//! | `lifter` | what is set for this lifter, where does each lift stand, may this event be written down? |
//! | `history` | what was done, passed, said; how did the grant move? |
//! | `judge` | a good or a bad day, against this lifter's own? |
//! | `trend`, `week`, `pair` | is it real, was it a jump, how do two lifts stand to each other? |
//! | `next_set` | that set felt harder or uglier than wanted: what now? |
//! | `range` | a longer range: what load? |
//! | `beginning` | a log for somebody new |
//! | `transfer` | what would this file change; a copy without health detail; sets as a table |
//! | `seal` | is a stored event the one that was written? |
//! | `words` | cautions, errors and sources in English |

mod beginning;
mod history;
mod judge;
mod lifter;
mod next_set;
mod opened;
mod pair;
mod range;
mod seal;
mod today;
mod transfer;
mod trend;
mod week;
mod words;

use bismar::Error;
use bismar::source::Entry;
use bismar::value::Value;

/// Reads the argument strictly, answers, writes the answer.
fn through<A: serde::de::DeserializeOwned, B: serde::Serialize>(
    given: &Value,
    answer: impl Fn(A) -> Result<B, Error>,
) -> Result<Value, Error> {
    Value::write(&answer(given.read()?)?)
}

macro_rules! entries {
    ($($key:literal $answer:path),+ $(,)?) => {
        /// Every answer by its name.
        pub static ENTRIES: &[Entry] =
            &[$(Entry { key: $key, call: |given| through(given, $answer) }),+];
    };
}

entries! {
    "page.today" today::today,
    "page.history" history::history,
    "page.judge" judge::judge,
    "page.trend" trend::trend,
    "page.estimate" trend::one_set,
    "page.week" week::week,
    "page.pair" pair::pair,
    "page.next_set" next_set::next_set,
    "page.ugly_set" next_set::ugly_set,
    "page.range_step" range::range_step,
    "page.lifter" lifter::lifter,
    "page.accepts" lifter::accepts,
    "page.begin" beginning::begin,
    "page.new_lift" beginning::new_lift,
    "page.preview" transfer::preview,
    "page.without_health" transfer::without_health,
    "page.sets_table" transfer::sets_table,
    "page.pretty" transfer::pretty,
    "page.seal" seal::seal,
    "page.check_seals" seal::check_seals,
    "page.cautions" words::cautions,
    "page.explain" words::explain,
    "page.source" words::source,
    "page.day" words::day,
    "page.mass" words::mass,
}

#[cfg(test)]
mod tests;
