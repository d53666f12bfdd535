//! What looks odd in a log, in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::{Odd, Oddity, Review, Slip};
use crate::record::Effort;
use crate::text::capital;
use crate::text::phrases::Phrases;
use crate::text::words::Words;

pub(in crate::text) const REVIEW: Phrases = &[
    ("slip.pounds_as_kilograms", "It would fit if a number of pounds was written as kilograms."),
    ("slip.kilograms_as_pounds", "It would fit if a number of kilograms was written as pounds."),
    ("slip.decimal_point", "It would fit if the decimal point stands one place off."),
    (
        "odd.mass_falling",
        "Body mass fell by {part} within half a year, from {from} on {since} to {to} on {day}. If nobody meant it to, \
         talk to a clinician.",
    ),
    (
        "odd.mass_jump",
        "Body mass on {day} is {to}, {part} off the {from} of {since}. Is it written as it was weighed?",
    ),
    ("odd.load_slip", "{lift}, {day}: {load} is written where about {expected} was to be expected."),
    (
        "odd.perfect_scores",
        "{lift}: in {sessions} in a row since {since} no repetition was in doubt. Marks that never differ tell \
         nothing: look again at what is looked for.",
    ),
    (
        "odd.many_overrides",
        "{lift}: {overrides} overrides since {since}, in {sessions}; {without_end} of them without an end. Do the \
         rules fit this lift?",
    ),
    (
        "odd.unscored",
        "{lift}: nobody marked technique in {unscored} of the last {sessions}, since {since}. What is not marked \
         counts as no pass.",
    ),
    (
        "odd.only_own_marks",
        "{lift}: only the lifter has marked technique, in {sessions} in a row since {since}. Let somebody else look.",
    ),
    (
        "odd.missed_with_reserve",
        "{lift}, {day}: a repetition was missed in a set of which the log says {effort}. Were rating and reserve mixed \
         up?",
    ),
    (
        "odd.same_session_twice",
        "{day}: entries {event} and {other} say the same session. Was it written twice?",
    ),
    ("odd.after_today", "Entry {event} is of {day}, {days} after today."),
    (
        "odd.out_of_line",
        "Entry {event} is of {day}, {days} off the {beside} of the one beside it. Is the date right?",
    ),
    ("odd.long_gap", "Nothing is written between {since} and {day}, {days}. Is the year right?"),
    ("odd.ends_before_it_begins", "Entry {event} of {day} was over on {end} already. Is the date right?"),
    (
        "odd.answer_without_question",
        "Entry {event} of {day} answers {ask}, of which nothing was open then: it closed nothing. Was it told twice?",
    ),
    (
        "odd.odd_age",
        "By the log the lifter is {years} years old; the rules are made for 18 to 100. Is the birthday right?",
    ),
    ("odd.unknown_events", "{count} entries are of a newer version, which this one cannot read."),
    ("review.nothing", "Nothing looks odd in {sessions}."),
    ("effort.rir", "{value} left in reserve"),
    ("effort.rpe", "a rating of {value}"),
];

impl Words<'_> {
    /// Something odd as one or two sentences.
    ///
    /// ```
    /// use bismar::answers::{Odd, Oddity};
    /// use bismar::text::Words;
    ///
    /// let day = "2026-08-27".parse()?;
    /// let mut oddity = Oddity::new(day, Odd::AfterToday { days: 1 });
    /// oddity.event = Some(7);
    /// assert_eq!(Words::plain().oddity(&oddity), "Entry 7 is of 27 Aug 2026, 1 day after today.");
    /// # Ok::<(), bismar::Error>(())
    /// ```
    #[must_use]
    pub fn oddity(&self, oddity: &Oddity) -> String {
        let lift = oddity.lift.as_ref().map(|lift| capital(&self.lift_at_named(lift, oddity.place.as_ref())));
        let mut with = alloc::vec![
            ("day", self.day(oddity.day)),
            ("event", oddity.event.map(|event| event.to_string()).unwrap_or_default()),
            ("lift", lift.unwrap_or_default()),
        ];
        let mut after = None;
        match &oddity.what {
            Odd::MassFalling { from, since, to, part } => {
                with.extend([
                    ("from", self.mass(*from)),
                    ("since", self.day(*since)),
                    ("to", self.mass(*to)),
                ]);
                with.push(("part", self.percent(*part)));
            }
            Odd::MassJump { from, since, to, part, slip } => {
                with.extend([
                    ("from", self.mass(*from)),
                    ("since", self.day(*since)),
                    ("to", self.mass(*to)),
                ]);
                with.push(("part", self.percent(*part)));
                after = *slip;
            }
            Odd::LoadSlip { load, expected, slip } => {
                with.extend([("load", self.mass(*load)), ("expected", self.mass(*expected))]);
                after = Some(*slip);
            }
            Odd::ManyOverrides { overrides, without_end, sessions, since } => {
                with.extend([("overrides", overrides.to_string()), ("without_end", without_end.to_string())]);
                with.extend([("sessions", self.count("session", *sessions)), ("since", self.day(*since))]);
            }
            Odd::Unscored { unscored, sessions, since } => {
                with.extend([("unscored", unscored.to_string()), ("since", self.day(*since))]);
                with.push(("sessions", self.count("session", *sessions)));
            }
            Odd::PerfectScores { sessions, since } | Odd::OnlyOwnMarks { sessions, since } => {
                with.extend([("sessions", self.count("session", *sessions)), ("since", self.day(*since))]);
            }
            Odd::MissedWithReserve { effort } => with.push(("effort", self.effort_said(*effort))),
            Odd::SameSessionTwice { other } => with.push(("other", other.to_string())),
            Odd::AfterToday { days } => with.push(("days", self.count("day", *days))),
            Odd::OutOfLine { beside, days } => {
                with.extend([("beside", self.day(*beside)), ("days", self.count("day", *days))]);
            }
            Odd::LongGap { since, days } => {
                with.extend([("since", self.day(*since)), ("days", self.count("day", *days))]);
            }
            Odd::AnswerWithoutQuestion { ask } => with.push(("ask", self.ask(*ask))),
            Odd::EndsBeforeItBegins { end } => with.push(("end", self.day(*end))),
            Odd::OddAge { years } => with.push(("years", years.to_string())),
            Odd::UnknownEvents { count } => with.push(("count", count.to_string())),
        }
        let said = self.say(&alloc::format!("odd.{}", oddity.what.code()), &with);
        match after {
            Some(slip) => alloc::format!("{said} {}", self.say(slip_key(slip), &[])),
            None => said,
        }
    }

    /// A rating or a reserve, as it was said.
    pub(in crate::text) fn effort_said(&self, effort: Effort) -> String {
        match effort {
            Effort::Rir(left) => self.say("effort.rir", &[("value", left.to_string())]),
            Effort::Rpe(rating) => self.say("effort.rpe", &[("value", rating.to_string())]),
        }
    }

    /// A whole review in sentences.
    #[must_use]
    pub fn review(&self, review: &Review) -> Vec<String> {
        let mut said: Vec<String> = review.findings.iter().map(|oddity| self.oddity(oddity)).collect();
        if said.is_empty() && review.missing.is_empty() {
            said.push(self.say("review.nothing", &[("sessions", self.count("session", review.sessions))]));
        }
        self.end(&mut said, (&review.stops, review.today), &review.missing, &review.cautions);
        said
    }
}

const fn slip_key(slip: Slip) -> &'static str {
    match slip {
        Slip::PoundsAsKilograms => "slip.pounds_as_kilograms",
        Slip::KilogramsAsPounds => "slip.kilograms_as_pounds",
        Slip::DecimalPoint => "slip.decimal_point",
    }
}
