"""A program in another language that calls the library for a check: a key and a JSON text on its standard input, each
behind its length in four bytes; the status (0 answered, 1 refused) and the text on its standard output, in the same way.
"""

from __future__ import annotations

import json
import struct
import subprocess
from typing import Any


class Refused(Exception):
    """The library's error, as plain values."""

    def __init__(self, told: dict[str, Any]) -> None:
        super().__init__(told["message"])
        self.code: str = told["code"]
        self.field: str = told["field"]
        self.told = {name: value for name, value in told.items() if name != "message"}


class Spoken:
    def __init__(self, command: list[str]) -> None:
        self.process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE)

    def call(self, key: str, given: Any) -> Any:
        # NaN and infinity are no JSON: Python writes them all the same, and the library refuses them.
        sent = b"".join(
            struct.pack("<I", len(data)) + data for data in (key.encode(), json.dumps(given, ensure_ascii=False).encode())
        )
        assert self.process.stdin is not None and self.process.stdout is not None
        self.process.stdin.write(sent)
        self.process.stdin.flush()
        status, length = struct.unpack("<II", self.process.stdout.read(8))
        told = json.loads(self.process.stdout.read(length))
        if status == 0:
            return told
        assert status == 1, f"{key}: status {status}"
        raise Refused(told)

    def keys(self) -> list[str]:
        keys: list[str] = self.call("keys", {})
        return keys

    def end(self) -> None:
        """Ends the program; a sanitizer that found something at its end fails the check."""
        assert self.process.stdin is not None
        self.process.stdin.close()
        assert self.process.wait() == 0, f"ended with {self.process.returncode}"
