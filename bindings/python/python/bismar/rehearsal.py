"""The functions and defaults of `rehearsal`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

low_skill: float
"""Chance that a repetition is acceptable, for a lifter who should be held.

# Source
Our choice (row `rehearsal.low_skill`).

Source: This project's own choice; a parameter.
"""
high_skill: float
"""Chance that a repetition is acceptable, for a lifter who should get through.

# Source
Our choice (row `rehearsal.high_skill`).

Source: This project's own choice; a parameter.
"""
long_gate: float
"""Sessions without a miss from which a gate is called long.

# Source
Our choice (row `rehearsal.long_gate`).

Source: This project's own choice; a parameter.
"""
most_lifter_weeks: float
"""Most lifters times weeks in one rehearsal.

# Source
Our choice (row `rehearsal.most_lifter_weeks`).

Source: This project's own choice; a parameter.
"""

_CONSTANTS = {
    "low_skill": "rehearsal.low_skill",
    "high_skill": "rehearsal.high_skill",
    "long_gate": "rehearsal.long_gate",
    "most_lifter_weeks": "rehearsal.most_lifter_weeks",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def check(*, parameters: _t.RecordParametersInput, plan: _t.PlanInput | None = None) -> list[_t.Finding]:
    """What is wrong with these parameters, and with this plan, before anyone lifts?

    # Domain
    As `check()`: the same answer, for calls by name.

    # Errors
    None: what would be refused is a finding.

    # Source
    Arithmetic over the rules in force (row `rehearsal.check`).
    """
    given: dict[str, Any] = {"parameters": parameters}
    if plan is not None:
        given["plan"] = plan
    return _call("rehearsal.check", given)  # type: ignore[no-any-return]


def check_clearance(*, parameters: _t.RecordParametersInput, clearance: _t.ClearanceInput) -> list[_t.Finding]:
    """Does what this clearance allows reach the start loads?

    # Domain
    Limits of load only; a limit on effort, range or breathing is kept by the decisions themselves.

    # Errors
    What a log says of the clearance: `empty_list`, `missing_field`, `too_many` and `unknown_region` for its limits.

    # Source
    Arithmetic over the rules in force (row `rehearsal.check_clearance`).
    """
    given: dict[str, Any] = {"parameters": parameters, "clearance": clearance}
    return _call("rehearsal.check_clearance", given)  # type: ignore[no-any-return]


def simulate(*, parameters: _t.RecordParametersInput, plan: _t.PlanInput, model: _t.SkillModelInput, weeks: float, lifters: float, seed: float) -> _t.Rehearsal:
    """A lifter of this skill under these rules: how long until a milestone, how often held, how often back?

    Each lifter trains what `next_session_from`(crate::prescription::next_session_from) prescribes, through
    `State::apply`(crate::progression::State::apply), with every chance as the model states it. A rehearsal
    of the rules: it foretells nothing about a person.

    # Formula
    Each draw comes from a stream of its own for lifter, day and lift, so that lifters of different skill
    meet the same days. Centiles are the smallest days by which 10, 25, 50, 75 and 90 % of the lifters were
    there. A step on offer is taken on the lift's day of training; of lifts that share the days after a step (a pair, or a
    region), the one that moved last leaves the next step to one that has waited longer and has not let its day go by.

    # Domain
    At most `MOST_LIFTER_WEEKS` lifters times weeks. Nobody learns: skill stays as stated.

    # Errors
    `rehearsal_too_long`; `out_of_range` without a lifter or a week; `unknown_lift` for a lift of the week
    that the plan leaves out; what `SkillModel::check`, `Parameters::check` and `Plan::check` report.

    # Source
    Our choice of model (row `rehearsal.simulate`); the generator is SplitMix64 (Steele, Lea & Flood 2014,
    doi 10.1145/2660193.2660195).
    """
    given: dict[str, Any] = {"parameters": parameters, "plan": plan, "model": model, "weeks": weeks, "lifters": lifters, "seed": seed}
    return _call("rehearsal.simulate", given)  # type: ignore[no-any-return]


def check_week(*, parameters: _t.RecordParametersInput, week: Sequence[_t.TrainingDay]) -> list[_t.Finding]:
    """Are the lifts of each pair far enough apart in this week, and does every lift come back in time?

    # Formula
    Full rest days between two days of a week that repeats: days from one to the next, less one. Asked for:
    the policy's number for a pair (one more for an older lifter or one of unknown age, which this check leaves out).

    # Errors
    `out_of_range` for a day that is not 0 to 6 or named twice; `unknown_lift`; `duplicate_lift`.

    # Source
    Arithmetic over the rules in force (row `rehearsal.check_week`).
    """
    given: dict[str, Any] = {"parameters": parameters, "week": week}
    return _call("rehearsal.check_week", given)  # type: ignore[no-any-return]
