"""What is laid out and read off at the tray: the stop table and the tray list."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from planning.contract.plan_value import InstrumentName, Stop, StopRow, TrayItem
from planning.foundation.quantities import mm
from planning.instruments.iso_3630 import Instrument, colour, outline
from planning.run_sheet.graph import Action, Step, Target
from planning.techniques.technique import PhaseKind, Technique

Laid = Mapping[str, Sequence[Step]]
"""Steps of the expected path by canal."""


def instrument_name(instrument: Instrument) -> InstrumentName:
    """Name, colour and motor setting; what the programme has not typed in is said to be missing."""
    return InstrumentName(
        key=instrument.key,
        name=instrument.name,
        size=instrument.size,
        taper=instrument.taper,
        motion=instrument.motion,
        colour=colour(instrument.size),
        setting_says=_setting_says(instrument),
        setting_stated=instrument.motion == "hand" or states_motor(instrument),
    )


def _setting_says(instrument: Instrument) -> str:
    if instrument.motion == "hand":
        return "by hand"
    if not states_motor(instrument):
        return "speed and torque not stated: see the maker's instructions"
    return f"{instrument.speed_rpm} rpm, at most {instrument.torque_ncm:g} N·cm"


def states_motor(instrument: Instrument) -> bool:
    """Whether an engine instrument's speed and torque have been typed in."""
    return instrument.speed_rpm is not None and instrument.torque_ncm is not None


def stop_table(
    laid: Laid, technique: Technique, kit: Mapping[str, Instrument], ends_mm: Mapping[str, float | None]
) -> tuple[StopRow, ...]:
    """Instruments in order of use, phase by phase, each with its stop in every canal; `ends_mm`: the canals' ends.

    A later phase that uses an instrument just as an earlier one did adds no row.
    """
    rows: dict[tuple[str, str], dict[str, Stop]] = {}
    kinds = {phase.key: phase.kind for phase in technique.phases}
    for node, canal in _in_order(laid, technique):
        if node.action is Action.INSTRUMENT and node.instrument and node.stop_um is not None:
            stop = Stop(
                canal=canal,
                stop_mm=mm(node.stop_um),
                target=node.target or Target.TO_LENGTH,
                why=f"stops.{_kind(node, kinds[node.phase], ends_mm[canal])}",
            )
            rows.setdefault((node.phase, node.instrument), {})[canal] = stop
    titles = {phase.key: phase.title for phase in technique.phases}
    table: list[StopRow] = []
    for (phase, key), stops in rows.items():
        row = StopRow(
            instrument=instrument_name(kit[key]),
            phase=titles[phase],
            stops=tuple(stops[canal] for canal in laid if canal in stops),
        )
        # What is set already needs no second line to read.
        if not any(row.stops == earlier.stops and row.instrument == earlier.instrument for earlier in table):
            table.append(row)
    return tuple(table)


def _kind(node: Step, phase: PhaseKind, end_mm: float | None) -> str:
    """What kind of stop it is, as the reasons of a plan name it."""
    if node.shorter_than is not None:
        return "make_room"
    if phase in (PhaseKind.FLARE, PhaseKind.STEP_BACK):
        return "coronal" if phase is PhaseKind.FLARE else "step_back"
    return "above_final" if phase is PhaseKind.DESCEND and mm(node.stop_um or 0) != end_mm else "end"


def tray_list(
    laid: Laid, may_take: Mapping[str, Sequence[str]], technique: Technique, kit: Mapping[str, Instrument]
) -> tuple[TrayItem, ...]:
    """What is expected to be used, in order of first use, then what else may be needed: to make room or reopen."""
    expected = _uses((node.instrument, canal) for node, canal in _in_order(laid, technique))
    every = _uses((key, canal) for canal, keys in may_take.items() for key in keys)
    spare = {key: canals for key, canals in every.items() if key not in expected}
    return tuple(
        TrayItem(
            instrument=instrument_name(kit[key]),
            canals=tuple(canals),
            expected=key in expected,
            outline=outline(kit[key]),
        )
        for key, canals in (*expected.items(), *spare.items())
    )


def _uses(taken: Iterable[tuple[str | None, str]]) -> dict[str, dict[str, None]]:
    uses: dict[str, dict[str, None]] = {}
    for key, canal in taken:
        if key:
            uses.setdefault(key, {})[canal] = None
    return uses


def _in_order(laid: Laid, technique: Technique) -> Iterator[tuple[Step, str]]:
    """Steps of all canals, phase by phase, within a phase canal by canal."""
    by_phase: dict[str, list[tuple[Step, str]]] = {phase.key: [] for phase in technique.phases}
    for canal, path in laid.items():
        for node in path:
            if node.phase in by_phase:
                by_phase[node.phase].append((node, canal))
    for steps in by_phase.values():
        yield from steps
