//! Holding facts against a gate.

use alloc::vec::Vec;

use super::facts::{GateFacts, NamedCondition, SessionFact};
use super::requirement::{Gate, Requirement};
use super::state::{GateState, Met, Missing, Note};
use crate::error::Error;
use crate::source::{OURS, formula, rows};

/// What one requirement came to.
#[derive(Default)]
struct Answer {
    open: bool,
    met: Vec<Met>,
    missing: Vec<Missing>,
    notes: Vec<Note>,
}

impl Answer {
    fn met(met: Met) -> Answer {
        Answer { open: true, met: [met].into(), ..Answer::default() }
    }

    fn missing(missing: impl IntoIterator<Item = Missing>) -> Answer {
        Answer { missing: missing.into_iter().collect(), ..Answer::default() }
    }

    fn of(outcome: Result<Met, Vec<Missing>>) -> Answer {
        outcome.map_or_else(Answer::missing, Answer::met)
    }

    fn when(holds: bool, met: Met, missing: Missing) -> Answer {
        if holds { Answer::met(met) } else { Answer::missing([missing]) }
    }
}

struct Look<'a> {
    facts: &'a GateFacts,
    days: Vec<SessionFact>,
}

impl Look<'_> {
    fn at(&self, requirement: &Requirement) -> Answer {
        match requirement {
            Requirement::PassRun(run) => {
                let (outcome, notes) = run.outcome(&self.days);
                Answer { notes, ..Answer::of(outcome) }
            }
            Requirement::Evidence(test) => Answer::of(test.outcome(&self.days)),
            Requirement::All(parts) => self.group(parts, parts.len()),
            Requirement::Any(parts) => self.group(parts, 1),
            Requirement::AtLeast { count, of } => self.group(of, usize::from(*count)),
            other => self.condition(other),
        }
    }

    fn condition(&self, requirement: &Requirement) -> Answer {
        let facts = self.facts;
        match requirement {
            Requirement::EffortCap => {
                let recorded = facts.effort_cap_met.is_some();
                let held = facts.effort_cap_met == Some(true);
                Answer::when(held, Met::EffortCap, Missing::EffortCap { recorded })
            }
            Requirement::NoOpenBlock if facts.open_blocks.is_empty() => Answer::met(Met::NoOpenBlock),
            Requirement::NoOpenBlock => {
                let blocks = facts.open_blocks.iter();
                Answer::missing(blocks.map(|name| Missing::OpenBlock { name: name.clone() }))
            }
            Requirement::DwellSessions(need) => {
                let (have, need) = (facts.dwell_sessions, u32::from(*need));
                let (met, missing) =
                    (Met::DwellSessions { have, need }, Missing::DwellSessions { have, need });
                Answer::when(have >= need, met, missing)
            }
            Requirement::DwellDays(need) => {
                let (have, need) = (facts.dwell_days, u32::from(*need));
                Answer::when(have >= need, Met::DwellDays { have, need }, Missing::DwellDays { have, need })
            }
            Requirement::Spacing(need) => spacing(facts.days_since_move, u32::from(*need)),
            Requirement::SignOff => Answer::when(facts.signed_off, Met::SignOff, Missing::SignOff),
            Requirement::Pair => named(&facts.pair, Met::Pair, |name| Missing::Pair { name }),
            Requirement::Region => named(&facts.region, Met::Region, |name| Missing::Region { name }),
            _ => Answer::default(),
        }
    }

    /// At least `count` of the parts. What an open group has not met is not missing.
    fn group(&self, parts: &[Requirement], count: usize) -> Answer {
        let answers: Vec<Answer> = parts.iter().map(|part| self.at(part)).collect();
        let have = answers.iter().filter(|answer| answer.open).count();
        let mut whole = Answer { open: have >= count, ..Answer::default() };
        if !whole.open && count < parts.len() {
            let (have, need, of) = (have as u32, count as u32, parts.len() as u32);
            whole.missing.push(Missing::Ways { have, need, of });
        }
        for answer in answers {
            whole.met.extend(answer.met);
            whole.notes.extend(answer.notes);
            if !whole.open {
                whole.missing.extend(answer.missing);
            }
        }
        whole
    }
}

fn spacing(have: Option<u32>, need: u32) -> Answer {
    match have {
        Some(have) if have < need => Answer::missing([Missing::Spacing { have, need }]),
        have => Answer::met(Met::Spacing { have, need }),
    }
}

fn named(
    conditions: &[NamedCondition],
    met: Met,
    missing: impl Fn(crate::quantity::Name) -> Missing,
) -> Answer {
    let failing = conditions.iter().filter(|condition| !condition.holds);
    let failing: Vec<Missing> = failing.map(|condition| missing(condition.name.clone())).collect();
    if failing.is_empty() { Answer::met(met) } else { Answer::missing(failing) }
}

formula! {
    "gate.check",
    /// Is the gate open, and if not, what is missing and how much of it?
    ///
    /// # Domain
    /// Facts about one lift at one tuple; two sessions of one day count as one.
    ///
    /// # Errors
    /// Those of [`GateFacts::check`].
    ///
    /// # Source
    /// Our choice; mastery criteria of so many correct over so many consecutive sessions come from the
    /// teaching of discrete skills and are used here by analogy (row `gate.check`).
    ///
    /// # Examples
    /// ```
    /// use bismar::gate::{Gate, GateFacts, Missing, PassRun, Requirement, check};
    ///
    /// let gate = Gate::new(Requirement::PassRun(PassRun::new(9, 10, 3)?))?;
    /// let state = check(&gate, &GateFacts::default())?;
    /// assert!(!state.open);
    /// let Some(Missing::PassingSessions { have, need, .. }) = state.missing.first() else { unreachable!() };
    /// assert_eq!((*have, *need), (0, 3));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn check(gate: &Gate, facts: &GateFacts) -> GateState {
        facts.check()?;
        let look = Look { facts, days: facts.days() };
        let Answer { open, met, missing, notes } = look.at(gate.requirement());
        Ok(GateState { open, met, missing, notes })
    }
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "one lift at one tuple",
}

impl Gate {
    /// Is the gate open, and if not, what is missing and how much of it? See [`check`].
    ///
    /// # Errors
    /// Those of [`GateFacts::check`].
    pub fn check(&self, facts: &GateFacts) -> Result<GateState, Error> {
        check(self, facts)
    }
}

rows![check];
