"""The functions and defaults of `answers`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call


def compare(*, log: _t.LogInput, lift: _t.Name, today: _t.Day, to: _t.GrantInput, from_: _t.GrantInput | None = None) -> _t.Comparison:
    """In what is that place and work of a lift harder or easier than what is granted now, or than another?"""
    given: dict[str, Any] = {"log": log, "lift": lift, "today": today, "to": to}
    if from_ is not None:
        given["from"] = from_
    return _call("answers.compare", given)  # type: ignore[no-any-return]


def handover(*, log: _t.LogInput, today: _t.Day, since: _t.Day) -> _t.Handover:
    """What does another coach need to know, and what changed since the end of that day?"""
    given: dict[str, Any] = {"log": log, "today": today, "since": since}
    return _call("answers.handover", given)  # type: ignore[no-any-return]


def history(*, log: _t.LogInput, lift: _t.Name | None = None, today: _t.Day) -> _t.History:
    """What was done of a lift, or of all, what did it come to, and how did what is granted move?"""
    given: dict[str, Any] = {"log": log, "today": today}
    if lift is not None:
        given["lift"] = lift
    return _call("answers.history", given)  # type: ignore[no-any-return]


def in_force(*, log: _t.LogInput, today: _t.Day) -> _t.InForce:
    """What is in force on that day, whatever is planned: what stops, and what keeps a lift below what it would be?"""
    given: dict[str, Any] = {"log": log, "today": today}
    return _call("answers.in_force", given)  # type: ignore[no-any-return]


def missed(*, log: _t.LogInput, plan: _t.PlanInput, today: _t.Day, next: _t.NextPlanned | None = None) -> _t.Missed:
    """A session was missed: shift, merge or drop, lift by lift?"""
    given: dict[str, Any] = {"log": log, "plan": plan, "today": today}
    if next is not None:
        given["next"] = next
    return _call("answers.missed", given)  # type: ignore[no-any-return]


def next_set(*, log: _t.LogInput, plan: _t.PlanInput, today: _t.Day, done: _t.SetsTodayInput) -> _t.NextSet:
    """That set is done: the same, less, more within today's load, or stop?"""
    given: dict[str, Any] = {"log": log, "plan": plan, "today": today, "done": done}
    return _call("answers.next_set", given)  # type: ignore[no-any-return]


def opens(*, log: _t.LogInput, today: _t.Day, suppose: _t.EventKindInput | None = None, instead: _t.LogInput | None = None) -> _t.Opens:
    """What would open if one more event were written down, or another log stood in its place?"""
    given: dict[str, Any] = {"log": log, "today": today}
    if suppose is not None:
        given["suppose"] = suppose
    if instead is not None:
        given["instead"] = instead
    return _call("answers.opens", given)  # type: ignore[no-any-return]


def rack(*, log: _t.LogInput, plan: _t.PlanInput, lift: _t.Name, today: _t.Day, tolerance: _t.Tolerance | None = None) -> _t.Rack:
    """How is each load of today made, disc by disc, what may it weigh, and how large would the next step be?"""
    given: dict[str, Any] = {"log": log, "plan": plan, "lift": lift, "today": today}
    if tolerance is not None:
        given["tolerance"] = tolerance
    return _call("answers.rack", given)  # type: ignore[no-any-return]


def share(*, lifters: Sequence[_t.SharingInput], today: _t.Day) -> _t.Share:
    """Several lifters, one bar: in which order do they lift, and which discs move between the sets?"""
    given: dict[str, Any] = {"lifters": lifters, "today": today}
    return _call("answers.share", given)  # type: ignore[no-any-return]


def raters(*, log: _t.LogInput, lift: _t.Name | None = None, today: _t.Day) -> _t.Raters:
    """Do two people who marked the same sets mark alike?"""
    given: dict[str, Any] = {"log": log, "today": today}
    if lift is not None:
        given["lift"] = lift
    return _call("answers.raters", given)  # type: ignore[no-any-return]


def review(*, log: _t.LogInput, today: _t.Day) -> _t.Review:
    """What looks odd in this log: body mass, units, marks, overrides, dates?"""
    given: dict[str, Any] = {"log": log, "today": today}
    return _call("answers.review", given)  # type: ignore[no-any-return]


def block_review(*, log: _t.LogInput, today: _t.Day, name: _t.Name | None = None) -> _t.BlockReview:
    """Was the block right: keep the rung or change it, test again, raise the gate; is the trend real?"""
    given: dict[str, Any] = {"log": log, "today": today}
    if name is not None:
        given["name"] = name
    return _call("answers.block_review", given)  # type: ignore[no-any-return]


def curve(*, log: _t.LogInput, lift: _t.Name, today: _t.Day) -> _t.LiftCurve:
    """What is this lifter's own curve of repetitions and load, and is there enough for one?"""
    given: dict[str, Any] = {"log": log, "lift": lift, "today": today}
    return _call("answers.curve", given)  # type: ignore[no-any-return]


def day(*, log: _t.LogInput, today: _t.Day, answers: _t.DayAnswersInput | None = None) -> _t.DayAnswer:
    """Does today lie below, within or above this lifter's usual, and how often is that a false alarm?"""
    given: dict[str, Any] = {"log": log, "today": today}
    if answers is not None:
        given["answers"] = answers
    return _call("answers.day", given)  # type: ignore[no-any-return]


def easy_week(*, log: _t.LogInput, plan: _t.PlanInput | None = None, today: _t.Day) -> _t.EasyWeek:
    """Is an easy week due, counting life's own breaks, and what would it be?"""
    given: dict[str, Any] = {"log": log, "today": today}
    if plan is not None:
        given["plan"] = plan
    return _call("answers.easy_week", given)  # type: ignore[no-any-return]


def pair(*, log: _t.LogInput, strict: _t.Name, forgiving: _t.Name, today: _t.Day, loads: _t.PairLoadsInput | None = None) -> _t.PairAnswer:
    """How do a strict and a forgiving lift stand to each other, against this lifter's own past?"""
    given: dict[str, Any] = {"log": log, "strict": strict, "forgiving": forgiving, "today": today}
    if loads is not None:
        given["loads"] = loads
    return _call("answers.pair", given)  # type: ignore[no-any-return]


def trend(*, log: _t.LogInput, lift: _t.Name, today: _t.Day, weeks: float | None = None) -> _t.Trend:
    """Is the strength of this lift moving, and is the change real?"""
    given: dict[str, Any] = {"log": log, "lift": lift, "today": today}
    if weeks is not None:
        given["weeks"] = weeks
    return _call("answers.trend", given)  # type: ignore[no-any-return]


def verdicts(*, log: _t.LogInput, today: _t.Day) -> _t.Verdicts:
    """How often were the verdicts about the day right, better than chance?"""
    given: dict[str, Any] = {"log": log, "today": today}
    return _call("answers.verdicts", given)  # type: ignore[no-any-return]


def week(*, log: _t.LogInput, today: _t.Day) -> _t.Week:
    """Was this week a jump, by lift, by region and in all, against the lifter's own weeks?"""
    given: dict[str, Any] = {"log": log, "today": today}
    return _call("answers.week", given)  # type: ignore[no-any-return]


def year(*, log: _t.LogInput, plan: _t.PlanInput, today: _t.Day, sex: _t.Sex | None = None, phases: Sequence[_t.Phase] | None = None) -> _t.Year:
    """What is due this year, how does function stand to its floors, what must still be there later?"""
    given: dict[str, Any] = {"log": log, "plan": plan, "today": today}
    if sex is not None:
        given["sex"] = sex
    if phases is not None:
        given["phases"] = phases
    return _call("answers.year", given)  # type: ignore[no-any-return]


def sets_to_log(*, table: _t.SetsTable, log: _t.LogInput, reading: _t.TableReading | None = None) -> _t.SetsToLog:
    """Which sessions does this table of sets add to the log, and what had to be guessed?"""
    given: dict[str, Any] = {"table": table, "log": log}
    if reading is not None:
        given["reading"] = reading
    return _call("answers.sets_to_log", given)  # type: ignore[no-any-return]
