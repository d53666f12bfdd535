"""The functions and defaults of `quantity`. Generated from the library; do not edit."""

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bismar import types as _t
from bismar._native import call as _call

pound: float
"""One avoirdupois pound in kilograms, exact since 1959.

# Known how
Read in the work or in its abstract.

Source: Thompson A, Taylor BN. Guide for the Use of the International System of Units. NIST Special Publication 811, 2008, appendix B; also Abramowitz M, Stegun IA, Handbook of Mathematical Functions, tables 2.4 and 2.5, p 8
"""

_CONSTANTS = {
    "pound": "quantity.pound",
}


def __getattr__(name: str) -> Any:
    if name in _CONSTANTS:
        return _call(_CONSTANTS[name], {})
    raise AttributeError(f"module {__name__!r} has no attribute {name!r}")


def mass_in_pounds(*, mass: _t.MassInput) -> float:
    """How many pounds is this mass?

    # Formula
    `lb = kg / 0.453 592 37`

    # Errors
    None beyond those of building the mass.

    # Known how
    Read in the work or in its abstract.

    Source: Thompson A, Taylor BN. Guide for the Use of the International System of Units. NIST Special Publication 811, 2008, appendix B; also Abramowitz M, Stegun IA, Handbook of Mathematical Functions, tables 2.4 and 2.5, p 8
    """
    given: dict[str, Any] = {"mass": mass}
    return _call("quantity.mass_in_pounds", given)  # type: ignore[no-any-return]
