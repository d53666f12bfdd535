"""Invented lifters as a table: whose event, and the event as JSON text. Each has a beginning of the demo log, of a length of
their own, so that no two neighbours get the same answer.

What the engines have in common stands here too: a lifter's request, and what every engine's answers are held against.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from pathlib import Path

import bismar

DATA = Path(__file__).resolve().parents[3] / "examples/data"
EVENTS: list[str] = [json.dumps(event) for event in json.loads((DATA / "demo-log.json").read_text())["events"]]
PLAN: str = (DATA / "demo-plan.json").read_text()
TODAY = "2026-08-27"


def table(lifters: int, shortest: int = 60) -> tuple[list[str], list[str]]:
    """The columns `lifter` and `event`."""
    names: list[str] = []
    events: list[str] = []
    for number in range(lifters):
        many = shortest + number * 37 % (len(EVENTS) - shortest)
        names += [f"lifter {number:05}"] * many
        events += EVENTS[:many]
    return names, events


def request(lifter: str, events: Iterable[str]) -> str:
    """What `prescription.next_session` is asked about one lifter."""
    log = f'{{"format":"bismar-log","version":1,"lifter":{{"id":"{lifter}"}},"events":[{",".join(events)}]}}'
    return f'{{"log":{log},"plan":{PLAN},"today":"{TODAY}"}}'


def session(lifter: str, events: Iterable[str]) -> str:
    """The session of one lifter: what a worker of an engine calls."""
    return bismar.call_json("prescription.next_session", request(lifter, events))


def one_by_one(names: list[str], events: list[str]) -> dict[str, str]:
    """Every lifter's session without any engine: what the engines' answers have to equal."""
    grouped: dict[str, list[str]] = {}
    for name, event in zip(names, events, strict=True):
        grouped.setdefault(name, []).append(event)
    return {name: session(name, own) for name, own in grouped.items()}
