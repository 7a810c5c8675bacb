"""The server's walker and the phone's come to the same state from any course: each is the other's judge."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from random import Random

from cases.domain.events.kinds import EventKind
from cases.domain.progress.canal_progress import CanalState
from cases.domain.progress.case_state import Sheets
from cases.domain.progress.course import fold
from cases.domain.progress.out_of_course import OutOfCourse
from planning.techniques.files import provided_techniques
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.draws import WHOLE
from tests.planning.given import block, molar
from tests.walkers.drawn import CALM, WILD, Drawn
from tests.walkers.state import agrees, state_of

SEED = 20261130
COURSES = 2_000 if WHOLE else 60
LONGEST = {WILD: 120, CALM: 400}


def plans() -> dict[str, dict[str, Sheets]]:
    """Two plans of each of two teeth: a molar whose canals join, and a block."""
    made: dict[str, dict[str, Sheets]] = {}
    for tooth in (molar, block):
        both = {key: plan(tooth(technique=technique)) for key, technique in provided_techniques().items()}
        made[tooth.__name__] = {
            f"{tooth.__name__} {key}": {canal.canal: canal.run_sheet for canal in planned.canals}
            for key, planned in both.items()
        }
    return made


def test_from_any_course_both_come_to_the_same_state(tmp_path: Path) -> None:
    teeth, dice = plans(), Random(SEED)
    states, seen = [], Counter[str]()
    for number in range(COURSES):
        sheets = teeth[dice.choice(sorted(teeth))]
        luck = CALM if number % 4 == 0 else WILD
        drawn = Drawn(sheets, dice.choice(list(Setting)), Random(f"{SEED} {number}"), luck)
        drawn.draw(dice.randint(2, LONGEST[luck]))
        seen.update(f"kind {event.kind}" for event in drawn.events)
        # At its end, and on the way there.
        for count in (len(drawn.events), dice.randint(1, len(drawn.events)), dice.randint(1, len(drawn.events))):
            events = drawn.events[:count]
            course = fold(sheets, events, setting=drawn.setting)
            seen.update(f"out of course: {why}" for why in course.out_of_course.values())
            seen.update(f"canal {canal.state}" for canal in course.canals.values())
            seen.update("asked for again" for canal in course.canals.values() if canal.reopened)
            states.append((drawn.setting, events, state_of(course)))
    print(f"seed {SEED}: {sum(len(events) for _, events, _ in states)} events in {COURSES} courses")
    every = {f"kind {kind}" for kind in EventKind} | {f"out of course: {why}" for why in OutOfCourse}
    # Courses in which something never happens would prove nothing of it.
    assert every | {f"canal {state}" for state in CanalState} | {"asked for again"} <= seen.keys()
    agrees({key: sheets for tooth in teeth.values() for key, sheets in tooth.items()}, states, folder=tmp_path)
