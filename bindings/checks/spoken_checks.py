"""The published checks, tables of sets and the same bits through a program in another language that speaks as `spoken.py` says.

Arguments: name of the language, cases and functions that the native run counted, folder of the corpus, and the command.
"""

import sys
from pathlib import Path
from typing import Any

import bits
import published
import tables
from spoken import Refused, Spoken

BEYOND_JSON = {"NaN": float("nan"), "Infinity": float("inf"), "-Infinity": float("-inf")}


def told(error: Refused) -> dict[str, Any]:
    """The error's fields, with numbers again for the words that stand for what JSON cannot say."""
    return {name: number(value) for name, value in error.told.items()}


def number(value: Any) -> Any:
    if isinstance(value, dict):
        return {name: number(inner) for name, inner in value.items()}
    return BEYOND_JSON.get(value, value) if isinstance(value, str) else value


def main(language: str, cases: int, functions: int, corpus: Path, command: list[str]) -> None:
    program = Spoken(command)
    published.run(program.call, Refused, cases, functions)
    tables.run(program.call, Refused)
    bits.run(language, program.call, Refused, told, program.keys(), corpus)
    program.end()


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]), Path(sys.argv[4]), sys.argv[5:])
