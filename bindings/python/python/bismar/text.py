"""The functions and defaults of `text`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call


def compare(*, log: _t.LogInput, lift: _t.Name, today: _t.Day, to: _t.GrantInput, from_: _t.GrantInput | None = None, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.compare` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "lift": lift, "today": today, "to": to, "unit": unit}
    if from_ is not None:
        given["from"] = from_
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.compare", given)  # type: ignore[no-any-return]


def handover(*, log: _t.LogInput, today: _t.Day, since: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.handover` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "since": since, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.handover", given)  # type: ignore[no-any-return]


def history(*, log: _t.LogInput, lift: _t.Name | None = None, today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.history` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "unit": unit}
    if lift is not None:
        given["lift"] = lift
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.history", given)  # type: ignore[no-any-return]


def in_force(*, log: _t.LogInput, today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.in_force` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.in_force", given)  # type: ignore[no-any-return]


def missed(*, log: _t.LogInput, plan: _t.PlanInput, today: _t.Day, next: _t.NextPlanned | None = None, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.missed` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "plan": plan, "today": today, "unit": unit}
    if next is not None:
        given["next"] = next
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.missed", given)  # type: ignore[no-any-return]


def next_set(*, log: _t.LogInput, plan: _t.PlanInput, today: _t.Day, done: _t.SetsTodayInput, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.next_set` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "plan": plan, "today": today, "done": done, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.next_set", given)  # type: ignore[no-any-return]


def opens(*, log: _t.LogInput, today: _t.Day, suppose: _t.EventKindInput | None = None, instead: _t.LogInput | None = None, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.opens` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "unit": unit}
    if suppose is not None:
        given["suppose"] = suppose
    if instead is not None:
        given["instead"] = instead
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.opens", given)  # type: ignore[no-any-return]


def rack(*, log: _t.LogInput, plan: _t.PlanInput, lift: _t.Name, today: _t.Day, tolerance: _t.Tolerance | None = None, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.rack` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "plan": plan, "lift": lift, "today": today, "unit": unit}
    if tolerance is not None:
        given["tolerance"] = tolerance
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.rack", given)  # type: ignore[no-any-return]


def raters(*, log: _t.LogInput, lift: _t.Name | None = None, today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.raters` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "unit": unit}
    if lift is not None:
        given["lift"] = lift
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.raters", given)  # type: ignore[no-any-return]


def review(*, log: _t.LogInput, today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.review` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.review", given)  # type: ignore[no-any-return]


def block_review(*, log: _t.LogInput, today: _t.Day, name: _t.Name | None = None, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.block_review` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "unit": unit}
    if name is not None:
        given["name"] = name
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.block_review", given)  # type: ignore[no-any-return]


def curve(*, log: _t.LogInput, lift: _t.Name, today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.curve` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "lift": lift, "today": today, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.curve", given)  # type: ignore[no-any-return]


def day(*, log: _t.LogInput, today: _t.Day, answers: _t.DayAnswersInput | None = None, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.day` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "unit": unit}
    if answers is not None:
        given["answers"] = answers
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.day", given)  # type: ignore[no-any-return]


def easy_week(*, log: _t.LogInput, plan: _t.PlanInput | None = None, today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.easy_week` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "unit": unit}
    if plan is not None:
        given["plan"] = plan
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.easy_week", given)  # type: ignore[no-any-return]


def pair(*, log: _t.LogInput, strict: _t.Name, forgiving: _t.Name, today: _t.Day, loads: _t.PairLoadsInput | None = None, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.pair` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "strict": strict, "forgiving": forgiving, "today": today, "unit": unit}
    if loads is not None:
        given["loads"] = loads
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.pair", given)  # type: ignore[no-any-return]


def trend(*, log: _t.LogInput, lift: _t.Name, today: _t.Day, weeks: float | None = None, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.trend` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "lift": lift, "today": today, "unit": unit}
    if weeks is not None:
        given["weeks"] = weeks
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.trend", given)  # type: ignore[no-any-return]


def verdicts(*, log: _t.LogInput, today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.verdicts` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.verdicts", given)  # type: ignore[no-any-return]


def week(*, log: _t.LogInput, today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.week` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "today": today, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.week", given)  # type: ignore[no-any-return]


def year(*, log: _t.LogInput, plan: _t.PlanInput, today: _t.Day, sex: _t.Sex | None = None, phases: Sequence[_t.Phase] | None = None, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.year` say, in sentences?"""
    given: dict[str, Any] = {"log": log, "plan": plan, "today": today, "unit": unit}
    if sex is not None:
        given["sex"] = sex
    if phases is not None:
        given["phases"] = phases
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.year", given)  # type: ignore[no-any-return]


def share(*, lifters: Sequence[_t.SharingInput], today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.share` say, in sentences? Each lift by the name that its own log has for it."""
    given: dict[str, Any] = {"lifters": lifters, "today": today, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.share", given)  # type: ignore[no-any-return]


def sets_to_log(*, table: _t.SetsTable, log: _t.LogInput, reading: _t.TableReading | None = None, unit: _t.Unit, phrases: _t.Translation | None = None) -> list[str]:
    """What does `answers.sets_to_log` say of the table, in sentences?"""
    given: dict[str, Any] = {"table": table, "log": log, "unit": unit}
    if reading is not None:
        given["reading"] = reading
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.sets_to_log", given)  # type: ignore[no-any-return]


def session(*, log: _t.LogInput, plan: _t.PlanInput, today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> _t.SaidSession:
    """What does this lifter do today, in sentences: a stop first; and beside them one for everything in the plan, by the whole log?"""
    given: dict[str, Any] = {"log": log, "plan": plan, "today": today, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.session", given)  # type: ignore[no-any-return]


def session_from(*, state: _t.StateInput, plan: _t.PlanInput, today: _t.Day, unit: _t.Unit, phrases: _t.Translation | None = None) -> _t.SaidSession:
    """The same by the state that was folded before."""
    given: dict[str, Any] = {"state": state, "plan": plan, "today": today, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.session_from", given)  # type: ignore[no-any-return]


def error(*, error: _t.ToldErrorInput, unit: _t.Unit, phrases: _t.Translation | None = None) -> str:
    """What was refused, and why, as one or two sentences: an error of this library as it was thrown, a range of masses in the unit."""
    given: dict[str, Any] = {"error": error, "unit": unit}
    if phrases is not None:
        given["phrases"] = phrases
    return _call("text.error", given)  # type: ignore[no-any-return]


def phrases() -> list[_t.Phrase]:
    """Every phrase with its key, in English: what a translation has to say."""
    given: dict[str, Any] = {}
    return _call("text.phrases", given)  # type: ignore[no-any-return]
