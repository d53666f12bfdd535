//! Run rules: patterns that chance seldom draws.

use alloc::collections::BTreeMap;
use alloc::vec::Vec;

use super::cusum::Side;
use super::domain::numbers;
use crate::error::{Code, Error};
use crate::numeric::normal::normal_cdf;
use crate::numeric::{fabs, finite};
use crate::source::{Source, formula, rows};

const WESTERN_ELECTRIC_1956: Source = Source {
    id: "western-electric-1956",
    citation: "Western Electric. Statistical Quality Control Handbook, 1956",
    doi: None,
};
const NELSON_1984: Source = Source {
    id: "nelson-1984",
    citation: "Nelson LS. The Shewhart control chart: tests for special causes. J Qual Technol 16:237-239, 1984",
    doi: None,
};
const CHAMP_WOODALL_1987: Source = Source {
    id: "champ-woodall-1987",
    citation: "Champ CW, Woodall WH. Exact results for Shewhart control charts with supplementary runs rules. Technometrics 29:393-399, 1987",
    doi: None,
};

/// A pattern that was found.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum RunRule {
    /// One value beyond three spreads.
    OneBeyondThree,
    /// Two of three beyond two spreads on one side.
    TwoOfThreeBeyondTwo,
    /// Four of five beyond one spread on one side.
    FourOfFiveBeyondOne,
    /// Eight in a row on one side.
    EightOnOneSide,
    /// Nine in a row on one side.
    NineOnOneSide,
    /// Six in a row that rise or fall throughout.
    SixTrending,
    /// Fourteen in a row that go up and down in turn.
    FourteenAlternating,
    /// Fifteen in a row within one spread.
    FifteenWithinOne,
    /// Eight in a row with none within one spread.
    EightOutsideOne,
}

/// Where a pattern was completed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RunSignal {
    /// Place of the value that completed it, from 0.
    pub place: u32,
    /// The pattern.
    pub rule: RunRule,
    /// On which side, where the pattern has one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub side: Option<Side>,
}

/// The last so many values, if there are that many.
fn last(seen: &[f64], count: usize) -> Option<&[f64]> {
    seen.len().checked_sub(count).and_then(|from| seen.get(from..))
}

/// Whether the newest of the last `of` values and at least `least` of them lie beyond the bound on that side.
fn beyond(seen: &[f64], side: f64, bound: f64, least: usize, of: usize) -> bool {
    let newest = seen.last().is_some_and(|value| side * value > bound);
    let from = seen.len().saturating_sub(of);
    let found = seen.get(from..).unwrap_or(&[]).iter().filter(|value| side * **value > bound).count();
    newest && found >= least
}

fn all(seen: &[f64], count: usize, test: impl Fn(f64) -> bool) -> bool {
    last(seen, count).is_some_and(|values| values.iter().all(|value| test(*value)))
}

fn steps(values: &[f64]) -> impl Iterator<Item = f64> + '_ {
    values.windows(2).filter_map(|pair| if let [a, b] = pair { Some(b - a) } else { None })
}

fn trending(seen: &[f64], side: f64) -> bool {
    last(seen, 6).is_some_and(|values| steps(values).all(|step| side * step > 0.0))
}

fn alternating(seen: &[f64]) -> bool {
    last(seen, 14).is_some_and(|values| {
        let steps: Vec<f64> = steps(values).collect();
        steps.windows(2).all(|pair| matches!(pair, [a, b] if a * b < 0.0))
    })
}

/// A rule of one side, as a test of the values so far.
type Sided = (RunRule, fn(&[f64], f64) -> bool);

const SHARED: [Sided; 3] = [
    (RunRule::OneBeyondThree, |seen, side| beyond(seen, side, 3.0, 1, 1)),
    (RunRule::TwoOfThreeBeyondTwo, |seen, side| beyond(seen, side, 2.0, 2, 3)),
    (RunRule::FourOfFiveBeyondOne, |seen, side| beyond(seen, side, 1.0, 4, 5)),
];
const EIGHT: Sided = (RunRule::EightOnOneSide, |seen, side| all(seen, 8, |value| side * value > 0.0));
const NINE: Sided = (RunRule::NineOnOneSide, |seen, side| all(seen, 9, |value| side * value > 0.0));
const SIX: Sided = (RunRule::SixTrending, trending);

/// A rule without a side.
type Unsided = (RunRule, fn(&[f64]) -> bool);

const TWO_SIDED: [Unsided; 3] = [
    (RunRule::FourteenAlternating, alternating),
    (RunRule::FifteenWithinOne, |seen| all(seen, 15, |value| fabs(value) < 1.0)),
    (RunRule::EightOutsideOne, |seen| all(seen, 8, |value| fabs(value) > 1.0)),
];

/// Rules need no more than this many values back.
const LONGEST: usize = 15;

fn scan(values: &[f64], sided: &[Sided], both: &[Unsided]) -> Vec<RunSignal> {
    let mut signals = Vec::new();
    for (place, end) in (0_u32..).zip(1..=values.len()) {
        let seen = values.get(end.saturating_sub(LONGEST)..end).unwrap_or(&[]);
        for (rule, test) in sided {
            for (side, sign) in [(Side::Up, 1.0), (Side::Down, -1.0)] {
                if test(seen, sign) {
                    signals.push(RunSignal { place, rule: *rule, side: Some(side) });
                }
            }
        }
        for (rule, test) in both {
            if test(seen) {
                signals.push(RunSignal { place, rule: *rule, side: None });
            }
        }
    }
    signals
}

formula! {
    "statistics.western_electric_rules",
    /// Which of four patterns does a standardised series show?
    ///
    /// # Formula
    /// On one side of the centre: one value beyond 3 spreads, two of three beyond 2, four of five beyond 1, eight in a
    /// row. `values` are distances from the centre in spreads; the others of a group may lie anywhere.
    ///
    /// # Domain
    /// All four together raise a false alarm about every 92 values ([`western_electric_run_length`]).
    ///
    /// # Errors
    /// `not_enough_data` without a value, `not_finite`, `out_of_range` beyond 1e100.
    ///
    /// # Source
    /// Western Electric 1956 (row `statistics.western_electric_rules`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{RunRule, western_electric_rules};
    ///
    /// let signals = western_electric_rules(&[0.2, 2.1, -0.3, 2.4])?;
    /// assert_eq!((signals[0].place, signals[0].rule), (3, RunRule::TwoOfThreeBeyondTwo));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn western_electric_rules(values: &[f64]) -> Result<Vec<RunSignal>, Error> {
        let [one, two, four] = SHARED;
        Ok(scan(numbers("values", values, 1)?, &[one, two, four, EIGHT], &[]))
    }
    source: WESTERN_ELECTRIC_1956, place: "tests for instability", standing: Published, seen: Memory,
}

formula! {
    "statistics.nelson_rules",
    /// Which of eight patterns does a standardised series show?
    ///
    /// # Formula
    /// One beyond 3 spreads; nine in a row on one side; six in a row rising or falling (five steps); fourteen in turn up
    /// and down; two of three beyond 2 and four of five beyond 1 on one side; fifteen within 1; eight with none within 1.
    ///
    /// # Domain
    /// More rules, more false alarms.
    ///
    /// # Errors
    /// `not_enough_data` without a value, `not_finite`, `out_of_range` beyond 1e100.
    ///
    /// # Source
    /// Nelson 1984 (row `statistics.nelson_rules`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{RunRule, nelson_rules};
    ///
    /// let signals = nelson_rules(&[-0.5, -0.2, 0.1, 0.3, 0.6, 0.9])?;
    /// assert_eq!((signals[0].place, signals[0].rule), (5, RunRule::SixTrending));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn nelson_rules(values: &[f64]) -> Result<Vec<RunSignal>, Error> {
        let [one, two, four] = SHARED;
        Ok(scan(numbers("values", values, 1)?, &[one, NINE, SIX, two, four], &TWO_SIDED))
    }
    source: NELSON_1984, place: "p 237-239", standing: Published, seen: Memory,
}

/// Zones from below -2 spreads to above 2, the outermost ones already alarms.
const ZONES: [(f64, f64); 6] = [(-3.0, -2.0), (-2.0, -1.0), (-1.0, 0.0), (0.0, 1.0), (1.0, 2.0), (2.0, 3.0)];

/// What the rules remember: the last four zones (newest first) and the run on one side.
type Memory = ([u8; 4], i8);

/// A zone by its middle, for the tests that look at values.
fn middle(zone: u8) -> f64 {
    ZONES.get(usize::from(zone)).map_or(0.0, |(low, high)| 0.5 * (low + high))
}

/// A place in the memory that no value has filled.
const EMPTY: u8 = 6;

/// The memory after one more zone, or none if a rule signals.
fn next(memory: Memory, zone: u8) -> Option<Memory> {
    let ([a, b, c, d], run) = memory;
    let value = middle(zone);
    let side: i8 = if value > 0.0 { 1 } else { -1 };
    let run = if run.signum() == side { run + side } else { side };
    let seen: Vec<f64> =
        [d, c, b, a].into_iter().filter(|zone| *zone != EMPTY).chain([zone]).map(middle).collect();
    let sign = f64::from(side);
    let alarm = run.abs() >= 8 || beyond(&seen, sign, 2.0, 2, 3) || beyond(&seen, sign, 1.0, 4, 5);
    (!alarm).then_some(([zone, a, b, c], run))
}

/// Where each memory that can come about leads with each zone (nowhere where a rule signals), in their order, and the
/// place of the empty one. Found once a call, so that the many steps after it look nothing up.
fn graph() -> (Vec<[Option<usize>; ZONES.len()]>, usize) {
    const START: Memory = ([EMPTY; 4], 0);
    let mut known = BTreeMap::from([(START, [None; ZONES.len()])]);
    let mut open = alloc::vec![START];
    while let Some(memory) = open.pop() {
        let mut to = [None; ZONES.len()];
        for (zone, to) in (0_u8..).zip(&mut to) {
            *to = next(memory, zone);
            if let Some(found) = *to
                && !known.contains_key(&found)
            {
                known.insert(found, [None; ZONES.len()]);
                open.push(found);
            }
        }
        known.insert(memory, to);
    }
    let places: BTreeMap<Memory, usize> = known.keys().copied().zip(0..).collect();
    let place = |memory: Memory| places.get(&memory).copied();
    let steps = known.values().map(|to| to.map(|to| to.and_then(place))).collect();
    (steps, place(START).unwrap_or_default())
}

formula! {
    "statistics.western_electric_run_length",
    /// How many values until one of the four rules signals, on average, after a shift (or without one)?
    ///
    /// # Formula
    /// A chain over what the rules remember (the last four zones, the run on one side); the run length is the sum of the
    /// chances that nothing has signalled yet.
    ///
    /// # Domain
    /// Shift -3 to 3 spreads; independent normal values.
    ///
    /// # Errors
    /// `out_of_range`; `did_not_converge`.
    ///
    /// # Source
    /// Champ & Woodall 1987 (row `statistics.western_electric_run_length`).
    ///
    /// # Examples
    /// ```
    /// assert!((bismar::statistics::western_electric_run_length(0.0)? - 91.75).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn western_electric_run_length(shift: f64) -> Result<f64, Error> {
        const MOST_STEPS: u32 = 4000;
        let shift = crate::numeric::within(Code::OutOfRange, "shift", shift, -3.0, 3.0, "spreads")?;
        let chances = ZONES.map(|(low, high)| normal_cdf(high - shift) - normal_cdf(low - shift));
        let (steps, start) = graph();
        let mut alive = alloc::vec![0.0; steps.len()];
        alive.iter_mut().skip(start).take(1).for_each(|chance| *chance = 1.0);
        let mut total = 0.0;
        for _ in 0..MOST_STEPS {
            let left: f64 = alive.iter().sum();
            total += left;
            if left < 1e-13 {
                return finite("shift", total);
            }
            let mut after = alloc::vec![0.0; steps.len()];
            for (to, chance) in steps.iter().zip(&alive) {
                for (to, part) in to.iter().zip(chances) {
                    if let Some(next) = to.and_then(|to| after.get_mut(to)) {
                        *next += chance * part;
                    }
                }
            }
            alive = after;
        }
        Err(Error::plain(Code::DidNotConverge, "shift"))
    }
    source: CHAMP_WOODALL_1987, place: "all four rules", standing: Published, seen: Secondary,
    copies: "public quotations of a handbook page",
    domain: "independent normal values",
}

rows![western_electric_rules, nelson_rules, western_electric_run_length];
