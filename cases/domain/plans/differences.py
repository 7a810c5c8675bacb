"""Where two frozen values differ, leaf by leaf, whatever they are made of.

It knows nothing of what the fields mean: a field that is added tomorrow is compared too.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass, fields, is_dataclass
from itertools import filterfalse
from typing import Any

ORDER = "order"
"""The last part of the path where the same items stand in another order."""

KEYS: dict[str, tuple[str, ...]] = {
    "CanalChoice": ("canal",),
    "CanalInput": ("name",),
    "FillingItem": ("kind", "size", "taper"),
    "Instrument": ("size", "taper", "motion"),
    "Override": ("code", "canal"),
    "Phase": ("key",),
    "RootInput": ("name",),
    "Technique": ("key",),
}
"""By the type's name, the fields by which two items are the same thing: with other keys one went and one came. Items of
other types are paired by what they say and by their place."""


@dataclass(frozen=True, slots=True)
class Absent:
    """There is no such item on this side."""


ABSENT = Absent()


@dataclass(frozen=True, slots=True)
class Step:
    """One step from the whole inwards."""

    name: str
    """A field's name, the key or number of an item, or `ORDER`."""
    holder: type | None = None
    """The type whose field it is, where the step is a field."""
    item: object = ABSENT
    """The item where the step is to one: as it is after, or as it was where it went."""
    number: int = 0
    """Of that item in its list, from 1."""

    @property
    def field(self) -> str:
        """`Type.field` where the step is a field."""
        return f"{self.holder.__name__}.{self.name}" if self.holder else ""


@dataclass(frozen=True, slots=True)
class Difference:
    steps: tuple[Step, ...]
    before: Any
    after: Any

    @property
    def path(self) -> tuple[str, ...]:
        return tuple(step.name for step in self.steps)


def differences(before: Any, after: Any, steps: tuple[Step, ...] = ()) -> Iterator[Difference]:
    """Every leaf that is not the same, each once; an item that came or went is one difference."""
    # Equal is not enough: 1 == True == 1.0.
    if type(before) is type(after) and before == after:
        return
    if _same_thing(before, after):
        for field in fields(before):
            step = Step(field.name, holder=type(before))
            yield from differences(getattr(before, field.name), getattr(after, field.name), (*steps, step))
    elif isinstance(before, dict) and isinstance(after, dict):
        for key in dict.fromkeys((*before, *after)):
            yield from differences(before.get(key, ABSENT), after.get(key, ABSENT), (*steps, Step(str(key))))
    elif _rows(before) and _rows(after):
        yield from _of_rows(before, after, steps)
    else:
        yield Difference(steps, before, after)


def _same_thing(before: Any, after: Any) -> bool:
    return type(before) is type(after) and is_dataclass(before) and _key(before) == _key(after)


def _rows(value: Any) -> bool:
    """Whether it is a list of things, rather than one value written as several."""
    return isinstance(value, tuple) and all(map(is_dataclass, value))


def _key(item: Any) -> tuple[str, ...]:
    return tuple(str(getattr(item, name)) for name in KEYS.get(type(item).__name__, ()))


def _of_rows(before: Sequence[Any], after: Sequence[Any], steps: tuple[Step, ...]) -> Iterator[Difference]:
    old, new = _named(before, after), _named(after, before)
    for name in dict.fromkeys((*old, *new)):
        was, now = old.get(name), new.get(name)
        shown = new[name] if name in new else old[name]
        key = " ".join(_key(shown.item)) + (f" #{shown.nth}" if shown.nth > 1 else "")
        # The plus keeps an item that came apart from the one that stood at the same place before.
        place = key if _key(shown.item) else str(was.number) if was else f"+{shown.number}"
        step = Step(place, item=shown.item, number=shown.number)
        yield from differences(was.item if was else ABSENT, now.item if now else ABSENT, (*steps, step))
    # What came or went has been told; only what both have can have changed its order.
    if [name for name in old if name in new] != [name for name in new if name in old]:
        yield Difference((*steps, Step(ORDER)), before, after)


@dataclass(frozen=True, slots=True)
class _Named:
    item: Any
    number: int
    nth: int
    """Which of those with this name it is, from 1."""


def _named(items: Sequence[Any], others: Sequence[Any]) -> dict[Hashable, _Named]:
    """The items under names by which the same ones, or failing that those of one kind and place, are found on the
    other side."""
    same = Counter(filterfalse(_key, items)) & Counter(filterfalse(_key, others))
    named: dict[Hashable, _Named] = {}
    met: Counter[Hashable] = Counter()
    for number, item in enumerate(items, start=1):
        name: Hashable = (type(item).__name__, *_key(item))
        if not _key(item) and same[item] > 0:
            same[item] -= 1
            name = item
        met[name] += 1
        named[(name, met[name])] = _Named(item, number, met[name])
    return named
