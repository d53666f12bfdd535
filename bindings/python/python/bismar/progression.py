"""The functions and defaults of `progression`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call


def fold(*, log: _t.LogInput) -> _t.State:
    """What is the state after this log? Order in the list does not matter; day and number do."""
    given: dict[str, Any] = {"log": log}
    return _call("progression.fold", given)  # type: ignore[no-any-return]


def apply(*, state: _t.StateInput, event: _t.EventInput) -> _t.State:
    """What is the state after one more event? `needs_refold` if the event changes the past."""
    given: dict[str, Any] = {"state": state, "event": event}
    return _call("progression.apply", given)  # type: ignore[no-any-return]


def decide(*, state: _t.StateInput, today: _t.Day) -> list[_t.Decision]:
    """What may each lift do today, and what stands in its way?"""
    given: dict[str, Any] = {"state": state, "today": today}
    return _call("progression.decide", given)  # type: ignore[no-any-return]
