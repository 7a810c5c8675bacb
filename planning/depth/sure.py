"""Where instruments have stood in a canal for certain: a recorded depth may be a slip, and no needle may go by one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from planning.canal.profile import Line, Stand
from planning.contract.plan_input import PastInsertion
from planning.depth.contact_depth import LightTouch, opened, to_resistance_mm
from planning.instruments.iso_3630 import Instrument


def surely_stood(
    made: Sequence[PastInsertion], kit: Mapping[str, Instrument], low: Line, by: LightTouch
) -> Iterator[Stand]:
    """Where instruments have stood for certain.

    One that was worked to length and reached its stop has stood at the stop, and no deeper. Any other recorded depth
    may be a slip: it counts only as far as light touch would take the instrument in `low`, a narrow canal of this kind
    after the work so far. Where no widths are known it does not count at all.
    """
    for each in made:
        instrument = kit.get(each.instrument)
        if instrument is None:
            continue
        depth_mm = each.depth_mm if each.stop_mm is None else min(each.depth_mm, each.stop_mm)
        if each.to_resistance or depth_mm != each.stop_mm:
            if not low:
                continue
            depth_mm = min(depth_mm, to_resistance_mm(instrument, low, low[-1][0], by))
        if low:
            low = opened(instrument, low, depth_mm, by)
        yield Stand(instrument=instrument, tip_mm=depth_mm)
