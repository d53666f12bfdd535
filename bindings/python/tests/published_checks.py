"""The published checks, and tables of sets, through the wheel. Arguments: how many cases and how many functions the native run counted."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "checks"))

import bismar
import published as checks
import tables

if __name__ == "__main__":
    checks.run(bismar.call, bismar.BismarError, int(sys.argv[1]), int(sys.argv[2]))
    tables.run(bismar.call, bismar.BismarError)
