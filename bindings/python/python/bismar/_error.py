"""The one class of errors."""

from __future__ import annotations

import math
from typing import Any


class BismarError(ValueError):
    """What was refused, and why.

    ``code`` is stable and meant for programs; ``field`` is the path to the value; ``value`` is what was given (a number,
    a text or ``None``); ``allowed`` says what would have been accepted: ``{"low", "high", "unit"}``, ``{"one_of"}``,
    ``{"rule"}`` or ``None``; ``event`` is the number of the event of the log that it concerns.
    """

    def __init__(
        self,
        code: str,
        field: str,
        value: float | str | None,
        allowed: dict[str, Any] | None,
        event: int | None,
        message: str,
    ) -> None:
        super().__init__(message)
        self.code = code
        self.field = field
        self.value = value
        self.allowed = allowed
        self.event = event

    @property
    def told(self) -> dict[str, Any]:
        """The same as a plain dictionary, as ``bismar.text.error`` takes it to tell it in a sentence."""
        value = self.value
        # A number that no document can say is told by its name.
        if isinstance(value, float) and not math.isfinite(value):
            value = "NaN" if math.isnan(value) else ("Infinity" if value > 0 else "-Infinity")
        told = {"code": self.code, "field": self.field, "value": value, "allowed": self.allowed, "event": self.event}
        return {name: one for name, one in told.items() if one is not None}

    def __reduce__(self) -> tuple[Any, ...]:
        return (type(self), (self.code, self.field, self.value, self.allowed, self.event, str(self)))
