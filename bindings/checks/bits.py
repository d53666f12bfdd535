"""The same bits: the seeded corpus through another language, digest by digest against the native ones, from the folder
that `cargo run -p bismar-build -- corpus --plain FOLDER` wrote.
"""

import hashlib
import json
import struct
from collections.abc import Callable
from pathlib import Path
from typing import Any


class Input:
    def __init__(self, data: bytes) -> None:
        self.data, self.at = data, 0

    def count(self) -> int:
        self.at += 4
        return int(struct.unpack_from("<I", self.data, self.at - 4)[0])

    def text(self) -> str:
        length = self.count()
        self.at += length
        return self.data[self.at - length : self.at].decode()

    def value(self) -> Any:
        tag = self.data[self.at]
        self.at += 1
        if tag == 0:
            return None
        if tag < 3:
            return tag == 2
        if tag == 3:
            self.at += 8
            return struct.unpack_from("<d", self.data, self.at - 8)[0]
        if tag == 4:
            return self.text()
        if tag == 5:
            return [self.value() for _ in range(self.count())]
        return {self.text(): self.value() for _ in range(self.count())}


def text(one: str, out: bytearray) -> None:
    data = one.encode()
    out += struct.pack("<I", len(data)) + data


def canonical(value: Any, out: bytearray) -> None:
    if value is None:
        out.append(0)
    elif isinstance(value, bool):
        out.append(2 if value else 1)
    elif isinstance(value, (int, float)):
        out.append(3)
        # The bits of NaN differ between machines and mean nothing; it occurs as a refused value only.
        out += b"\0\0\0\0\0\0\xf8\x7f" if value != value else struct.pack("<d", value)
    elif isinstance(value, str):
        out.append(4)
        text(value, out)
    elif isinstance(value, list):
        out.append(5)
        out += struct.pack("<I", len(value))
        for item in value:
            canonical(item, out)
    else:
        out.append(6)
        out += struct.pack("<I", len(value))
        for key in sorted(value, key=str.encode):
            text(key, out)
            canonical(value[key], out)


def digest(call: Callable[[str, Any], Any], refused: type[Exception], told: Any, key: str, given: list[Any]) -> str:
    found = hashlib.sha256()
    for one in given:
        out = bytearray()
        try:
            canonical(call(key, one), out)
        except refused as error:
            out = bytearray([9])
            canonical(told(error), out)
        found.update(out)
    return found.hexdigest()


def run(
    language: str,
    call: Callable[[str, Any], Any],
    refused: type[Exception],
    told: Callable[[Any], dict[str, Any]],
    keys: list[str],
    folder: Path,
) -> None:
    """Calls every input; `told` gives the fields of an error, `keys` are all that the language knows."""
    expected = json.loads((folder / "digests.json").read_text())
    inputs = Input((folder / "corpus.bin").read_bytes())
    differing, total, functions = [], 0, 0
    while inputs.at < len(inputs.data):
        key, count = inputs.text(), inputs.count()
        total, functions = total + count, functions + 1
        given = [inputs.value() for _ in range(count)]
        if {"count": count, "digest": digest(call, refused, told, key, given)} != expected[key]:
            differing.append(key)
    print(f"same bits: {total} inputs over {functions} functions, native and {language}; {len(differing)} differ")
    assert not differing, differing
    assert functions == len(expected) == len(keys)
