//! Ordinary courses through the small world, so that moves are not millions of first weeks away.

use super::alphabet::Act;

/// One day of training of both lifts, the morning after it, and the day that follows.
const BOTH: [Act; 4] = [Act::DayOrdinary, Act::BothClean, Act::Morning, Act::WaitOne];
/// A move taken two days after the pair was trained, and the lifts trained on.
const FORGIVING_MOVES: [Act; 4] = [Act::WaitOne, Act::DayOrdinary, Act::AcceptForgiving, Act::Nothing];
const STRICT_MOVES: [Act; 4] = [Act::WaitOne, Act::DayOrdinary, Act::AcceptStrict, Act::Nothing];
/// A day of rest after the last session of the pair.
const A_DAY_LATER: [Act; 4] = [Act::WaitOne, Act::DayOrdinary, Act::Nothing, Act::Nothing];
const CLEARED: [Act; 4] = [Act::Cleared, Act::Nothing, Act::Nothing, Act::Nothing];
const EASIER: [Act; 4] = [Act::Cleared, Act::RungDown, Act::Nothing, Act::Nothing];

/// The forgiving lift moves, then the strict one, then the forgiving one to its top.
static TO_THE_TOP: &[Act] = [
    CLEARED,
    BOTH,
    BOTH,
    BOTH,
    FORGIVING_MOVES,
    BOTH,
    BOTH,
    STRICT_MOVES,
    CLEARED,
    BOTH,
    BOTH,
    FORGIVING_MOVES,
    BOTH,
    BOTH,
]
.as_flattened();

/// The strict lift goes down a rung and proves itself there.
static DOWN_A_RUNG: &[Act] =
    [EASIER, BOTH, BOTH, BOTH, FORGIVING_MOVES, BOTH, BOTH, BOTH, CLEARED, A_DAY_LATER].as_flattened();

pub(super) const TRUNKS: &[&[Act]] = &[TO_THE_TOP, DOWN_A_RUNG];
