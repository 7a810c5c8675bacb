"""More invented students and cases than are written down, drawn from a seed: the same seed makes the same ones."""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum
from random import Random
from typing import Any

from django.db import transaction

from cases.domain.access.roles import Role
from cases.models import DemoPatient, Person, Programme
from cases.services.demo import cases
from planning import anatomy
from planning.anatomy import CanalOnOffer, Notation, Tooth, ToothName

PASSWORD = "quay-ballast-18"  # noqa: S105 - invented, of every drawn student
GIVEN_NAMES = ("Asa", "Bruna", "Cato", "Dunya", "Elio", "Femke", "Goran", "Hana", "Ivo", "Jurre", "Kamala", "Leocadia")
SURNAMES = ("Averdale", "Brisko", "Corvane", "Dalmeny", "Estrup", "Fairlock", "Gantry", "Hollin", "Isker", "Jorvik")
SUPERVISORS = ("anouk", "emeka")
TEETH = ("11", "14", "15", "22", "24", "34", "36", "37", "44", "45", "46")
# How far a case has come, and how many of a hundred have.
STAGES = {"opened": 10, "charted": 20, "drafted": 15, "asked": 15, "returned": 5, "approved": 15, "begun": 20}
PLANS = (
    {"kit": "Bench kit, taper .03", "technique": "crown-down", "glide_path_to_size": 15},
    {"kit": "Hand kit", "technique": "step-back"},
)


class Size(StrEnum):
    """How much is drawn beside what is written down."""

    DEMO = "demo"
    GROUP = "group"
    SCHOOL = "school"


COUNTS = {Size.DEMO: (0, 0), Size.GROUP: (6, 40), Size.SCHOOL: (60, 600)}
"""Students, and cases of them all."""


@transaction.atomic
def load(size: Size, *, seed: int) -> list[str]:
    """The user names of the drawn students; none where the size draws none or this seed was drawn before.

    What is written down must have been loaded.
    """
    students, count = COUNTS[size]
    people = {name: Person.objects.get(username=name) for name in SUPERVISORS}
    programme = people[SUPERVISORS[0]].memberships.get().programme
    if DemoPatient.objects.filter(programme=programme, alias=_alias(seed, 1)).exists():
        return []
    draw = Random(seed)  # noqa: S311 - invented cases, no secrets
    drawn = [_student(draw, f"student-{seed}-{number}", programme) for number in range(1, students + 1)]
    people.update((student.username, student) for student in drawn)
    for number in range(1, count + 1):
        row = _case(draw, student=draw.choice(drawn).username, alias=_alias(seed, number))
        cases.play(row, people)
    return [student.username for student in drawn]


def _alias(seed: int, number: int) -> str:
    return f"Drawn tooth {number} of draw {seed}"


def _student(draw: Random, username: str, programme: Programme) -> Person:
    name = f"{draw.choice(GIVEN_NAMES)} {draw.choice(SURNAMES)}"
    person = Person.objects.create(username=username, password=cases.quickly_hashed(PASSWORD), display_name=name)
    cases.add_member(person, programme, Role.STUDENT, "Drawn group")
    return person


def _case(draw: Random, *, student: str, alias: str) -> dict[str, Any]:
    """A case as it would be written down."""
    supervisor = draw.choice(SUPERVISORS)
    tooth = anatomy.find(ToothName(notation=Notation.ISO_3950, designation=draw.choice(TEETH)))
    (stage,) = draw.choices(tuple(STAGES), tuple(STAGES.values()))
    names = [canal.name for canal in tooth.canals]
    return {
        "student": student,
        "supervisor": supervisor,
        "alias": alias,
        "tooth": {"notation": "iso_3950", "designation": tooth.iso},
        "setting": "extracted",
        "points": {canal.name: _point(canal) for canal in tooth.canals},
        "readings": [] if stage == "opened" else list(_readings(draw, tooth)),
        "story": list(_story(draw, stage, supervisor, names)),
    }


def _point(canal: CanalOnOffer) -> str:
    return canal.reference_point or canal.other_reference_points[0]


def _readings(draw: Random, tooth: Tooth) -> Iterator[dict[str, Any]]:
    """Of each canal one before and one that confirms it, a few tenths of a millimetre apart."""
    usual = anatomy.usual_range(tooth)
    low_mm, high_mm = (usual.low_mm, usual.high_mm) if usual else (None, None)
    middle_mm = ((low_mm or 19.0) + (high_mm or 24.0)) / 2
    for canal in tooth.canals:
        tooth_mm = round(middle_mm + draw.uniform(-1.5, 1.5), 1)
        set_mm = int(2 * (tooth_mm - 1)) / 2
        short_mm = round(tooth_mm - set_mm + draw.uniform(-0.3, 0.3), 1)
        yield {"canal": canal.name, "pre": tooth_mm, "set": set_mm, "short": short_mm}


def _story(draw: Random, stage: str, supervisor: str, canals: list[str]) -> Iterator[dict[str, Any]]:
    if stage in ("opened", "charted"):
        return
    yield {"do": "plan", **draw.choice(PLANS)}
    if stage == "drafted":
        return
    yield {"do": "submit"}
    if stage == "asked":
        return
    if stage == "returned":
        yield {"do": "return", "by": supervisor, "note": "Take the confirming image again, a little more from distal."}
        return
    yield {"do": "approve", "by": supervisor, "note": "Go on as planned."}
    if stage == "begun":
        *whole, last = draw.sample(canals, draw.randint(1, len(canals)))
        for canal in whole:
            yield {"do": "work", "canal": canal}
        yield {"do": "work", "canal": last, "until": "glide-path"}
