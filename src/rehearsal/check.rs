//! The whole look at a plan.

use alloc::string::ToString;
use alloc::vec::Vec;

use super::finding::{Finding, Found};
use super::{advancing, gates, heights, ladder, planned};
use crate::error::Error;
use crate::gate::CRITICAL_CRITERIA;
use crate::record::{LiftParameters, Parameters, Plan};
use crate::source::{ARITHMETIC, formula, rows};

/// What is wrong with these parameters, and with this plan, before anyone lifts? Findings come in the order of
/// the lifts, what blocks first.
///
/// An empty list says that none of these checks found anything; it does not say that the plan is a good one.
///
/// ```
/// use bismar::rehearsal::Severity;
/// # use bismar::{gate::*, loading::*, quantity::*, record::*};
/// # let load = Mass::from_kg(40.0)?;
/// # let gate = Gate::new(Requirement::PassRun(PassRun::new(13, 15, 2)?))?;
/// # let lift = LiftParameters::new(Name::new("squat")?, Body::Lower, Name::new("bar")?, Grant::new(Work::new(2, 5, load)), gate)
/// #     .with_regions(vec![Name::new("knee")?])
/// #     .with_rungs(vec![Rung::new(Name::new("free")?, vec![])])
/// #     .with_criteria(vec![Criterion::critical("brace held")?])
/// #     .with_over_the_body(true);
/// # let bar = Implement::Bar(Bar::new(Name::new("bar")?, Mass::from_kg(20.0)?, Mass::ZERO)?);
/// # let stock = Stock::new(vec![Disc::new(Mass::from_kg(10.0)?, 4)?, Disc::new(Mass::from_kg(1.0)?, 8)?])?;
/// # let parameters = Parameters::new(vec![Region::new(Name::new("knee")?)], vec![lift], vec![bar], stock);
/// // A squat of 2 x 5 whose gate asks for 13 of 15 repetitions.
/// let findings = bismar::rehearsal::check(&parameters, None);
/// assert_eq!(findings[0].code(), "gate_never_opens");
/// assert_eq!(findings[0].severity, Severity::Blocks);
/// # Ok::<(), bismar::Error>(())
/// ```
#[must_use]
pub fn check(parameters: &Parameters, plan: Option<&Plan>) -> Vec<Finding> {
    let mut findings = Vec::new();
    refused(parameters, &mut findings);
    for set in &parameters.lifts {
        let planned = plan.and_then(|plan| plan.lifts.iter().find(|planned| planned.lift == set.id));
        learning(parameters, set, &mut findings);
        gates::look(parameters, set, planned, &mut findings);
        ladder::look(parameters, set, &mut findings);
        heights::look(parameters, set, &mut findings);
    }
    advancing::look(parameters, plan, &mut findings);
    if let Some(plan) = plan {
        planned::look(parameters, plan, &mut findings);
    }
    // Stable, so that each severity keeps the order above.
    crate::numeric::sort::sort_by_key(&mut findings, |finding| finding.severity);
    findings
}

/// What recording the parameters would refuse. The commonest causes get a finding of their own, all of them and
/// not only the first.
fn refused(parameters: &Parameters, findings: &mut Vec<Finding>) {
    let before = findings.len();
    for lift in &parameters.lifts {
        if parameters.implement(&lift.implement).is_none() {
            let implement = lift.implement.clone();
            findings.push(Finding::about(&lift.id, Found::UnknownImplement { implement }));
        }
        let critical = lift.criteria.iter().filter(|criterion| criterion.critical).count();
        let count = u16::try_from(critical).unwrap_or(u16::MAX);
        if count > CRITICAL_CRITERIA {
            let most = CRITICAL_CRITERIA;
            findings.push(Finding::about(&lift.id, Found::TooManyCritical { count, most }));
        }
    }
    for id in parameters.pairs.iter().flat_map(|pair| [&pair.strict, &pair.forgiving]) {
        if parameters.lift(id).is_none() {
            findings.push(Finding::whole(Found::UnknownPairLift { lift: id.clone() }));
        }
    }
    let criteria =
        || parameters.lifts.iter().try_for_each(|lift| crate::gate::check_criteria(&lift.criteria));
    if let (true, Err(error)) = (findings.len() == before, parameters.check().and_then(|()| criteria())) {
        let (error, field) = (error.code().as_str().to_string(), error.field().to_string());
        findings.push(Finding::whole(Found::ParametersRefused { error, field }));
    }
}

fn learning(parameters: &Parameters, lift: &LiftParameters, findings: &mut Vec<Finding>) {
    if lift.learning(&parameters.policy) == 0 {
        findings.push(Finding::about(&lift.id, Found::LearningNone));
    }
    if !lift.criteria.iter().any(|criterion| criterion.critical) {
        findings.push(Finding::about(&lift.id, Found::NoCriticalCriterion));
    }
}

formula! {
    "rehearsal.check",
    /// What is wrong with these parameters, and with this plan, before anyone lifts?
    ///
    /// # Domain
    /// As [`check()`]: the same answer, for calls by name.
    ///
    /// # Errors
    /// None: what would be refused is a finding.
    ///
    /// # Source
    /// Arithmetic over the rules in force (row `rehearsal.check`).
    ///
    /// # Examples
    /// See [`check()`].
    pub fn check_plan(parameters: &Parameters, plan: &Option<Plan>) -> Result<Vec<Finding>, Error> {
        Ok(check(parameters, plan.as_ref()))
    }
    source: ARITHMETIC, place: "the rules in force", standing: Derived, seen: NotApplicable,
    domain: "any parameters and plan that can be read",
}

rows![check_plan];
