//! A week against the lifter's own weeks, in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::{Week, WeekDone, WeekMeasure, WeekPart};
use crate::dose::{Monotony, QuietReason, WeekChange, WeekVerdict};
use crate::quantity::Kilograms;
use crate::text::phrases::Phrases;
use crate::text::words::Words;

pub(in crate::text) const WEEK: Phrases = &[
    ("week.usual", "A usual week."),
    ("week.more_than_usual", "More than this lifter's usual week."),
    ("week.less_than_usual", "Less than this lifter's usual week."),
    ("week.not_recorded", "Nothing is said about this week: something in it is not written down."),
    ("week.rested", "A week without training, which needs no comment."),
    ("week.short_history", "There are too few weeks of training so far to say what is usual."),
    ("week.after_break", "Nothing is said so soon after a break, when any week looks like a jump."),
    ("week.done", "{sets} and {repetitions} on {days} since {from}, {load} in all."),
    ("week.done_unweighed", "{sets} and {repetitions} on {days} since {from}."),
    ("week.helped", "{sets} of them with help."),
    ("week.band", "Usual is {low} to {high}, over {weeks}."),
    (
        "week.felt",
        "The sessions came to {total} as they felt (rating times minutes), monotony {monotony}, strain {strain}.",
    ),
    (
        "week.felt_alike",
        "The sessions came to {total} as they felt (rating times minutes); all days were alike.",
    ),
    ("week.part_more", "{part}: more than usual, {now} where {low} to {high} is usual."),
    ("week.part_less", "{part}: less than usual, {now} where {low} to {high} is usual."),
];

impl Words<'_> {
    /// A week against the lifter's own weeks: the verdict first, then what it is made of, then what is missing.
    #[must_use]
    pub fn week(&self, week: &Week) -> Vec<String> {
        let mut said = Vec::new();
        if let Some(total) = &week.total {
            said.push(self.say(&alloc::format!("week.{}", verdict(&week.change)), &[]));
            said.push(self.week_done(total));
            if total.helped_sets > 0 {
                said.push(self.say("week.helped", &[("sets", self.count("set", total.helped_sets))]));
            }
            said.extend(self.band(week.measure, &week.change));
            said.extend(self.felt(week));
            let lifts = week.lifts.iter().map(|part| (self.lift_name(&part.id), part));
            let regions = week.regions.iter().map(|part| (self.region_name(&part.id), part));
            said.extend(lifts.chain(regions).filter_map(|(name, part)| self.week_part(name, part)));
        }
        self.end(&mut said, (&week.stops, week.today), &week.missing, &week.cautions);
        said
    }

    fn week_done(&self, total: &WeekDone) -> String {
        let with = [
            ("sets", self.count("set", total.sets)),
            ("repetitions", self.count("rep", total.repetitions as u32)),
            ("days", self.count("day", total.training_days)),
            ("from", self.day(total.from)),
            ("load", total.volume_load.map_or_else(String::new, |load| self.whole_mass(load))),
        ];
        let key = if total.volume_load.is_some() { "week.done" } else { "week.done_unweighed" };
        self.say(key, &with)
    }

    fn band(&self, measure: WeekMeasure, change: &WeekChange) -> Option<String> {
        let (low, high) = (self.measured(measure, change.low?), self.measured(measure, change.high?));
        let weeks = self.count("week", u32::from(change.trained_weeks));
        Some(self.say("week.band", &[("low", low), ("high", high), ("weeks", weeks)]))
    }

    fn felt(&self, week: &Week) -> Option<String> {
        let load = week.felt.load?;
        let whole = |value: f64| crate::numeric::tidy(crate::numeric::round(value)).to_string();
        let hundredth = |value: f64| (crate::numeric::round(value * 100.0) / 100.0).to_string();
        Some(match (load.monotony, load.strain) {
            (Monotony::Value(monotony), Some(strain)) => self.say(
                "week.felt",
                &[("total", whole(load.total)), ("monotony", hundredth(monotony)), ("strain", whole(strain))],
            ),
            _ => self.say("week.felt_alike", &[("total", whole(load.total))]),
        })
    }

    fn week_part(&self, name: &str, part: &WeekPart) -> Option<String> {
        let key = match part.change.verdict {
            WeekVerdict::MoreThanUsual => "week.part_more",
            WeekVerdict::LessThanUsual => "week.part_less",
            _ => return None,
        };
        let now = match (part.measure, part.volume_load) {
            (WeekMeasure::VolumeLoad, Some(load)) => load.value(),
            (WeekMeasure::VolumeLoad, None) => 0.0,
            (WeekMeasure::Sets, _) => f64::from(part.sets),
        };
        let measured = |value: f64| self.measured(part.measure, value);
        let with = [
            ("part", crate::text::capital(name)),
            ("now", measured(now)),
            ("low", measured(part.change.low?)),
            ("high", measured(part.change.high?)),
        ];
        Some(self.say(key, &with))
    }

    /// A number of a week with its unit.
    fn measured(&self, measure: WeekMeasure, value: f64) -> String {
        match measure {
            WeekMeasure::VolumeLoad => {
                Kilograms::new(value).map(|load| self.whole_mass(load)).unwrap_or_default()
            }
            WeekMeasure::Sets => {
                let tenths = crate::numeric::round(value * 10.0) / 10.0;
                self.say("count.set.other", &[("count", crate::numeric::tidy(tenths).to_string())])
            }
        }
    }

    /// A total in whole units.
    fn whole_mass(&self, load: Kilograms) -> String {
        let per_unit =
            crate::quantity::Mass::from_unit(1.0, self.unit()).map_or(1.0, crate::quantity::Mass::kg);
        let units = crate::numeric::tidy(crate::numeric::round(load.value() / per_unit));
        alloc::format!("{units} {}", self.unit().symbol())
    }
}

fn verdict(change: &WeekChange) -> &'static str {
    match change.verdict {
        WeekVerdict::Usual => "usual",
        WeekVerdict::MoreThanUsual => "more_than_usual",
        WeekVerdict::LessThanUsual => "less_than_usual",
        WeekVerdict::Quiet(QuietReason::NotRecorded) => "not_recorded",
        WeekVerdict::Quiet(QuietReason::Rested) => "rested",
        WeekVerdict::Quiet(QuietReason::ShortHistory) => "short_history",
        WeekVerdict::Quiet(QuietReason::AfterBreak) => "after_break",
    }
}
