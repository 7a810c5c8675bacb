"""By which keys other systems know what is here."""

from __future__ import annotations

from django.db import models
from django.db.models import Q

from cases.domain.external_id import MOST_CHARACTERS
from cases.models.access_keys import Service
from cases.models.base import Identified
from cases.models.kits import Kit
from cases.models.people import Person
from cases.models.teeth import Case

KINDS = ("case", "person", "kit")


def _is(kind: str) -> Q:
    """The condition that the row is of this kind and of no other."""
    return Q(**{f"{each}__isnull": each != kind for each in KINDS})


class ExternalId(Identified):
    """The key that a service has for one case, person or kit. It is the service's own note, and no part of a record."""

    service = models.ForeignKey(Service, on_delete=models.CASCADE, related_name="external_ids")
    value = models.CharField(max_length=MOST_CHARACTERS)
    case = models.ForeignKey(Case, on_delete=models.CASCADE, related_name="external_ids", null=True)
    person = models.ForeignKey(Person, on_delete=models.CASCADE, related_name="external_ids", null=True)
    kit = models.ForeignKey(Kit, on_delete=models.CASCADE, related_name="external_ids", null=True)
    set_at = models.DateTimeField(auto_now=True)

    class Meta:
        constraints = [
            models.CheckConstraint(condition=_is("case") | _is("person") | _is("kit"), name="external_id_of_one_thing"),
            models.CheckConstraint(condition=~Q(value=""), name="external_id_has_value"),
            *(models.UniqueConstraint(fields=["service", kind], name=f"one_external_id_of_a_{kind}") for kind in KINDS),
            *(
                models.UniqueConstraint(
                    fields=["service", "value"], condition=_is(kind), name=f"external_id_of_one_{kind}"
                )
                for kind in KINDS
            ),
        ]

    def __str__(self) -> str:
        return self.value
