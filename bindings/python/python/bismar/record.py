"""The functions and defaults of `record`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

policy_default: _t.Policy
"""The numbers of the rules where a log names none: moves, windows, pain, steps back, returns, probes, reviews and
the layoff table.

Source: This project's own choice; a parameter.
"""

_CONSTANTS = {
    "policy_default": "record.policy_default",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def log_without_health(*, log: _t.LogInput) -> _t.WithoutHealth:
    """The log without health detail and without anybody's own words, and what was left out?"""
    given: dict[str, Any] = {"log": log}
    return _call("record.log_without_health", given)  # type: ignore[no-any-return]


def plan_without_health(*, plan: _t.PlanInput) -> _t.Plan:
    """The plan without what tells of health?"""
    given: dict[str, Any] = {"plan": plan}
    return _call("record.plan_without_health", given)  # type: ignore[no-any-return]
