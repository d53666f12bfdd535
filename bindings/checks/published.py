"""The published checks through another language: the same cases and the same rules of comparison as
`tests/published.rs`.
"""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).resolve().parents[2] / "tests/published"
Call = Callable[[str, Any], Any]


def number(value: Any) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def compare(path: str, expected: Any, within: Any, actual: Any) -> list[str]:
    """Every difference between the named fields and the answer."""
    if isinstance(expected, list):
        if not isinstance(actual, list) or len(actual) != len(expected):
            return [f"{path}: {actual!r} instead of a list of {len(expected)}"]
        inside = within if isinstance(within, list) else [within] * len(expected)
        return [
            wrong
            for at, item in enumerate(expected)
            for wrong in compare(f"{path}[{at}]", item, inside[at] if at < len(inside) else None, actual[at])
        ]
    if isinstance(expected, dict):
        if not isinstance(actual, dict):
            return [f"{path}: {actual!r} instead of fields"]
        return [
            wrong
            for key, item in expected.items()
            for wrong in compare(
                f"{path}.{key}", item, within if number(within) else (within or {}).get(key), actual.get(key)
            )
        ]
    if number(expected) and number(actual):
        if not number(within) and expected != int(expected):
            return [f"{path}: {expected} has no tolerance"]
        tolerance = within if number(within) else 0
        # A tolerance of half a printed digit must not fail on the last bit of that half.
        slack = abs(expected) * 1e-15 if tolerance > 0 else 0
        return [] if abs(actual - expected) <= tolerance + slack else [f"{path}: {actual} instead of {expected}"]
    same = type(expected) is type(actual) and expected == actual
    return [] if same else [f"{path}: {actual!r} instead of {expected!r}"]


def run_case(place: str, body: dict[str, Any], call: Call, refused: type[Exception]) -> list[str]:
    try:
        actual = call(body["function"], body["given"])
    except refused as error:
        return [] if getattr(error, "code") == body.get("expect_error") else [f"{place}: {error}"]
    if "expect_error" in body:
        return [f"{place}: an answer instead of {body['expect_error']}"]
    return compare(place, body["expect"], body.get("within"), actual)


def run(call: Call, refused: type[Exception], native_cases: int, native_functions: int) -> None:
    """Calls every case; the last two are what the native run counted."""
    assert compare("a", {"x": 1.5}, {"x": 0.1}, {"x": 1.7}) and compare("a", 1, None, True), "the comparison can fail"
    cases, functions, failures = 0, set(), []
    for file in sorted(FOLDER.glob("*.json")):
        document = json.loads(file.read_text())
        for at, body in enumerate(document.get("cases", [])):
            cases += 1
            functions.add(body["function"])
            failures += run_case(f"{file.name}[{at}] {body['function']}", body, call, refused)
    print(f"published checks: {cases} cases over {len(functions)} functions, {len(failures)} failures")
    print("\n".join(failures[:20]))
    assert not failures
    assert (cases, len(functions)) == (native_cases, native_functions), "not what the native run counted"

