//! Before anyone lifts: with this gate, how long will a lifter of this skill be held?

use derive_setters::Setters;

use super::acceptable_reps::{Session, check_correlation, check_rate, check_reps};
use super::attempt::{Attempt, MOST_SESSIONS};
use super::evidence::Evidence;
use super::pass_run::PassRun;
use super::requirement::{Gate, Requirement};
use super::rules::PassRules;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::source::{ARITHMETIC, formula, rows};

/// A lifter as a gate sees one: how often a repetition is acceptable, and how alike those of a day are.
///
/// ```
/// use bismar::gate::Skill;
///
/// let skill = Skill::of(0.9).with_correlation(0.1);
/// assert_eq!(skill.rate, 0.9);
/// ```
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Skill {
    /// Chance that a repetition is acceptable.
    pub rate: f64,
    /// Correlation between two repetitions of one session; 0 for independent ones.
    #[cfg_attr(feature = "serde", serde(default))]
    pub correlation: f64,
    /// Scored repetitions a session; absent for as many as the pass-run asks for. A test of evidence needs it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub reps: Option<u16>,
    /// First repetitions of a session that must be clean for it to pass.
    #[cfg_attr(feature = "serde", serde(default))]
    pub clean_first_reps: u16,
    /// Chance that a session loses no critical criterion, apart from its other misses; absent for certain.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub critical_met: Option<f64>,
}

impl Skill {
    /// Independent repetitions, each acceptable with this chance, and nothing else to fail on.
    #[must_use]
    pub const fn of(rate: f64) -> Skill {
        Skill { rate, correlation: 0.0, reps: None, clean_first_reps: 0, critical_met: None }
    }

    fn session(&self, reps: u16) -> Result<Session, Error> {
        let (rate, correlation) = (check_rate(self.rate)?, check_correlation(self.correlation)?);
        Ok(Session::new(check_reps(reps)?, rate, correlation, self.clean_first_reps))
    }

    fn critical(&self) -> Result<f64, Error> {
        let chance = self.critical_met.unwrap_or(1.0);
        numeric::within(Code::OutOfRange, "critical_met", chance, 0.0, 1.0, "")
    }
}

/// How a gate treats a lifter of some skill.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct OperatingCharacteristic {
    /// Chance that one session passes.
    pub session: f64,
    /// Chance that one try opens the gate.
    pub one_try: f64,
    /// Mean number of sessions of one try, whichever way it goes.
    pub mean_try: f64,
    /// Chance that the gate opens within the sessions asked about, a new try following each that ended.
    pub within: f64,
    /// Mean number of sessions until it opens; absent if it never does.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub mean_sessions: Option<f64>,
    /// Sessions by which it has opened for half of such lifters; absent if that takes more than 10 000.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub median_sessions: Option<u32>,
}

/// The one part of a gate that looks at repetitions.
enum Tested<'a> {
    Run(&'a PassRun),
    Test(&'a Evidence),
}

fn tested(requirement: &Requirement) -> Result<Option<Tested<'_>>, Error> {
    let mut found = None;
    match requirement {
        Requirement::PassRun(run) => found = Some(Tested::Run(run)),
        Requirement::Evidence(test) => found = Some(Tested::Test(test)),
        Requirement::All(parts) => {
            for part in parts {
                match (tested(part)?, &found) {
                    (Some(_), Some(_)) => return Err(not_single()),
                    (Some(one), None) => found = Some(one),
                    _ => {}
                }
            }
        }
        Requirement::Any(parts) | Requirement::AtLeast { of: parts, .. } => {
            for part in parts {
                if tested(part)?.is_some() {
                    return Err(not_single());
                }
            }
        }
        _ => {}
    }
    Ok(found)
}

fn not_single() -> Error {
    let rule = Allowed::rule("one pass-run or one test of evidence, alone or within `all`");
    Error::new(Code::GateNotSingle, "gate", "", rule)
}

/// Chance that a session counts toward the run, with the share asked for scaled to the repetitions done.
fn run_chance(run: &PassRun, skill: &Skill) -> Result<f64, Error> {
    let reps = skill.reps.unwrap_or(run.of());
    let session = skill.session(reps)?;
    if reps < run.of() {
        let least = f64::from(run.of());
        return Err(Error::range(Code::GateNeverOpens, "reps", reps, least, 200.0, "scored reps a session"));
    }
    let needed = (u32::from(run.acceptable()) * u32::from(reps)).div_ceil(u32::from(run.of()));
    Ok(session.at_least(needed as u16) * skill.critical()?)
}

fn test_attempt(test: &Evidence, skill: &Skill) -> Result<(f64, Attempt), Error> {
    let reps = skill.reps.ok_or_else(|| Error::plain(Code::MissingField, "reps"))?;
    if skill.critical()? < 1.0 {
        let rule = Allowed::rule("absent for a test of evidence");
        return Err(Error::new(Code::OutOfRange, "critical_met", skill.critical()?, rule));
    }
    let session = skill.session(reps)?;
    let allowed = PassRules::default().allowed_of(u32::from(reps));
    let passes = session.at_least(reps.saturating_sub(allowed as u16));
    Ok((passes, Attempt::evidence(test, reps, &session, allowed)))
}

formula! {
    "gate.operating_characteristic",
    /// With this gate, how long will a lifter of this skill be held?
    ///
    /// # Formula
    /// Exact, as a Markov chain over sessions. Pass-run of `S` sessions that pass with chance `q` each: one try
    /// `q^S`, mean `(1 - q^S) / ((1 - q) q^S)`. Test of evidence: the chain of misses, looked at after each
    /// session; each end without opening is followed by a new try. Within `sessions` sessions: the renewal of
    /// tries.
    ///
    /// # Domain
    /// A pass-run or a test of evidence, alone or within `all`; the other conditions are taken as met, no day as
    /// bad. Repetitions alike within a session and independent between sessions. `sessions` from 1 to 10 000.
    ///
    /// # Errors
    /// `gate_not_single`; `gate_never_opens` with fewer scored repetitions than the run asks for;
    /// `missing_field` for a test of evidence without `reps`; `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Arithmetic of the binomial or beta-binomial distribution and of runs (row
    /// `gate.operating_characteristic`).
    ///
    /// # Examples
    /// ```
    /// use bismar::gate::{Gate, PassRun, Requirement, Skill, operating_characteristic};
    ///
    /// let gate = Gate::new(Requirement::PassRun(PassRun::new(9, 10, 3)?))?;
    /// let held = operating_characteristic(&gate, &Skill::of(0.8), 12)?;
    /// assert!((held.one_try - 0.053).abs() < 0.0005);
    /// assert!((held.within - 0.324).abs() < 0.0005);
    /// assert!((held.mean_sessions.unwrap_or_default() - 28.6).abs() < 0.05);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn operating_characteristic(gate: &Gate, skill: &Skill, sessions: u32) -> Result<OperatingCharacteristic, Error> {
        if !(1..=MOST_SESSIONS).contains(&sessions) {
            let highest = f64::from(MOST_SESSIONS);
            return Err(Error::range(Code::OutOfRange, "sessions", sessions, 1.0, highest, "sessions"));
        }
        let (session, attempt) = match tested(gate.requirement())?.ok_or_else(not_single)? {
            Tested::Run(run) => {
                let chance = run_chance(run, skill)?;
                (chance, Attempt::pass_run(run.sessions(), chance))
            }
            Tested::Test(test) => test_attempt(test, skill)?,
        };
        let (one_try, mean_try) = (attempt.chance(), attempt.mean());
        let (within, median_sessions) = attempt.within(sessions);
        let mean = mean_try / one_try;
        let mean_sessions = (one_try > 0.0 && mean.is_finite()).then_some(mean);
        Ok(OperatingCharacteristic { session, one_try, mean_try, within, mean_sessions, median_sessions })
    }
    source: ARITHMETIC, place: "runs of independent sessions", standing: Derived, seen: NotApplicable,
    domain: "one pass-run or test of evidence; sessions independent of each other",
}

rows![operating_characteristic];
