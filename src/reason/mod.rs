//! Reason codes with their numbers: why a decision is what it is, and what stands in the way of a move.
//!
//! Uses quantity and source. A reason is a code and numbers; sentences are made of them elsewhere, so that an app
//! can speak any language.

#[macro_use]
mod declare;
mod halts;
mod happened;
mod named_place;
mod shortfall;
mod told;
mod unasked;
#[macro_use]
mod work;

pub use happened::{OverrideEnd, Restart, SignOffRefusal};
pub use named_place::NamedPlace;
pub use shortfall::Shortfall;
pub use told::Told;
pub use unasked::Unasked;

use crate::quantity::{Day, Length, Mass, Name, Rir};
use crate::sign::{Ask, PainFeature, StopSign};

with_those_of_the_work! {
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
        since: Day,
        /// What came with it, where that was said.
        features: alloc::vec::Vec<PainFeature>
    } "pain_stop",
    /// The lift is stopped until a clearance and the coach's sign-off.
    Stopped "stopped",
    /// The coach's last sign-off lifted no stop; told until one does.
    SignOffRefused {
        /// The stopped region; none for a stop of everything.
        region: Option<Name>,
        /// Signed off on that day.
        on: Day,
        /// Why it does not count.
        why: SignOffRefusal
    } "sign_off_refused",
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
        clear_sessions: u8,
        /// The last score told there, of 10; 0 for none.
        score: u8
    } "pain_block",
    /// Pain at or below the agreed usual level has not yet been steady for three sessions.
    UsualPainUnsteady {
        /// Where.
        region: Name,
        /// Steady training days still to come.
        clear_sessions: u8
    } "usual_pain_unsteady",
    /// The agreed usual level of pain is due to be looked at again; until then it allows nothing.
    UsualPainReview {
        /// Where.
        region: Name,
        /// When it was agreed.
        agreed: Day
    } "usual_pain_review",
    /// Nobody asked about pain in the last session, or today before the next one; missing is not zero.
    PainNotAsked {
        /// When nobody asked.
        when: Unasked
    } "pain_not_asked",
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
    /// The way back began at a stop, which a clearance and the coach's sign-off lifted.
    StopLifted {
        /// When.
        on: Day
    } "stop_lifted",
    /// The way back comes after an illness.
    AfterIllness "after_illness",
    /// The lifter's age is not known, so a break counts as for an older one.
    AgeUnknown "age_unknown",
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
    /// The look that was due is not done, and its last day is past.
    ProbeOverdue {
        /// Last day on which it was to be done.
        since: Day,
        /// What to watch, where something was weak.
        criterion: Option<Name>
    } "probe_overdue",
    /// The lift is kept, and its last session lay below the load down to which it is on plan.
    BelowBand {
        /// Heaviest load of that session.
        load: Mass,
        /// The lowest load on plan.
        not_below: Mass
    } "below_band",
    /// The lift is no longer used.
    Retired "retired",
    /// The lift holds its load: right where it should be.
    Holding {
        /// Sessions at this place, or there since they are counted anew.
        sessions: u16
    } "holding",
    /// Sessions at this place are counted anew since then.
    CountedAnew {
        /// From that day on.
        since: Day,
        /// Why.
        why: Restart
    } "counted_anew",
    /// The gate is open; a move waits for the coach.
    MoveOnOffer {
        /// Last day of the offer.
        until: Day
    } "move_on_offer",
    /// Today is a day below the usual by two agreeing signs, or by a drop in a critical criterion.
    DayBelow "day_below",
    /// One sign lies below the usual: look again after the first work set.
    DayBelowSingle "day_below_single",
    /// The day's class is not known.
    DayUnknown "day_unknown",
    /// A day above the usual: no extra load.
    DayAbove "day_above",
    /// All sessions that opened the gate were days below the usual.
    QualifiedBelowUsual "qualified_below_usual",
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
        /// Days until the window allows the next step; absent where waiting does not make it fit.
        days_left: Option<u16>
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
    PairPain {
        /// Where, where its last report still says so.
        region: Option<Name>,
        /// How much, of 10.
        score: Option<u8>,
        /// When that was said.
        on: Option<Day>
    } "pair_pain",
    /// The same critical fault in both lifts of a pair holds both.
    PairFault "pair_fault",
    /// Too few rest days since the other lift of the pair.
    PairRest {
        /// Full rest days there were.
        days: u16,
        /// Full rest days asked for.
        needed: u16
    } "pair_rest",
    /// The plan has both lifts of the pair on one day.
    PairTogether {
        /// The other one.
        partner: Name
    } "pair_together",
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
    /// Nobody said who and what would take a bar above the body; taken as alone without pins.
    RackNotAsked "rack_not_asked",
    /// The last session was not marked by anyone but the lifter.
    NotScored "not_scored",
    /// A repetition of the first set was missed, and nobody said which: whether the session passed is not known.
    MissNotPlaced "miss_not_placed",
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
    /// The safety pins stand at another height than before.
    PinsMoved {
        /// From this height, in millimetres.
        from_mm: f64,
        /// To this one.
        to_mm: f64,
        /// In the session of that day.
        on: Day
    } "pins_moved",
    /// Sets left less in reserve than was asked for, or than a step needs at the least, in so many of the last three
    /// sessions.
    ReserveShort {
        /// Sessions.
        sessions: u8,
        /// Sessions with enough in reserve still to come.
        more: u8
    } "reserve_short",
    /// Nobody said how much the sets left in reserve, in so many of the last three sessions.
    EffortNotSaid {
        /// Sessions.
        sessions: u8,
        /// Sessions of which it is said still to come.
        more: u8
    } "effort_not_said",
}

pub(crate) static DECLARED: crate::source::Declarations = &[];
