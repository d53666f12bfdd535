//! The next session.

use alloc::string::String;
use alloc::vec::Vec;

use super::change::changes;
use super::draft::Draft;
use super::lift::{LiftToday, Verdict};
use super::{time, warm_up::warm_up};
use crate::caution::Caution;
use crate::condition::DayClass;
use crate::error::{Allowed, Code, Error};
use crate::loading::{Loaded, Policy as Rounding, Prepared};
use crate::progression::{Decision, State, Status, fold};
use crate::quantity::{Day, Mass, Rir};
use crate::reason::Reason;
use crate::record::{Dimension, LiftPlan, Log, Parameters, Plan, Role};

/// Repetitions left in reserve where the plan names none (common practice).
const RESERVE: Rir = Rir::whole(3);
/// Repetitions left in reserve alone under a bar without pins (our choice).
const RESERVE_ALONE: Rir = Rir::whole(4);
/// More in reserve in an easy week (our choice).
const EASY_WEEK_RESERVE: Rir = Rir::whole(4);
/// A break of so many days within the last two weeks is an easy week already (our choice).
const BREAK_COUNTS_DAYS: i32 = 7;

/// Today's session: for each lift of the plan what to do, and why.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct SessionPlan {
    /// The day it is for.
    pub today: Day,
    /// Class of the day, as reported.
    pub day: DayClass,
    /// The lifts in the order of the plan.
    pub lifts: Vec<LiftToday>,
    /// What to show beside all of it.
    pub cautions: Vec<Caution>,
    /// Library version.
    pub version: String,
    /// Digest of the parameters in force.
    pub parameters: String,
}

/// Today's session from a whole log.
///
/// # Errors
/// What [`fold`] and [`next_session_from`] report.
pub fn next_session(log: &Log, plan: &Plan, today: Day) -> Result<SessionPlan, Error> {
    next_session_from(&fold(log)?, plan, today)
}

/// Today's session from a folded state.
///
/// # Errors
/// `before_last_event`, `no_parameters`, `unknown_lift`, and what [`Plan::check`] reports.
pub fn next_session_from(state: &State, plan: &Plan, today: Day) -> Result<SessionPlan, Error> {
    plan.check()?;
    let decisions = state.decide(today)?;
    let Some(parameters) = state.parameters.as_deref() else {
        return Err(Error::plain(Code::NoParameters, "parameters"));
    };
    let mut drafts = Vec::with_capacity(plan.lifts.len());
    let mut chosen = Vec::with_capacity(plan.lifts.len());
    for lift in &plan.lifts {
        let decision = decisions.iter().find(|decision| decision.lift == lift.lift).ok_or_else(|| {
            Error::new(
                Code::UnknownLift,
                "lift",
                lift.lift.as_str(),
                Allowed::rule("a lift of the parameters in force"),
            )
        })?;
        let at = parameters.lift_at(&lift.lift).unwrap_or_default();
        let stage = Stage { state, parameters, plan, lift, decision, at, today };
        drafts.push((stage.draft(), lift.keep));
        chosen.push(stage);
    }
    let minutes = state.today.as_ref().filter(|report| report.day == today).and_then(|report| report.minutes);
    if let Some(minutes) = plan.minutes.or(minutes) {
        time::fit(&mut drafts, minutes);
    }
    let lifts: Result<Vec<LiftToday>, Error> =
        chosen.iter().zip(drafts).map(|(stage, (draft, _))| stage.finish(draft)).collect();
    Ok(SessionPlan {
        today,
        day: state.class_on(today),
        lifts: lifts?,
        cautions: session_cautions(state, &chosen),
        version: state.version.clone(),
        parameters: state.digest.clone(),
    })
}

fn session_cautions(state: &State, lifts: &[Stage<'_>]) -> Vec<Caution> {
    let mut cautions = alloc::vec![Caution::ExaminesNobody];
    let stopped = state.stop.is_some() || state.regions.iter().any(|region| region.stop.is_some());
    if stopped {
        cautions.extend([Caution::EmergencySigns, Caution::BackEmergency, Caution::SeeClinicianFirst]);
    }
    if state.asks_first() {
        cautions.push(Caution::AskBeforeToday);
    }
    if state.clearance.is_none() {
        cautions.push(Caution::AskBeforeStarting);
    }
    // A limit of one region says nothing about the others.
    if lifts.is_empty() || !lifts.iter().all(|stage| state.limits_on_record(stage.at)) {
        cautions.push(Caution::NoPressureLimit);
    }
    cautions.push(Caution::HoldingIsGood);
    cautions
}

/// One lift on its way through the stages.
struct Stage<'a> {
    state: &'a State,
    parameters: &'a Parameters,
    plan: &'a Plan,
    lift: &'a LiftPlan,
    decision: &'a Decision,
    at: usize,
    today: Day,
}

impl Stage<'_> {
    fn draft(&self) -> Draft {
        let decision = self.decision;
        let mut draft = Draft {
            verdict: Verdict::Train,
            load: decision.limit,
            sets: decision.tuple.sets,
            reps: decision.tuple.reps,
            reserve: RESERVE,
            reasons: Vec::new(),
        };
        self.stops(&mut draft);
        // Of limits that are missing a caution speaks, once for all lifts.
        for reason in decision.reasons.iter().filter(|reason| **reason != Reason::NoLimitsOnRecord) {
            draft.say(reason.clone());
        }
        self.pain(&mut draft);
        self.day(&mut draft);
        self.effort(&mut draft);
        self.less(&mut draft);
        // A plan may ask for less in reserve, but not of a lift that is eased.
        if draft.verdict > Verdict::Train {
            draft.keep_in_reserve(RESERVE);
        }
        draft
    }

    fn stops(&self, draft: &mut Draft) {
        if self.decision.status == Status::StoppedRefer {
            let stops =
                |reason: &&Reason| matches!(reason, Reason::SymptomStop { .. } | Reason::PainStop { .. });
            let named = self.decision.reasons.iter().find(stops).cloned();
            draft.at_least(Verdict::Stop, named.unwrap_or(Reason::Stopped));
        }
        if self.state.limits(self.at).any(|limit| limit.no_loaded_flexion) {
            draft.say(Reason::NoLoadedFlexion);
        }
        if self.state.ill_since.is_some() {
            draft.at_least(Verdict::Stop, Reason::ClearanceAfterIllness);
        }
        if self.state.asks_first() {
            draft.at_least(Verdict::Stop, Reason::AsksFirst);
        }
        match (self.decision.status, self.state.lifts.get(self.at).map(|lift| lift.role)) {
            (Status::Retired, _) => draft.at_least(Verdict::Rest, Reason::Retired),
            (Status::Resting, Some(Role::Rest)) => draft.at_least(Verdict::Rest, Reason::Resting),
            _ => {}
        }
        // Not even the easiest range is within the clearance.
        let place = self.decision.tuple.range;
        if self.state.range_allowed(self.at, place).is_none() {
            draft.at_least(Verdict::Rest, Reason::ClearanceRange);
        }
        match &self.state.clearance {
            None if self.parameters.policy.clearance_required => draft.say(Reason::ClearanceMissing),
            Some(clearance) if clearance.expires < self.today => {
                draft.say(Reason::ClearanceExpired { on: clearance.expires });
            }
            _ => {}
        }
    }

    /// The load one step easier than the one granted.
    fn one_step_down(&self) -> Mass {
        let from = crate::record::Tuple { load: self.decision.limit, ..self.decision.tuple };
        let below = crate::progression::one_step_back(from, self.at, self.state);
        below.min(self.decision.limit)
    }

    fn pain(&self, draft: &mut Draft) {
        let policy = &self.parameters.policy;
        let asked =
            self.state.today.as_ref().is_some_and(|report| report.day == self.today && report.pain_asked);
        let regions = self.state.regions_of(self.at);
        for region in self.state.regions.iter().filter(|region| regions.contains(&region.name)) {
            let Some((day, score)) = region.last else { continue };
            let usual = region.usual_level(self.today, policy.usual_review_days);
            let high = score.score() >= policy.pain_block_from && score > usual;
            if high && day == self.today {
                let reason =
                    Reason::PainBlock { region: region.name.clone(), clear_sessions: region.clear_needed };
                draft.at_least(Verdict::EaseOff, reason);
                draft.lower_load(self.one_step_down());
            } else if high && !asked {
                draft.at_least(
                    Verdict::TechniqueOnly,
                    Reason::PainMissingAfterHigh { region: region.name.clone() },
                );
            }
        }
        if self.state.lifts.get(self.at).is_some_and(|lift| lift.partner_pain) {
            draft.at_least(Verdict::EaseOff, Reason::PairPain);
            draft.lower_load(self.one_step_down());
        }
    }

    fn day(&self, draft: &mut Draft) {
        match self.state.class_on(self.today) {
            DayClass::BadAgreeing => {
                draft.at_least(Verdict::EaseOff, Reason::BadDay);
                draft.lower_load(self.one_step_down());
                draft.halve_sets();
            }
            DayClass::BadSingle => draft.say(Reason::BadDaySingle),
            DayClass::Good => draft.say(Reason::GoodDay),
            DayClass::Unknown => draft.say(Reason::DayUnknown),
            DayClass::Ordinary => {}
        }
    }

    fn effort(&self, draft: &mut Draft) {
        if let Some(reserve) = self.lift.reserve {
            draft.reserve = reserve;
        }
        for limit in self.state.limits(self.at) {
            if let Some(rating) = limit.effort {
                let halves = 20_u16.saturating_sub(rating.halves());
                draft.keep_in_reserve(Rir::new(f64::from(halves) / 2.0).unwrap_or(RESERVE_ALONE));
            }
        }
        if self.state.lifts.get(self.at).is_some_and(|lift| lift.unguarded) {
            draft.say(Reason::AloneWithoutPins);
            draft.keep_in_reserve(RESERVE_ALONE);
        }
    }

    fn less(&self, draft: &mut Draft) {
        if self.decision.reasons.iter().any(|reason| matches!(reason, Reason::HalfSets { .. })) {
            draft.verdict = draft.verdict.max(Verdict::EaseOff);
            draft.halve_sets();
        }
        let asked = (self.lift.sets.unwrap_or(draft.sets), self.lift.reps.unwrap_or(draft.reps));
        if asked.0 < draft.sets || asked.1 < draft.reps {
            draft.say(Reason::PlanAsksLess);
            draft.lower_sets(asked.0);
            draft.lower_reps(asked.1);
        }
        if self.plan.easy_week {
            let gap = self.state.gap(self.at, self.today).unwrap_or_default();
            match u16::try_from(gap) {
                Ok(days) if gap >= BREAK_COUNTS_DAYS => draft.say(Reason::BreakCounts { days }),
                _ => {
                    draft.at_least(Verdict::EaseOff, Reason::EasyWeek);
                    draft.halve_sets();
                    draft.keep_in_reserve(EASY_WEEK_RESERVE);
                }
            }
        }
        let implement = self.parameters.lifts.get(self.at).map(|lift| &lift.implement);
        if let Some(implement) = implement.filter(|id| self.plan.unavailable.contains(id)) {
            draft.at_least(Verdict::Rest, Reason::ImplementUnavailable { implement: implement.clone() });
        }
        if let Some(rest) = self.pair_rest() {
            draft.say(rest);
        }
    }

    /// Too few full rest days since the other lift of the pair; a warning, not a block.
    fn pair_rest(&self) -> Option<Reason> {
        let other = self.state.lifts.get(self.state.partner(self.at)?)?.last_session?;
        let older = self
            .state
            .age(self.today)
            .is_some_and(|age| age >= i32::from(self.parameters.policy.older_from_years));
        let needed = u16::from(self.parameters.policy.pair_rest_days) + u16::from(older);
        let days = u16::try_from((self.today.since(other) - 1).max(0)).ok()?;
        (days < needed).then_some(Reason::PairRest { days, needed })
    }

    fn finish(&self, mut draft: Draft) -> Result<LiftToday, Error> {
        let decision = self.decision;
        let equipment = self.equipment()?;
        let lifts = draft.verdict < Verdict::Rest;
        if draft.verdict == Verdict::TechniqueOnly
            && let Some(lightest) = equipment.as_ref().and_then(Prepared::lightest)
        {
            draft.lower_load(lightest);
            draft.lower_sets(2);
        }
        let loaded = if lifts { round(&mut draft, equipment.as_ref()) } else { None };
        let load = loaded.as_ref().map(|loaded| loaded.total);
        let rounded = |load: Mass| {
            equipment.as_ref().and_then(|all| all.load(load, Rounding::Below).ok()).map(|loaded| loaded.total)
        };
        let warm_up = load.map(|work| warm_up(work, self.lift.reference, rounded)).unwrap_or_default();
        Ok(LiftToday {
            lift: decision.lift.clone(),
            verdict: draft.verdict,
            status: decision.status,
            granted: decision.tuple,
            limit: decision.limit,
            load,
            loaded,
            sets: if lifts { draft.sets } else { 0 },
            reps: if lifts { draft.reps } else { 0 },
            reserve: draft.reserve,
            warm_up,
            cautions: self.cautions(&draft),
            reasons: draft.reasons,
            outlook: decision.outlook.clone(),
            gate: decision.gate.clone(),
            would_change: changes(decision),
            evidence: decision.evidence.clone(),
        })
    }

    fn equipment(&self) -> Result<Option<Prepared>, Error> {
        let lift = self.parameters.lifts.get(self.at);
        let implement = lift.and_then(|lift| self.parameters.implement(&lift.implement));
        let highest = self.decision.limit.max(Mass::grams(1_000));
        implement.map(|implement| Prepared::new(implement, &self.parameters.stock, highest)).transpose()
    }

    fn cautions(&self, draft: &Draft) -> Vec<Caution> {
        let mut cautions = Vec::new();
        if draft.verdict == Verdict::Stop {
            cautions.push(Caution::SeeClinicianFirst);
        }
        if draft.reasons.contains(&Reason::AloneWithoutPins) {
            cautions.push(Caution::AloneWithoutPins);
        }
        if self.state.limits(self.at).any(|limit| limit.no_breath_hold) {
            cautions.push(Caution::BreathingPlan);
        }
        let moves_load =
            self.parameters.lifts.get(self.at).is_some_and(|lift| lift.moving == Dimension::Load);
        if moves_load && draft.verdict == Verdict::Train {
            cautions.push(Caution::GatesUnproven);
        }
        cautions
    }
}

/// Rounds down to what can be loaded, and looks at the cap once more.
fn round(draft: &mut Draft, equipment: Option<&Prepared>) -> Option<Loaded> {
    let equipment = equipment?;
    match equipment.load(draft.load, Rounding::Below) {
        Ok(loaded) if loaded.total <= draft.load => {
            if loaded.total < draft.load {
                draft.say(Reason::RoundedDown { from: draft.load, to: loaded.total });
            }
            Some(loaded)
        }
        _ => {
            let lightest = equipment.lightest().unwrap_or(draft.load);
            draft.at_least(Verdict::TechniqueOnly, Reason::NothingLoadable { lightest });
            None
        }
    }
}
