//! How the strict and the forgiving lift of a pair stand to each other, against this lifter's own past.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::diary::Diary;
use super::lacking::Lacking;
use super::strength::{Estimated, LEVEL, Sessions};
use crate::caution::Caution;
use crate::condition::{PairedEstimate, RatioPrior, VariantRatio, variant_ratio};
use crate::error::Error;
use crate::loading::{BarKind, Implement};
use crate::quantity::{Day, Interval, Mass, Name};
use crate::reason::Reason;
use crate::record::{Log, StartsFrom};
use crate::statistics::quantile;

/// Estimates at most so many days apart count as of one week.
const SAME_WEEK: i32 = 7;
/// Older weeks say little about how two lifts stand now (our choice).
const HALF_A_YEAR: i32 = 182;
/// Before own data: a forgiving variant may be anything from a little under to twice the strict one and more (our choice,
/// wider than what is published for hex over straight bar, since other pairs have no published ratio).
const OTHER_PAIRS: (f64, f64) = (0.9, 2.5);
/// The ends of [`RatioPrior::HEX_OVER_STRAIGHT`].
const HEX_OVER_STRAIGHT: (f64, f64) = (0.95, 1.25);
/// Fewest pairs for a band of the lifter's own, and for the own ratio to stand in place of the prior (our choice).
const FEWEST_FOR_BAND: usize = 8;
/// Fewest pairs for saying that a ratio is usual or not (our choice).
const FEWEST: u32 = 3;
/// Ratios nearer than this are equal.
const ROUNDING: f64 = 1e-9;
/// How much of the ratio must be the lifter's own before it stands in place of the prior (our choice).
const OWN_WEIGHT: f64 = 0.75;

/// Two loads to look at in place of those last lifted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct PairLoads {
    /// Of the strict lift; absent means that last lifted.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub strict: Option<Mass>,
    /// Of the forgiving lift; absent means that last lifted.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub forgiving: Option<Mass>,
}

/// Where the two loads stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum PairPlace {
    /// Too few weeks to say, or a load is missing.
    Unknown,
    /// Within what is usual for this lifter.
    Usual,
    /// The strict lift is closer to the forgiving one than usual.
    StrictHigher,
    /// The forgiving lift has run ahead.
    ForgivingAhead,
    /// The strict load lies above the cap of the pair.
    AboveCap,
}

/// The ratio of a pair; always forgiving over strict.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PairAnswer {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Id of the strict lift.
    pub strict: Name,
    /// Id of the forgiving lift.
    pub forgiving: Name,
    /// The loads looked at.
    pub loads: PairLoads,
    /// Ratio of the two loads.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub ratio: Option<f64>,
    /// Ratio of the two strengths, from estimates of the same weeks, with its interval; the prior alone without any.
    pub own: VariantRatio,
    /// Where the ratio of a single week lies in nine of ten, from the lifter's own weeks; absent below eight of them.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub band: Option<Interval>,
    /// What was believed before own data, with 95 %.
    pub prior: Interval,
    /// Whether the own ratio should stand in place of the prior.
    pub replaces_prior: bool,
    /// The strict load may be at most this part of the forgiving lift's proven load.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub cap: Option<f64>,
    /// Where the two loads stand.
    pub place: PairPlace,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows of the registry that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// How do a strict and a forgiving lift stand to each other, and should the lifter's own ratio replace what was believed before?
///
/// # Rules
/// Each strict estimate of the last half year with the forgiving one nearest to it, at most 7 days apart. The own ratio stands
/// in place of the prior from 8 such pairs on, where three quarters of it are the lifter's own. The prior is the published
/// one for a hex over a straight bar from the floor, else 0.9 to 2.5. All of these limits are our choice.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`; `unknown_lift`.
pub fn pair(
    log: &Log,
    strict: &Name,
    forgiving: &Name,
    today: Day,
    loads: Option<&PairLoads>,
) -> Result<PairAnswer, Error> {
    Diary::of(log)?.pair(strict, forgiving, today, loads)
}

/// Each strict estimate with the forgiving one nearest to it in time.
fn paired(strict: &[Estimated], forgiving: &[Estimated]) -> Vec<PairedEstimate> {
    let apart = |one: Day, other: Day| one.since(other).abs();
    let pair = |own: &Estimated| {
        let near = forgiving.iter().min_by_key(|other| apart(own.day, other.day))?;
        let (one, other) = (own.evidence(), near.evidence());
        (apart(own.day, near.day) <= SAME_WEEK).then_some(PairedEstimate {
            strict: one.estimate,
            strict_error: one.standard_error,
            forgiving: other.estimate,
            forgiving_error: other.standard_error,
        })
    };
    strict.iter().filter_map(pair).collect()
}

impl Diary<'_> {
    /// How do the two lifts of a pair stand to each other? See [`pair`].
    ///
    /// # Errors
    /// `before_last_event`; `unknown_lift`.
    pub fn pair(
        &self,
        strict: &Name,
        forgiving: &Name,
        today: Day,
        loads: Option<&PairLoads>,
    ) -> Result<PairAnswer, Error> {
        self.check_today(today)?;
        let since = today.plus(-HALF_A_YEAR)?;
        let (mut found, mut missing, mut last) = (Vec::new(), Vec::new(), Vec::new());
        for lift in [strict, forgiving] {
            self.check_lift(lift)?;
            let sessions = Sessions::of(self, lift);
            let estimates = sessions.surest(since, today)?.0;
            if sessions.done.is_empty() {
                missing.push(Lacking::SessionOf(lift.clone()));
            } else if estimates.is_empty() {
                missing.push(Lacking::UsableSet(lift.clone()));
            }
            last.push(sessions.done.last().and_then(|done| done.lift.sets.iter().map(|set| set.load).max()));
            found.push(estimates);
        }
        let pairs = match found.as_slice() {
            [strict, forgiving] => paired(strict, forgiving),
            _ => Vec::new(),
        };
        let hex = self.is_hex_over_straight(strict, forgiving);
        let (low, high) = if hex { HEX_OVER_STRAIGHT } else { OTHER_PAIRS };
        let own = variant_ratio(&pairs, RatioPrior::new(low, high)?, LEVEL)?;
        let asked = loads.copied().unwrap_or_default();
        let loads = PairLoads {
            strict: asked.strict.or(last.first().copied().flatten()),
            forgiving: asked.forgiving.or(last.last().copied().flatten()),
        };
        let known = self.state().parameters().into_iter().flat_map(|all| &all.pairs);
        let same = |pair: &&crate::record::Pair| pair.strict == *strict && pair.forgiving == *forgiving;
        let band = band(&pairs)?;
        let mut cautions = self.cautions(today);
        cautions.push(Caution::EstimatesAreRanges);
        let mut answer = PairAnswer {
            stops: self.state().stops_on(today),
            today,
            strict: strict.clone(),
            forgiving: forgiving.clone(),
            loads,
            ratio: ratio(loads),
            own,
            band,
            prior: Interval::new(low, high, LEVEL)?,
            replaces_prior: band.is_some() && own.own_weight >= OWN_WEIGHT,
            cap: { known }.find(same).map(|pair| pair.ratio_cap),
            place: PairPlace::Unknown,
            missing,
            sources: alloc::vec!["condition.variant_ratio", "one_rm.estimate"],
            cautions,
        };
        answer.place = place(&answer);
        Ok(answer)
    }

    /// Whether the two are those of which a ratio is published: bars from the floor, one straight and one a hex bar.
    fn is_hex_over_straight(&self, strict: &Name, forgiving: &Name) -> bool {
        let hex = |id: &Name| {
            let all = self.state().parameters()?;
            let set = all.lift(id).filter(|set| set.starts_from == StartsFrom::Floor)?;
            match all.implement(&set.implement)? {
                Implement::Bar(bar) => Some(matches!(bar.kind(), BarKind::Hex { .. })),
                _ => None,
            }
        };
        hex(strict) == Some(false) && hex(forgiving) == Some(true)
    }
}

fn ratio(loads: PairLoads) -> Option<f64> {
    let strict = loads.strict.filter(|load| load.is_positive())?;
    Some(loads.forgiving?.kg() / strict.kg())
}

/// Between what nine tenths of the lifter's own weeks lay.
fn band(pairs: &[PairedEstimate]) -> Result<Option<Interval>, Error> {
    if pairs.len() < FEWEST_FOR_BAND {
        return Ok(None);
    }
    let ratios: Vec<f64> = pairs.iter().map(|pair| pair.forgiving / pair.strict).collect();
    Interval::new(quantile(&ratios, 0.05)?, quantile(&ratios, 0.95)?, 0.9).map(Some)
}

fn place(answer: &PairAnswer) -> PairPlace {
    let (Some(strict), Some(forgiving), Some(ratio)) =
        (answer.loads.strict, answer.loads.forgiving, answer.ratio)
    else {
        return PairPlace::Unknown;
    };
    if answer.cap.is_some_and(|cap| strict.kg() > cap * forgiving.kg()) {
        return PairPlace::AboveCap;
    }
    let usual = answer.band.unwrap_or(answer.own.interval);
    match ratio {
        _ if answer.own.pairs < FEWEST => PairPlace::Unknown,
        // A tie is usual; rounding must not undo it.
        ratio if ratio > usual.high() + ROUNDING => PairPlace::ForgivingAhead,
        ratio if ratio < usual.low() - ROUNDING => PairPlace::StrictHigher,
        _ => PairPlace::Usual,
    }
}
