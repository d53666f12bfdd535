//! What a session says about one lift: judged at the place and load at which it was done.

use alloc::vec::Vec;

use super::asked::Asked;
use super::lift::Lift;
use super::view::View;
use crate::error::Error;
use crate::gate::{Mark, Outcome, PassReason, SessionVerdict, SetMarks, session_pass_of};
use crate::quantity::{Length, Mass, Name, Reserve};
use crate::reason::Shortfall;
use crate::record::{Effort, LiftParameters, LiftSession, Place, Setup, WorkSet};

/// Heights that differ by no more than this are the same start (our choice: what a tape measures).
const SAME_HEIGHT_MM: f64 = 10.0;

/// A lift of a session with its judgement.
pub(crate) struct Judged {
    pub(crate) outcome: Outcome,
    pub(crate) critical: bool,
    /// A region of the lift hurt.
    pub(crate) pain: bool,
    /// In what it fell short of the work granted.
    pub(crate) short: Option<Shortfall>,
    /// It was done at another place than the granted one, or the day asked for another.
    pub(crate) elsewhere: bool,
    /// The work granted was done, of it or with more beside it, or fewer sets or repetitions of it.
    pub(crate) here: bool,
    /// Anything of it was done elsewhere, and not all of the work granted beside that.
    pub(crate) away: bool,
    /// The day asked for another place than the granted one, and it was done there.
    pub(crate) as_asked_elsewhere: bool,
    pub(crate) scored: u16,
    pub(crate) acceptable: u16,
    pub(crate) fault: Option<Name>,
    pub(crate) weak: Option<Name>,
    pub(crate) watched_held: bool,
    /// The least reserve of the sets, in half repetitions, where every set says one.
    pub(crate) reserve: Option<u16>,
    /// A set left less in reserve than was asked for, or than a step needs at the least.
    pub(crate) short_of_reserve: bool,
    /// A set says nothing of its effort.
    pub(crate) effort_unsaid: bool,
    /// All that is not known is which repetition was missed.
    pub(crate) miss_unplaced: bool,
    /// No set had half of the repetitions granted: a plan may ask for fewer than those, which no log tells (our choice).
    pub(crate) is_token: bool,
    /// The heaviest load of its sets.
    pub(crate) heaviest: Option<Mass>,
    /// The heaviest load of those that were not missed.
    pub(crate) completed: Option<Mass>,
}

/// What was said of a lift on one day, in one session or in several.
pub(crate) struct Said<'a> {
    pub(crate) sets: Vec<&'a WorkSet>,
    pub(crate) parts: Vec<&'a LiftSession>,
    /// What the day asked of each part.
    asked: Vec<Asked>,
}

impl Judged {
    /// Whether it takes back what an earlier part of its day showed. Easier work as the day asked for it takes nothing.
    pub(crate) const fn takes_back(&self) -> bool {
        match self.outcome {
            Outcome::Pass => false,
            Outcome::Fail => true,
            Outcome::NotScored => !self.as_asked_elsewhere,
        }
    }
}

impl<'a> Said<'a> {
    pub(crate) fn new(parts: impl Iterator<Item = (&'a LiftSession, Asked)>) -> Said<'a> {
        let (parts, asked): (Vec<&LiftSession>, Vec<Asked>) = parts.unzip();
        Said { sets: parts.iter().flat_map(|part| &part.sets).collect(), parts, asked }
    }

    /// Whether every part was asked for elsewhere than at that place, and done there.
    fn is_elsewhere_as_asked(&self, granted: Place) -> bool {
        let mut parts = self.parts.iter().zip(&self.asked);
        parts.all(|(part, asked)| {
            asked.place != granted && part.place.is_none_or(|place| place == asked.place)
        })
    }

    /// Of each set whether it was done at the granted place and load, where those are all of the work granted, and nothing asked for less.
    fn whole_as_granted(&self, view: &View<'_>) -> Option<Vec<bool>> {
        if !can_show_granted(view) || self.eased().is_some() {
            return None;
        }
        let (lift, grant) = (view.lift, view.lift.now.grant);
        let (loads, printed) = (lift.loadable.at(grant.place), lift.granted_as_loaded());
        let parts = self.parts.iter().zip(&self.asked).flat_map(|(part, asked)| {
            let there = place_shortfall(lift, grant.place, asked.place, part).is_none();
            part.sets.iter().map(move |done| there && loads.is_as_printed(done.load, printed))
        });
        let granted: Vec<bool> = parts.collect();
        (granted.iter().filter(|granted| **granted).count() >= sets_due(view)).then_some(granted)
    }

    /// The day asked for less than the work granted. Whoever did more than that shows no more than who did as asked.
    fn eased(&self) -> Option<Shortfall> {
        self.asked.iter().any(|asked| asked.eased).then_some(Shortfall::Limit)
    }

    /// The setup as far as anybody spoke of it.
    pub(crate) fn setups(&self) -> impl Iterator<Item = &'a Setup> {
        self.parts.iter().filter_map(|part| part.setup.as_ref())
    }
}

/// Judges a lift of a session. Evidence counts only for the place and load at which it was shown: anything else done is
/// training, unless it failed.
pub(crate) fn judge(view: &View<'_>, said: &Said<'_>, hurts: bool) -> Result<Judged, Error> {
    let (set, now) = (&*view.lift.set, &view.lift.now);
    let careful: Vec<_> = said.sets.iter().map(|set| set.careful_marks_or_unscored()).collect();
    let marks: Vec<&SetMarks> = careful.iter().map(AsRef::as_ref).collect();
    let verdict = session_pass_of(&set.pass, &set.criteria, &marks)?;
    let elsewhere = elsewhere(view, said);
    let short = elsewhere.or_else(|| shortfall(view, said)).or_else(|| said.eased());
    let missed = said.sets.iter().any(|done| done.failed);
    let outcome = match verdict.passed {
        Outcome::Fail => Outcome::Fail,
        _ if missed => Outcome::Fail,
        Outcome::Pass if short.is_none() => Outcome::Pass,
        _ => Outcome::NotScored,
    };
    let beside = short.and_then(|_| said.whole_as_granted(view));
    let failed = match &beside {
        Some(granted) if outcome == Outcome::NotScored => failed_as_granted(set, granted, &marks)?,
        _ => None,
    };
    let (outcome, verdict) = failed.map_or((outcome, verdict), |failed| (Outcome::Fail, failed));
    Ok(Judged {
        outcome,
        critical: verdict.critical_fail,
        pain: hurts,
        short,
        scored: u16::try_from(verdict.scored).unwrap_or(u16::MAX),
        acceptable: u16::try_from(verdict.acceptable).unwrap_or(u16::MAX),
        fault: lost_critical(set, &marks),
        here: counts_here(short) || beside.is_some(),
        elsewhere: elsewhere.is_some(),
        away: elsewhere.is_some() && beside.is_none(),
        as_asked_elsewhere: said.is_elsewhere_as_asked(now.grant.place),
        watched_held: counts_here(short) && super::probe::watched_held(now, set, &marks),
        weak: verdict.weakest,
        reserve: all_reserves(&said.sets).and_then(|all| all.into_iter().min()),
        short_of_reserve: said
            .parts
            .iter()
            .zip(&said.asked)
            .any(|(part, asked)| left_too_little(part, *asked)),
        effort_unsaid: said.sets.iter().any(|set| set.effort.is_none()),
        miss_unplaced: outcome == Outcome::NotScored
            && verdict.passed == Outcome::NotScored
            && verdict.reasons.iter().all(|reason| matches!(reason, PassReason::EarlyMissPossible { .. })),
        is_token: !said.sets.iter().any(|set| set.reps.halves() >= u16::from(now.grant.work.reps)),
        heaviest: said.sets.iter().map(|set| set.load).max(),
        completed: said.sets.iter().filter(|set| !set.failed).map(|set| set.load).max(),
    })
}

/// The verdict on what was done as granted, where it failed and more was done lighter or elsewhere: however much easier work is done
/// well beside it, it is failed. The other sets keep their numbers and have no repetitions.
fn failed_as_granted(
    set: &LiftParameters,
    granted: &[bool],
    marks: &[&SetMarks],
) -> Result<Option<SessionVerdict>, Error> {
    let other = SetMarks::unscored(0, crate::gate::Rater::Coach);
    let each = granted.iter().zip(marks);
    let alone: Vec<&SetMarks> = each.map(|(granted, own)| if *granted { *own } else { &other }).collect();
    let verdict = session_pass_of(&set.pass, &set.criteria, &alone)?;
    Ok(Some(verdict).filter(|verdict| verdict.passed == Outcome::Fail))
}

/// In what the place of any part differed from the granted one.
fn elsewhere(view: &View<'_>, said: &Said<'_>) -> Option<Shortfall> {
    let (lift, granted) = (view.lift, view.lift.now.grant.place);
    let mut parts = said.parts.iter().zip(&said.asked);
    parts.find_map(|(part, asked)| place_shortfall(lift, granted, asked.place, part))
}

/// Whether a session that fell short in that was one at the granted place and load all the same: of fewer sets or repetitions.
pub(crate) const fn counts_here(short: Option<Shortfall>) -> bool {
    matches!(short, None | Some(Shortfall::Sets | Shortfall::Reps))
}

/// Whether the work granted can be shown. More than that may be allowed all the same. Where nothing is so light as what is allowed, no
/// range of the lift is, or nothing nearly so heavy is made, nothing is shown.
fn can_show_granted(view: &View<'_>) -> bool {
    let range = view.lift.now.grant.place.range;
    view.range_allowed(range).is_some() && view.allows_granted_load() && !view.is_kit_held()
}

/// In what the work done fell short of the work granted, or differed from it: the first of load, sets, reps.
fn shortfall(view: &View<'_>, said: &Said<'_>) -> Option<Shortfall> {
    let (lift, grant) = (view.lift, view.lift.now.grant);
    let loads = lift.loadable.at(grant.place);
    let printed = lift.granted_as_loaded();
    if !can_show_granted(view) {
        return Some(Shortfall::Limit);
    }
    // The sets of a plan with a lighter day are training; every set must be at the load.
    if !said.sets.iter().all(|done| loads.is_as_printed(done.load, printed)) {
        return Some(Shortfall::Load);
    }
    let reps = u16::from(grant.work.reps);
    let reps = if view.halves_repetitions() { reps.div_ceil(2) } else { reps };
    if said.sets.len() < sets_due(view) {
        return Some(Shortfall::Sets);
    }
    // Fewer repetitions than granted may be what the plan asked for: no pass, and no fail either.
    let whole = said.sets.iter().all(|done| done.reps.halves() >= 2 * reps);
    (!whole).then_some(Shortfall::Reps)
}

/// Sets of the work granted. Where nothing is lighter than it, less of it is asked for.
fn sets_due(view: &View<'_>) -> usize {
    let now = &view.lift.now;
    let sets = usize::from(now.grant.work.sets);
    if now.half_sessions > 0 || now.nothing_easier { sets.div_ceil(2) } else { sets }
}

/// In what the place differed from the granted one. Left out means where the day asked for it to be done. A day that asks for
/// an easier place shows nothing at the granted one, whatever was done.
fn place_shortfall(lift: &Lift, granted: Place, asked: Place, part: &LiftSession) -> Option<Shortfall> {
    let (set, place) = (&*lift.set, part.place.unwrap_or(asked));
    if place.rung != granted.rung {
        return Some(Shortfall::Rung);
    }
    if place.range != granted.range {
        return Some(Shortfall::Range);
    }
    if place.tempo != granted.tempo {
        return Some(Shortfall::Tempo);
    }
    if asked != granted {
        return Some(Shortfall::Limit);
    }
    let wanted = set.ranges.get(usize::from(granted.range)).copied();
    let less =
        |reached: Length| wanted.is_some_and(|wanted| !super::view::reaches(&set.ranges, reached, wanted));
    let marked = part.sets.iter().flat_map(WorkSet::all_marks).filter_map(|marks| marks.range_reached);
    if part.reached.into_iter().chain(marked).any(less) {
        return Some(Shortfall::Range);
    }
    // A bar that began elsewhere than at its height was another lift. Where nobody measured, it began where the equipment
    // puts it.
    let off = match (set.start_height(granted), part.height) {
        (Some(wanted), Some(measured)) => Some(measured.mm() - wanted.mm()),
        _ => lift.loadable.off_by_mm(granted),
    };
    off.filter(|off| off.abs() > SAME_HEIGHT_MM).map(|_| Shortfall::Range)
}

/// Whether two measured heights are one.
pub(crate) fn same_height(one: Length, other: Length) -> bool {
    (one.mm() - other.mm()).abs() <= SAME_HEIGHT_MM
}

fn lost_critical(set: &LiftParameters, marks: &[&SetMarks]) -> Option<Name> {
    // Most sessions lose nothing, and then no names need be compared.
    if !marks.iter().any(|set| set.marks.iter().any(|each| each.mark == Mark::NotMet)) {
        return None;
    }
    let critical = set.criteria.iter().filter(|criterion| criterion.critical);
    critical
        .map(|criterion| &criterion.id)
        .find(|id| marks.iter().any(|set| set.mark(id) == Mark::NotMet))
        .cloned()
}

/// Whether a set of which somebody said it left less in reserve than was asked for: the reserve that the session names, though
/// never less than what the day asks for whatever is planned; else what the day asked for.
fn left_too_little(part: &LiftSession, day: Asked) -> bool {
    let asked = part.reserve_asked.map(|asked| asked.max(day.reserve_least));
    let asked = asked.unwrap_or(day.reserve).halves();
    part.sets.iter().filter_map(|set| reserve(set.effort?)).any(|left| left < asked)
}

/// The reserve of each set, where every set says one.
fn all_reserves(sets: &[&WorkSet]) -> Option<Vec<u16>> {
    sets.iter().map(|set| reserve(set.effort?)).collect()
}

/// Repetitions left, in halves, where the effort says how many.
fn reserve(effort: Effort) -> Option<u16> {
    match effort {
        Effort::Rir(reserve) => Some(reserve.halves()),
        Effort::Rpe(rating) => match rating.reserve() {
            Reserve::Exactly(reserve) | Reserve::Between(reserve, _) => Some(reserve.halves()),
            Reserve::MoreLoadOnly => Some(0),
            Reserve::NotAReserve => None,
        },
    }
}
