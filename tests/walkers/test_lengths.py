"""What the phone draws while somebody measures is what the planner will make of it: the planner is the judge."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from random import Random
from typing import Any

from planning.foundation.encoding import encode
from planning.foundation.tables import Figures, published
from planning.lengths.readings import (
    ApexLocator,
    ConfirmingImage,
    DirectSight,
    ImageInterval,
    PreOperativeImage,
    Ratio,
    Reading,
    Resorption,
)
from planning.lengths.working_length import LengthContext, settle
from tests.draws import draws
from tests.walkers.phone import holds

SEED = 20261201
CANALS = draws(4_000)
MEASUREMENTS = ("confirming_image", "apex_locator", "direct_sight")


def drawn(rng: Random, tooth_mm: float, setting: str) -> Reading:
    """A reading of a tooth that is about so long: most count, some do not."""
    about_mm = round(tooth_mm + rng.choice((-1, -0.5, -0.3, 0, 0, 0.2, 0.5, 1)), 1)
    point = rng.choice(("cusp", "cusp", "cusp", "other cusp"))
    interval = ImageInterval(
        least_mm=round(about_mm - rng.choice((0.2, 2.1)), 1), most_mm=about_mm + 1, rests_on="marks"
    )
    on_image_mm = round(about_mm * 1.1, 1)
    kinds: list[Reading] = [
        PreOperativeImage(tooth_mm=about_mm, reference_point=point, interval=rng.choice((None, interval))),
        Ratio(instrument_mm=18.0, instrument_on_image_mm=19.8, tooth_on_image_mm=on_image_mm, reference_point=point),
        ConfirmingImage(
            set_mm=about_mm - 1, tip_short_mm=rng.choice((-0.5, 0.5, 0.8, 1.0, 1.0, 3.5)), reference_point=point
        ),
        ApexLocator(
            read_mm=about_mm,
            repeat_mm=round(about_mm + rng.choice((0, 0, 0.2, 0.5, 0.6, 2)), 1),
            mark=rng.choice(("apex", "constriction")),
            stable=rng.random() < 0.9,
            reference_point=point,
        ),
    ]
    # The end of a canal is not seen in a patient.
    return rng.choice(kinds if setting == "clinic" else [*kinds, DirectSight(seen_mm=about_mm, reference_point=point)])


def told(number: int) -> dict[str, Any]:
    """A canal, its readings, and what the planner makes of them."""
    rng = Random(f"{SEED} {number}")
    setting = rng.choice(("block", "extracted", "clinic"))
    about = LengthContext(
        canal="P",
        reference_point="cusp",
        setting=setting,
        resorption=rng.choice(list(Resorption)),
        apex_mm=rng.choice((None, None, 0.3, 1.2)),
    )
    tooth_mm = rng.randrange(36, 52) / 2
    readings = [drawn(rng, tooth_mm, setting) for _ in range(rng.randint(1, 3))]
    length = settle(readings, about, Figures())
    lengths_mm = [each.working_length_mm for each in length.readings]
    counted = [reading for reading, each in zip(readings, lengths_mm, strict=True) if each is not None]
    measured = all(each.method in MEASUREMENTS for each in counted)
    once = len({each.method for each in counted}) == len(counted) >= 2
    agrees: bool | None = None
    # How far they lie apart is told of different measurements, none of which asks for another image.
    if measured and once and length.apart_mm is not None:
        within_mm = published()["lengths.agree_within"].value
        before = [each for each in lengths_mm if each is not None][:-1]
        # Where those before disagree already, nothing agrees with them.
        agrees = max(before) - min(before) <= within_mm and length.apart_mm <= within_mm
    return {
        "setting": setting,
        "canal": {"resorption": about.resorption, "reference_point": "cusp", "apex_mm": about.apex_mm},
        "readings": encode(readings),
        "lengths_mm": lengths_mm,
        "agrees": agrees,
    }


def test_the_phone_gives_each_reading_the_planners_length(tmp_path: Path) -> None:
    canals = [told(number) for number in range(CANALS)]
    seen = Counter(canal["agrees"] for canal in canals)
    print(f"seed {SEED}: {CANALS} canals, of the last reading: {dict(seen)}")
    # Canals among which nothing ever agrees, or always, would prove nothing.
    assert min(seen[True], seen[False]) >= CANALS // 100
    assert any(None in canal["lengths_mm"] for canal in canals)
    figures = {key: figure.value for key, figure in published().items()}
    holds("lengths.test.ts", {"figures": figures, "canals": canals}, folder=tmp_path)
