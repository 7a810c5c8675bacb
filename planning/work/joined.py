"""Canals that share part of their way, as one rule of the tooth: the main one is prepared first, one image shows their
cones, and none is filled before all of them are ready for it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from planning.canal.canal import Canal
from planning.canal.joins import shares_with
from planning.contract.cautions import caution, override_of
from planning.contract.plan_value import Caution
from planning.run_sheet.graph import Action, RunSheet, Step, WaitsFor
from planning.techniques.rules import cuts
from planning.techniques.technique import Phase, PhaseKind
from planning.work.withholding import fills, open_phases, shapes

UNFINISHED = "joined-canal-unfinished"
MAIN_FIRST = "main-canal-first"
WAIT = (Action.INSTRUMENT, Action.IMAGE, Action.FILL)
"""What may have to wait for another canal."""
_Kind = Callable[[Phase], bool]


def cautions(canals: Sequence[Canal], every: Sequence[Phase]) -> dict[str, list[Caution]]:
    """The cautions of each canal that close its steps because a canal that it joins cannot come far enough.

    A canal that cannot come so far for reasons of its own gets no such caution.
    """
    by_name = {canal.input.name: canal for canal in canals}
    closing: dict[str, list[Caution]] = {}
    for name, canal in by_name.items():
        own = closing.setdefault(name, [])
        main = canal.join.main if canal.join else None
        # Its steps would wait for a main canal whose own steps are not in any order of work: without an end.
        if main and _opens(canal, every, shapes) and not _opens(by_name[main], every, shapes):
            own.append(caution(MAIN_FIRST, canal=name, main=main))
        left = unfinished(canal, canals, every)
        # One reason is enough: a canal that may not be shaped is not filled either.
        if left and not own and _opens(canal, every, fills):
            own.append(caution(UNFINISHED, canal=name, partners=" and ".join(left)))
    return closing


def unfinished(canal: Canal, canals: Sequence[Canal], every: Sequence[Phase]) -> tuple[str, ...]:
    """Canals that share part of their way with this one and cannot be filled, as things stand."""
    partners = shares_with(canal.plan_input, canal.input)
    filling = {phase.key for phase in every if fills(phase)}
    return tuple(
        other.input.name
        for other in canals
        if other.input.name in partners
        and not _opens(other, every, fills)
        # One that stands in its filling has come so far already, whatever keeps it closed now.
        and not (other.input.progress and other.input.progress.phase in filling)
    )


def _opens(canal: Canal, every: Sequence[Phase], kind: _Kind) -> bool:
    """Whether every phase of the kind is open in the canal."""
    # A canal that only waits for a partner does not close the partner's steps in turn.
    opened = open_phases(every, [caution for caution in canal.held if caution.code != UNFINISHED])[0]
    return all(phase in opened for phase in every if kind(phase))


# --- in the order of work -------------------------------------------------------------------------------------------


def waiting(sheet: RunSheet, canal: Canal, every: Sequence[Phase]) -> RunSheet:
    """The canal's order of work, each step with what it waits for in the canals that share part of its way. A canal
    that a supervisor allowed to stay unfinished is not waited for."""
    passed = override_of(canal.plan_input, UNFINISHED, canal.input.name) is not None
    partners = [
        partner
        for partner in shares_with(canal.plan_input, canal.input)
        if not (passed and partner in canal.unfinished)
    ]
    if not partners and canal.join is None:
        return sheet
    by_key = {phase.key: phase for phase in every}
    nodes = dict(sheet.nodes)
    for id_, node in sheet.nodes.items():
        if (
            isinstance(node, Step)
            and node.action in WAIT
            and (waits := tuple(_waits(node, by_key[node.phase], canal, every, partners)))
        ):
            nodes[id_] = replace(node, waits_for=waits)
    return replace(sheet, nodes=nodes)


def _waits(
    node: Step, phase: Phase, canal: Canal, every: Sequence[Phase], partners: Sequence[str]
) -> Iterator[WaitsFor]:
    if node.action is Action.INSTRUMENT and canal.join is not None and shapes(phase):
        main = canal.join.main
        says = f"{main} goes to the common end: it is prepared first."
        yield WaitsFor(canal=main, phases=_after_cutting(every), says=says)
    elif node.action is Action.IMAGE and phase.kind is PhaseKind.CONE:
        # Ids of steps begin with their phase, so these are the partner's steps as well. At its sign-off the partner
        # still waits for the one image that shows both.
        shown = (node.id, f"{phase.key}/sign-off")
        for partner in partners:
            says = f"One image shows the cones of {partner} and {canal.input.name}: {partner} comes to its cone first."
            yield WaitsFor(canal=partner, phases=_after(phase, every), nodes=shown, says=says)
    elif node.action is Action.FILL:
        for partner in partners:
            says = f"{partner} shares the way: neither is filled before both are ready."
            # That the partner has come to this phase is enough. If each waited until the other was filled, neither ever
            # would be.
            yield WaitsFor(canal=partner, phases=(phase.key, *_after(phase, every)), says=says)


def _after(phase: Phase, every: Sequence[Phase]) -> tuple[str, ...]:
    return tuple(each.key for each in every[every.index(phase) + 1 :])


def _after_cutting(every: Sequence[Phase]) -> tuple[str, ...]:
    # Where nothing cuts, every phase comes after the cutting.
    last = max((number for number, phase in enumerate(every) if cuts(phase)), default=-1)
    return tuple(phase.key for phase in every[last + 1 :])
