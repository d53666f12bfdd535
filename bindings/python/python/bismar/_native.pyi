from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from bismar._error import BismarError

def call(key: str, given: Any) -> Any: ...
def call_json(key: str, given: str) -> str: ...
def call_many(key: str, given: Sequence[str], threads: int | None = None) -> list[str | BismarError]: ...
def flat(key: str, *given: float) -> float: ...
def batch(
    key: str, given: Sequence[NDArray[np.float64] | float], out: NDArray[np.float64], refused_is_nan: bool
) -> int: ...
def keys() -> list[str]: ...
def rows() -> list[dict[str, Any]]: ...
def version() -> str: ...
def fold_many(logs: Sequence[Any], threads: int | None = None) -> list[Progress | BismarError]: ...

class Progress:
    """A folded log that is kept, so that only what is new has to be given. Documents may be plain objects or JSON texts.

    Safe to use from several threads; every method that works long lets other threads run.
    """

    def __init__(self, log: Any) -> None:
        """Folds the log."""

    @staticmethod
    def from_state(state: Any, log: Any) -> Progress:
        """Takes a stored state where this version made it and the log has told nothing since; else folds the log."""

    @staticmethod
    def resume(state: Any) -> Progress:
        """Takes a stored state alone. Raises ``other_version`` where another version of the library made it: fold the
        whole log then."""

    def apply(self, event: Any) -> None:
        """Applies one more event; ``needs_refold`` if it changes the past. The state is unchanged on an error."""

    def decide(self, today: str) -> Any:
        """What may each lift do today, and what stands in its way?"""

    def next_session(self, plan: Any, today: str) -> Any:
        """What does this lifter do today?"""

    def next_session_json(self, plan: Any, today: str) -> str:
        """The same as JSON text."""

    def state(self) -> Any:
        """The state as a plain object, to be stored."""

    def state_json(self) -> str:
        """The same as JSON text."""
