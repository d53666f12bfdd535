//! Reason codes with their numbers: why a decision is what it is, and what stands in the way of a move.
//!
//! Uses quantity and source. A reason is a code and numbers; sentences are made of them elsewhere, so that an app
//! can speak any language.

use crate::quantity::{Day, Mass, Name, Rir};
use crate::sign::{Ask, StopSign};

/// In what a session fell short of the work granted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Shortfall {
    /// Done on another rung.
    Rung,
    /// Less range.
    Range,
    /// Another tempo.
    Tempo,
    /// Another load.
    Load,
    /// Fewer sets.
    Sets,
    /// Fewer repetitions.
    Reps,
    /// The day allowed less than is granted, so no session could show it.
    Limit,
}

macro_rules! reasons {
    ($($(#[doc = $doc:literal])+ $variant:ident $({ $($(#[doc = $field_doc:literal])+ $field:ident : $type:ty),+ $(,)? })? $text:literal,)+) => {
        /// Why a decision is what it is.
        #[non_exhaustive]
        #[derive(Clone, Debug, PartialEq)]
        #[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case", deny_unknown_fields))]
        pub enum Reason {
            $($(#[doc = $doc])+ $variant $({ $($(#[doc = $field_doc])+ $field: $type),+ })?,)+
        }

        impl Reason {
            /// Every code of this version.
            pub const CODES: &'static [&'static str] = &[$($text),+];

            /// The stable code.
            #[must_use]
            pub const fn code(&self) -> &'static str {
                match self { $(Reason::$variant { .. } => $text,)+ }
            }
        }
    };
}

reasons! {
    /// A sign that stops everything was reported; only a clearance and the coach's sign-off reopen.
    SymptomStop {
        /// Which signs; none where a clearance was refused.
        signs: alloc::vec::Vec<StopSign>,
        /// When.
        since: Day
    } "symptom_stop",
    /// Pain stopped every lift of the region; only a clearance and the coach's sign-off reopen.
    PainStop {
        /// Where.
        region: Name,
        /// When.
        since: Day
    } "pain_stop",
    /// The lift is stopped until a clearance and the coach's sign-off.
    Stopped "stopped",
    /// A clearance allows no loaded bending of the spine: leave out what asks for it.
    NoLoadedFlexion "no_loaded_flexion",
    /// The last clearance says no.
    NotCleared "not_cleared",
    /// No clearance is on record.
    ClearanceMissing "clearance_missing",
    /// The clearance has run out.
    ClearanceExpired {
        /// Its last day.
        on: Day
    } "clearance_expired",
    /// An illness or operation asks for a new clearance before training goes on.
    ClearanceAfterIllness "clearance_after_illness",
    /// A clearance limits the load.
    ClearanceLimit {
        /// To this.
        load: Mass
    } "clearance_limit",
    /// A clearance limits the range.
    ClearanceRange "clearance_range",
    /// The host has set no limit for blood pressure, breathing or effort: a coach should ask.
    NoLimitsOnRecord "no_limits_on_record",
    /// Fever, dizziness, palpitations, a fall or a new medicine, said and not yet answered: somebody's word comes first.
    AsksFirst {
        /// Which.
        ask: Ask,
        /// Said on that day.
        since: Day
    } "asks_first",
    /// Nobody asked today about fever, dizziness, palpitations, a fall or a new medicine; missing is not none.
    AsksNotAsked "asks_not_asked",
    /// A clearance limits a region that no lift loads any more, so nobody can tell what it still concerns.
    LimitWithoutLift {
        /// Where.
        region: Name
    } "limit_without_lift",
    /// Pain was high enough to block moves until enough clear sessions have passed.
    PainBlock {
        /// Where.
        region: Name,
        /// Clear sessions still to come.
        clear_sessions: u8
    } "pain_block",
    /// Pain at or below the agreed usual level has not yet been steady for three sessions.
    UsualPainUnsteady {
        /// Where.
        region: Name
    } "usual_pain_unsteady",
    /// The agreed usual level of pain is due to be looked at again; until then it allows nothing.
    UsualPainReview {
        /// Where.
        region: Name,
        /// When it was agreed.
        agreed: Day
    } "usual_pain_review",
    /// Nobody asked about pain in the last session; missing is not zero.
    PainNotAsked "pain_not_asked",
    /// The last report in the region was high and today's is missing: technique work only.
    PainMissingAfterHigh {
        /// Where.
        region: Name
    } "pain_missing_after_high",
    /// The last pass waits for the next-morning answer.
    PassProvisional {
        /// The session.
        session: u32
    } "pass_provisional",
    /// The gate is not open yet.
    GateNotOpen "gate_not_open",
    /// The lift is still in its calibration.
    LearningNotDone {
        /// Sessions done.
        done: u8,
        /// Sessions asked for.
        needed: u8
    } "learning_not_done",
    /// The lift has just moved and settles in.
    Consolidating "consolidating",
    /// The lift went one step easier and is looked at again.
    SteppingBack "stepping_back",
    /// The lift rests.
    Resting "resting",
    /// The lift comes back after a break, and no higher than before it.
    Returning {
        /// Granted load before the break.
        at_most: Mass
    } "returning",
    /// The lift is kept where it is on purpose.
    Maintaining "maintaining",
    /// The lift is kept, and down to this load it is on plan.
    MaintainingBand {
        /// The lowest load on plan.
        not_below: Mass
    } "maintaining_band",
    /// A scored session at the granted place is due by then: the lift is kept, or a point of technique was weak
    /// before the last move.
    ProbeDue {
        /// Last day of it.
        by: Day,
        /// What to watch, where something was weak.
        criterion: Option<Name>
    } "probe_due",
    /// The lift is no longer used.
    Retired "retired",
    /// The lift holds its load: right where it should be.
    Holding {
        /// Sessions at this place.
        sessions: u16
    } "holding",
    /// The gate is open; a move waits for the coach.
    MoveOnOffer {
        /// Last day of the offer.
        until: Day
    } "move_on_offer",
    /// Today is a bad day by two agreeing signs, or by a drop in a critical criterion.
    BadDay "bad_day",
    /// One sign says bad: look again after the first work set.
    BadDaySingle "bad_day_single",
    /// The day's class is not known.
    DayUnknown "day_unknown",
    /// A good day: no extra load.
    GoodDay "good_day",
    /// All sessions that opened the gate were bad days.
    QualifiedOnBadDays "qualified_on_bad_days",
    /// The lift was never trained.
    NeverTrained "never_trained",
    /// The last session lies too far back.
    Stale {
        /// Days since.
        days: u16,
        /// Days allowed.
        allowed: u16
    } "stale",
    /// The last move is too recent.
    CoolingOff {
        /// Days still to wait.
        days_left: u16
    } "cooling_off",
    /// Another lift of the region moved recently.
    RegionWindow {
        /// Where.
        region: Name,
        /// Days still to wait.
        days_left: u16
    } "region_window",
    /// The load has grown enough for this window of weeks.
    WindowCap {
        /// Highest load for now.
        load: Mass,
        /// Days until the window allows the next step.
        days_left: u16
    } "window_cap",
    /// The strict lift may not pass the forgiving lift's proven load.
    PairCap {
        /// Highest load for now.
        load: Mass
    } "pair_cap",
    /// The forgiving lift has no proof, or an old one.
    PairProofMissing "pair_proof_missing",
    /// The pair has already moved in this window.
    PairWindow {
        /// Days still to wait.
        days_left: u16
    } "pair_window",
    /// Pain in the strict lift: the forgiving lift holds and starts one step down.
    PairPain "pair_pain",
    /// The same critical fault in both lifts of a pair holds both.
    PairFault "pair_fault",
    /// Too few rest days since the other lift of the pair.
    PairRest {
        /// Full rest days there were.
        days: u16,
        /// Full rest days asked for.
        needed: u16
    } "pair_rest",
    /// The forgiving lift has run far ahead of a strict lift that is held: look at the pair, nothing is blocked.
    PairReview "pair_review",
    /// Nothing loadable lies within the allowed step.
    NoLoadableStep {
        /// Highest load the cap allows.
        cap: Mass,
        /// Next load that the equipment makes, where it makes one.
        next: Option<Mass>
    } "no_loadable_step",
    /// The coach's ceiling.
    Ceiling {
        /// Its load.
        load: Mass
    } "ceiling",
    /// Steps of a lift that is helped are measured against the body mass, and none is on record.
    BodyMassMissing "body_mass_missing",
    /// The moving dimension has reached its top.
    AtTop "at_top",
    /// A harder rung, range or tempo is not to be had in one step.
    NotOneStep "not_one_step",
    /// The log holds events of a kind that this version does not know; a newer stop may be among them.
    UnknownEventPresent {
        /// How many.
        count: u32
    } "unknown_event_present",
    /// Alone under a bar without pins: never a step up, and more in reserve.
    AloneWithoutPins "alone_without_pins",
    /// The last session was not marked by anyone but the lifter.
    NotScored "not_scored",
    /// The last session was not the work granted, so it is training and says nothing about the gate.
    NotAtGrant {
        /// In what it differed first.
        short: Shortfall
    } "not_at_grant",
    /// Height, stance, box, shoes, belt or straps changed, so the comparison of sessions starts anew.
    SetupChanged {
        /// When.
        since: Day
    } "setup_changed",
    /// Sets left less in reserve than asked, in so many of the last three sessions.
    ReserveShort {
        /// Sessions.
        sessions: u8
    } "reserve_short",
    /// Nothing lighter can be done at this place, and no easier rung is there, so the lift is left out today.
    NothingEasier "nothing_easier",
    /// Nothing lighter can be loaded at this place, so today's work is on the easier rung.
    EasierRung {
        /// Which.
        rung: Name
    } "easier_rung",
    /// The coach's override upward waits while pain, a day below the usual, an ask or easing stands.
    OverrideSuspended {
        /// Load allowed by it.
        load: Mass
    } "override_suspended",
    /// The bar's centre lies off its height by so much at the nearest way to load it.
    HeightOff {
        /// Millimetres; above is positive.
        mm: f64
    } "height_off",
    /// No disc tells its diameter, so nobody knows at which height the bar begins.
    HeightUnknown "height_unknown",
    /// Pain rises over three sessions, or stands high for three: a clinician should look at it.
    PainPersists {
        /// Where.
        region: Name
    } "pain_persists",
    /// Days since the region was loaded, and what is left of the load.
    Layoff {
        /// Days.
        gap: u16,
        /// Row of the layoff table, 1 being the shortest.
        row: u8,
        /// Load that is granted now.
        load: Mass
    } "layoff",
    /// First sessions after a break have half the sets.
    HalfSets {
        /// Sessions still to come.
        sessions: u8
    } "half_sets",
    /// The coach overruled the gate.
    OverrideInForce {
        /// Load allowed by it.
        load: Mass,
        /// Who.
        who: Name,
        /// Last day, where it has one.
        until: Option<Day>
    } "override_in_force",
    /// A planned easy week.
    EasyWeek "easy_week",
    /// Life gave an easy week already; none is added on top.
    BreakCounts {
        /// Days without training in the last two weeks.
        days: u16
    } "break_counts",
    /// More is left in reserve than planned.
    ReserveFloor {
        /// Repetitions.
        reserve: Rir
    } "reserve_floor",
    /// Rounded down to what the equipment makes.
    RoundedDown {
        /// From.
        from: Mass,
        /// To.
        to: Mass
    } "rounded_down",
    /// The equipment makes nothing at or below the load.
    NothingLoadable {
        /// Lightest load it makes.
        lightest: Mass
    } "nothing_loadable",
    /// The implement is taken or missing today; nothing is added to make up for it.
    ImplementUnavailable {
        /// Which.
        implement: Name
    } "implement_unavailable",
    /// Too little time: the lift is left out today, and nothing is added to make up for it.
    ShortOfTime "short_of_time",
    /// Fewer sets fit into the time.
    FewerSets {
        /// Sets that fit.
        sets: u8
    } "fewer_sets",
    /// The plan asks for less than granted.
    PlanAsksLess "plan_asks_less",
    /// A coach's act was refused by a guard, and is kept as refused.
    MoveRefused {
        /// The event.
        event: u32
    } "move_refused",
    /// Two fails in a row, or a second flare: one step easier.
    SteppedBack {
        /// From this load.
        from: Mass
    } "stepped_back",
}

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
