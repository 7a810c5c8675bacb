"""What a hold point lacks: the length or the image that it is about. A supervisor may approve it all the same, with a
reason.

The phone says the same; both hold to `tests/shared/lacking.json`.
"""

from __future__ import annotations

from collections.abc import Iterable, Set
from enum import StrEnum

from cases.domain.events.event import CourseEvent
from cases.domain.events.payloads import ImagePayload, SignOffPayload, StepPayload
from cases.domain.progress.canal_progress import CanalProgress, CanalState
from cases.domain.progress.case_state import Sheets
from cases.domain.progress.put_right import of_an_image, put_right
from planning.lengths.readings import LengthState
from planning.run_sheet.graph import Action, Step


class Lacking(StrEnum):
    LENGTH = "length"
    """No length was taken: the plan rests on an estimate, or on nothing."""
    IMAGE = "image"
    """An image step was left with neither an image nor a reason why there is none."""


NO_LENGTH = frozenset({LengthState.MISSING, LengthState.ESTIMATED})


def lacking(
    name: str,
    canal: CanalProgress,
    length: LengthState,
    events: Iterable[CourseEvent],
    sheets: Sheets,
    undone: Set[str],
) -> tuple[Lacking, ...]:
    """What the hold point lacks that the canal waits at; empty for a canal that waits at none."""
    node = canal.walk.node
    if canal.state is not CanalState.HOLD_POINT or not isinstance(node, Step):
        return ()
    lacking_of = {
        Lacking.LENGTH: (node.hold_point or "").startswith("length") and length in NO_LENGTH,
        Lacking.IMAGE: _unshown(name, events, sheets, undone | canal.reopened),
    }
    return tuple(what for what, is_lacking in lacking_of.items() if is_lacking)


def _unshown(name: str, events: Iterable[CourseEvent], sheets: Sheets, undone: Set[str]) -> bool:
    """Whether an image is lacking: since the last sign-off that counts, an image step named neither an image nor a
    reason, and no image was recorded besides. `undone` are events that no longer count.

    A struck image does not count, nor one that belongs to another canal; one that was put to this canal does.
    """
    every = [event for event in events if event.id not in undone]
    counts = put_right(every).counts
    unshown = taken = False
    for event in every:
        moved = of_an_image(event.payload)
        if moved and moved.moved_to == name:
            taken = taken or counts(moved.struck, name)
        if event.canal != name:
            continue
        match event.payload:
            case SignOffPayload():
                unshown = taken = False
            case ImagePayload(image_id=image_id):
                taken = taken or counts(image_id, name)
            case StepPayload() as step if is_image_step(event, sheets):
                unshown = not (counts(step.image_id, name) or step.no_image)
    return unshown and not taken


def is_image_step(event: CourseEvent, sheets: Sheets) -> bool:
    """Whether the event tells of a step that takes an image."""
    node = sheets[event.canal].nodes.get(event.node) if event.canal in sheets else None
    is_step = isinstance(event.payload, StepPayload)
    return is_step and isinstance(node, Step) and node.action is Action.IMAGE
