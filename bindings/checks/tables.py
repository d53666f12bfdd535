"""Tables of sets through another language: the cases of `tests/doors/tables.json`, with the whole answer of each."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

FILE = Path(__file__).resolve().parents[2] / "tests/doors/tables.json"
Call = Callable[[str, Any], Any]


def given(case: dict[str, Any], log: Any) -> dict[str, Any]:
    """What the library is asked about a case, beginning with that log."""
    if "rows" in case:
        table = {"rows": case["rows"]}
    else:
        table = {"csv": case["csv"] if "csv" in case else "".join(f"{line}\n" for line in case["lines"])}
    return {"table": table, "log": log} | ({"reading": case["reading"]} if "reading" in case else {})


def run(call: Call, refused: type[Exception]) -> None:
    document = json.loads(FILE.read_text())
    ends: dict[str, Any] = {}
    failures = []
    for case in document["cases"]:
        before = ends[case["after"]] if "after" in case else document["log"]
        found: dict[str, Any] = {}
        try:
            answer = call("answers.sets_to_log", given(case, before))
            log = answer.pop("log")
            events = before["events"]
            found = {"expect": answer | {"added": log["events"][len(events) :]}}
            ends[case["shows"]] = log
            if [one["sequence"] for one in log["events"][: len(events)]] != [one["sequence"] for one in events]:
                failures.append(f"{case['shows']}: the log that was given is another")
        except refused as error:
            found = {"expect_error": {"code": getattr(error, "code"), "field": getattr(error, "field")}}
        if any(case.get(name) != found.get(name) for name in ("expect", "expect_error")):
            failures.append(f"{case['shows']}: {found}")
    print(f"tables of sets: {len(document['cases'])} cases, {len(failures)} failures")
    print("\n".join(failures))
    assert not failures and len(document["cases"]) >= 30
