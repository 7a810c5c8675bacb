"""What is done when the small instrument passes no more: fresh irrigant, a few tries, then image and supervisor."""

from __future__ import annotations

from collections.abc import Sequence

from planning.instruments.iso_3630 import Instrument, sizes
from planning.run_sheet.graph import Action, Exit, PassesBelow, Step, Target
from planning.techniques.technique import Phase, PhaseKind
from planning.tray.selection import hand_of
from planning.work.form import AT_END
from planning.work.sheet_builder import PLAN_AGAIN, Sheet, step_name


def blocked(sheet: Sheet, phase: Phase) -> None:
    """Adds the steps for a small instrument that does not pass: irrigate and try again, a few times; then an image and
    the supervisor.

    Once it passes, hand sizes up to the glide path's open the way again, and the phase begins anew.
    """
    small, key = sheet.selection.recapitulating, f"{phase.key}/blocked"
    # Each further try comes back to here, so that there is fresh irrigant before every one of them.
    sheet.irrigate(phase, key, then=f"{key}/try")
    sheet.add_open(
        Step(
            id=f"{key}/try",
            action=Action.RECAPITULATE,
            phase=phase.key,
            instrument=small.key,
            target=Target.TO_LENGTH,
            say="Pre-curve the tip, small watch-winding movements, no push.",
            exits={Exit.REACHED: f"{key}/bounded", Exit.BLOCKED: f"{key}/again"},
        ),
        AT_END,
    )
    again = PassesBelow(node=f"{key}/try", n=sheet.figures.count("blocked.times"))
    sheet.ask(phase, f"{key}/again", again, yes=key, no=f"{key}/image")
    sheet.image_and_sign_off(
        phase,
        key,
        "blocked canal",
        then=PLAN_AGAIN,
        say="Blocked: the supervisor decides how to go on.",
        shows=f"{small.name} as far as it goes without a push",
    )
    # A phase of hand sizes begins anew with those very sizes: they open the canal themselves.
    reopening = [] if phase.kind is PhaseKind.TO_LENGTH else _hand_sizes(sheet, phase, above=small.size)
    first = _reopen(sheet, phase, reopening)
    # Counted, because the phase that begins anew may be blocked again: that must not go on for ever.
    reopen = PassesBelow(node=f"{key}/reopened", n=sheet.figures.count("blocked.reopen"))
    sheet.ask(phase, f"{key}/bounded", reopen, yes=f"{key}/reopened", no=f"{key}/image")
    sheet.irrigate(phase, f"{key}/reopened", then=first)


def _reopen(sheet: Sheet, phase: Phase, instruments: Sequence[Instrument]) -> str:
    """Adds hand sizes one after another, then the phase from its start. Returns the first step."""
    then = f"@{phase.key}"
    # From the last to the first, since each step has to name the one after it.
    for instrument in reversed(instruments):
        id_ = f"{phase.key}/blocked/{step_name(instrument)}"
        then = sheet.cut(
            phase,
            instrument,
            id_=id_,
            stop=AT_END,
            target=Target.TO_LENGTH,
            then=then,
            say="Open the way again.",
        )
    return then


def _hand_sizes(sheet: Sheet, phase: Phase, above: int) -> list[Instrument]:
    wanted = [s for s in sizes() if above < s <= sheet.selection.glide_path_to]
    return [hand_of(sheet.selection, s, sheet.technique, sheet.asked.canal) for s in wanted]
