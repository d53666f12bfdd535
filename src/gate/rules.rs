//! When a session passes: the rules as parameters.

use derive_setters::Setters;

use crate::canonical::canonical_fields;
use crate::error::{Code, Error};
use crate::source::{OURS, default_of, formula, rows};

/// Highest share of missed repetitions that any rules may let pass, in percent.
const HIGHEST_MISS_PERCENT: u8 = 50;

/// Rules by which marks become a set pass and a session pass. All are this project's own defaults.
///
/// ```
/// use bismar::gate::PassRules;
///
/// let rules = PassRules::default().with_miss_percent(20);
/// assert_eq!(rules.allowed_of(25), 5);
/// assert_eq!(PassRules::default().allowed_of(25), 2);
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(default, deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct PassRules {
    /// Share of the scored repetitions that may be missed, in percent, rounded down to whole repetitions.
    pub miss_percent: u8,
    /// Misses allowed however few repetitions were scored.
    pub misses_at_least: u16,
    /// First repetitions of the first work set, none of which may be missed.
    pub clean_first_reps: u16,
    /// Whether the first work set, done cold, must pass by itself.
    pub first_set_must_pass: bool,
    /// Work sets after the first that may be left unscored in a session that passes.
    pub unscored_sets_allowed: u8,
    /// Whether every criterion must have been seen in at least one set, by somebody whose marks count.
    pub every_criterion_seen: bool,
    /// Whether a borderline mark on a critical criterion may pass.
    pub critical_borderline_passes: bool,
    /// Whether the lifter's own marks count toward the gate.
    pub lifter_marks_count: bool,
}

canonical_fields!(
    PassRules: miss_percent, misses_at_least, clean_first_reps, first_set_must_pass,
    unscored_sets_allowed, every_criterion_seen, critical_borderline_passes, lifter_marks_count
);

impl Default for PassRules {
    fn default() -> PassRules {
        PassRules {
            miss_percent: 10,
            misses_at_least: 1,
            clean_first_reps: 2,
            first_set_must_pass: true,
            unscored_sets_allowed: 0,
            every_criterion_seen: true,
            critical_borderline_passes: false,
            lifter_marks_count: false,
        }
    }
}

default_of! {
    "gate.pass_rules_default",
    /// When a set passes, where a lift names nothing else.
    pass_rules_default: PassRules;
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
}

impl PassRules {
    /// Misses allowed in so many scored repetitions: the percentage rounded down, or the least allowed.
    #[must_use]
    pub fn allowed_of(&self, scored: u32) -> u32 {
        let share = u64::from(scored) * u64::from(self.miss_percent) / 100;
        u32::try_from(share).unwrap_or(u32::MAX).max(u32::from(self.misses_at_least))
    }

    /// Refuses rules that would let nearly anything pass.
    ///
    /// # Errors
    /// `out_of_range`.
    pub fn check(&self) -> Result<(), Error> {
        let highest = f64::from(HIGHEST_MISS_PERCENT);
        if self.miss_percent > HIGHEST_MISS_PERCENT {
            return Err(Error::range(Code::OutOfRange, "miss_percent", self.miss_percent, 0.0, highest, "%"));
        }
        if self.misses_at_least > super::marks::REPS_IN_A_SET {
            let highest = f64::from(super::marks::REPS_IN_A_SET);
            let given = self.misses_at_least;
            return Err(Error::range(Code::OutOfRange, "misses_at_least", given, 0.0, highest, "reps"));
        }
        Ok(())
    }
}

formula! {
    "gate.pass_rules",
    /// The default rules by which marks become passes.
    ///
    /// # Domain
    /// At most one miss in ten, never fewer than one allowed; no miss on a critical criterion; none in the
    /// first two repetitions of the first work set, which must pass by itself; the lifter's own marks do not
    /// count.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Our choice (row `gate.pass_rules`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::gate::pass_rules()?, bismar::gate::PassRules::default());
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn pass_rules() -> Result<PassRules, Error> {
        Ok(PassRules::default())
    }
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "barbell lifts under a technique gate",
}

formula! {
    "gate.misses_allowed",
    /// How many repetitions of a session may be missed before it no longer passes?
    ///
    /// # Formula
    /// `max(least, floor(percent * scored / 100))`; all in repetitions. 1 of 10 and 2 of 25 by default.
    ///
    /// # Domain
    /// Any number of scored repetitions; misses on a critical criterion are not among those allowed.
    ///
    /// # Errors
    /// `out_of_range` where the rules would let more than half be missed.
    ///
    /// # Source
    /// Our choice (row `gate.misses_allowed`).
    ///
    /// # Examples
    /// ```
    /// use bismar::gate::{PassRules, misses_allowed};
    ///
    /// assert_eq!(misses_allowed(&PassRules::default(), 25)?, 2);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn misses_allowed(rules: &PassRules, scored: u32) -> Result<u32, Error> {
        rules.check()?;
        Ok(rules.allowed_of(scored))
    }
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "any number of scored repetitions",
}

rows![pass_rules, misses_allowed, pass_rules_default];
