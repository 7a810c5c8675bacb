"""What a supervisor has to have seen by name before a plan is approved: all in it that must be put right."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from cases.domain.errors import NotAcknowledged, NotUsable
from planning.contract.plan_value import Caution, Severity


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """A caution by its name; no canal: of the whole tooth."""

    code: str
    canal: str | None = None


def to_acknowledge(cautions: Iterable[Caution]) -> dict[Named, Caution]:
    """Each caution that must be put right and is not overridden, once, in the plan's order."""
    by_name: dict[Named, Caution] = {}
    for caution in cautions:
        if caution.severity is Severity.STOP and caution.overridden is None:
            by_name.setdefault(Named(code=caution.code, canal=caution.canal), caution)
    return by_name


def refuse_unacknowledged(cautions: Iterable[Caution], acknowledged: Sequence[Named]) -> None:
    """Raises NotUsable for a name that is not to be acknowledged, NotAcknowledged where one is missing."""
    standing = to_acknowledge(cautions)
    for number, named in enumerate(acknowledged):
        if named not in standing:
            of = named.canal or "the whole tooth"
            reason = f"The plan carries no '{named.code}' of {of} that has to be acknowledged."
            raise NotUsable(reason=reason, at=("acknowledged", number))
    missing = [caution for name, caution in standing.items() if name not in acknowledged]
    if missing:
        said = " ".join(f"{unnamed.canal or 'Whole tooth'}: {unnamed.says}" for unnamed in missing)
        raise NotAcknowledged(missing=said, at=("acknowledged",))
