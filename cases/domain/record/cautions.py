"""What the plans of a case warned of, and how that ended."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from cases.domain.record.case_history import Version
from cases.domain.record.values.plans import CautionEnd, CautionRecord
from planning.contract.plan_value import Caution, Plan

Key = tuple[str, str | None, int]
"""A caution's code, its canal, and its number among several that have both the same."""


def cautions(versions: Sequence[Version]) -> tuple[CautionRecord, ...]:
    """Every caution of these versions, each once. They come earliest first; the last version says what still stands."""
    last_seen: dict[Key, tuple[Version, Caution]] = {}
    for version in versions:
        last_seen.update((key, (version, caution)) for key, caution in _keyed(version.plan))
    comparison = dict(_keyed(versions[-1].plan)) if versions else {}
    return tuple(_recorded(version, caution, key in comparison) for key, (version, caution) in last_seen.items())


def _keyed(plan: Plan) -> Iterator[tuple[Key, Caution]]:
    number: Counter[tuple[str, str | None]] = Counter()
    for caution in plan.cautions:
        yield (caution.code, caution.canal, number[caution.code, caution.canal]), caution
        number[caution.code, caution.canal] += 1


def _recorded(version: Version, caution: Caution, stands: bool) -> CautionRecord:
    end = CautionEnd.STANDS if stands else CautionEnd.GONE
    return CautionRecord(
        code=caution.code,
        severity=caution.severity,
        canal=caution.canal,
        says=caution.says,
        version=version.number,
        settled=CautionEnd.OVERRIDDEN if stands and caution.overridden is not None else end,
    )
