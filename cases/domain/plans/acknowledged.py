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
    """Each that must be put right and was not let pass, once, in the plan's order."""
    found: dict[Named, Caution] = {}
    for one in cautions:
        if one.severity is Severity.STOP and one.overridden is None:
            found.setdefault(Named(code=one.code, canal=one.canal), one)
    return found


def refuse_unacknowledged(cautions: Iterable[Caution], acknowledged: Sequence[Named]) -> None:
    """Raises NotUsable for a name that is not to be acknowledged, NotAcknowledged where one is missing."""
    standing = to_acknowledge(cautions)
    for number, one in enumerate(acknowledged):
        if one not in standing:
            of = "the whole tooth" if one.canal is None else one.canal
            reason = f"The plan carries no '{one.code}' of {of} that has to be acknowledged."
            raise NotUsable(reason=reason, at=("acknowledged", number))
    missing = [caution for name, caution in standing.items() if name not in acknowledged]
    if missing:
        said = " ".join(f"{one.canal or 'Whole tooth'}: {one.says}" for one in missing)
        raise NotAcknowledged(missing=said, at=("acknowledged",))
