"""What is told of two plans' inputs, held against the fields themselves: every type is walked by its annotations.

No source outside: that every field is told, and told by itself, is a rule of our own.
"""

from __future__ import annotations

import dataclasses
import types
import typing
from collections.abc import Iterator
from enum import StrEnum
from typing import Any, Literal, TypeVar

import pytest

from cases.domain.plans.carry_over import SIGNED_APART
from cases.domain.plans.changes import told_of_given
from cases.domain.plans.differences import KEYS, differences
from cases.domain.plans.telling import ENCLOSING, WHAT, Change, told
from cases.mapping.plans import plan_input_of
from cases.models import PlanTexts, ToothPlanVersion
from planning.contract.canal_facts import WallInput
from planning.contract.plan_input import CanalInput, PlanInput
from planning.foundation.bounds import noted
from planning.foundation.encoding import canonical_text
from planning.foundation.facts import Fact, NotTold
from tests.planning.given import molar

N = TypeVar("N")


def types_in(type_: Any) -> Iterator[Any]:
    """Every dataclass that a value of this type can hold."""
    for inner in typing.get_args(type_):
        yield from types_in(inner)
    if dataclasses.is_dataclass(type_):
        yield type_
        for hint in typing.get_type_hints(type_).values():
            yield from types_in(hint)


def fields_of(type_: Any) -> set[str]:
    return {f"{each.__name__}.{f.name}" for each in set(types_in(type_)) for f in dataclasses.fields(each)}


def notes_in(type_: Any, kind: type[N]) -> dict[str, N]:
    """The notes of one kind on every field that a value of this type can hold, by `Type.field`."""
    return {
        f"{each.__name__}.{name}": note
        for each in set(types_in(type_))
        for name, note in noted(each, typing.cast("Any", kind)).items()
    }


FIELDS = fields_of(PlanInput)
FACTS = notes_in(PlanInput, Fact)
NOT_TOLD = notes_in(PlanInput, NotTold)


def test_every_field_has_a_label_or_a_reason_to_have_none() -> None:
    assert FIELDS - set(FACTS) - set(NOT_TOLD) == set()
    assert all(fact.label for fact in FACTS.values())
    assert all(note.why for note in NOT_TOLD.values())


def test_what_is_told_in_its_own_way_is_a_field() -> None:
    assert {*WHAT, *ENCLOSING, *SIGNED_APART} - FIELDS == set()
    assert {f"{type_}.{name}" for type_, names in KEYS.items() for name in names} - FIELDS == set()


def test_no_field_is_both_told_and_not() -> None:
    assert set(FACTS) & set(NOT_TOLD) == set()


def test_a_field_that_is_added_without_a_label_is_missed() -> None:
    later = dataclasses.make_dataclass("WallInput", [("seen_by", str, "")], bases=(WallInput,), frozen=True)
    assert fields_of(later) - set(notes_in(later, Fact)) == {"WallInput.seen_by"}


def test_a_field_without_a_label_is_told_all_the_same() -> None:
    later = dataclasses.make_dataclass("CanalInput", [("turns_at", str, "")], bases=(CanalInput,), frozen=True)
    before = later(name="P", root="P", reference_point="P cusp")
    (difference,) = differences((before,), (dataclasses.replace(before, turns_at="midroot"),))
    canal, change = told(difference)
    assert change is not None
    assert (canal, change.label, change.before, change.after) == ("P", "turns at", None, "midroot")


# --- a value in which every field holds something ---


def full(type_: Any, tag: str) -> Any:
    """A value of the type with nothing left empty; another `tag` gives other texts and numbers."""
    origin, args = typing.get_origin(type_), typing.get_args(type_)
    if origin is Literal:
        return args[0]
    if origin in (typing.Union, types.UnionType):
        return full(next(each for each in args if each is not type(None)), tag)
    if origin is tuple:
        item = args[0]
        kinds = typing.get_args(item) if typing.get_origin(item) in (typing.Union, types.UnionType) else (item,)
        some = [each for each in kinds if each is not type(None)]
        return tuple(full(each, f"{tag}{n}") for each in some for n in (1, 2))
    if origin is dict:
        return {key: full(args[1], tag) for key in ("needle.short_open", "set_back.none")}
    if dataclasses.is_dataclass(type_):
        hints, made = typing.get_type_hints(type_), typing.cast("Any", type_)
        return made(**{f.name: full(hints[f.name], f"{tag}{f.name[0]}") for f in dataclasses.fields(type_)})
    if issubclass(type_, StrEnum):
        return list(type_)[int(tag[-1]) - 1 if tag[-1].isdigit() else 0]
    return another(type_, tag)


def another(type_: Any, tag: str) -> Any:
    number = sum(map(ord, tag))
    return {str: tag, int: number, float: number / 8, bool: True}[type_]


FULL: PlanInput = full(PlanInput, "x")


def leaves(value: Any, hint: Any, fields: tuple[str, ...], put: Any) -> Iterator[tuple[str, Any]]:
    """Every change of one leaf: the field it is in, and the whole value with it changed."""
    origin, args = typing.get_origin(hint), typing.get_args(hint)
    field = fields[-1] if fields else ""
    if origin in (typing.Union, types.UnionType) and type(None) in args:
        yield f"{field} is emptied", put(None)
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        hints = typing.get_type_hints(type(value))
        for f in dataclasses.fields(value):
            name = f"{type(value).__name__}.{f.name}"
            inner = lambda new, name=f.name: put(dataclasses.replace(value, **{name: new}))  # noqa: E731
            yield from leaves(getattr(value, f.name), hints[f.name], (*fields, name), inner)
    elif isinstance(value, tuple):
        yield f"{field} loses one", put(value[:-1])
        yield f"{field} is emptied", put(())
        yield f"{field} is turned round", put(value[::-1])
        for n, item in enumerate(value):
            if dataclasses.is_dataclass(item):
                kind = type(item)
                yield from leaves(item, kind, fields, lambda new, n=n: put((*value[:n], new, *value[n + 1 :])))
            else:
                yield f"{field} has another", put((*value[:n], other(item, args[0]), *value[n + 1 :]))
    elif isinstance(value, dict):
        for key, item in value.items():
            yield f"{field} loses one", put({k: v for k, v in value.items() if k != key})
            yield f"{field} has another", put({**value, key: other(item, args[1])})
    elif (new := other(value, hint)) is not None:
        yield f"{field} is another", put(new)


def other(value: Any, hint: Any) -> Any:
    """Another value of that type; None where there is only one."""
    match value:
        case bool():
            return not value
        case StrEnum():
            return list(type(value))[-1]
        case str() if Literal in (typing.get_origin(hint), *map(typing.get_origin, typing.get_args(hint))):
            return next((each for each in typing.get_args(hint) if each != value), None)
        case str():
            return value + "'"
        case int() if typing.get_origin(hint) is Literal:
            return None
        case int() | float():
            return value + 1000
        case tuple():
            return value[:-1]
    raise TypeError(hint)


CHANGED = list(leaves(FULL, PlanInput, (), lambda new: new))


def told_changes(before: PlanInput, after: PlanInput) -> list[tuple[str | None, Change]]:
    return [(canal, change) for canal, some in told_of_given(before, after).items() for change in some]


def test_the_full_value_has_every_field_and_every_one_is_changed() -> None:
    once = {what.split(" ")[0] for what, _ in CHANGED}
    single = {field for field in NOT_TOLD if field.endswith((".schema_version", ".method"))}
    assert set(FIELDS - once) <= single | {f for f in FIELDS if only_holds_things(f)}


def only_holds_things(field: str) -> bool:
    """A field whose value is one dataclass that is always there: its own fields are changed instead."""
    kind, name = field.split(".")
    type_ = next(each for each in types_in(PlanInput) if each.__name__ == kind)
    return dataclasses.is_dataclass(typing.get_type_hints(type_)[name])


@pytest.mark.parametrize(("what", "after"), CHANGED, ids=[f"{n} {what}" for n, (what, _) in enumerate(CHANGED)])
def test_every_leaf_is_told_by_its_own_entry(what: str, after: PlanInput) -> None:
    field = what.split(" ")[0]
    found_differences = list(differences(FULL, after))
    assert found_differences
    if field in NOT_TOLD:
        assert told_changes(FULL, after) == []
        return
    kind, name = field.split(".")
    is_key = name in KEYS.get(kind, ())
    for difference in found_differences:
        where = [step.field for step in difference.steps if step.field]
        assert is_key or where[-1] == field
        _, change = told(difference)
        gone = where == ["PlanInput.canals"] and difference.steps[-1].name != "order"
        assert gone if change is None else change.before != change.after
        assert change is None or change.label.endswith(FACTS[where[-1]].label)
        assert change is None or change.path
    assert is_key or "loses" in what or "emptied" in what or len(found_differences) == 1


def test_no_two_changes_are_told_alike() -> None:
    seen: dict[tuple[Any, ...], str] = {}
    for what, after in CHANGED:
        entries = tuple(sorted((c.path, str(c.before), str(c.after)) for _, c in told_changes(FULL, after)))
        if entries:
            assert entries not in seen, (what, seen[entries])
            seen[entries] = what


def test_a_plan_of_before_a_figure_went_is_read_without_it() -> None:
    thresholds = {"set_back.none": 0.5, "length.most": 30.0}
    kept = ToothPlanVersion()
    kept.texts = PlanTexts.of(kept, plan_input=canonical_text(molar(thresholds=thresholds)), plan="{}")
    assert plan_input_of(kept) == molar(thresholds={"set_back.none": 0.5})


def test_nothing_is_told_of_what_is_the_same() -> None:
    assert told_of_given(FULL, full(PlanInput, "x")) == {}
