"""What each kind of phase writes into a run sheet."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import islice

from planning.foundation.errors import ChoiceNotPossible, TechniqueNotUsable
from planning.foundation.quantities import in_mm, um
from planning.instruments.iso_3630 import Instrument, size_above, sizes
from planning.run_sheet.graph import Action, AtLength, Exit, Gained, Node, PassesBelow, ShorterThan, Step, Target
from planning.techniques.technique import Phase, PhaseKind
from planning.tray.selection import hand_of, shaping_of
from planning.work.blocked import blocked
from planning.work.flaring import flare
from planning.work.form import AT_END, StopAt
from planning.work.held import answer_held
from planning.work.sheet_builder import PLAN_AGAIN, Sheet, step_name

GAUGED = "Straight in without turning; it must not cut."


def write(sheet: Sheet, phase: Phase, looped: bool) -> None:
    """Adds the phase's steps to the sheet. A `looped` phase lies inside a loop and is worked on the first pass only."""
    before, needle_after = len(sheet.nodes), sheet.needle_after
    start = WRITERS[phase.kind](sheet, phase)
    # There may be nothing to do: no hand size within the phase's bounds, or a canal that may not be opened so far.
    if start is None:
        return
    if looped:
        once = f"{phase.key}/sign-off" if phase.hold_point else start
        first = PassesBelow(node=once, n=1)
        start = sheet.ask(phase, f"{phase.key}/first-pass", first, yes=start, no="@next")
    sheet.starts[phase.key] = start
    if any(map(_can_block, islice(sheet.nodes.values(), before, None))):
        # The phase may be blocked at its first step: the needle then goes by the canal as it was before the phase.
        sheet.needle_after = needle_after
        blocked(sheet, phase)
        sheet.needle_after = len(sheet.at_end)


def _can_block(node: Node) -> bool:
    return isinstance(node, Step) and Exit.BLOCKED in node.exits


def _sign_off(sheet: Sheet, phase: Phase) -> str:
    shows = f"{sheet.shown.name} back at its stop and left there"
    if not phase.hold_point:
        return sheet.image(phase, f"{phase.key}/image", then="@next", say=f"{shows} for the image. {phase.why}")
    if phase.image:
        return sheet.image_and_sign_off(phase, phase.key, phase.hold_point, then="@next", say=phase.why, shows=shows)
    return sheet.sign_off(
        phase, f"{phase.key}/sign-off", phase.hold_point, then="@next", returned=PLAN_AGAIN, say=phase.why
    )


def _to_length(sheet: Sheet, phase: Phase) -> str | None:
    """Adds hand sizes, each worked until it is loose at length. None where there is no size to work."""
    last = _last_hand_size(sheet, phase)
    most = min(last, sheet.asked.largest_size or last)
    wanted = [s for s in sizes() if (phase.from_size or 0) <= s <= most]
    instruments = [hand_of(sheet.selection, s, sheet.technique, sheet.asked.canal) for s in wanted]
    if not instruments:
        return None
    starts = [f"{phase.key}/{step_name(instrument)}" for instrument in instruments]
    for instrument, start, then in zip(instruments, starts, [*starts[1:], "@next"], strict=True):
        sheet.cut(phase, instrument, stop=AT_END, target=Target.TO_LENGTH, then=f"{start}/at-length")
        held = (
            answer_held(sheet, phase, instrument, start, then)
            if phase.to_estimate
            else _again(sheet, phase, instrument, start)
        )
        sheet.ask(phase, f"{start}/at-length", AtLength(nodes=(start,)), yes=then, no=held)
        # Every way on from here leads through this instrument at its stop, so all later steps may count on it.
        sheet.stood(instrument)
    return starts[0]


def _again(sheet: Sheet, phase: Phase, instrument: Instrument, start: str) -> str:
    """Adds further goes of an instrument that is worked to length, a few; then the supervisor decides."""
    times = PassesBelow(node=start, n=sheet.figures.count("explore.times"))
    sheet.ask(phase, f"{start}/again", times, yes=start, no=f"{start}/supervisor")
    say = f"{instrument.name} does not go to its stop: do not push; the supervisor decides."
    sheet.sign_off(phase, f"{start}/supervisor", "short of length", then=PLAN_AGAIN, returned=PLAN_AGAIN, say=say)
    return f"{start}/again"


def _last_hand_size(sheet: Sheet, phase: Phase) -> int:
    if phase.to_size is None:
        return sheet.asked.final
    return phase.to_size if phase.to_estimate else sheet.selection.glide_path_to


def _flare(sheet: Sheet, phase: Phase) -> str:
    worked = [(f"{phase.key}/{step_name(instrument)}", instrument) for instrument in sheet.selection.coronal]
    return flare(sheet, phase, worked, then="@next")


def _first_binder(sheet: Sheet, phase: Phase) -> str | None:
    """Hand sizes above the one that is loose, straight in, until one is held: the first to bind.

    Where none up to the final size is held, or no hand size at all while none is chosen, the canal is wider than
    planned.
    """
    loose, final = sheet.selection.glide_path_to, sheet.asked.final_size or sizes()[-1]
    wanted = [sheet.selection.hand[size] for size in sizes() if loose < size <= final and size in sheet.selection.hand]
    ids = [f"{phase.key}/{step_name(instrument)}" for instrument in wanted]
    for instrument, id_, then in zip(wanted, ids, [*ids, PLAN_AGAIN][1:], strict=True):
        wider = "the final size is planned anew" if sheet.asked.final_size else "no hand size here is held"
        last = f"{GAUGED} If this one goes to its stop too, the end is wider than planned: {wider}."
        say = last if then == PLAN_AGAIN else phase.why
        _gauge(sheet, phase, instrument, id_=id_, reached=then, short="@next", target=Target.TO_RESISTANCE, say=say)
    return ids[0] if ids else None


def _descend(sheet: Sheet, phase: Phase) -> str:
    """Largest to smallest, to resistance. Passes repeat until the smallest is at length or nothing is gained.

    A size above the final one stays short of length by plan: wherever it stops, the next one follows.
    """
    series = sheet.selection.descending
    starts = [f"{phase.key}/{step_name(instrument)}" for instrument in series]
    for instrument, start, then in zip(series, starts, [*starts[1:], f"{phase.key}/gained"], strict=True):
        above = sheet.sizes_above(instrument) > 0
        after = then if above else f"{start}/at-length"
        sheet.cut(phase, instrument, stop=StopAt(sheet.short_um(instrument)), target=Target.TO_RESISTANCE, then=after)
        if not above:
            # Once one of the series is at length the smaller ones have nothing to do: from here on sizes go up.
            sheet.ask(phase, after, AtLength(nodes=(start,)), yes=f"@up:{instrument.size}", no=then)
    _another_pass(sheet, phase, starts)
    return starts[0]


def _another_pass(sheet: Sheet, phase: Phase, starts: Sequence[str]) -> None:
    """Adds the questions at the end of a pass: is there another one, or does the supervisor decide?"""
    key, supervisor = phase.key, f"{phase.key}/supervisor"
    gained = Gained(nodes=tuple(starts), least_um=um(sheet.figures["passes.gain"]))
    sheet.ask(phase, f"{key}/gained", gained, yes=f"{key}/passes", no=f"{key}/no-gain-before")
    passes = PassesBelow(node=starts[0], n=phase.most_passes or 1)
    sheet.ask(phase, f"{key}/passes", passes, yes=f"@{phase.repeat_from}", no=supervisor)
    # First time without gain: if the small instrument still passes, the hindrance is coronal and one more pass,
    # which starts with coronal flaring, may clear it.
    # One less than the figure: the last time without gain leads to the supervisor and not to this step.
    first_time = PassesBelow(node=f"{key}/no-gain", n=sheet.figures.count("passes.no_gain") - 1)
    sheet.ask(phase, f"{key}/no-gain-before", first_time, yes=f"{key}/no-gain", no=supervisor)
    sheet.recapitulate(phase, f"{key}/no-gain", sheet.selection.recapitulating, then=f"{key}/passes")
    smallest = sheet.selection.descending[-1]
    say = f"{smallest.name} is not at length: the supervisor decides whether to take it there."
    sheet.sign_off(
        phase, supervisor, "series short of length", then=f"@to:{smallest.size}", returned=PLAN_AGAIN, say=say
    )


def _ascend(sheet: Sheet, phase: Phase) -> str:
    """Adds the sizes from the smallest of the series up to the final one. Where one stops short, the next larger makes
    room.
    """
    smallest, final = sheet.selection.descending[-1].size, sheet.asked.final
    if final < smallest:
        reason = (
            f"a final size of {final} lies below the smallest of the series, {smallest}. Choose {smallest} or more."
        )
        raise ChoiceNotPossible(canal=sheet.asked.canal, reason=reason, at=("choices", "canals"))
    wanted = [s for s in sizes() if smallest <= s <= final]
    for size, then in zip(wanted, [*wanted[1:], None], strict=True):
        instrument = shaping_of(sheet.selection, size, sheet.technique, sheet.asked.canal)
        following = "@next" if then is None else f"{phase.key}/{then:02d}-{instrument.taper:02d}"
        _up_one(sheet, phase, instrument, following)
        sheet.stood(instrument)
    # The descending series leads into this one at the size that came to length, so each size needs an entry of its own.
    _enter_ascending(sheet, phase, wanted)
    return sheet.starts[f"to:{smallest}"]


def _up_one(sheet: Sheet, phase: Phase, instrument: Instrument, then: str) -> None:
    start = f"{phase.key}/{step_name(instrument)}"
    sheet.cut(phase, instrument, stop=AT_END, target=Target.TO_LENGTH, then=f"{start}/at-length")
    larger = sheet.selection.series.get(size_above(instrument.size) or 0)
    supervisor = f"{start}/supervisor"
    short = f"{start}/room" if larger else f"{start}/again"
    sheet.ask(phase, f"{start}/at-length", AtLength(nodes=(start,)), yes=then, no=short)
    if larger:
        _make_room(sheet, phase, start, larger)
    else:
        # The kit has no larger one to make room: it is worked again instead, as often as room would have been made.
        times = PassesBelow(node=start, n=1 + sheet.figures.count("make_room.most"))
        sheet.ask(phase, short, times, yes=start, no=supervisor)
    say = (
        f"{instrument.name} stays short of length: the supervisor decides whether the size before it is the final one."
    )
    sheet.sign_off(phase, supervisor, "size short of length", then=PLAN_AGAIN, returned=PLAN_AGAIN, say=say)


def _make_room(sheet: Sheet, phase: Phase, start: str, larger: Instrument) -> None:
    """Adds a step in which the next larger size, kept short, opens the canal above the one that stopped."""
    less = um(sheet.figures["make_room.less"])
    room = f"{start}/make-room"
    times = PassesBelow(node=room, n=sheet.figures.count("make_room.most"))
    sheet.ask(phase, f"{start}/room", times, yes=room, no=f"{start}/supervisor")
    sheet.cut(
        phase,
        larger,
        id_=room,
        # The deepest that it may ever go. Where the smaller one's depth is known, the walker takes `less` off that
        # depth and the shallower of the two counts.
        stop=StopAt(max(less, sheet.short_um(larger))),
        shorter_than=ShorterThan(node=start, less_um=less),
        target=Target.TO_RESISTANCE,
        then=start,
        say=f"Make room: {in_mm(less)} mm short of where the smaller one stopped.",
    )


def _enter_ascending(sheet: Sheet, phase: Phase, wanted: Sequence[int]) -> None:
    """Names the places where the ascending series is entered: `@up:SIZE` once SIZE is at length, `@to:SIZE` where SIZE
    itself is worked to length."""
    taper = sheet.selection.series_taper
    for instrument in sheet.selection.descending:
        if sheet.sizes_above(instrument):
            continue
        larger = [s for s in wanted if s > instrument.size]
        sheet.starts[f"up:{instrument.size}"] = (
            f"{phase.key}/{larger[0]:02d}-{taper:02d}" if larger else f"@after:{phase.key}"
        )
    sheet.starts[f"to:{wanted[0]}"] = f"{phase.key}/{wanted[0]:02d}-{taper:02d}"


def _step_back(sheet: Sheet, phase: Phase) -> str | None:
    """Adds larger hand sizes, each a step shorter; between them the final size goes to length again."""
    size, step = sheet.asked.final, um(phase.step_mm or 0)
    final = hand_of(sheet.selection, size, sheet.technique, sheet.asked.canal)
    small = final if sheet.technique.recapitulate_with_final else sheet.selection.recapitulating
    instruments = []
    for number in range(1, (phase.steps or 0) + 1):
        larger = size_above(size, number * sheet.figures.count("step_back.next_size"))
        if larger is None:
            raise TechniqueNotUsable(where=sheet.technique.name, reason=f"the series ends above size {size}")
        instrument = hand_of(sheet.selection, larger, sheet.technique, sheet.asked.canal)
        instruments.append((instrument, StopAt(max(number * step, sheet.nearest_um))))
    starts = [f"{phase.key}/{step_name(instrument)}" for instrument, _ in instruments]
    for (instrument, stop), then in zip(instruments, [*starts[1:], "@next"], strict=True):
        sheet.cut(phase, instrument, stop=stop, target=Target.TO_LENGTH, then=then, recapitulating=small)
    return starts[0] if starts else None


def _confirm(sheet: Sheet, phase: Phase) -> str:
    """Adds the gauging of the end: the final size seats at length and the next larger stays short. Only then is the end
    that size.
    """
    final = hand_of(sheet.selection, sheet.asked.final, sheet.technique, sheet.asked.canal)
    larger = sheet.selection.hand.get(size_above(final.size) or 0)
    seats = f"{phase.key}/{step_name(final)}"
    shown = f"{phase.key}/image" if phase.hold_point else "@next"
    # A size that does not seat is judged by the supervisor: at the hold point where the technique has one here, else at
    # a sign-off of its own.
    stuck = shown if phase.hold_point else f"{phase.key}/short"
    _gauge(sheet, phase, final, reached=f"{phase.key}/larger" if larger else shown, short=f"{phase.key}/seats-again")
    again = PassesBelow(node=seats, n=sheet.figures.count("gauge.times"))
    sheet.ask(phase, f"{phase.key}/seats-again", again, yes=f"{phase.key}/clear", no=stuck)
    sheet.irrigate(phase, f"{phase.key}/clear", then=f"{phase.key}/recapitulate")
    sheet.recapitulate(phase, f"{phase.key}/recapitulate", sheet.selection.recapitulating, then=seats)
    if larger:
        _gauge(
            sheet,
            phase,
            larger,
            id_=f"{phase.key}/larger",
            reached=f"{phase.key}/wider",
            short=shown,
            target=Target.TO_RESISTANCE,
            say=f"{GAUGED} It has to stay short: then the end is no wider than {final.size}.",
        )
        say = f"Hand {larger.size} goes to length too: the end is wider than {final.size}. The supervisor decides."
        sheet.sign_off(
            phase, f"{phase.key}/wider", "end wider than planned", then=PLAN_AGAIN, returned=PLAN_AGAIN, say=say
        )
    if phase.hold_point:
        shows = f"{final.name} back at its stop and left there"
        sheet.image_and_sign_off(phase, phase.key, phase.hold_point, then="@next", say=phase.why, shows=shows)
    else:
        say = f"Hand {final.size} does not seat at length. The supervisor decides."
        sheet.sign_off(phase, stuck, "final size short of length", then="@next", returned=PLAN_AGAIN, say=say)
    return seats


def _gauge(
    sheet: Sheet,
    phase: Phase,
    instrument: Instrument,
    *,
    reached: str,
    short: str,
    id_: str | None = None,
    target: Target = Target.TO_LENGTH,
    say: str = GAUGED,
) -> str:
    return sheet.add_open(
        Step(
            id=id_ or f"{phase.key}/{step_name(instrument)}",
            action=Action.GAUGE,
            phase=phase.key,
            instrument=instrument.key,
            target=target,
            say=say,
            exits={Exit.REACHED: reached, Exit.SHORT: short},
        ),
        AT_END,
    )


def _rinse(sheet: Sheet, phase: Phase) -> str:
    irrigants = sheet.choices.final_rinse or (sheet.choices.irrigant,)
    ids = [f"{phase.key}/{number}-{name}" for number, name in enumerate(irrigants, start=1)]
    for name, id_, then in zip(irrigants, ids, [*ids[1:], "@next"], strict=True):
        sheet.irrigate(phase, id_, then=then, irrigant=name, rinse=True)
    return ids[0]


def _cone(sheet: Sheet, phase: Phase) -> str:
    fit, shown = f"{phase.key}/fit", f"{phase.key}/image"
    sheet.add_open(
        Step(
            id=f"{phase.key}/dry",
            action=Action.DRY,
            phase=phase.key,
            say="Dry with paper points, not past the stop.",
            exits={Exit.DONE: fit},
        ),
        AT_END,
    )
    sheet.add_open(
        Step(
            id=fit,
            action=Action.FIT_CONE,
            phase=phase.key,
            target=Target.TO_LENGTH,
            say=f"Cone of size {sheet.asked.final}, checked by fit: cones vary within their tolerance. "
            "Short or loose, try another; no push.",
            # An image either way: it shows how far the cone goes, and the supervisor judges that.
            exits={Exit.REACHED: shown, Exit.SHORT: shown},
        ),
        AT_END,
    )
    sheet.image_and_sign_off(
        phase,
        phase.key,
        phase.hold_point or "cone",
        then="@next",
        say=phase.why,
        shows="the cone in place",
        again_from=fit,
    )
    return f"{phase.key}/dry"


def _fill(sheet: Sheet, phase: Phase) -> str:
    sheet.add_open(
        Step(
            id=f"{phase.key}/fill",
            action=Action.FILL,
            phase=phase.key,
            say=phase.why,
            exits={Exit.DONE: f"{phase.key}/image"},
        ),
        AT_END,
    )
    sheet.image_and_sign_off(
        phase, phase.key, phase.hold_point or "final image", then="@next", say=phase.why, shows="the filling in place"
    )
    return f"{phase.key}/fill"


WRITERS: dict[PhaseKind, Callable[[Sheet, Phase], str | None]] = {
    PhaseKind.SIGN_OFF: _sign_off,
    PhaseKind.TO_LENGTH: _to_length,
    PhaseKind.FLARE: _flare,
    PhaseKind.GAUGE: _first_binder,
    PhaseKind.DESCEND: _descend,
    PhaseKind.ASCEND: _ascend,
    PhaseKind.STEP_BACK: _step_back,
    PhaseKind.CONFIRM: _confirm,
    PhaseKind.RINSE: _rinse,
    PhaseKind.CONE: _cone,
    PhaseKind.FILL: _fill,
}
"""By kind, what adds a phase's steps. Each returns the id of the first one, or None where there is nothing to do."""
