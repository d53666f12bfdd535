//! The numbers of the rules. Every default is this project's choice, and each is a parameter.

use alloc::format;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::session::at_most;
use crate::canonical::canonical_fields;
use crate::error::{Allowed, Code, Error};
use crate::quantity::Rir;
use crate::source::{OURS, default_of, rows};

/// One row of the layoff table.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
#[setters(prefix = "with_", no_std)]
pub struct LayoffRow {
    /// From this many days without loading the region.
    pub from_days: u16,
    /// Load that is left, as a part of the load before.
    pub load_left: f64,
    /// One rung easier, where the lift is the strict one of a pair.
    pub easier_rung: bool,
    /// Every criterion is looked at anew, as on a new rung.
    pub relearn: bool,
    /// Back to the lightest load at the right height.
    pub restart: bool,
}

impl LayoffRow {
    /// So much of the load is left after so many days, on the same rung.
    #[must_use]
    pub fn new(from_days: u16, load_left: f64) -> LayoffRow {
        LayoffRow { from_days, load_left, easier_rung: false, relearn: false, restart: false }
    }
}

canonical_fields!(LayoffRow: from_days, load_left, easier_rung, relearn, restart);

/// Numbers of the rules. Every default is this project's choice.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Policy {
    /// Days between two moves of one lift.
    pub cooling_off_days: u16,
    /// Window, in days, for moves that share a region.
    pub region_window_days: u16,
    /// Moves allowed in that window.
    pub region_moves: u8,
    /// Window, in days, over which the load of a lift may grow by `window_cap`.
    pub window_days: u16,
    /// Growth allowed over that window, as a part of the load.
    pub window_cap: f64,
    /// Days after the last session within which a move may be taken.
    pub freshness_days: u16,
    /// Days for which an open gate stays on offer.
    pub offer_days: u16,
    /// Sessions of calibration on a new rung.
    pub learning_sessions: u8,
    /// Score, of 0 to 10, from which pain blocks and needs clear sessions.
    pub pain_block_from: u8,
    /// Score, of 0 to 10, above which pain stops the region.
    pub pain_stop_above: u8,
    /// Clear sessions after blocking pain.
    pub clear_sessions: u8,
    /// Fails in a row that step a lift back.
    pub fails_to_step_back: u8,
    /// Largest automatic decrease, as a part of the load.
    pub step_back_cap: f64,
    /// Passes that end a step back.
    pub step_back_passes: u8,
    /// Passing sessions that end a return.
    pub return_passes: u8,
    /// Load on a harder rung as a part of the old load, where no ratio of the lifter's own is lower.
    pub rung_load: f64,
    /// Fails on a confirmed day below the usual that count as no information, in a row.
    pub neutral_fails: u8,
    /// Days for which the forgiving lift's proof counts.
    pub proof_days: u16,
    /// Full rest days between the lifts of a pair; from age 70 one more.
    pub pair_rest_days: u8,
    /// Whether a move needs a clearance in force.
    pub clearance_required: bool,
    /// Days a clearance holds where it names no end.
    pub clearance_days: u16,
    /// Days after which an agreed usual level of pain is to be looked at again.
    pub usual_review_days: u16,
    /// Days after which a maintained lift is looked at again, and after a move what was weak before it.
    pub probe_days: u16,
    /// Days for which a strict lift's gate stays closed before its pair is to be looked at.
    pub pair_review_days: u16,
    /// Growth of the forgiving lift meanwhile, as a part of its load, from which the pair is to be looked at.
    pub pair_review_growth: f64,
    /// Repetitions in reserve that a gate's effort cap asks for; a session that does not say what was asked for is held against no
    /// fewer.
    pub reserve_to_advance: Rir,
    /// Fewest repetitions in reserve that a plan may ask for without an override.
    pub reserve_floor: Rir,
    /// Take a move without asking the coach.
    pub automatic_acceptance: bool,
    /// The layoff table, shortest gap first.
    pub layoff: Vec<LayoffRow>,
    /// Age from which a layoff counts one row further down; an unknown age counts so too.
    pub older_from_years: u8,
}

canonical_fields!(
    Policy: cooling_off_days, region_window_days, region_moves, window_days, window_cap, freshness_days,
    offer_days, learning_sessions, pain_block_from, pain_stop_above, clear_sessions, fails_to_step_back,
    step_back_cap, step_back_passes, return_passes, rung_load, neutral_fails, proof_days, pair_rest_days,
    clearance_required, clearance_days, usual_review_days, probe_days, pair_review_days,
    pair_review_growth, reserve_to_advance, reserve_floor, automatic_acceptance, layoff, older_from_years
);

impl Default for Policy {
    fn default() -> Policy {
        let row = |from_days, load_left, easier_rung, relearn, restart| LayoffRow {
            from_days,
            load_left,
            easier_rung,
            relearn,
            restart,
        };
        Policy {
            cooling_off_days: 7,
            region_window_days: 14,
            region_moves: 1,
            window_days: 56,
            window_cap: 0.10,
            freshness_days: 21,
            offer_days: 21,
            learning_sessions: 6,
            pain_block_from: 3,
            pain_stop_above: 5,
            clear_sessions: 2,
            fails_to_step_back: 2,
            step_back_cap: 0.15,
            step_back_passes: 1,
            return_passes: 2,
            rung_load: 0.80,
            neutral_fails: 2,
            proof_days: 42,
            pair_rest_days: 1,
            clearance_required: true,
            clearance_days: 365,
            usual_review_days: 90,
            probe_days: 28,
            pair_review_days: 84,
            pair_review_growth: 0.20,
            reserve_to_advance: Rir::whole(2),
            reserve_floor: Rir::whole(1),
            automatic_acceptance: false,
            layoff: alloc::vec![
                row(11, 1.0, false, false, false),
                row(21, 0.90, false, false, false),
                row(42, 0.80, true, false, false),
                row(84, 0.65, true, true, false),
                row(182, 0.65, true, true, true),
            ],
            older_from_years: 70,
        }
    }
}

default_of! {
    "record.policy_default",
    /// The numbers of the rules where a log names none: moves, windows, pain, steps back, returns, probes, reviews and
    /// the layoff table.
    policy_default: Policy;
    source: OURS, place: "documentation of Policy, field by field", standing: OurChoice, seen: NotApplicable,
}

impl Policy {
    /// Checks every number against its hard limits.
    ///
    /// # Errors
    /// `out_of_range`.
    pub fn check(&self) -> Result<(), Error> {
        let part = |field, value, low, high| {
            crate::numeric::within(Code::OutOfRange, field, value, low, high, "").map(drop)
        };
        let count = |field, value: u16, low: f64, high: f64| part(field, f64::from(value), low, high);
        part("window_cap", self.window_cap, 0.001, 0.20)?;
        part("step_back_cap", self.step_back_cap, 0.01, 0.50)?;
        part("rung_load", self.rung_load, 0.10, 1.0)?;
        count("cooling_off_days", self.cooling_off_days, 1.0, 365.0)?;
        count("region_window_days", self.region_window_days, 1.0, 365.0)?;
        count("window_days", self.window_days, 7.0, 365.0)?;
        count("freshness_days", self.freshness_days, 1.0, 365.0)?;
        count("offer_days", self.offer_days, 1.0, 365.0)?;
        count("clearance_days", self.clearance_days, 1.0, 1096.0)?;
        count("learning_sessions", u16::from(self.learning_sessions), 1.0, 30.0)?;
        count("neutral_fails", u16::from(self.neutral_fails), 0.0, 5.0)?;
        count("proof_days", self.proof_days, 1.0, 365.0)?;
        count("pair_rest_days", u16::from(self.pair_rest_days), 0.0, 14.0)?;
        count("usual_review_days", self.usual_review_days, 1.0, 365.0)?;
        count("probe_days", self.probe_days, 1.0, 365.0)?;
        count("pair_review_days", self.pair_review_days, 1.0, 1096.0)?;
        part("pair_review_growth", self.pair_review_growth, 0.01, 2.0)?;
        count("older_from_years", u16::from(self.older_from_years), 40.0, 120.0)?;
        for (field, value) in [
            ("region_moves", self.region_moves),
            ("fails_to_step_back", self.fails_to_step_back),
            ("step_back_passes", self.step_back_passes),
            ("return_passes", self.return_passes),
            ("clear_sessions", self.clear_sessions),
        ] {
            count(field, u16::from(value), 1.0, 10.0)?;
        }
        count("pain_block_from", u16::from(self.pain_block_from), 1.0, 5.0)?;
        count("pain_stop_above", u16::from(self.pain_stop_above), f64::from(self.pain_block_from), 5.0)?;
        self.check_layoff()
    }

    fn check_layoff(&self) -> Result<(), Error> {
        at_most("layoff", self.layoff.len(), 12)?;
        let mut before = 1;
        for (at, row) in self.layoff.iter().enumerate() {
            let inside = |error: Error| error.within(&format!("layoff[{at}]"));
            if row.from_days <= before {
                let rule = Allowed::rule("more days than the row before");
                return Err(inside(Error::new(Code::OutOfRange, "from_days", row.from_days, rule)));
            }
            before = row.from_days;
            crate::numeric::within(Code::OutOfRange, "load_left", row.load_left, 0.0, 1.0, "")
                .map_err(inside)?;
        }
        Ok(())
    }
}

rows![policy_default];
