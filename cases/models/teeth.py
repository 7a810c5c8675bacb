"""Demo patients, cases, their tooth, its roots and canals."""

from __future__ import annotations

from django.db import models
from django.db.models import F, Q

from cases.models.base import ClientCreated, Identified, Listed, choices, one_of
from cases.models.people import Person, Programme
from planning.anatomy import Notation
from planning.contract.plan_input import Pattern
from planning.techniques.technique import Setting

# ISO 3950: quadrants 1-4 hold eight permanent teeth, quadrants 5-8 five primary ones.
ISO_3950 = [f"{q}{n}" for q in range(1, 5) for n in range(1, 9)] + [f"{q}{n}" for q in range(5, 9) for n in range(1, 6)]


class DemoPatient(Identified):
    """An alias and nothing else: there is no field for a real identity, and there must never be one."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="patients")
    alias = models.CharField(max_length=40)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["programme", "alias"], name="patient_alias_unique"),
            models.CheckConstraint(condition=~Q(alias=""), name="patient_has_alias"),
        ]

    def __str__(self) -> str:
        return self.alias


class Case(Listed, ClientCreated):
    """One tooth to be planned and treated. `revision` rises with every change a plan could rest on.

    What no query asks for lies in `facts`.
    """

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="cases")
    patient = models.ForeignKey(DemoPatient, on_delete=models.PROTECT, related_name="cases")
    student = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="cases")
    supervisor = models.ForeignKey(
        Person, on_delete=models.PROTECT, related_name="supervised_cases", null=True, blank=True
    )
    setting = models.CharField(max_length=9, choices=choices(Setting))
    facts = models.JSONField(default=dict, blank=True, help_text="JSON of what was seen and recorded of the tooth.")
    revision = models.PositiveIntegerField(default=1)
    created_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.CheckConstraint(condition=one_of("setting", Setting), name="case_setting_known"),
            models.CheckConstraint(condition=Q(revision__gte=1), name="case_revision_from_1"),
            models.CheckConstraint(
                condition=Q(supervisor__isnull=True) | ~Q(supervisor=F("student")), name="case_supervisor_not_student"
            ),
        ]
        indexes = [
            models.Index(fields=["programme", "-created_at", "-id"], name="case_newest_first"),
            models.Index(fields=["student", "-created_at"], name="case_by_student"),
        ]

    def __str__(self) -> str:
        return f"{self.patient}, {self.created_at:%Y-%m-%d}"


class Tooth(models.Model):
    """The tooth of a case. What was typed in is kept beside the ISO 3950 designation."""

    case = models.OneToOneField(Case, on_delete=models.PROTECT, related_name="tooth", primary_key=True)
    iso = models.CharField(max_length=2)
    notation = models.CharField(max_length=10, choices=choices(Notation))
    designation = models.CharField(max_length=20)

    class Meta:
        verbose_name_plural = "teeth"
        constraints = [
            models.CheckConstraint(condition=one_of("iso", ISO_3950), name="tooth_iso_3950"),
            models.CheckConstraint(condition=one_of("notation", Notation), name="tooth_notation_known"),
        ]

    def __str__(self) -> str:
        return self.iso


class Root(Identified):
    """A root, and how the canals in it run. Which canal is the main one is chosen by a person."""

    tooth = models.ForeignKey(Tooth, on_delete=models.PROTECT, related_name="roots")
    name = models.CharField(max_length=12)
    pattern = models.CharField(max_length=8, choices=choices(Pattern), default=Pattern.UNKNOWN.value)
    main_canal = models.ForeignKey("Canal", on_delete=models.SET_NULL, related_name="+", null=True, blank=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["tooth", "name"], name="root_name_unique"),
            models.CheckConstraint(condition=~Q(name=""), name="root_has_name"),
            models.CheckConstraint(condition=one_of("pattern", Pattern), name="root_pattern_known"),
        ]

    def __str__(self) -> str:
        return self.name


class Canal(ClientCreated):
    """A canal as charted. What no query asks for lies in `facts`."""

    tooth = models.ForeignKey(Tooth, on_delete=models.PROTECT, related_name="canals")
    root = models.ForeignKey(Root, on_delete=models.PROTECT, related_name="canals")
    place = models.PositiveSmallIntegerField(help_text="Order on the screen; says nothing about treatment.")
    name = models.CharField(max_length=12)
    reference_point = models.CharField(max_length=40, blank=True, help_text="Empty until a person chose one.")
    facts = models.JSONField(default=dict, blank=True, help_text="JSON of what was seen and measured of it.")

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["tooth", "name"], name="canal_name_unique"),
            models.UniqueConstraint(fields=["tooth", "place"], name="canal_place_unique"),
            models.CheckConstraint(condition=~Q(name=""), name="canal_has_name"),
        ]

    def __str__(self) -> str:
        return self.name
