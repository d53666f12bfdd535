//! The doors by name: what is called like a function of the registry, and has no row since no number comes from it.

use super::beginning::{first_lifts, other_bars, with_bar, with_kit};
use super::without_health::{log_without_health, plan_without_health};
#[cfg(feature = "schema")]
use super::{
    Beginning, BlockReview, Comparison, DayAnswer, EasyWeek, Handover, History, InForce, LiftCurve, Missed,
    NextSet, Opens, PairAnswer, Rack, Raters, Review, SetsToLog, Share, Trend, Verdicts, Week, Year,
};
use super::{
    DayAnswers, FirstLift, NextPlanned, PairLoads, SetsTable, SetsToday, Sharing, TableReading, begin,
    block_review, compare, curve, day, easy_week, handover, history, in_force, missed, next_set, opens, pair,
    rack, raters, review, sets_to_log, share, trend, verdicts, week, year,
};
#[cfg(feature = "schema")]
use alloc::string::String;
use alloc::vec::Vec;

use crate::horizon::{Phase, Sex};
use crate::loading::{Implement, Stock, Tolerance};
#[cfg(feature = "schema")]
use crate::prescription::{BarOffer, LongerRange};
use crate::prescription::{first_bars, first_lift, longer_range};
use crate::quantity::{Day, Length, Mass, Name};
use crate::record::{EventKind, Grant, Lifter, Log, Plan};
#[cfg(feature = "schema")]
use crate::record::{LiftParameters, Parameters, WithoutHealth};
#[cfg(feature = "schema")]
use crate::source::Schemas;
use crate::source::{Argument, Call};

/// A function of whole logs, plans and states, called by name like those of the registry.
#[derive(Clone, Copy, Debug)]
#[non_exhaustive]
pub struct Door {
    /// Key, `module.function`.
    pub key: &'static str,
    /// What it answers.
    pub doc: &'static str,
    /// Arguments in order.
    pub arguments: &'static [Argument],
    /// Rust type of the result.
    pub result: &'static str,
    /// Reads the arguments strictly, calls, writes the result.
    pub call: Call,
    /// Arguments and result as JSON Schema, where they were told.
    #[cfg(feature = "schema")]
    schemas: Option<Schemas>,
}

impl Door {
    /// That call under that key, with what it takes and gives.
    #[must_use]
    pub const fn new(
        key: &'static str,
        doc: &'static str,
        arguments: &'static [Argument],
        result: &'static str,
        call: Call,
    ) -> Door {
        Door {
            key,
            doc,
            arguments,
            result,
            call,
            #[cfg(feature = "schema")]
            schemas: None,
        }
    }

    /// Arguments and result as JSON Schema, where they were told.
    #[cfg(feature = "schema")]
    #[must_use]
    pub const fn schemas(&self) -> Option<Schemas> {
        self.schemas
    }

    /// The same with its arguments and result as JSON Schema.
    #[cfg(feature = "schema")]
    #[must_use]
    pub const fn with_schemas(self, schemas: Schemas) -> Door {
        Door { schemas: Some(schemas), ..self }
    }
}

/// A door: reads its arguments strictly, calls the function, writes what it gives.
macro_rules! door {
    ($key:expr, $doc:expr, $function:path, $out:ty, [$($args:tt)*]) => {{
        let arguments = $crate::source::arguments!([] $($args)*);
        let door = $crate::answers::Door::new($key, $doc, arguments, stringify!($out), |given| {
            #[allow(unused_mut, reason = "a door may take nothing")]
            let mut arguments = $crate::value::Arguments::new(given)?;
            $crate::source::call!(arguments, $function, [] $($args)*)
        });
        #[cfg(feature = "schema")]
        let door = door.with_schemas($crate::source::schemas!($out; $($args)*));
        door
    }};
}
#[cfg(feature = "english")]
pub(crate) use door;

macro_rules! doors {
    ($list:ident $about:literal $($key:literal $doc:literal $function:ident ($($args:tt)*) -> $out:ty;)*) => {
        #[doc = $about]
        pub static $list: &[Door] = &[$(door!($key, $doc, $function, $out, [$($args)*]),)*];
    };
}

// Six lists, by what the answers draw on, so that a build that names one of them carries no others.
doors! {
    OF_SESSIONS "The doors that draw on sessions, gates and today's work."
    "answers.compare" "In what is that place and work of a lift harder or easier than what is granted now, or than another?"
        compare(log: &Log, lift: &Name, today: Day, to: &Grant, from: Option<&Grant>) -> Comparison;
    "answers.handover" "What does another coach need to know, and what changed since the end of that day?"
        handover(log: &Log, today: Day, since: Day) -> Handover;
    "answers.history" "What was done of a lift, or of all, what did it come to, and how did what is granted move?"
        history(log: &Log, lift: Option<&Name>, today: Day) -> History;
    "answers.in_force" "What is in force on that day, whatever is planned: what stops, and what keeps a lift below what it would be?"
        in_force(log: &Log, today: Day) -> InForce;
    "answers.missed" "A session was missed: shift, merge or drop, lift by lift?"
        missed(log: &Log, plan: &Plan, today: Day, next: Option<&NextPlanned>) -> Missed;
    "answers.next_set" "That set is done: the same, less, more within today's load, or stop?"
        next_set(log: &Log, plan: &Plan, today: Day, done: &SetsToday) -> NextSet;
    "answers.opens" "What would open if one more event were written down, or another log stood in its place?"
        opens(log: &Log, today: Day, suppose: Option<&EventKind>, instead: Option<&Log>) -> Opens;
    "answers.rack" "How is each load of today made, disc by disc, what may it weigh, and how large would the next step be?"
        rack(log: &Log, plan: &Plan, lift: &Name, today: Day, tolerance: Option<&Tolerance>) -> Rack;
    "answers.share" "Several lifters, one bar: in which order do they lift, and which discs move between the sets?"
        share(lifters: &[Sharing], today: Day) -> Share;
    "answers.raters" "Do two people who marked the same sets mark alike?"
        raters(log: &Log, lift: Option<&Name>, today: Day) -> Raters;
    "answers.review" "What looks odd in this log: body mass, units, marks, overrides, dates?"
        review(log: &Log, today: Day) -> Review;
}

doors! {
    OF_DAYS "The doors that draw on doses, days and trends."
    "answers.block_review" "Was the block right: keep the rung or change it, test again, raise the gate; is the trend real?"
        block_review(log: &Log, today: Day, name: Option<&Name>) -> BlockReview;
    "answers.curve" "What is this lifter's own curve of repetitions and load, and is there enough for one?"
        curve(log: &Log, lift: &Name, today: Day) -> LiftCurve;
    "answers.day" "Does today lie below, within or above this lifter's usual, and how often is that a false alarm?"
        day(log: &Log, today: Day, answers: Option<&DayAnswers>) -> DayAnswer;
    "answers.easy_week" "Is an easy week due, counting life's own breaks, and what would it be?"
        easy_week(log: &Log, plan: Option<&Plan>, today: Day) -> EasyWeek;
    "answers.pair" "How do a strict and a forgiving lift stand to each other, against this lifter's own past?"
        pair(log: &Log, strict: &Name, forgiving: &Name, today: Day, loads: Option<&PairLoads>) -> PairAnswer;
    "answers.trend" "Is the strength of this lift moving, and is the change real?"
        trend(log: &Log, lift: &Name, today: Day, weeks: Option<u16>) -> Trend;
    "answers.verdicts" "How often were the verdicts about the day right, better than chance?"
        verdicts(log: &Log, today: Day) -> Verdicts;
    "answers.week" "Was this week a jump, by lift, by region and in all, against the lifter's own weeks?"
        week(log: &Log, today: Day) -> Week;
}

doors! {
    OF_YEARS "The doors that draw on years."
    "answers.year" "What is due this year, how does function stand to its floors, what must still be there later?"
        year(log: &Log, plan: &Plan, today: Day, sex: Option<Sex>, phases: Option<&Vec<Phase>>) -> Year;
}

doors! {
    OF_TABLES "The door that makes a log of a table."
    "answers.sets_to_log" "Which sessions does this table of sets add to the log, and what had to be guessed?"
        sets_to_log(table: &SetsTable, log: &Log, reading: Option<&TableReading>) -> SetsToLog;
}

doors! {
    OF_BEGINNINGS "The doors for somebody new, and for equipment that changes."
    "prescription.first_lifts" "Which lifts are there to begin with?"
        first_lifts() -> Vec<String>;
    "prescription.first_bars" "With which bar, and which load, does a lift begin? The lightest right bar first."
        first_bars(lift: &str, implements: &[Implement], stock: &Stock, blocks: &[Length]) -> Vec<BarOffer>;
    "prescription.first_lift" "What is set for one more lift to begin with, until a coach sets it otherwise?"
        first_lift(id: &str, implement: Name, load: Mass) -> LiftParameters;
    "prescription.begin" "Somebody new: a log that begins with these lifts, and the plan for the first session?"
        begin(lifter: &Lifter, day: Day, lifts: &[FirstLift], implements: &[Implement], stock: &Stock,
            blocks: &[Length], cleared_by: Option<&Name>) -> Beginning;
    "prescription.other_bars" "With which other bar may a lift be done? None raises its working load."
        other_bars(log: &Log, lift: &Name) -> Vec<BarOffer>;
    "prescription.with_bar" "What is set, with that bar for that lift?"
        with_bar(log: &Log, lift: &Name, implement: &Name) -> Parameters;
    "prescription.with_kit" "What is set, with these bars, discs and blocks?"
        with_kit(log: &Log, implements: &[Implement], stock: &Stock, blocks: &[Length]) -> Parameters;
    "prescription.longer_range" "A longer range: what load does it start at, and how does it begin?"
        longer_range(implement: &Implement, stock: &Stock, load: Mass, from: Length, to: Length) -> LongerRange;
}

doors! {
    OF_COPIES "The doors for a copy that somebody else may read."
    "record.log_without_health" "The log without health detail and without anybody's own words, and what was left out?"
        log_without_health(log: &Log) -> WithoutHealth;
    "record.plan_without_health" "The plan without what tells of health?"
        plan_without_health(plan: &Plan) -> Plan;
}

/// Every door of the log that gives an answer; [`OF_BEGINNINGS`] are asked before there is one, and [`OF_COPIES`] give documents.
pub fn doors() -> impl Iterator<Item = &'static Door> {
    OF_SESSIONS.iter().chain(OF_DAYS).chain(OF_YEARS).chain(OF_TABLES)
}
