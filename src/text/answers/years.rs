//! The yearly card and a block of weeks, in words.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::raters::hundredths;
use crate::answers::{BlockAdvice, BlockLift, BlockReview, KeptLoad, TestedFunction, Year};
use crate::condition::TrendVerdict;
use crate::horizon::{CardItem, CardLine, CardNote, CardState, FloorPlace, FunctionTest};
use crate::quantity::{Kilograms, Mass, Name};
use crate::text::capital;
use crate::text::phrases::Phrases;
use crate::text::place::with_place;
use crate::text::words::Words;

pub(in crate::text) const YEARS: Phrases = &[
    ("year.never", "{what}: never done, so due now."),
    ("year.overdue", "{what}: due since {day}."),
    ("year.soon", "{what}: due by {day}, in {days}."),
    ("year.later", "{what}: by {day}."),
    ("year.running", "{what}: goes on until {day}."),
    ("item.clearance", "A new clearance"),
    ("item.body_mass", "Body mass"),
    ("item.test", "Test: {test}"),
    ("item.discs", "discs"),
    ("item.weigh", "Weigh {equipment}"),
    ("item.swap", "Leave {lift}"),
    ("item.swap_for", "Leave {lift} for {replacement}"),
    ("item.gap", "Planned gap, {name}"),
    ("test.five_chair_rises", "five rises from a chair"),
    ("test.chair_stands", "rises from a chair in 30 s"),
    ("test.gait_speed", "usual walking speed"),
    ("test.grip", "grip"),
    ("test.floor_rise", "down to the floor and up again"),
    ("test.other", "another test"),
    ("year.mass_lost", "Body mass fell by {part} in {days}: worth a talk with a clinician."),
    ("year.fall", "A fall in the last year: worth a talk with a clinician."),
    ("year.new_medicine", "A new medicine in the last year: worth a talk with a clinician."),
    ("year.tested", "{test}, {day}: {result} {unit}."),
    ("floor.above", "Meets the published floor of {floor} {unit}."),
    ("floor.between", "Between the published floors, {floor} {unit}: the source does not settle it."),
    ("floor.below", "Does not meet the published floor of {floor} {unit}: worth a talk with a clinician."),
    (
        "year.keep",
        "{name}, {load} with {lift} at {age}: {needed} would be needed now, and {shown} was shown on {day}.",
    ),
    (
        "year.what_if",
        "{name}, if it goes as asked: {median} at {age}, {low} to {high}; {share} of the courses still reach {load}.",
    ),
    ("year.keep_open", "{name}, {load} with {lift} at {age}."),
    ("block.heading", "Block {name}, {from} to {to}."),
    ("block.heading_open", "Block {name}, since {from}, not ended."),
    (
        "block.lift",
        "{lift}: {sessions}; {passed} passed, {not_passed} did not, {unmarked} not marked in full.",
    ),
    ("block.moved", "From {before} to {after}."),
    ("block.stayed", "At {after} throughout."),
    ("figure.between", "{low} to {high}"),
    ("block.here", "{days} at this place and load."),
    ("trend.not_enough_history", "Too few estimates for a trend ({estimates} in the block)."),
    ("trend.within_noise", "Strength: no change that can be told from noise, which is no fault."),
    ("trend.rising", "Strength is rising."),
    ("trend.falling", "Strength is falling."),
    (
        "trend.slope",
        "{slope} a week, {low} to {high}; two estimates less than {real} apart do not differ for certain.",
    ),
    ("block.keep", "Keep: nothing speaks for a change."),
    (
        "block.change",
        "Change: {passed} of {marked} marked sessions passed, or the place got easier. Look for another rung or variant.",
    ),
    ("block.change_for_pain", "Change: the {region} is not clear of pain. Look for a rung that spares it."),
    (
        "block.retest",
        "Test again: {estimates} estimates are few. Repetitions with some left in reserve, never a true maximum.",
    ),
    (
        "block.raise_gate",
        "Raise the gate: {sessions}, all passed, without one miss. The criteria may ask for more.",
    ),
];

/// What the library itself calls the discs of the stock, which have no id.
const DISCS: &str = "discs";

const fn test_key(test: FunctionTest) -> &'static str {
    match test {
        FunctionTest::FiveChairRises => "test.five_chair_rises",
        FunctionTest::ChairStandsIn30Seconds => "test.chair_stands",
        FunctionTest::GaitSpeed => "test.gait_speed",
        FunctionTest::Grip => "test.grip",
        FunctionTest::FloorRise => "test.floor_rise",
        _ => "test.other",
    }
}

impl Words<'_> {
    /// The yearly answer in sentences.
    #[must_use]
    pub fn year(&self, year: &Year) -> Vec<String> {
        let mut said: Vec<String> = year.card.lines.iter().map(|line| self.card_line(line)).collect();
        said.extend(year.card.notes.iter().map(|note| self.card_note(note)));
        said.extend(year.tests.iter().map(|tested| self.tested(tested)));
        said.extend(year.keep.iter().map(|kept| self.kept(kept)));
        said.extend(year.keep.iter().filter_map(|kept| self.what_if(kept)));
        self.end(&mut said, (&year.stops, year.today), &year.missing, &year.cautions);
        said
    }

    fn card_item(&self, item: &CardItem) -> String {
        let lift = |lift: &Name| self.lift_name(lift).to_string();
        match item {
            CardItem::Clearance => self.say("item.clearance", &[]),
            CardItem::BodyMass => self.say("item.body_mass", &[]),
            CardItem::Test(test) => self.say("item.test", &[("test", self.say(test_key(*test), &[]))]),
            CardItem::Weigh(equipment) => {
                let own = self.parameters().is_some_and(|all| all.implement(equipment).is_some());
                let discs = !own && equipment.as_str() == DISCS;
                let said = if discs { self.say("item.discs", &[]) } else { equipment.to_string() };
                self.say("item.weigh", &[("equipment", said)])
            }
            CardItem::Swap { lift: from, replacement: None } => {
                self.say("item.swap", &[("lift", lift(from))])
            }
            CardItem::Swap { lift: from, replacement: Some(to) } => {
                self.say("item.swap_for", &[("lift", lift(from)), ("replacement", lift(to))])
            }
            CardItem::Gap { name, .. } => self.say("item.gap", &[("name", name.to_string())]),
        }
    }

    fn card_line(&self, line: &CardLine) -> String {
        let mut with = alloc::vec![("what", self.card_item(&line.item)), ("day", self.day(line.due))];
        let key = match line.state {
            CardState::Never => "year.never",
            CardState::Overdue => "year.overdue",
            CardState::Soon => {
                with.push(("days", self.count("day", line.days_left.max(0).unsigned_abs())));
                "year.soon"
            }
            CardState::Later => "year.later",
            CardState::Running => {
                if let CardItem::Gap { to, .. } = line.item {
                    with = alloc::vec![("what", self.card_item(&line.item)), ("day", self.day(to))];
                }
                "year.running"
            }
        };
        self.say(key, &with)
    }

    fn card_note(&self, note: &CardNote) -> String {
        match note {
            CardNote::MassLost { part, days } => self.say(
                "year.mass_lost",
                &[("part", self.percent(*part)), ("days", self.count("day", days.unsigned_abs()))],
            ),
            CardNote::Fall => self.say("year.fall", &[]),
            CardNote::NewMedicine => self.say("year.new_medicine", &[]),
        }
    }

    fn tested(&self, tested: &TestedFunction) -> String {
        let with = [
            ("test", capital(&self.say(test_key(tested.test), &[]))),
            ("day", self.day(tested.on)),
            ("result", hundredths(tested.result)),
            ("unit", tested.test.unit().to_string()),
        ];
        let said = self.say("year.tested", &with);
        let (Some(floor), Some(margin)) = (&tested.floor, &tested.margin) else { return said };
        let (low, high) = (hundredths(floor.value.low()), hundredths(floor.value.high()));
        let figure = self.figures(low, high);
        let key = match margin.place {
            FloorPlace::Above => "floor.above",
            FloorPlace::Between => "floor.between",
            FloorPlace::Below => "floor.below",
        };
        format!("{said} {}", self.say(key, &[("floor", figure), ("unit", floor.unit.to_string())]))
    }

    fn kept(&self, kept: &KeptLoad) -> String {
        let mut with = alloc::vec![
            ("name", capital(kept.planned.name.as_str())),
            ("load", self.at_least(kept.planned.load)),
            ("lift", self.lift_name(&kept.planned.lift).to_string()),
            ("age", kept.planned.at_age.to_string()),
        ];
        let (Some(plan), Some((on, shown))) = (&kept.plan, kept.shown) else {
            return self.say("year.keep_open", &with);
        };
        let needed = |value| mass_of(value).map(|mass| self.at_least(mass)).unwrap_or_default();
        let (low, high) = (needed(plan.needed_now.low()), needed(plan.needed_now.high()));
        with.push(("needed", self.figures(low, high)));
        let lift = &kept.planned.lift;
        let place = kept.place.as_ref().map(|place| self.named_place(Some(lift), place));
        let shown = with_place(self.mass(shown), &place.unwrap_or_default());
        with.extend([("shown", shown), ("day", self.day(on))]);
        self.say("year.keep", &with)
    }

    /// What the phases asked about would leave at their end.
    fn what_if(&self, kept: &KeptLoad) -> Option<String> {
        let last = kept.what_if.as_ref()?.years.last()?;
        let with = [
            ("name", capital(kept.planned.name.as_str())),
            ("age", last.age.completed().to_string()),
            ("median", self.kilograms(last.median)),
            ("low", self.kilograms(last.interval.low())),
            ("high", self.kilograms(last.interval.high())),
            ("share", self.percent(last.share_above_floor.unwrap_or(0.0))),
            ("load", self.at_least(kept.planned.load)),
        ];
        Some(self.say("year.what_if", &with))
    }

    /// A figure, or the two that it lies between.
    fn figures(&self, low: String, high: String) -> String {
        if low == high { low } else { self.say("figure.between", &[("low", low), ("high", high)]) }
    }

    /// So many kilograms, in the unit of loads.
    fn kilograms(&self, value: f64) -> String {
        mass_of(value).map(|mass| self.mass(mass)).unwrap_or_default()
    }

    /// A signed change of load, in the unit of loads.
    fn change_of(&self, value: f64) -> String {
        let size = self.kilograms(crate::numeric::fabs(value));
        format!("{}{size}", if value < 0.0 { "-" } else { "+" })
    }

    /// A block of weeks in sentences.
    #[must_use]
    pub fn block_review(&self, review: &BlockReview) -> Vec<String> {
        let heading = review.block.as_ref().map(|block| {
            let key = if block.ended { "block.heading" } else { "block.heading_open" };
            let name = block.name.to_string();
            let mut with = alloc::vec![("name", name), ("from", self.day(block.from))];
            if block.ended {
                with.push(("to", self.day(block.to)));
            }
            self.say(key, &with)
        });
        let mut said: Vec<String> = heading.into_iter().collect();
        said.extend(review.lifts.iter().flat_map(|lift| self.block_lift(lift)));
        self.end(&mut said, (&review.stops, review.today), &review.missing, &review.cautions);
        said
    }

    fn block_lift(&self, lift: &BlockLift) -> Vec<String> {
        let with = [
            ("lift", capital(self.lift_name(&lift.lift))),
            ("sessions", self.count("session", lift.sessions)),
            ("passed", lift.passed.to_string()),
            ("not_passed", lift.not_passed.to_string()),
            ("unmarked", lift.unmarked.to_string()),
        ];
        let mut said = alloc::vec![self.say("block.lift", &with)];
        let at = |grant: crate::record::Grant| {
            let load = self.load_at(&lift.lift, grant.place, grant.load());
            let (sets, reps) = (grant.work.sets.to_string(), grant.work.reps.to_string());
            self.say("move.work", &[("sets", sets), ("reps", reps), ("load", load)])
        };
        let after = ("after", at(lift.to));
        said.push(match lift.from.filter(|from| *from != lift.to) {
            Some(from) => self.say("block.moved", &[("before", at(from)), after]),
            None => self.say("block.stayed", &[after]),
        });
        said.push(self.say("block.here", &[("days", self.count("day", lift.days_here))]));
        said.extend(self.block_trend(lift));
        said.extend(lift.advice.iter().map(|advice| self.block_advice(advice)));
        said
    }

    fn block_trend(&self, lift: &BlockLift) -> Vec<String> {
        let mut said = alloc::vec![match lift.trend {
            TrendVerdict::NotEnoughHistory => {
                self.say("trend.not_enough_history", &[("estimates", lift.estimates.to_string())])
            }
            TrendVerdict::WithinNoise => self.say("trend.within_noise", &[]),
            TrendVerdict::Rising => self.say("trend.rising", &[]),
            TrendVerdict::Falling => self.say("trend.falling", &[]),
        }];
        said.extend(lift.slope.map(|slope| {
            let with = [
                ("slope", self.change_of(slope.kg_per_week)),
                ("low", self.change_of(slope.interval.low())),
                ("high", self.change_of(slope.interval.high())),
                ("real", self.kilograms(slope.smallest_real_difference)),
            ];
            self.say("trend.slope", &with)
        }));
        said
    }

    fn block_advice(&self, advice: &BlockAdvice) -> String {
        match advice {
            BlockAdvice::Keep => self.say("block.keep", &[]),
            BlockAdvice::Change { passed, marked } => {
                self.say("block.change", &[("passed", passed.to_string()), ("marked", marked.to_string())])
            }
            BlockAdvice::ChangeForPain { region } => {
                self.say("block.change_for_pain", &[("region", self.region_name(region).to_string())])
            }
            BlockAdvice::Retest { estimates } => {
                self.say("block.retest", &[("estimates", estimates.to_string())])
            }
            BlockAdvice::RaiseGate { sessions } => {
                self.say("block.raise_gate", &[("sessions", self.count("session", *sessions))])
            }
        }
    }
}

/// So many kilograms as a mass; none where it is no mass that can be.
fn mass_of(value: f64) -> Option<Mass> {
    Kilograms::new(value).and_then(Kilograms::to_mass).ok()
}
