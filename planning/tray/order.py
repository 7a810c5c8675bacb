"""The order at the tray: each canal keeps its own order, and steps with the same instrument are done together.

All canals come to an image or a hold point before any goes on from it: that is how a plan counts both. In between the
order is a shortest common supersequence of the canals' instrument lists: no order with fewer changes serves every canal
in its own order (`planning.tray.supersequence` says why).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import groupby

from planning.contract.plan_value import TrayOrder, TrayStep
from planning.run_sheet.graph import Action, Step
from planning.tray.supersequence import shortest_common_supersequence

MOST_KEPT = 64  # orders of 10 kB each; lengths do not move them


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayRun:
    """The instruments that one canal needs, as (phase, instrument) in order, cut at images and hold points."""

    canal: str
    sections: tuple[tuple[tuple[str, str], ...], ...]
    shares: bool
    """Whether its instruments may be passed to and from other canals."""
    first: str = ""
    """The main canal, which is prepared first, where this one joins it; otherwise empty."""
    waits_at: int = 0
    """Number of the section at which it begins to wait for the main canal."""


def tray_run(canal: str, path: Sequence[Step], *, shares: bool) -> TrayRun:
    """The instruments that the canal's expected path needs. Only those that shape count: recapitulating, gauging,
    needles and cones are no change of instrument.
    """
    sections: list[list[tuple[str, str]]] = [[]]
    first, waits_at = "", 0
    for node in path:
        if node.action in (Action.IMAGE, Action.SIGN_OFF):
            sections.append([])
        elif node.action is Action.INSTRUMENT and node.instrument:
            # A section of its own from here on, so that it can be put off until the main canal is done.
            if node.waits_for and not first:
                sections.append([])
                first, waits_at = node.waits_for[0].canal, len(sections) - 1
            sections[-1].append((node.phase, node.instrument))
    each = tuple(tuple(_once(section)) for section in sections)
    return TrayRun(canal=canal, sections=each, shares=shares, first=first, waits_at=waits_at)


@lru_cache(maxsize=MOST_KEPT)
def shared(runs: tuple[TrayRun, ...]) -> TrayOrder:
    """The order with the fewest changes of instrument from one image or hold point to the next: canals that share
    instruments go together, the others follow one by one. Raises TooMuchWork for lists that no technique gives.
    """
    by_name = {run.canal: run for run in runs}
    # One that waits for a canal comes after it on its own where that one does.
    sharing = {c.canal for c in runs if c.shares and (not c.first or by_name[c.first].shares)}
    together = [_after_its_main(run, by_name) for run in runs]
    steps: list[TrayStep] = []
    for number in range(max((len(c.sections) for c in together), default=0)):
        here = {c.canal: c.sections[number] for c in together if number < len(c.sections)}
        steps += _merge({canal: section for canal, section in here.items() if canal in sharing})
        for canal, section in here.items():
            if canal not in sharing:
                steps += _merge({canal: section})
    return _order(steps)


def one_at_a_time(runs: Sequence[TrayRun]) -> TrayOrder:
    """The order with one canal after the other, each to its end; one that joins another comes right after it."""
    names = {run.canal for run in runs}
    in_order = [
        run
        for main in runs
        if main.first not in names
        for run in (main, *(joining for joining in runs if joining.first == main.canal))
    ]
    steps = [
        TrayStep(phase=phase, instrument=instrument, canals=(each.canal,))
        for each in in_order
        for section in each.sections
        for phase, instrument in section
    ]
    return _order(steps)


def _after_its_main(run: TrayRun, by_name: Mapping[str, TrayRun]) -> TrayRun:
    """The run with empty sections while it waits for its main canal's last instrument."""
    if not run.first:
        return run
    used = [number for number, section in enumerate(by_name[run.first].sections) if section]
    off = max(0, max(used, default=-1) + 1 - run.waits_at)
    here = run.waits_at
    return replace(run, sections=(*run.sections[:here], *((),) * off, *run.sections[here:]))


def _order(steps: Sequence[TrayStep]) -> TrayOrder:
    return TrayOrder(changes=sum(1 for _ in groupby(steps, key=lambda s: s.instrument)), steps=tuple(steps))


def _once(section: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """The section with one entry where the same instrument is used several times running."""
    return [next(group) for _, group in groupby(section, key=lambda step: step[1])]


def _merge(lists: Mapping[str, Sequence[tuple[str, str]]]) -> list[TrayStep]:
    words = {canal: tuple(instrument for _, instrument in steps) for canal, steps in lists.items()}
    at = dict.fromkeys(words, 0)
    steps = []
    # Whoever waits for the instrument takes it at once: who let it pass could only be further back.
    for instrument in shortest_common_supersequence(tuple(words.values())):
        served = tuple(c for c, word in words.items() if at[c] < len(word) and word[at[c]] == instrument)
        steps.append(TrayStep(phase=lists[served[0]][at[served[0]]][0], instrument=instrument, canals=served))
        for canal in served:
            at[canal] += 1
    return steps
