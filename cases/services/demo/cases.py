"""Loads the invented programmes of the demonstration, by the same services that people use."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from copy import copy
from datetime import date, timedelta
from pathlib import Path
from typing import Any
from uuid import UUID

from django.contrib.auth.hashers import get_hasher
from django.db import transaction
from django.utils import timezone

from cases.domain.access import key_text
from cases.domain.access.roles import Role
from cases.domain.access.scopes import FOR_SERVICES
from cases.domain.events.payloads import EventPayload
from cases.domain.plans.acknowledged import to_acknowledge
from cases.domain.plans.lifecycle import Decision
from cases.mapping.plans import plan_of
from cases.models import AccessKey, Canal, Case, Kit, Membership, Person, Programme, Service, ToothPlanVersion
from cases.services.charting import canals, cases, readings
from cases.services.demo.work import Bench
from cases.services.people import programmes
from cases.services.planning import plans, reviews
from cases.services.planning.plan_input import Asked
from cases.services.planning.reviews import Remark
from planning.anatomy import ToothName
from planning.contract.canal_facts import Finding
from planning.contract.plan_input import Choices, Junction, Pattern
from planning.contract.plan_input import Kit as KitValue
from planning.foundation.encoding import decode
from planning.lengths.readings import Reading

FILE = Path(__file__).parents[2] / "demo" / "quayside.toml"
Row = Mapping[str, Any]


def sign_ins() -> list[dict[str, str]]:
    """Who may sign in to the demonstration: role, username, password, name."""
    keys = ("role", "username", "password", "name")
    return [{key: str(person[key]) for key in keys} for person in _told()["people"]]


def service_keys() -> list[dict[str, str]]:
    """By which invented services sign in: name, key."""
    rows = _told()["services"]
    return [{"name": row["name"], "key": key_text.text_of(UUID(row["id"]), row["secret"])} for row in rows]


@transaction.atomic
def load() -> bool:
    """Loads everything; False where it is there already."""
    school = _told()
    names = [each["name"] for each in school["programmes"]]
    if Programme.objects.filter(name__in=names).exists():
        return False
    by_key = {each["key"]: Programme.objects.create(name=each["name"], invented=True) for each in school["programmes"]}
    people = {each["username"]: _person(each, by_key) for each in school["people"]}
    for service in school["services"]:
        _service(service, people[service["by"]])
    for kit in school["kits"]:
        _kit(kit, by_key[kit["programme"]], people[kit["by"]])
    for case in school["cases"]:
        play(case, people)
    return True


def play(row: Row, people: Mapping[str, Person]) -> None:
    """A case, from opening to where it stands, by those people."""
    _Story(row, people).play()


def _told() -> dict[str, Any]:
    return tomllib.loads(FILE.read_text(encoding="utf-8"))


def _person(row: Row, by_key: Mapping[str, Programme]) -> Person:
    password = quickly_hashed(row["password"])
    person = Person.objects.create(username=row["username"], password=password, display_name=row["name"])
    add_member(person, by_key[row["programme"]], Role(row["role"]), row.get("group", ""))
    return person


def add_member(person: Person, programme: Programme, role: Role, group: str) -> None:
    """Invented students may treat invented patients, whenever the demonstration is started."""
    until = date.max if role is Role.STUDENT else None
    Membership.objects.create(person=person, programme=programme, role=role, group=group, treats_patients_until=until)


def quickly_hashed(password: str) -> str:
    """A hash that is slow to make protects nothing that everybody knows. Whoever signs in gets one, as always when
    hashing has become slower since.
    """
    hasher: Any = copy(get_hasher())
    hasher.iterations = 1
    return str(hasher.encode(password, hasher.salt()))


def _service(row: Row, coordinator: Person) -> None:
    """A service whose key is known to everybody, as the people's passwords are."""
    service = Service.objects.create(programme=coordinator.memberships.get().programme, name=row["name"])
    AccessKey.objects.create(
        id=row["id"],
        service=service,
        name=service.name,
        scopes=list(FOR_SERVICES),
        secret_hash=key_text.hash_of(row["secret"]),
        made_by=coordinator,
        ends_at=timezone.now() + timedelta(days=key_text.MOST_DAYS),
    )


def _kit(kit: Row, programme: Programme, coordinator: Person) -> None:
    instruments = [{"size": size, **row["each"]} for row in kit["instruments"] for size in row["sizes"]]
    value = decode(
        KitValue,
        {
            "name": kit["name"],
            "instruments": instruments,
            "needles": kit["needles"],
            "filling": [{"size": size, **row["each"]} for row in kit["filling"] for size in row["sizes"]],
        },
    )
    programmes.add_kit(actor=coordinator, programme_id=programme.pk, kit=value)


class _Story:
    """One case, from opening to where it stands."""

    def __init__(self, row: Row, people: Mapping[str, Person]) -> None:
        self.row, self.people = row, people
        self.student = people[row["student"]]
        self.programme = self.student.memberships.get().programme
        self.case = self._opened()
        self.version: ToothPlanVersion | None = None
        self.bench: Bench | None = None

    def play(self) -> None:
        self._chart()
        for step in self.row["story"]:
            getattr(self, f"_{step['do']}")(step)

    def _opened(self) -> Case:
        supervisor = self.row.get("supervisor")
        case, _ = cases.open_case(
            actor=self.student,
            programme_id=self.programme.pk,
            patient_alias=self.row["alias"],
            tooth=decode(ToothName, self.row["tooth"]),
            setting=self.row["setting"],
            canals=self.row.get("canals"),
            supervisor_id=self.people[supervisor].pk if supervisor else None,
        )
        return case

    def _chart(self) -> None:
        points = self.row.get("points", {})
        for row in self.row["readings"]:
            seen: dict[str, Any] = {"finding": Finding.FOUND}
            if row["canal"] in points:
                seen["reference_point"] = points[row["canal"]]
            canals.change_canal(actor=self.student, canal=self._canal(row["canal"]), changes=seen)
            self._read(row)
        for name, facts in self.row.get("charted", {}).items():
            canals.change_canal(actor=self.student, canal=self._canal(name), changes=facts)
        for row in self.row.get("locators", ()):
            taken = {"read_mm": row["read"], "repeat_mm": row["repeat"], "mark": row["mark"]}
            self._take(row["canal"], {"method": "apex_locator", **taken})
        for name, root in self.row.get("roots", {}).items():
            canals.set_root(
                actor=self.student,
                case=self.case,
                name=name,
                pattern=Pattern(root["pattern"]),
                main_canal=root["main"] or None,
            )
        for row in self.row.get("junctions", ()):
            junction = decode(Junction, {"from_terminus_mm": row["from_terminus_mm"], "method": row["method"]})
            readings.record_junction(actor=self.student, canal=self._canal(row["canal"]), junction=junction)

    def _canal(self, name: str) -> Canal:
        return Canal.objects.select_related("tooth__case").get(tooth__case=self.case, name=name)

    def _take(self, canal: str, facts: Row) -> None:
        row = self._canal(canal)
        reading: Reading = decode(Reading, {**facts, "reference_point": row.reference_point})
        readings.take_length(actor=self.student, canal=row, reading=reading)

    # --- steps of a story ---

    def _read(self, row: Row) -> None:
        if "pre" in row:
            self._take(row["canal"], {"method": "pre_operative_image", "tooth_mm": row["pre"]})
        if "set" in row:
            taken = {"set_mm": row["set"], "tip_short_mm": row["short"]}
            after = {"after_flaring": row.get("after_flaring", False)}
            self._take(row["canal"], {"method": "confirming_image", **taken, **after})

    def _plan(self, step: Row) -> None:
        kit = Kit.objects.get(programme=self.programme, name=step["kit"])
        needle = kit.needles.get(tip="side_vented")
        sizes, reasons = step.get("sizes", {}), step.get("reasons", {})
        choices: dict[str, Any] = {
            "needle": {"gauge": needle.gauge, "tip": needle.tip},
            "irrigant": step.get("irrigant", "saline"),
            "canals": [
                {"canal": name, "final_size": size, "reason": reasons.get(name, "")} for name, size in sizes.items()
            ],
        }
        if "glide_path_to_size" in step:
            choices["glide_path_to_size"] = step["glide_path_to_size"]
        asked = Asked(kit_id=kit.pk, technique=step["technique"], choices=decode(Choices, choices))
        self.version, _ = plans.propose(actor=self.student, case=self.case, asked=asked)

    def _submit(self, step: Row) -> None:
        plans.submit(actor=self.student, version=self._asked_for())

    def _approve(self, step: Row) -> None:
        self._decide(step, Decision.APPROVED)

    def _return(self, step: Row) -> None:
        self._decide(step, Decision.RETURNED)

    def _decide(self, step: Row, decision: Decision) -> None:
        version = self._asked_for()
        reviews.decide(
            supervisor=self.people[step["by"]],
            version=version,
            decision=decision,
            seen_hash=version.hash,
            note=step["note"],
            acknowledged=list(to_acknowledge(plan_of(version).cautions)) if decision is Decision.APPROVED else (),
            remarks=[Remark(canal=canal, text=text) for canal, text in step.get("remarks", {}).items()],
        )

    def _work(self, step: Row) -> None:
        self._at_the_bench().work(step["canal"], until=step.get("until"))

    def _tell(self, step: Row) -> None:
        payload: EventPayload = decode(EventPayload, step["payload"])
        who = self.people[step["by"]] if "by" in step else self.student
        self._at_the_bench().tell(who, step["canal"], [("", payload)])

    def _at_the_bench(self) -> Bench:
        if self.bench is None:
            self.bench = Bench(self.student, self.people[self.row["supervisor"]], self._asked_for())
        return self.bench

    def _asked_for(self) -> ToothPlanVersion:
        if self.version is None:
            raise ValueError(f"{self.row['alias']}: nothing was planned yet.")
        return self.version
