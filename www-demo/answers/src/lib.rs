//! What the offline page asks of the library: answers over a whole log, each with its sentences.
//!
//! The page draws and keeps; every number comes from here or from the library's own functions. Each answer is an
//! entry of the dispatch table, so the page calls it as it calls any function of the package. A log comes
//! by the number under which it is kept open, or as JSON text, the form in which logs and plans are kept and exchanged.
//!
//! | file | which question it answers |
//! |---|---|
//! | `opened` | a log that is kept open: read once, asked many questions, added to at the end |
//! | `today` | what does this lifter do on that day, and why? (with a supposed event, or after days away) |
//! | `stops` | what is stopped, whatever is planned? |
//! | `opens` | what would a correction, something brought back or a file open? |
//! | `lifter` | what is set for this lifter, where does each lift stand? |
//! | `history` | what was done, passed, said; how did the grant move? |
//! | `entries` | the log as people read it: each entry with what corrections made of it; what undoing does |
//! | `plans` | the plan, between its text and what the page changes |
//! | `doors` | the library's own answers: the day, the trend, the week, the pair, after a set, how a load is made, sharing a bar, a load that looks mistyped |
//! | `told` | more of them with their sentences: own curve, missed session, easy week, verdicts, block, raters, year; how two places compare |
//! | `range` | which limits concern a lift; a longer range: what load? |
//! | `beginning` | a log for somebody new |
//! | `first_day` | which bars are right for a lift, and with which load does it begin? |
//! | `keeping` | may this plan or kit be kept, which entries are dated after a day, in what do two documents differ? |
//! | `table_in` | what does a table of sets from elsewhere add |
//! | `transfer` | what would this file change; a copy without health detail; sets as a table |
//! | `pain` | what one answer about pain asks for |
//! | `bits` | does this device count as others do? |
//! | `seal` | is a stored event the one that was written? |
//! | `words` | cautions, errors and sources in English |

mod beginning;
mod bits;
mod doors;
mod entries;
mod first_day;
mod history;
mod keeping;
mod lifter;
mod opened;
mod opens;
mod pain;
mod plans;
mod range;
mod seal;
mod stops;
mod table_in;
mod today;
mod told;
mod transfer;
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

/// What an answer takes and gives.
#[cfg(feature = "schema")]
const fn schemas<A: schemars::JsonSchema, B: schemars::JsonSchema>(
    _: fn(A) -> Result<B, Error>,
) -> bismar::source::Schemas {
    bismar::source::Schemas::new(
        |generator| vec![generator.subschema_for::<A>()],
        |generator| generator.subschema_for::<B>(),
    )
}

macro_rules! entries {
    ($($key:literal $answer:path),+ $(,)?) => {
        /// Every answer by its name.
        pub static ENTRIES: &[Entry] =
            &[$(Entry::new($key, |given| through(given, $answer))),+];

        /// What each of them takes and gives, as JSON Schema.
        #[cfg(feature = "schema")]
        pub static SCHEMAS: &[(&str, bismar::source::Schemas)] = &[$(($key, schemas($answer))),+];
    };
}

entries! {
    "page.open" opened::keep,
    "page.append" opened::append,
    "page.takes" opened::takes,
    "page.join" opened::join,
    "page.close" opened::close,
    "page.entries" entries::entries,
    "page.plan" plans::read,
    "page.plan_text" plans::text,
    "page.planned_week" plans::week,
    "page.today" today::today,
    "page.stops" stops::stops,
    "page.opens" opens::opens,
    "page.history" history::history,
    "page.day_against_own" doors::day,
    "page.trend" doors::trend,
    "page.week" doors::week,
    "page.pair" doors::pair,
    "page.curve" told::curve,
    "page.missed" told::missed,
    "page.easy_week" told::easy_week,
    "page.verdicts" told::verdicts,
    "page.block" told::block,
    "page.raters" told::raters,
    "page.year" told::year,
    "page.compare" told::compare,
    "page.rack" doors::rack,
    "page.after_sets" doors::after_sets,
    "page.shared" doors::shared,
    "page.load_slip" doors::load_slip,
    "page.range_step" range::range_step,
    "page.limits" range::limits,
    "page.lifter" lifter::lifter,
    "page.begin" beginning::begin,
    "page.first_lifts" beginning::first_lifts,
    "page.new_lift" beginning::new_lift,
    "page.first_bars" first_day::first_bars,
    "page.other_bars" first_day::other_bars,
    "page.with_bar" first_day::with_bar,
    "page.with_kit" first_day::with_kit,
    "page.accepts" keeping::accepts,
    "page.ahead" keeping::ahead,
    "page.check_plan" keeping::check_plan,
    "page.check_kit" keeping::check_kit,
    "page.preview" transfer::preview,
    "page.without_health" transfer::without_health,
    "page.plan_without_health" plans::without_health,
    "page.sets_table" transfer::sets_table,
    "page.table_in" table_in::table_in,
    "page.seal" seal::seal,
    "page.check_seals" seal::check_seals,
    "page.cautions" words::cautions,
    "page.explain" words::explain,
    "page.source" words::source,
    "page.day" words::day,
    "page.mass" words::mass,
    "page.exact" words::exact,
    "page.pain" pain::pain,
    "page.same_bits" bits::same_bits,
}

#[cfg(test)]
mod asking;
#[cfg(test)]
mod keeping_tests;
#[cfg(test)]
mod opens_tests;
#[cfg(test)]
mod tests;
#[cfg(test)]
mod told_tests;
