"""The functions and defaults of `prescription`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

part_per_point: float
"""Part of the load by which the next set differs for each point of rating missed.

# Domain
Somewhat more than one repetition is worth on the reps-load curves (2.4 to 3.7 %).

# Source
Helms et al. 2018, Frontiers in Physiology, as a digest quotes it: 2 % for every half point outside a target
range of ratings, and more after missed repetitions. This row has one target in place of a range.

# Known how
Not read in the work itself; copies seen: one public digest.

Source: Helms ER, Byrnes RK, Cooke DM, et al. RPE vs. percentage 1RM loading in periodized programs matched for sets and repetitions. Frontiers in Physiology 9:247, 2018
"""
largest_adjustment: float
"""Largest change of load from one set to the next, as a part of the load.

Source: This project's own choice; a parameter.
"""

_CONSTANTS = {
    "part_per_point": "prescription.part_per_point",
    "largest_adjustment": "prescription.largest_adjustment",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def next_set_fixed(*, load: _t.MassInput, done: _t.Rpe, target: _t.Rpe, part_per_point: float, limit: _t.MassInput) -> _t.Kilograms:
    """That set was harder or easier than wanted: what load for the next one?

    # Formula
    `next = load (1 - k (done - target))`; `k` part of the load for each point of rating. Never more than
    10 % away, and never above `limit`, the load granted for today.

    # Domain
    `k` above 0 and at most 0.1.

    # Errors
    `out_of_range` for `k`; `load_out_of_domain` at or below 0 kg.

    # Source
    Helms et al. 2018, Frontiers in Physiology 9:247, as a digest quotes it (row `prescription.next_set_fixed`). The
    source changed the load only outside a range of ratings, and more after missed repetitions; the limit of 10 %
    and the limit of the granted load are our choice.

    # Known how
    Not read in the work itself; copies seen: one public digest.

    Source: Helms ER, Byrnes RK, Cooke DM, et al. RPE vs. percentage 1RM loading in periodized programs matched for sets and repetitions. Frontiers in Physiology 9:247, 2018
    """
    given: dict[str, Any] = {"load": load, "done": done, "target": target, "part_per_point": part_per_point, "limit": limit}
    return _call("prescription.next_set_fixed", given)  # type: ignore[no-any-return]


def next_set_by_curve(*, load: _t.MassInput, reps: _t.Reps, done: _t.Rir, target: _t.Rir, equation: _t.Equation, limit: _t.MassInput) -> _t.Kilograms:
    """The same by the reps-load curve: one repetition in reserve is one repetition on the curve.

    # Formula
    `next = E(load, reps + reserve done) * part(reps + reserve wanted)` with the chosen equation. Never more than
    10 % away, and never above `limit`, the load granted for today.

    # Errors
    `reps_out_of_domain` where the equation has no value; `load_out_of_domain` at or below 0 kg.

    # Source
    Arithmetic over the equation chosen (row `prescription.next_set_by_curve`).
    """
    given: dict[str, Any] = {"load": load, "reps": reps, "done": done, "target": target, "equation": equation, "limit": limit}
    return _call("prescription.next_set_by_curve", given)  # type: ignore[no-any-return]


def back_off_load(*, top: _t.MassInput, reduction: float) -> _t.Kilograms:
    """What load for the back-off sets after a top set?

    # Formula
    `back-off = top (1 - reduction)`

    # Domain
    Reductions of 0.02, 0.04 and 0.06 were studied; up to 0.5 is taken. A larger reduction gives more sets
    before the target effort is reached again.

    # Errors
    `out_of_range`, `load_out_of_domain`.

    # Source
    Helms et al. 2018, J Strength Cond Res 32(6):1627-1636 (row `prescription.back_off_load`).

    # Known how
    Read in the work or in its abstract.

    Source: Helms ER, Cross MR, Brown SR, et al. Rating of perceived exertion as a method of volume autoregulation within a periodized program. Journal of Strength and Conditioning Research 32(6):1627-1636, 2018
    """
    given: dict[str, Any] = {"top": top, "reduction": reduction}
    return _call("prescription.back_off_load", given)  # type: ignore[no-any-return]


def stop_at_target_effort(*, done: _t.Rpe, target: _t.Rpe) -> bool:
    """Is this the last back-off set? Back-off sets end when the target effort is reached again.

    # Formula
    `stop = done >= target`

    # Errors
    None beyond those of building the ratings.

    # Source
    Helms et al. 2018, J Strength Cond Res 32(6):1627-1636 (row `prescription.stop_at_target_effort`).

    # Known how
    Read in the work or in its abstract.

    Source: Helms ER, Cross MR, Brown SR, et al. Rating of perceived exertion as a method of volume autoregulation within a periodized program. Journal of Strength and Conditioning Research 32(6):1627-1636, 2018
    """
    given: dict[str, Any] = {"done": done, "target": target}
    return _call("prescription.stop_at_target_effort", given)  # type: ignore[no-any-return]


def double_progression(*, done: _t.Numbers, bottom: _t.Reps, top: _t.Reps) -> _t.NextStep:
    """Repetitions first, then load: what comes next after these sets?

    # Formula
    Top of the range in every set: the load may rise. Below the bottom in any set: less load. Else more
    repetitions at the same load.

    # Domain
    One range for all sets, at least one set. It says what may be asked of the gate; it grants nothing.

    # Errors
    `not_enough_data` without a set; `interval_reversed` where the top lies below the bottom.

    # Source
    Common practice.
    """
    given: dict[str, Any] = {"done": done, "bottom": bottom, "top": top}
    return _call("prescription.double_progression", given)  # type: ignore[no-any-return]


def two_for_two(*, goal: _t.Reps, last_set_before: _t.Reps, last_set_now: _t.Reps) -> bool:
    """Two more repetitions than the goal in the last set, in two sessions running: may the load rise?

    # Formula
    `last set >= goal + 2` in this session and the one before.

    # Domain
    It says what may be asked of the gate; it grants nothing.

    # Errors
    None beyond those of building the repetitions.

    # Source
    Sheppard & Triplett 2016, chapter 17 (row `prescription.two_for_two`).

    # Known how
    Read in the work or in its abstract.

    Source: Sheppard JM, Triplett NT. Program design for resistance training. In: Haff GG, Triplett NT (eds). Essentials of Strength Training and Conditioning, 4th ed. Human Kinetics, 2016, chapter 17
    """
    given: dict[str, Any] = {"goal": goal, "last_set_before": last_set_before, "last_set_now": last_set_now}
    return _call("prescription.two_for_two", given)  # type: ignore[no-any-return]


def acsm_2009_step(*, load: _t.MassInput) -> _t.StepRange:
    """The published range of a step up at this load, where the current load can be done for one or two
    repetitions over the target.

    # Formula
    From 2 % to 10 % of the load.

    # Domain
    Healthy adults; loads of a repetition maximum. It says what may be asked of the gate; it grants nothing.

    # Errors
    `load_out_of_domain` at or below 0 kg.

    # Source
    ACSM 2009, abstract (row `prescription.acsm_2009_step`).

    # Known how
    Read in the work or in its abstract.

    Source: American College of Sports Medicine. Progression models in resistance training for healthy adults. Med Sci Sports Exerc 41:687-708, 2009
    """
    given: dict[str, Any] = {"load": load}
    return _call("prescription.acsm_2009_step", given)  # type: ignore[no-any-return]


def knight_1979(*, reps: _t.Reps) -> _t.StepRange:
    """Repetitions done in the set to failure at the working weight: by how much does the working weight change
    next time?

    # Formula
    Table: 0 to 2 repetitions, 5 to 2.5 kg less; 3 to 4, the same; 5 to 6, 2.5 to 5 kg more; 7 to 10, 2.5 to
    7.5 kg more; 11 and above, 5 to 10 kg more.

    # Domain
    Made for the knee extension after an injury; steps in kilograms do not suit a press of 25 kg. Whether the
    original keys the table to the third or the fourth set could not be read.

    # Errors
    `not_whole` for half repetitions.

    # Source
    Knight 1979 (row `prescription.knight_1979`), the column for the next session, read in two later books.

    # Known how
    Not read in the work itself; copies seen: two later books.

    Source: Knight KL. Knee rehabilitation by the daily adjustable progressive resistive exercise technique. American Journal of Sports Medicine 7(6):336-337, 1979
    """
    given: dict[str, Any] = {"reps": reps}
    return _call("prescription.knight_1979", given)  # type: ignore[no-any-return]


def technique_stop(*, critical_faults: Sequence[bool]) -> _t.TechniqueStop:
    """A critical point of technique was lost: what now?

    # Formula
    The set ends at the first critical fault; the lift ends after two sets that ended so.

    # Domain
    `critical_faults` has one entry for each set done so far, in order.

    # Errors
    None.

    # Source
    Common practice.
    """
    given: dict[str, Any] = {"critical_faults": critical_faults}
    return _call("prescription.technique_stop", given)  # type: ignore[no-any-return]


def first_rung(*, rungs: Sequence[_t.Rung], passed: Sequence[_t.Name]) -> float:
    """The first day: which rung? The hardest one whose movement held without load.

    # Formula
    Of the rungs that passed unloaded, one that is harder than no other passed rung of its chain is left
    above it; of several that are not comparable, the first listed.

    # Errors
    `empty_list` without rungs; `unknown_name` for a passed rung that is not on the ladder; `not_enough_data` where
    none passed: begin below the ladder, without the bar.

    # Source
    Our choice; movement before load is common practice.
    """
    given: dict[str, Any] = {"rungs": rungs, "passed": passed}
    return _call("prescription.first_rung", given)  # type: ignore[no-any-return]


def first_load(*, implement: _t.ImplementInput, stock: _t.StockInput, height: _t.Length | None = None) -> _t.Mass:
    """The first day: what load? The lightest that the implement makes, or the lightest that keeps the bar at its
    height where a height is wanted.

    # Formula
    The least loadable total; with a height, the least whose centre lies at that height or above. Discs alone carry the bar:
    for blocks under it ask `AtHeight`(crate::loading::AtHeight).

    # Domain
    Heights above 0 mm and up to 2 m, as for `AtHeight`(crate::loading::AtHeight). The lightest 20,000 loads up to 500 kg
    are looked at (our choice).

    # Errors
    `out_of_range` for a height beyond that; `not_loadable` where nothing reaches the height; `stock_too_large`, also where
    none of so many loads reaches it and there are more.

    # Source
    Our choice; rebuilding starts far below what a table of percentages would say.
    """
    given: dict[str, Any] = {"implement": implement, "stock": stock}
    if height is not None:
        given["height"] = height
    return _call("prescription.first_load", given)  # type: ignore[no-any-return]


def next_session(*, log: _t.LogInput, plan: _t.PlanInput, today: _t.Day) -> _t.SessionPlan:
    """What does this lifter do today, by the whole log?"""
    given: dict[str, Any] = {"log": log, "plan": plan, "today": today}
    return _call("prescription.next_session", given)  # type: ignore[no-any-return]


def next_session_from(*, state: _t.StateInput, plan: _t.PlanInput, today: _t.Day) -> _t.SessionPlan:
    """What does this lifter do today, by the state that was folded before?"""
    given: dict[str, Any] = {"state": state, "plan": plan, "today": today}
    return _call("prescription.next_session_from", given)  # type: ignore[no-any-return]


def first_lifts() -> list[str]:
    """Which lifts are there to begin with?"""
    given: dict[str, Any] = {}
    return _call("prescription.first_lifts", given)  # type: ignore[no-any-return]


def first_bars(*, lift: str, implements: Sequence[_t.ImplementInput], stock: _t.StockInput, blocks: Sequence[_t.Length]) -> list[_t.BarOffer]:
    """With which bar, and which load, does a lift begin? The lightest right bar first."""
    given: dict[str, Any] = {"lift": lift, "implements": implements, "stock": stock, "blocks": blocks}
    return _call("prescription.first_bars", given)  # type: ignore[no-any-return]


def first_lift(*, id: str, implement: _t.Name, load: _t.MassInput) -> _t.LiftParameters:
    """What is set for one more lift to begin with, until a coach sets it otherwise?"""
    given: dict[str, Any] = {"id": id, "implement": implement, "load": load}
    return _call("prescription.first_lift", given)  # type: ignore[no-any-return]


def begin(*, lifter: _t.Lifter, day: _t.Day, lifts: Sequence[_t.FirstLiftInput], implements: Sequence[_t.ImplementInput], stock: _t.StockInput, blocks: Sequence[_t.Length], cleared_by: _t.Name | None = None) -> _t.Beginning:
    """Somebody new: a log that begins with these lifts, and the plan for the first session?"""
    given: dict[str, Any] = {"lifter": lifter, "day": day, "lifts": lifts, "implements": implements, "stock": stock, "blocks": blocks}
    if cleared_by is not None:
        given["cleared_by"] = cleared_by
    return _call("prescription.begin", given)  # type: ignore[no-any-return]


def other_bars(*, log: _t.LogInput, lift: _t.Name) -> list[_t.BarOffer]:
    """With which other bar may a lift be done? None raises its working load."""
    given: dict[str, Any] = {"log": log, "lift": lift}
    return _call("prescription.other_bars", given)  # type: ignore[no-any-return]


def with_bar(*, log: _t.LogInput, lift: _t.Name, implement: _t.Name) -> _t.RecordParameters:
    """What is set, with that bar for that lift?"""
    given: dict[str, Any] = {"log": log, "lift": lift, "implement": implement}
    return _call("prescription.with_bar", given)  # type: ignore[no-any-return]


def with_kit(*, log: _t.LogInput, implements: Sequence[_t.ImplementInput], stock: _t.StockInput, blocks: Sequence[_t.Length]) -> _t.RecordParameters:
    """What is set, with these bars, discs and blocks?"""
    given: dict[str, Any] = {"log": log, "implements": implements, "stock": stock, "blocks": blocks}
    return _call("prescription.with_kit", given)  # type: ignore[no-any-return]


def longer_range(*, implement: _t.ImplementInput, stock: _t.StockInput, load: _t.MassInput, from_: _t.Length, to: _t.Length) -> _t.LongerRange:
    """A longer range: what load does it start at, and how does it begin?"""
    given: dict[str, Any] = {"implement": implement, "stock": stock, "load": load, "from": from_, "to": to}
    return _call("prescription.longer_range", given)  # type: ignore[no-any-return]
