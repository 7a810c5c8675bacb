"""What is expected of the work that remains on a case, brought up to date with every depth that was recorded."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any
from uuid import UUID

from django.core.cache import cache

from cases.mapping import folds
from cases.mapping.plans import plan_input_of
from cases.models import ToothPlanVersion, TreatmentEvent
from planning.depth.last_depth import Ahead, ahead
from planning.foundation.encoding import Mode, canonical_text, decode, digest, encode
from planning.work.bands import bands

KEPT_S = 24 * 60 * 60  # a visit and its evening; how many are kept is the cache's own bound


@dataclass(frozen=True, slots=True, kw_only=True)
class BandsShown:
    """The bands after the event at `position`. They are no part of what was approved: only the order of work is."""

    plan_hash: str | None
    """None before a plan was approved."""
    position: int
    canals: Any
    """`planning.work.bands.CanalBands` as JSON data."""
    learned: Mapping[str, Ahead] | None = None
    """What lists need of them; None before a plan was approved."""


def bands_of(case_id: UUID) -> BandsShown:
    """The bands of the plan that is worked, by its own samples. What was undone or set out of course does not count."""
    work = folds.folded(case_id)
    if work is None:
        last = TreatmentEvent.objects.filter(case_id=case_id).order_by("position").last()
        return BandsShown(plan_hash=None, position=last.position if last else 0, canals=[])
    course = work.folded.course
    walks = {name: canal.walk for name, canal in course.canals.items()}
    # All that a canal's bands follow from, so that they stay in the cache whatever is done in other canals.
    keys = {
        name: f"bands-{course.plan}-{digest(canonical_text((name, walk.at, walk.left)))}"
        for name, walk in walks.items()
    }
    kept = cache.get_many(keys.values())
    missing = {name: walk for name, walk in walks.items() if keys[name] not in kept}
    if missing:
        version = ToothPlanVersion.objects.select_related("texts").get(case_id=case_id, hash=course.plan)
        by_canal = {
            each.canal: [encode(each), encode(ahead(each.expectation, each.last))]
            for each in bands(plan_input_of(version), missing)
        }
        # None is kept too: of a canal without bands it is then known that it has none.
        made = {keys[name]: by_canal.get(name) for name in missing}
        cache.set_many(made, KEPT_S)
        kept.update(made)
    shown = {name: kept[keys[name]] for name in walks if kept[keys[name]] is not None}
    return BandsShown(
        plan_hash=course.plan,
        position=work.position,
        canals=[of_canal for of_canal, _ in shown.values()],
        learned={name: decode(Ahead, learned, Mode.KEPT) for name, (_, learned) in shown.items()},
    )
