//! What a look at a plan found, as codes with numbers.

use alloc::string::String;
use alloc::vec::Vec;

use crate::quantity::{Length, Mass, Name, Rir};
use crate::record::Dimension;

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Severity {
    /// As it stands, the plan cannot do what it says.
    Blocks,
    /// It can, and probably not as meant.
    Warns,
    /// Worth knowing; often meant so.
    Notes,
}

/// One finding.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Finding {
    /// How much it matters.
    pub severity: Severity,
    /// Id of the lift it is about; absent where it is about the whole.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lift: Option<Name>,
    /// What was found, with its numbers.
    pub what: Found,
}

impl Finding {
    /// What concerns the whole, as severe as it is by itself.
    #[must_use]
    pub fn whole(what: Found) -> Finding {
        Finding { severity: what.severity(), lift: None, what }
    }

    /// What concerns one lift, as severe as it is by itself.
    #[must_use]
    pub fn about(lift: &Name, what: Found) -> Finding {
        Finding { severity: what.severity(), lift: Some(lift.clone()), what }
    }

    /// The stable code.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        self.what.code()
    }
}

macro_rules! findings {
    ($($(#[doc = $doc:literal])+ $variant:ident $({ $($(#[doc = $field_doc:literal])+ $field:ident : $type:ty),+ $(,)? })? $severity:ident $text:literal,)+) => {
        /// What was found.
        #[non_exhaustive]
        #[derive(Clone, Debug, PartialEq)]
        #[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case", deny_unknown_fields))]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum Found {
            $($(#[doc = $doc])+ $variant $({ $($(#[doc = $field_doc])+ $field: $type),+ })?,)+
        }

        impl Found {
            /// Every code of this version.
            pub const CODES: &'static [&'static str] = &[$($text),+];

            /// The stable code.
            #[must_use]
            pub const fn code(&self) -> &'static str {
                match self { $(Found::$variant { .. } => $text,)+ }
            }

            /// How much it matters.
            #[must_use]
            pub const fn severity(&self) -> Severity {
                match self { $(Found::$variant { .. } => Severity::$severity,)+ }
            }
        }
    };
}

findings! {
    /// The parameters would be refused when they are recorded.
    ParametersRefused {
        /// Code of the error.
        error: String,
        /// Path to the field.
        field: String
    } Blocks "parameters_refused",
    /// The equipment has no such implement.
    UnknownImplement {
        /// Its id.
        implement: Name
    } Blocks "unknown_implement",
    /// A pair names a lift that there is not.
    UnknownPairLift {
        /// Its id.
        lift: Name
    } Blocks "unknown_pair_lift",
    /// More criteria are critical than one lift may have, so no session of it can be recorded.
    TooManyCritical {
        /// Critical criteria.
        count: u16,
        /// Most there may be.
        most: u16
    } Blocks "too_many_critical",
    /// No criterion is critical: no single fault can stop a move.
    NoCriticalCriterion Notes "no_critical_criterion",
    /// The lift is learned in no sessions at all.
    LearningNone Warns "learning_none",
    /// The gate asks for more scored repetitions than a session of this lift has.
    GateNeverOpens {
        /// Scored repetitions that it asks of a session.
        asks: u16,
        /// Repetitions of a session.
        session: u16
    } Blocks "gate_never_opens",
    /// Even a lifter who misses nothing needs many sessions to open the gate.
    GateTooLong {
        /// Sessions without a miss.
        sessions: u32,
        /// Number from which that is called long.
        long_from: u32
    } Warns "gate_too_long",
    /// A lifter of low skill would soon open the gate.
    GateOpensForAnyone {
        /// Chance that a repetition of such a lifter is acceptable.
        rate: f64,
        /// Sessions looked at.
        sessions: u32,
        /// Chance that the gate opens within them.
        chance: f64
    } Warns "gate_opens_for_anyone",
    /// A lifter of high skill would hardly open the gate.
    GateRarelyOpens {
        /// Chance that a repetition of such a lifter is acceptable.
        rate: f64,
        /// Sessions looked at.
        sessions: u32,
        /// Chance that the gate opens within them.
        chance: f64
    } Warns "gate_rarely_opens",
    /// The gate can open without a look at any repetition.
    GateNeedsNoTechnique Warns "gate_needs_no_technique",
    /// The plan leaves less in reserve than the gate's cap on effort asks for.
    ReserveBelowGate {
        /// Reserve of the plan.
        plan: Rir,
        /// Reserve asked for.
        asks: Rir
    } Blocks "reserve_below_gate",
    /// The equipment does not make the start load at the height of the start, so that recording the parameters is
    /// refused.
    StartNotLoadable {
        /// Start load.
        load: Mass,
        /// Next lighter load that can be made.
        below: Option<Mass>,
        /// Next heavier one.
        above: Option<Mass>
    } Blocks "start_not_loadable",
    /// No disc that carries the bar, on blocks or not, holds its centre at a height of the lift.
    HeightOff {
        /// The height.
        height: Length,
        /// How far off the nearest way lies, in millimetres; above is positive.
        mm: f64
    } Warns "height_off",
    /// No disc tells its diameter, so nobody knows at which height the bar begins.
    HeightUnknown Warns "height_unknown",
    /// No step up can be loaded from the start.
    StuckAtStart {
        /// Start load.
        load: Mass,
        /// Highest load that the step allows.
        cap: Mass,
        /// Next load that the equipment makes.
        next: Option<Mass>,
        /// Discs of which a pair would make a step.
        discs: Vec<Mass>
    } Blocks "stuck_at_start",
    /// From somewhere on the way up no further step can be loaded.
    StuckLater {
        /// The load there.
        load: Mass,
        /// Highest load that the step allows.
        cap: Mass,
        /// Next load that the equipment makes.
        next: Option<Mass>,
        /// Discs of which a pair would make a step.
        discs: Vec<Mass>
    } Warns "stuck_later",
    /// The moving dimension is at its top already.
    NothingToMove {
        /// Which one.
        moving: Dimension
    } Warns "nothing_to_move",
    /// The ceiling lies below the start load, so no session is done at the granted place.
    CeilingBelowStart {
        /// Ceiling.
        ceiling: Mass,
        /// Start load.
        start: Mass
    } Blocks "ceiling_below_start",
    /// The wanted step is larger than its own cap and will be cut to it.
    StepAboveCap {
        /// Load after the wanted step.
        wanted: Mass,
        /// Load after the largest step allowed.
        cap: Mass
    } Notes "step_above_cap",
    /// A single step is more than the load may grow over the window of weeks.
    WindowBelowStep {
        /// Load before the step.
        load: Mass,
        /// Load after it.
        to: Mass,
        /// Highest load that the window allows.
        window: Mass
    } Blocks "window_below_step",
    /// Several lifts that are no pair are set to move and share a region.
    RegionShared {
        /// Id of the region.
        region: Name,
        /// Ids of those lifts.
        lifts: Vec<Name>
    } Warns "region_shared",
    /// No lift loads the region: a stop in it halts every lift.
    RegionWithoutLift {
        /// Id of the region.
        region: Name
    } Notes "region_without_lift",
    /// Both lifts of a pair are set to move; they take turns.
    PairBothMove {
        /// The other lift.
        partner: Name
    } Notes "pair_both_move",
    /// The strict lift starts above what the forgiving lift's start load allows.
    PairStartAboveCap {
        /// Start load of the strict lift.
        start: Mass,
        /// Highest load that the pair allows.
        cap: Mass
    } Warns "pair_start_above_cap",
    /// The plan would be refused.
    PlanRefused {
        /// Code of the error.
        error: String,
        /// Path to the field.
        field: String
    } Blocks "plan_refused",
    /// The plan calls an implement missing that the equipment does not have anyway.
    UnavailableUnknown {
        /// Its id.
        implement: Name
    } Blocks "unavailable_unknown",
    /// The plan names a lift that there is not.
    UnknownLift Blocks "unknown_lift",
    /// The plan leaves the lift out.
    NotPlanned Notes "not_planned",
    /// The plan asks for more than is granted; it will get what is granted.
    PlanAsksMore {
        /// Sets asked for.
        sets: u8,
        /// Repetitions asked for.
        reps: u8,
        /// Sets granted.
        granted_sets: u8,
        /// Repetitions granted.
        granted_reps: u8
    } Warns "plan_asks_more",
    /// The plan asks for less than is granted, so no session of it counts as a pass.
    PlanNeverPasses {
        /// Sets asked for.
        sets: u8,
        /// Repetitions asked for.
        reps: u8,
        /// Sets granted.
        granted_sets: u8,
        /// Repetitions granted.
        granted_reps: u8
    } Blocks "plan_never_passes",
    /// The reference set is not lighter than the start load.
    ReferenceNotLighter {
        /// Load of the reference set.
        reference: Mass,
        /// Start load.
        start: Mass
    } Notes "reference_not_lighter",
    /// Both lifts of a pair stand in one session.
    PairInOneSession {
        /// The forgiving lift.
        forgiving: Name
    } Notes "pair_in_one_session",
    /// The strict lift comes on the day after its heavier partner.
    StrictAfterHeavy {
        /// The forgiving lift.
        forgiving: Name
    } Warns "strict_after_heavy",
    /// The lifts of a pair have too few full rest days between them.
    PairTooClose {
        /// The other lift.
        partner: Name,
        /// Full rest days between them.
        days: u16,
        /// Full rest days asked for.
        needed: u16
    } Warns "pair_too_close",
    /// The lift comes back later than an open gate stays fresh, so no move can be taken on a training day.
    StaleBetweenSessions {
        /// Longest gap between two sessions, in days.
        gap: u16,
        /// Days allowed.
        allowed: u16
    } Warns "stale_between_sessions",
    /// A look at a lift that is kept, or at what was weak before a move, is due before the lift comes back.
    ProbeBeforeSession {
        /// Longest gap between two sessions, in days.
        gap: u16,
        /// Days after which the look is due.
        due: u16
    } Warns "probe_before_session",
    /// Steps of a lift that is helped are measured against the body mass, which this check does not know.
    HelpNeedsBodyMass Notes "help_needs_body_mass",
    /// The week has no day for the lift.
    NoDay Notes "no_day",
    /// The clearance does not let anyone train.
    NotCleared Blocks "not_cleared",
    /// The clearance allows less than the start load, so no session is done at the granted place.
    ClearanceBelowStart {
        /// Load that the clearance allows.
        limit: Mass,
        /// Start load.
        start: Mass
    } Blocks "clearance_below_start",
}
