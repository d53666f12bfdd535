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

    /// Whether a requirement holds, as [`Look::at`] says, without the lists of what is met and missing.
    fn holds(&self, requirement: &Requirement) -> bool {
        let facts = self.facts;
        match requirement {
            Requirement::PassRun(run) => run.is_open(&self.days),
            Requirement::Evidence(test) => test.outcome(&self.days).is_ok(),
            Requirement::All(parts) => parts.iter().all(|part| self.holds(part)),
            Requirement::Any(parts) => parts.iter().any(|part| self.holds(part)),
            Requirement::AtLeast { count, of } => {
                of.iter().filter(|part| self.holds(part)).count() >= usize::from(*count)
            }
            Requirement::EffortCap => facts.effort_cap_met == Some(true),
            Requirement::NoOpenBlock => facts.open_blocks.is_empty(),
            Requirement::DwellSessions(need) => facts.dwell_sessions >= u32::from(*need),
            Requirement::DwellDays(need) => facts.dwell_days >= u32::from(*need),
            Requirement::Spacing(need) => facts.days_since_move.is_none_or(|have| have >= u32::from(*need)),
            Requirement::SignOff => facts.signed_off,
            Requirement::Pair => facts.pair.iter().all(|condition| condition.holds),
            Requirement::Region => facts.region.iter().all(|condition| condition.holds),
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
    /// use bismar::gate::{Gate, GateFacts, Missing, PassRun, Requirement};
    ///
    /// let gate = Gate::new(Requirement::PassRun(PassRun::new(9, 10, 3)?))?;
    /// let state = gate.check(&GateFacts::default())?;
    /// assert!(!state.open);
    /// let Some(Missing::PassingSessions { have, need, .. }) = state.missing.first() else { unreachable!() };
    /// assert_eq!((*have, *need), (0, 3));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn check(gate: &Gate, facts: &GateFacts) -> Result<GateState, Error> {
        facts.check()?;
        let look = Look { facts, days: facts.days() };
        let Answer { open, met, missing, notes } = look.at(gate.requirement());
        Ok(GateState { open, met, missing, notes })
    }
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "one lift at one tuple",
}

impl Gate {
    /// Is the gate open, and if not, what is missing and how much of it? Of the registry it is the row `gate.check`.
    ///
    /// Two sessions of one day count as one.
    ///
    /// # Errors
    /// Those of [`GateFacts::check`].
    ///
    /// # Examples
    /// ```
    /// use bismar::gate::{Gate, GateFacts, Missing, PassRun, Requirement};
    ///
    /// let gate = Gate::new(Requirement::PassRun(PassRun::new(9, 10, 3)?))?;
    /// let state = gate.check(&GateFacts::default())?;
    /// assert!(!state.open);
    /// let Some(Missing::PassingSessions { have, need, .. }) = state.missing.first() else { unreachable!() };
    /// assert_eq!((*have, *need), (0, 3));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn check(&self, facts: &GateFacts) -> Result<GateState, Error> {
        check(self, facts)
    }

    /// Whether it is open, and no more: a fold asks this at every session and has no use for the lists.
    pub(crate) fn is_open(&self, facts: &GateFacts) -> bool {
        facts.check().is_ok() && Look { facts, days: facts.days() }.holds(self.requirement())
    }
}

rows![check];

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may panic")]
mod tests {
    use super::*;
    use crate::condition::DayClass;
    use crate::gate::{Evidence, EvidenceRule, Outcome, PassRun};
    use crate::quantity::{Day, Name};

    fn facts(number: u32) -> GateFacts {
        let bit = |place: u32| number >> place & 1 == 1;
        let name = |text: &str| Name::new(text).unwrap();
        let sessions = (0..4_u8).map(|at| SessionFact {
            day: Day::from_number(100 + i32::from(at)).unwrap(),
            passed: if bit(at.into()) { Outcome::Pass } else { Outcome::Fail },
            critical_fail: false,
            acceptable: if bit(at.into()) { 10 } else { 7 },
            scored: 10,
            day_class: if bit(4) { DayClass::Below } else { DayClass::Within },
            answer_pending: bit(5) && at == 3,
            weakest: None,
            rater: None,
        });
        let condition = |holds| NamedCondition { name: name("other"), holds };
        GateFacts {
            sessions: sessions.collect(),
            dwell_sessions: if bit(6) { 4 } else { 2 },
            dwell_days: if bit(6) { 30 } else { 3 },
            days_since_move: bit(7).then_some(if bit(8) { 3 } else { 9 }),
            open_blocks: if bit(8) { [name("knee")].into() } else { Vec::new() },
            signed_off: bit(9),
            pair: [condition(bit(10))].into(),
            region: [condition(!bit(10))].into(),
            effort_cap_met: bit(9).then_some(bit(10)),
        }
    }

    #[test]
    fn the_short_answer_is_the_long_one() {
        let run = Requirement::PassRun(PassRun::new(9, 10, 2).unwrap());
        let rule =
            EvidenceRule::Posterior { rate: 0.8, level: 0.7, prior_acceptable: 1.0, prior_missed: 1.0 };
        let test = Requirement::Evidence(Evidence::new(rule, 60, 2).unwrap());
        let each = [
            run,
            test,
            Requirement::EffortCap,
            Requirement::NoOpenBlock,
            Requirement::DwellSessions(3),
            Requirement::DwellDays(14),
            Requirement::Spacing(7),
            Requirement::SignOff,
            Requirement::Pair,
            Requirement::Region,
        ];
        let mut all: Vec<Requirement> = each.to_vec();
        all.push(Requirement::All(each.to_vec()));
        all.push(Requirement::Any(each.to_vec()));
        all.extend((2..9).map(|count| Requirement::AtLeast { count, of: each.to_vec() }));
        let mut opened = 0;
        for requirement in all {
            let gate = Gate::new(requirement).unwrap();
            for facts in (0..2_048).map(facts) {
                let open = gate.check(&facts).unwrap().open;
                assert_eq!(gate.is_open(&facts), open, "{gate:?} {facts:?}");
                opened += u32::from(open);
            }
        }
        assert!(opened > 1_000);
    }
}
