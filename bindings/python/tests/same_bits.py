"""The same bits through the wheel. Argument: the folder that `cargo run -p bismar-build -- corpus --plain FOLDER` wrote."""

import sys
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "checks"))

import bismar
import bits


def told(error: bismar.BismarError) -> dict[str, Any]:
    fields = {"value": error.value, "allowed": error.allowed, "event": error.event}
    return {"code": error.code, "field": error.field} | {k: v for k, v in fields.items() if v is not None}


if __name__ == "__main__":
    bits.run("Python", bismar.call, bismar.BismarError, told, bismar.keys(), Path(sys.argv[1]))
