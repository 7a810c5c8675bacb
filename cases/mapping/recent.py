"""Values that were made last, kept in the process for whoever asks again."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import Generic, TypeVar

Key = TypeVar("Key", bound=Hashable)
Value = TypeVar("Value")


class Recent(Generic[Key, Value]):
    """At most so many values, each by its key; the one asked for longest ago goes first."""

    def __init__(self, most: int) -> None:
        self.most = most
        self._kept: OrderedDict[Key, Value] = OrderedDict()
        self._turn = Lock()

    def of(self, key: Key, make: Callable[[], Value]) -> Value:
        """The value of the key, made where it is not kept. Raises what `make` does; then nothing is kept."""
        with self._turn:
            if key in self._kept:
                self._kept.move_to_end(key)
                return self._kept[key]
        # Outside the lock, as making takes long and others must not wait for it.
        value = make()
        with self._turn:
            self._kept[key] = value
            while len(self._kept) > self.most:
                self._kept.popitem(last=False)
        return value

    def clear(self) -> None:
        with self._turn:
            self._kept.clear()
