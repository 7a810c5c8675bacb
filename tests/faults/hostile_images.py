"""Hostile images drawn by a seed: as they were made, cut off, with bytes changed, one behind the other."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import cache
from random import Random

from tests.cases.hostile import CARRYING, NO_PICTURE, SECRET, UNFOLDING, WHOLE

PLANTED = SECRET.encode()
"""Stands in every file that is sent; no decoder knows it, and no file that is kept may hold it."""
KINDS: dict[str, Mapping[str, Callable[[], bytes]]] = {
    "unfolds": UNFOLDING,
    "carries words": CARRYING,
    "is no picture": NO_PICTURE,
    "is one": WHOLE,
}
HOW_OFTEN = {"unfolds": 2, "carries words": 3, "is no picture": 1, "is one": 4}
MOST_CHANGED = 12  # bytes


def drawn(count: int, dice: Random) -> Iterator[tuple[str, bytes]]:
    """Every file there is as it was made, then others made of them, each with what it is."""
    every = [(kind, name) for kind, files in KINDS.items() for name in files]
    for number in range(count):
        kind, name = every[number] if number < len(every) else _one(dice)
        change = CHANGES["as it is"] if number < len(every) else None
        change_name = "as it is"
        if change is None:
            change_name = dice.choice(list(CHANGES))
            change = CHANGES[change_name]
        data = change(_made(kind, name), dice)
        yield f"{number} {kind}: {name}, {change_name}", data if PLANTED in data else data + PLANTED


def _one(dice: Random) -> tuple[str, str]:
    kind = dice.choices(list(HOW_OFTEN), list(HOW_OFTEN.values()))[0]
    return kind, dice.choice(list(KINDS[kind]))


@cache
def _made(kind: str, name: str) -> bytes:
    return KINDS[kind][name]()


def _cut_off(data: bytes, dice: Random) -> bytes:
    return data[: dice.randrange(8, max(9, len(data)))]


def _changed(data: bytes, dice: Random) -> bytes:
    """Near the front, where sizes and lengths stand, or anywhere."""
    changed = bytearray(data)
    for _ in range(dice.randint(1, MOST_CHANGED)):
        until = len(changed) if dice.random() < 0.5 else min(400, len(changed))
        changed[dice.randrange(8, until)] = dice.choice((0, 0x7F, 0xFF, dice.randrange(256)))
    return bytes(changed)


def _joined(data: bytes, dice: Random) -> bytes:
    return data + _made(*_one(dice))


CHANGES: dict[str, Callable[[bytes, Random], bytes]] = {
    "as it is": lambda data, dice: data,
    "cut off": _cut_off,
    "changed": _changed,
    "another behind it": _joined,
}
