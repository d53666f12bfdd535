//! A block of weeks, looked back on: keep, change, test again, raise the gate?

use alloc::vec::Vec;

use super::diary::Diary;
use super::lacking::Lacking;
use super::strength::{Estimated, Sessions};
use crate::caution::Caution;
use crate::condition::{Slope, TrendOptions, TrendVerdict, trend};
use crate::error::Error;
use crate::gate::{Outcome, SetMarks, session_pass_of};
use crate::progression::{LiftState, State};
use crate::quantity::{Day, Name};
use crate::reason::Reason;
use crate::record::{Event, EventKind, Grant, LiftSession, Log};

/// Marked sessions from which a block says anything about a rung (our choice), and the share of them, one in so many,
/// below which passes are few.
const ENOUGH_MARKED: u32 = 6;
const FEW_PASSES: u32 = 4;
/// Sessions in a block, all passed without a miss, from which the gate may be too easy (our choice).
const ALL_CLEAN: u32 = 10;
/// Fewest estimates of a block that say where strength stands (as the trend asks for).
const ENOUGH_ESTIMATES: u32 = 4;
/// Days before the block that let the level of the trend settle.
const SETTLE_DAYS: i32 = 56;
/// Shortest and longest window that a trend is read over here.
const SHORTEST_WINDOW: u32 = 14;
const LONGEST_WINDOW: u32 = 365;

/// What a block suggests for a lift. The coach decides; none of it moves anything.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum BlockAdvice {
    /// Nothing speaks for a change: the place is right. Holding is a success.
    Keep,
    /// Few sessions passed, or the lift stands easier than at the block's beginning: look for another rung or variant.
    Change {
        /// Sessions that passed.
        passed: u32,
        /// Of so many that were marked.
        marked: u32,
    },
    /// A region of the lift still needs clear sessions, or hurts on: look for a rung that spares it.
    ChangeForPain {
        /// Where.
        region: Name,
    },
    /// Too few sets say where strength stands: repetitions with some left in reserve, never a true maximum.
    Retest {
        /// Estimates in the block.
        estimates: u32,
    },
    /// Every session passed without one miss: the gate may ask for more than it does.
    RaiseGate {
        /// Sessions.
        sessions: u32,
    },
}

/// One lift over a block.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct BlockLift {
    /// Its id.
    pub lift: Name,
    /// Sessions.
    pub sessions: u32,
    /// Sessions that passed, by their marks.
    pub passed: u32,
    /// Sessions that did not.
    pub not_passed: u32,
    /// Sessions of which too little was seen to say.
    pub unmarked: u32,
    /// Acceptable repetitions of those scored.
    pub acceptable: u32,
    /// Repetitions scored.
    pub scored: u32,
    /// Place and work when the block began; absent where the lift was not there yet.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub from: Option<Grant>,
    /// Place and work at its end.
    pub to: Grant,
    /// Days for which it has stood at this place and load.
    pub days_here: u32,
    /// Estimates of strength in the block, on the rung and in the range of its last session.
    pub estimates: u32,
    /// Whether strength moved.
    pub trend: TrendVerdict,
    /// By how much, with its interval and the change that is real.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub slope: Option<Slope>,
    /// What the block suggests.
    pub advice: Vec<BlockAdvice>,
}

/// A block of weeks.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Block {
    /// Its name.
    pub name: Name,
    /// First day.
    pub from: Day,
    /// Last day; the day asked about where it has not ended.
    pub to: Day,
    /// It has ended.
    pub ended: bool,
}

/// A block, looked back on.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BlockReview {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// The block; absent where none was begun.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub block: Option<Block>,
    /// The lifts trained in it, in the order of the parameters.
    pub lifts: Vec<BlockLift>,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// What does the last block say of each lift: keep the rung or change it, test again, raise the gate, and is the trend real?
/// With a name, the last block of that name.
///
/// # Rules
/// Change: at least 6 marked sessions of which fewer than a quarter passed, or an easier place at the end than at the
/// beginning; for pain, where a region still needs clear sessions or hurts on. Test again: fewer than 4 estimates in the
/// block. Raise the gate: at least 10 sessions, all passed, not one repetition missed. The numbers are our choice.
///
/// # Errors
/// What [`fold`](crate::progression::fold()) and [`trend`] report; `before_last_event`.
pub fn block_review(log: &Log, today: Day, name: Option<&Name>) -> Result<BlockReview, Error> {
    Diary::of(log)?.block_review(today, name)
}

impl Diary<'_> {
    /// What does the last block say of each lift? See [`block_review`].
    ///
    /// # Errors
    /// What [`fold`](crate::progression::fold()) and [`trend`] report; `before_last_event`.
    pub fn block_review(&self, today: Day, name: Option<&Name>) -> Result<BlockReview, Error> {
        self.check_today(today)?;
        let events: Vec<&Event> = self.events().collect();
        let (mut missing, mut lifts) = (Vec::new(), Vec::new());
        let span = last_block(&events, today, name);
        if let Some(span) = &span {
            let before = self.state_after(span.first)?;
            let after = self.state_after(span.last)?;
            for lift in after.lifts() {
                let of_block = events.get(span.first..=span.last).unwrap_or_default();
                lifts.extend(of_lift(lift, (&before, &after), (self, of_block), &span.block)?);
            }
            if lifts.is_empty() {
                missing.push(Lacking::Session);
            }
        } else {
            missing.push(Lacking::Block);
        }
        let sources =
            alloc::vec!["condition.trend", "gate.session_pass", "one_rm.estimate", "one_rm.own_curve"];
        let cautions = self.cautions(today);
        let stops = self.state().stops_on(today);
        Ok(BlockReview {
            stops,
            today,
            block: span.map(|span| span.block),
            lifts,
            missing,
            sources,
            cautions,
        })
    }
}

/// A block with the places of its first and last event.
struct Span {
    block: Block,
    first: usize,
    last: usize,
}

fn last_block(events: &[&Event], today: Day, name: Option<&Name>) -> Option<Span> {
    let mut found: Option<Span> = None;
    for (at, event) in events.iter().enumerate() {
        match &event.kind {
            EventKind::BlockStarted(called) if name.is_none_or(|name| called == name) => {
                let block = Block { name: called.clone(), from: event.day, to: today, ended: false };
                found = Some(Span { block, first: at, last: events.len() - 1 });
            }
            EventKind::BlockEnded(called) => {
                let open = found.as_mut().filter(|span| !span.block.ended && span.block.name == *called);
                if let Some(span) = open {
                    (span.block.to, span.block.ended, span.last) = (event.day, true, at);
                }
            }
            _ => {}
        }
    }
    found
}

fn of_lift(
    lift: LiftState<'_>,
    (before, after): (&State, &State),
    (diary, of_block): (&Diary<'_>, &[&Event]),
    block: &Block,
) -> Result<Option<BlockLift>, Error> {
    let id = lift.id();
    let mut of = BlockLift {
        lift: id.clone(),
        sessions: 0,
        passed: 0,
        not_passed: 0,
        unmarked: 0,
        acceptable: 0,
        scored: 0,
        from: before.lift_state(id).map(|lift| lift.grant()),
        to: lift.grant(),
        days_here: block.to.since(lift.now().here.1).max(0).unsigned_abs(),
        estimates: 0,
        trend: TrendVerdict::NotEnoughHistory,
        slope: None,
        advice: Vec::new(),
    };
    for event in of_block {
        let EventKind::SessionRecorded(session) = &event.kind else { continue };
        for done in session.lifts.iter().filter(|done| done.lift == *id) {
            of.count(lift, done)?;
        }
    }
    if of.sessions == 0 {
        return Ok(None);
    }
    of.judge_strength(diary, block)?;
    of.advice = of.advise(lift, after, block.to);
    Ok(Some(of))
}

impl BlockLift {
    fn count(&mut self, lift: LiftState<'_>, done: &LiftSession) -> Result<(), Error> {
        let set = lift.parameters();
        let careful: Vec<_> = done.sets.iter().filter_map(|set| set.careful_marks()).collect();
        let marks: Vec<&SetMarks> = careful.iter().map(AsRef::as_ref).collect();
        let verdict = session_pass_of(&set.pass, &set.criteria, &marks)?;
        let missed = done.sets.iter().any(|set| set.failed);
        let whole = marks.len() == done.sets.len();
        self.sessions += 1;
        self.acceptable += verdict.acceptable;
        self.scored += verdict.scored;
        match verdict.passed {
            Outcome::Fail => self.not_passed += 1,
            _ if missed => self.not_passed += 1,
            Outcome::Pass if whole => self.passed += 1,
            _ => self.unmarked += 1,
        }
        Ok(())
    }

    fn judge_strength(&mut self, diary: &Diary<'_>, block: &Block) -> Result<(), Error> {
        let from = block.from.plus(-SETTLE_DAYS)?;
        let (found, _) = Sessions::until(diary, &self.lift, block.to).surest(from, block.to)?;
        let found: Vec<_> = found.iter().map(Estimated::evidence).collect();
        let inside = found.iter().filter(|one| one.day >= block.from).count();
        self.estimates = u32::try_from(inside).unwrap_or(u32::MAX);
        let days = block.to.since(block.from).unsigned_abs();
        if days < SHORTEST_WINDOW {
            return Ok(());
        }
        let options = TrendOptions {
            window_days: days.min(LONGEST_WINDOW),
            forecast_days: Vec::new(),
            ..TrendOptions::default()
        };
        let report = trend(&found, block.to, &options)?;
        (self.trend, self.slope) = (report.verdict, report.slope);
        Ok(())
    }

    fn advise(&self, lift: LiftState<'_>, after: &State, on: Day) -> Vec<BlockAdvice> {
        let policy = after.parameters().map(|all| &all.policy);
        let hurts = after.regions().iter().filter(|region| {
            let persists = policy.is_some_and(|policy| region.persists(policy, on));
            lift.parameters().regions.contains(&region.id)
                && (persists || region.clear_needed > 0 || region.stop.is_some())
        });
        let mut advice: Vec<BlockAdvice> =
            hurts.map(|region| BlockAdvice::ChangeForPain { region: region.id.clone() }).collect();
        let marked = self.passed + self.not_passed;
        // A harder rung starts with less load: only what got harder in nothing got easier.
        let set = lift.parameters();
        let easier = self.from.is_some_and(|from| {
            set.harder_in(&from, &self.to).is_empty() && !set.harder_in(&self.to, &from).is_empty()
        });
        let few = marked >= ENOUGH_MARKED && self.passed * FEW_PASSES < marked;
        if few || easier {
            advice.push(BlockAdvice::Change { passed: self.passed, marked });
        }
        let stays = advice.is_empty();
        // Nobody is sent to a test of a lift that hurts or is not trained.
        if stays && lift.status().is_trained() && self.estimates < ENOUGH_ESTIMATES {
            advice.push(BlockAdvice::Retest { estimates: self.estimates });
        }
        if stays
            && self.sessions >= ALL_CLEAN
            && self.passed == self.sessions
            && self.acceptable == self.scored
        {
            advice.push(BlockAdvice::RaiseGate { sessions: self.sessions });
        }
        if stays {
            advice.insert(0, BlockAdvice::Keep);
        }
        advice
    }
}
