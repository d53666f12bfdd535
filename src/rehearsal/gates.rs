//! Gates that never open, take too long, or open for anyone.

use alloc::vec::Vec;

use super::finding::{Finding, Found};
use crate::gate::{Evidence, Gate, PassRules, PassRun, Requirement, Skill, operating_characteristic};
use crate::quantity::Rir;
use crate::record::{LiftParameters, LiftPlan, Parameters};
use crate::source::{OURS, constant, rows};

constant! {
    "rehearsal.low_skill",
    /// Chance that a repetition is acceptable, for a lifter who should be held.
    ///
    /// # Source
    /// Our choice (row `rehearsal.low_skill`).
    pub const LOW_SKILL: f64 = 0.60;
    source: OURS, place: "plan check", standing: OurChoice, seen: NotApplicable,
    domain: "a gate that such a lifter opens in 12 sessions, half of the time or more, gets a warning",
}

constant! {
    "rehearsal.high_skill",
    /// Chance that a repetition is acceptable, for a lifter who should get through.
    ///
    /// # Source
    /// Our choice (row `rehearsal.high_skill`).
    pub const HIGH_SKILL: f64 = 0.95;
    source: OURS, place: "plan check", standing: OurChoice, seen: NotApplicable,
    domain: "a gate that such a lifter opens in 12 sessions less than half of the time gets a warning",
}

constant! {
    "rehearsal.long_gate",
    /// Sessions without a miss from which a gate is called long.
    ///
    /// # Source
    /// Our choice (row `rehearsal.long_gate`).
    pub const LONG_GATE: u32 = 12;
    source: OURS, place: "plan check", standing: OurChoice, seen: NotApplicable,
    domain: "sessions of one lift",
}

/// Chance on either side of which the two lifters should fall (our choice).
const HALF: f64 = 0.5;
/// Reserve where the plan names none, as prescribed.
const RESERVE: Rir = Rir::whole(3);

/// One lift's gate with what a session of it shows.
struct Look<'a> {
    rules: &'a PassRules,
    reps: u16,
}

pub(super) fn look(
    parameters: &Parameters,
    lift: &LiftParameters,
    planned: Option<&LiftPlan>,
    findings: &mut Vec<Finding>,
) {
    let mut say = |what| findings.push(Finding::about(&lift.id, what));
    let reps = u16::from(lift.start.work.sets) * u16::from(lift.start.work.reps);
    let look = Look { rules: &lift.pass, reps };
    let gate = lift.gate.requirement();
    match look.sessions(gate) {
        Err(asks) => say(Found::GateNeverOpens { asks, session: reps }),
        Ok(sessions) => {
            if sessions >= LONG_GATE {
                say(Found::GateTooLong { sessions, long_from: LONG_GATE });
            }
            if needs_technique(gate) {
                look.skills(gate).into_iter().for_each(&mut say);
            } else {
                say(Found::GateNeedsNoTechnique);
            }
        }
    }
    let plan = planned.map(|planned| planned.reserve.unwrap_or(RESERVE));
    let asks = parameters.policy.reserve_to_advance;
    if let Some(plan) = plan.filter(|plan| *plan < asks && needs_effort(gate)) {
        say(Found::ReserveBelowGate { plan, asks });
    }
}

impl Look<'_> {
    /// Fewest sessions without a miss that open it; an error with the repetitions it asks of a session where
    /// no number of them does.
    fn sessions(&self, requirement: &Requirement) -> Result<u32, u16> {
        let each = |parts: &[Requirement]| -> Vec<Result<u32, u16>> {
            parts.iter().map(|part| self.sessions(part)).collect()
        };
        match requirement {
            Requirement::PassRun(run) if run.of() > self.reps => Err(run.of()),
            Requirement::PassRun(run) => Ok(u32::from(run.sessions())),
            Requirement::Evidence(test) => Ok(self.evidence(test)),
            Requirement::DwellSessions(need) => Ok(u32::from(*need)),
            Requirement::All(parts) => quickest(each(parts), parts.len()),
            Requirement::Any(parts) => quickest(each(parts), 1),
            Requirement::AtLeast { count, of } => quickest(each(of), usize::from(*count)),
            _ => Ok(0),
        }
    }

    /// A test looks at its counts after each session, and beyond its last repetition as at it.
    fn evidence(&self, test: &Evidence) -> u32 {
        let reps = u32::from(self.reps.max(1));
        let most = u32::from(test.most_reps()).div_ceil(reps);
        let first = (1..=most).find(|session| test.opens_at(session * reps).is_some());
        first.unwrap_or(most).max(u32::from(test.days()))
    }

    fn skills(&self, gate: &Requirement) -> Vec<Found> {
        let (rate, sessions) = (LOW_SKILL, LONG_GATE);
        let easy = self.chance(gate, rate).filter(|chance| *chance >= HALF);
        let hard = self.chance(gate, HIGH_SKILL).filter(|chance| *chance < HALF);
        let easy = easy.map(|chance| Found::GateOpensForAnyone { rate, sessions, chance });
        easy.into_iter()
            .chain(hard.map(|chance| Found::GateRarelyOpens { rate: HIGH_SKILL, sessions, chance }))
            .collect()
    }

    /// Chance that a lifter of this skill opens it within `LONG_GATE` sessions; none where nothing in it looks
    /// at repetitions. Of several parts in a group: the one that decides, as if they went together.
    fn chance(&self, requirement: &Requirement, rate: f64) -> Option<f64> {
        let ranked = |parts: &[Requirement], count: usize| {
            let mut chances: Vec<f64> =
                parts.iter().map(|part| self.chance(part, rate).unwrap_or(1.0)).collect();
            crate::numeric::sort::sort_by(&mut chances, |a, b| b.total_cmp(a));
            chances.get(count.saturating_sub(1)).copied()
        };
        match requirement {
            Requirement::PassRun(run) => self.within(Requirement::PassRun(self.with_rules(run)?), rate),
            Requirement::Evidence(_) => self.within(requirement.clone(), rate),
            Requirement::All(parts) => ranked(parts, parts.len()),
            Requirement::Any(parts) => ranked(parts, 1),
            Requirement::AtLeast { count, of } => ranked(of, usize::from(*count)),
            _ => None,
        }
    }

    /// The run with the misses that the pass rules allow, where those are fewer.
    fn with_rules(&self, run: &PassRun) -> Option<PassRun> {
        let share = (u32::from(run.acceptable()) * u32::from(self.reps)).div_ceil(u32::from(run.of().max(1)));
        let rules = u32::from(self.reps).saturating_sub(self.rules.allowed_of(u32::from(self.reps)));
        PassRun::new(u16::try_from(share.max(rules)).ok()?, self.reps, run.sessions()).ok()
    }

    fn within(&self, requirement: Requirement, rate: f64) -> Option<f64> {
        let clean_first_reps = self.rules.clean_first_reps.min(self.reps);
        let skill = Skill { reps: Some(self.reps), clean_first_reps, ..Skill::of(rate) };
        let gate = Gate::new(requirement).ok()?;
        operating_characteristic(&gate, &skill, LONG_GATE).ok().map(|held| held.within)
    }
}

/// The sessions after which `count` of the parts are open; the least asked for where too many never are.
fn quickest(mut parts: Vec<Result<u32, u16>>, count: usize) -> Result<u32, u16> {
    // Open parts come first, quickest first.
    crate::numeric::sort::sort_by_key(&mut parts, |part| match part {
        Ok(sessions) => (false, *sessions),
        Err(asks) => (true, u32::from(*asks)),
    });
    parts.get(count.saturating_sub(1)).copied().unwrap_or(Ok(0))
}

/// Whether no way to open it leaves out the repetitions.
fn needs_technique(requirement: &Requirement) -> bool {
    match requirement {
        Requirement::PassRun(_) | Requirement::Evidence(_) => true,
        Requirement::All(parts) => parts.iter().any(needs_technique),
        Requirement::Any(parts) => parts.iter().all(needs_technique),
        Requirement::AtLeast { count, of } => {
            of.iter().filter(|part| !needs_technique(part)).count() < usize::from(*count)
        }
        _ => false,
    }
}

/// Whether no way to open it leaves out the cap on effort.
fn needs_effort(requirement: &Requirement) -> bool {
    match requirement {
        Requirement::EffortCap => true,
        Requirement::All(parts) => parts.iter().any(needs_effort),
        Requirement::Any(parts) => parts.iter().all(needs_effort),
        Requirement::AtLeast { count, of } => {
            of.iter().filter(|part| !needs_effort(part)).count() < usize::from(*count)
        }
        _ => false,
    }
}

rows![LOW_SKILL, HIGH_SKILL, LONG_GATE];
