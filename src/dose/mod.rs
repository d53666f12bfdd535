//! How much work was done and how tired it leaves: volume, session load, rolling load, impulse-response.
//!
//! Uses error, numeric, source, quantity, caution. Takes plain sets
//! ([`SetDone`]) and plain daily loads ([`DailyLoad`]) and need not know the log. Published metrics only, each
//! with what has been said against it ([`Caution`](crate::caution::Caution)); nothing here foretells injury, and no level is called
//! good or bad.
//!
//! | question | function |
//! |---|---|
//! | how much was lifted? | [`volume_load`], [`average_load`], [`relative_volume`] |
//! | and with the body counted? | [`maximum_dynamic_strength_volume_load`], [`system_mass`] |
//! | how hard was the session? | [`session_load_foster_2001`] |
//! | how alike were the days of the week? | [`week_monotony`] |
//! | how do the last days compare with what is usual? | [`rolling_load`], [`weighted_load`], [`recent_versus_usual`] |
//! | is this week out of the ordinary for this lifter? | [`week_change`] |
//! | how do fitness and fatigue build and fade? | [`impulse_response_before_session`], [`fit_impulse_response`] |
//! | what was done this week, this block? | [`week_summaries`], [`block_summary`] |
//! | a session was missed: shift, merge or drop? | [`missed_session`] |
//! | is an easy week worth thinking of? | [`easy_week_status`] |
//! | how is a way back, or down to a meet, limited? | [`return_weeks_caterisano_2019`], [`taper_share`] |
//! | what does a break cost? | [`strength_kept_after_break`], [`stopping_effects_bosquet_2013`] |

mod body_mass;
mod daily;
mod detraining;
mod easy_week;
mod change;
mod impulse;
mod impulse_timing;
mod missed;
mod monotony;
mod push_up;
mod ratio;
mod region;
mod response_answer;
mod response_fit;
mod response_model;
mod response_presets;
mod return_rule;
mod rolling;
mod session;
mod set;
mod summary;
mod taper;
mod variable_response;
mod volume;
mod work;
mod zone;

pub use body_mass::{
    BodyTable, SHANK_AND_FOOT_SHARE, SegmentShares, maximum_dynamic_strength_volume_load, pull_up_body_share,
    segment_shares_de_leva_1996, squat_body_share, system_mass,
};
pub use change::{BandOptions, QuietReason, WeekChange, WeekVerdict, week_change};
pub use daily::{DailyLoad, LoadTotal};
pub use detraining::{
    BreakGroup, StoppingEffect, StoppingOutcome, stopping_effects_bosquet_2013, stopping_effects_grgic_2022,
    stopping_effects_yang_2022, strength_kept_after_break, strength_loss_lemmer_2000,
};
pub use easy_week::{
    EasyWeekOptions, EasyWeekPractice, EasyWeekRange, EasyWeekStatus, easy_week_practice_rogerson_2024,
    easy_week_range_bell_2022, easy_week_status,
};
pub use impulse::{
    ImpulseResponse, InitialState, ResponseDay, ResponseForm, TimeConstants, impulse_response_after_session,
    impulse_response_before_session, steady_trace,
};
pub use impulse_timing::{days_to_peak, days_to_recovery, peak_gain};
pub use missed::{MissedFacts, MissedSession, missed_session};
pub use monotony::{
    Deviation, Monotony, WeekBasis, WeekLoad, monotony_limit, monotony_of, sessions_monotony, week_monotony,
    weekly_load,
};
pub use push_up::{
    MeanAndDeviation, PUSH_UP_START_SHARE_GOUVALI_2005, PushUp, PushUpPosition,
    push_up_peak_share_ebben_2011, push_up_still_share_mier_2014, push_up_still_share_suprak_2011,
};
pub use ratio::{
    RatioAnswer, RatioGap, RatioMethod, RatioOptions, RecentVersusUsual, coupled_from_uncoupled,
    coupling_correlation, recent_versus_usual, uncoupled_from_coupled,
};
pub use region::{RegionCount, RegionSets, SetCounting, fractional_sets};
pub use response_answer::{
    DaysRange, FitAnswer, FitOptions, MeasuredDay, ParameterCorrelation, RefusalReason, ResponseErrors,
    ResponseFit, ResponseParameter, SimulatedDay,
};
pub use response_fit::fit_impulse_response;
pub use response_presets::{
    DaysWithInterval, TimesSpread, hammer_thrower_times_busso_1994, illustrative_response,
    mean_variable_response_busso_2003, times_spread_hellard_2006,
};
pub use return_rule::{
    ReturnGroup, ReturnVolume, ReturnWeek, return_relative_volume_caterisano_2019,
    return_volume_limit_caterisano_2019, return_weeks_caterisano_2019,
};
pub use rolling::{Fading, WeightedStart, rolling_load, weighted_load, weighting_factor};
pub use session::{
    SessionRated, day_load_foster_2001, session_load_by_repetitions, session_load_foster_2001,
};
pub use set::{RelativeSet, SetDone, SetMoved};
pub use summary::{DiarySet, DoseSummary, EffortZones, PartSummary, block_summary, week_summaries};
pub use taper::{
    TaperFinding, TaperPractice, TaperShape, taper_finding_bosquet_2007, taper_practice_grgic_2017,
    taper_share,
};
pub use variable_response::{VariableDay, VariableResponse, variable_response_busso_2003};
pub use volume::{
    average_load, relative_average_load, relative_volume, relative_volume_load, session_density,
    total_repetitions, volume_load,
};
pub use work::{STANDARD_GRAVITY, displacement_volume_load, work_against_gravity};
pub use zone::{
    LiftsByZone, ZoneRow, lifts_by_zone, lifts_per_percent_in_reserve_hristov_2005, prilepin_table,
    prilepin_zone,
};

pub(crate) static DECLARED: crate::source::Declarations = &[
    volume::DECLARED,
    body_mass::DECLARED,
    push_up::DECLARED,
    work::DECLARED,
    zone::DECLARED,
    region::DECLARED,
    session::DECLARED,
    monotony::DECLARED,
    rolling::DECLARED,
    ratio::DECLARED,
    change::DECLARED,
    impulse::DECLARED,
    impulse_timing::DECLARED,
    variable_response::DECLARED,
    response_presets::DECLARED,
    response_fit::DECLARED,
    summary::DECLARED,
    missed::DECLARED,
    easy_week::DECLARED,
    taper::DECLARED,
    detraining::DECLARED,
    return_rule::DECLARED,
];
