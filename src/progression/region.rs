//! What is known of one region of the body.

use alloc::vec::Vec;

use super::status::Stop;
use crate::quantity::{Day, Name, Pain};
use crate::reason::Reason;
use crate::record::Policy;

/// Sessions over which pain is looked at for rising or staying.
pub(crate) const LAST_SCORES: usize = 3;

/// One region of the body.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RegionState {
    /// Its id.
    pub id: Name,
    /// A lift has loaded it under some parameters of this log.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub lifted: bool,
    /// Last day on which a lift loaded it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub loaded: Option<Day>,
    /// The last score reported, and its day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub last: Option<(Day, Pain)>,
    /// Last day on which an answer about it asked for less load: a high score, or pain that was new or rising.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lowered: Option<Day>,
    /// Last day on which an answer about it was more than its usual: by its score, or by a feature.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub unclear: Option<Day>,
    /// Worst scores of the last training days on which pain in it was asked about, oldest first.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub scores: Vec<(Day, Pain)>,
    /// The agreed usual level, since when, and on how many training days in a row it has been steady.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub usual: Option<(Pain, Day, u8)>,
    /// Training days without more pain than usual still to come before a move.
    pub clear_needed: u8,
    /// Last day that was taken as one of them.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub cleared: Option<Day>,
    /// Next-morning flares in a row.
    pub flares: u8,
    /// Day of training whose morning flared last.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub flared: Option<Day>,
    /// A pain stop in force.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub stop: Option<Stop>,
    /// Moves of its lifts within the region's window.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub moves: Vec<Day>,
}

impl RegionState {
    pub(crate) const fn new(id: Name) -> RegionState {
        RegionState {
            id,
            lifted: false,
            loaded: None,
            last: None,
            lowered: None,
            unclear: None,
            scores: Vec::new(),
            usual: None,
            clear_needed: 0,
            cleared: None,
            flares: 0,
            flared: None,
            stop: None,
            moves: Vec::new(),
        }
    }

    /// What its pain asks for before a step, with the last score.
    pub(crate) fn block(&self) -> Reason {
        Reason::PainBlock {
            region: self.id.clone(),
            clear_sessions: self.clear_needed,
            score: self.last.map_or(0, |(_, score)| score.score()),
        }
    }

    /// Whether it was said to hurt on that day.
    pub(crate) fn hurts_on(&self, on: Day) -> bool {
        self.last.is_some_and(|(day, score)| day == on && score > Pain::NONE)
    }

    /// Whether anything here still waits for an answer, or hurt when it was last spoken of.
    pub(crate) fn is_open(&self) -> bool {
        let hurts = self.last.is_some_and(|(_, score)| score > Pain::NONE);
        self.stop.is_some() || self.clear_needed > 0 || hurts
    }

    /// The score up to which pain is no more than usual; none where the agreed level is due to be looked at.
    pub(crate) fn usual_level(&self, on: Day, review_days: u16) -> Pain {
        let in_force = self.usual.filter(|_| self.review_due(on, review_days).is_none());
        in_force.map_or(Pain::NONE, |(level, _, _)| level)
    }

    /// Day of the agreement, where it is due to be looked at again.
    pub(crate) fn review_due(&self, on: Day, review_days: u16) -> Option<Day> {
        self.usual.map(|(_, agreed, _)| agreed).filter(|agreed| on.since(*agreed) > i32::from(review_days))
    }

    /// Keeps the worst score of a training day.
    pub(crate) fn keep_score(&mut self, score: Pain, on: Day) {
        match self.scores.last_mut() {
            Some((day, worst)) if *day == on => *worst = (*worst).max(score),
            _ => self.scores.push((on, score)),
        }
        if self.scores.len() > LAST_SCORES {
            self.scores.remove(0);
        }
    }

    /// Whether pain rises over three training days, or stands on three at the usual score that blocks or more, however late a
    /// policy lets it block, and above the level that is agreed to be usual.
    pub(crate) fn persists(&self, policy: &Policy, on: Day) -> bool {
        let scores: Vec<Pain> = self.scores.iter().map(|(_, score)| *score).collect();
        let rising = scores.windows(2).all(|pair| matches!(pair, [earlier, later] if later > earlier));
        let usual = self.usual_level(on, policy.usual_review_days);
        let from = policy.pain_block_from.min(Policy::default().pain_block_from);
        let high = |score: &Pain| score.score() >= from && *score > usual;
        scores.len() == LAST_SCORES && (rising || scores.iter().all(high))
    }
}
