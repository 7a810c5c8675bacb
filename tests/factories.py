"""Rows for the tests. Cases and plans are made by the services, as people make them."""

from __future__ import annotations

from datetime import date
from typing import Any

import factory

from cases.domain.access.roles import Role
from cases.mapping.kits import filling_row, instrument_row
from cases.models import Kit, KitFilling, KitNeedle, Membership, Person, Programme
from cases.models.kits import KitInstrument
from planning.contract.plan_input import Kit as KitValue
from tests.planning.given import CHECK_KIT

PASSWORD = "a-long-enough-one"


class ProgrammeFactory(factory.django.DjangoModelFactory[Programme]):
    class Meta:
        model = Programme

    name = factory.Sequence(lambda n: f"Programme {n}")


class PersonFactory(factory.django.DjangoModelFactory[Person]):
    class Meta:
        model = Person
        skip_postgeneration_save = True

    username = factory.Sequence(lambda n: f"person{n}")
    display_name = factory.LazyAttribute(lambda person: person.username.title())
    password = factory.django.Password(PASSWORD)


class MembershipFactory(factory.django.DjangoModelFactory[Membership]):
    class Meta:
        model = Membership

    person = factory.SubFactory(PersonFactory)
    programme = factory.SubFactory(ProgrammeFactory)
    role = Role.STUDENT.value
    # A day that no test reaches: what happens without one is tested where people are let treat patients.
    treats_patients_until = factory.LazyAttribute(lambda row: date.max if row.role == Role.STUDENT else None)


def member(programme: Programme, username: str, role: Role, group: str = "") -> Person:
    """A person with a role in the programme."""
    person: Person = PersonFactory.create(username=username)
    MembershipFactory.create(person=person, programme=programme, role=role.value, group=group)
    return person


def kit_row(programme: Programme, kit: KitValue = CHECK_KIT, **more: Any) -> Kit:
    """A kit of the programme, written without its coordinator."""
    row = Kit.objects.create(programme=programme, name=more.get("name", kit.name), sent_hash="")
    KitInstrument.objects.bulk_create(instrument_row(row, each) for each in kit.instruments)
    KitNeedle.objects.bulk_create(KitNeedle(kit=row, gauge=each.gauge, tip=each.tip) for each in kit.needles)
    KitFilling.objects.bulk_create(filling_row(row, each) for each in kit.filling)
    return row
