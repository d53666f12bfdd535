"""The one class of errors."""

from __future__ import annotations

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

    def __reduce__(self) -> tuple[Any, ...]:
        return (type(self), (self.code, self.field, self.value, self.allowed, self.event, str(self)))
