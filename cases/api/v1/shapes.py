"""What is shown of people, cases, canals and plans."""

from __future__ import annotations

from typing import Any

from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from cases.api.fields import FieldsOf, Value
from cases.api.needs import PREFIX
from cases.domain.plans.acknowledged import Named
from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.plans.own_lengths import OwnLength
from cases.domain.plans.status import PlanStatus
from cases.domain.struck import StruckWhy
from planning.anatomy import Notation
from planning.contract.canal_facts import CanalFacts
from planning.contract.plan_input import Choices, Junction, PlanInput, RootInput
from planning.contract.plan_value import Plan, ToothNames
from planning.contract.tooth_facts import ToothFacts
from planning.foundation.quantities import mm
from planning.lengths.readings import Length, LengthState, Reading
from planning.techniques.technique import Setting


class Millimetres(serializers.FloatField):
    """A column in whole micrometres, shown in millimetres."""

    def to_representation(self, value: Any) -> Any:
        return mm(value)


class PersonRef(serializers.Serializer[Any]):
    """A stored person, of whom others see the id and the name alone."""

    id = serializers.UUIDField()
    name = serializers.CharField(source="__str__")


class StruckShown(serializers.Serializer[Any]):
    """Three columns of a stored reading, shown as one object."""

    at = serializers.DateTimeField(source="struck_at")
    by = PersonRef(source="struck_by")
    why = Value(StruckWhy, source="struck_why")


class MayBeStruck(serializers.Serializer[Any]):
    """Part of a stored reading: `struck` is null as long as the reading counts."""

    struck = serializers.SerializerMethodField(help_text="Who struck it, when and why; null where it counts.")

    @extend_schema_field(StruckShown(allow_null=True))
    def get_struck(self, row: Any) -> Any:
        return None if row.struck_at is None else StruckShown(row).data


class ReadingShown(MayBeStruck):
    """A stored reading: its value, and who took it when."""

    id = serializers.UUIDField()
    number = serializers.IntegerField(help_text="Counts within the canal.")
    at = serializers.DateTimeField()
    actor = PersonRef()
    reading = Value(Reading, source="payload")


class JunctionShown(MayBeStruck):
    """A stored junction: its value, and who measured it when."""

    id = serializers.UUIDField()
    number = serializers.IntegerField()
    at = serializers.DateTimeField()
    actor = PersonRef()
    junction = Value(Junction, source="payload")


class CanalShown(FieldsOf):
    value_type, shown_at = CanalFacts, "facts"
    id = serializers.UUIDField(source="row.id")
    name = serializers.CharField(source="row.name")
    # The base class has a property of this name; its own serializers are never nested in a canal.
    root = serializers.CharField(source="row.root.name")  # type: ignore[assignment]
    reference_point = serializers.CharField(source="row.reference_point", help_text="Empty until one was chosen.")
    length = Value(Length, allow_null=True, help_text="What the readings come to.")
    length_problem = serializers.CharField(source="problem", help_text="Why no length can be worked out, or empty.")
    junction = Value(Junction, allow_null=True, help_text="The last one measured.")
    readings = ReadingShown(many=True)
    junctions = JunctionShown(many=True)


class OverrideShown(serializers.Serializer[Any]):
    """A stored override: who gave it and who withdrew it, and the canal by its name."""

    id = serializers.UUIDField()
    code = serializers.CharField()
    canal = serializers.CharField(source="canal.name", default=None, allow_null=True)
    reason = serializers.CharField()
    final_size = serializers.IntegerField(allow_null=True, help_text="What was chosen for a wide canal.")
    supervisor = PersonRef()
    at = serializers.DateTimeField()
    withdrawn_at = serializers.DateTimeField(allow_null=True)
    withdrawn_by = PersonRef(allow_null=True)


class VersionRef(serializers.Serializer[Any]):
    """A stored version, as much of it as one line of a list needs."""

    id = serializers.UUIDField()
    number = serializers.IntegerField()
    state = Value(PlanState)


KNOWN_BY = "For services: the key that yours knows it by; null for people, and where there is none."


class CaseListed(serializers.Serializer[Any]):
    """A stored case in a list, with its people and where its plan stands."""

    id = serializers.UUIDField(source="row.id")
    programme_id = serializers.UUIDField(source="row.programme_id")
    external_id = serializers.CharField(source="row.external_id", allow_null=True, help_text=KNOWN_BY)
    patient_alias = serializers.CharField(source="row.patient.alias")
    tooth = Value(ToothNames, source="names")
    setting = Value(Setting, source="row.setting")
    student = PersonRef(source="row.student")
    supervisor = PersonRef(source="row.supervisor", allow_null=True)
    created_at = serializers.DateTimeField(source="row.created_at")
    revision = serializers.IntegerField(source="row.revision")
    status = Value(PlanStatus)
    version = VersionRef(allow_null=True, help_text="The version that stands.")


class CaseShown(FieldsOf, CaseListed):
    """A stored case with its whole chart."""

    value_type, shown_at = ToothFacts, "facts"
    notation = Value(Notation, source="row.tooth.notation", help_text="As the tooth was typed in.")
    designation = serializers.CharField(source="row.tooth.designation")
    roots = Value(tuple[RootInput, ...])
    canals = CanalShown(many=True)
    overrides = OverrideShown(many=True, help_text="What supervisors let pass, those taken back too.")


class RemarkShown(serializers.Serializer[Any]):
    """A stored remark, with its canal by name."""

    canal = serializers.CharField(source="canal_plan.canal")
    text = serializers.CharField()
    returned = serializers.BooleanField(help_text="The approval leaves this canal out.")


class ReviewShown(serializers.Serializer[Any]):
    """A stored decision on a version: who took it, when, and with which remarks."""

    id = serializers.UUIDField()
    decision = Value(Decision)
    asked = serializers.IntegerField(help_text="Which submission of the version it answers.")
    supervisor = PersonRef()
    at = serializers.DateTimeField()
    note = serializers.CharField()
    remarks = RemarkShown(many=True)
    acknowledged = Value(
        tuple[Named, ...], help_text="What must be put right and was acknowledged by its name when it was approved."
    )
    own_lengths = Value(tuple[OwnLength, ...], help_text="What the supervisor measured beside the plan, to compare.")


class RevocationShown(serializers.Serializer[Any]):
    """A stored withdrawal of an approval: who withdrew it, when and why."""

    id = serializers.UUIDField()
    by = PersonRef(source="actor")
    at = serializers.DateTimeField()
    asked = serializers.IntegerField(help_text="Which submission of the version had been approved.")
    reason = serializers.CharField()


class VersionListed(serializers.Serializer[Any]):
    """A stored version with its decisions; whether it is stale follows from the case as it is now."""

    id = serializers.UUIDField(source="row.id")
    case_id = serializers.UUIDField(source="row.case_id")
    number = serializers.IntegerField(source="row.number")
    state = Value(PlanState, source="row.state")
    stale = serializers.BooleanField(help_text="The case has changed since this version was made.")
    hash = serializers.CharField(source="row.hash", help_text="SHA-256 of what was given and what came out.")
    intent_hash = serializers.CharField(
        source="row.intent_hash", help_text="Of kit, technique, choices, final sizes and limits alone."
    )
    author = PersonRef(source="row.author")
    kit_id = serializers.UUIDField(source="row.kit_id", help_text="Id of the kit.")
    technique = serializers.CharField(source="row.technique_key", help_text="Key of the technique.")
    stops = serializers.IntegerField(source="row.stops", help_text="Cautions that withhold steps.")
    cautions = serializers.IntegerField(source="row.cautions", help_text="Cautions that do not.")
    planner_version = serializers.CharField(source="row.planner_version")
    created_at = serializers.DateTimeField(source="row.created_at")
    submitted_at = serializers.DateTimeField(source="row.submitted_at", allow_null=True)
    decided_at = serializers.DateTimeField(source="row.decided_at", allow_null=True)
    not_released = Value(
        tuple[str, ...],
        source="row.not_released",
        help_text="Canals that the approval leaves out: those returned, and those that end in one with them.",
    )
    carried_from = serializers.IntegerField(
        source="row.carried_number",
        allow_null=True,
        help_text="Number of the version whose approval holds for this one: nothing but lengths moved, by little.",
    )
    reviews = ReviewShown(source="row.reviews.all", many=True)
    revocations = RevocationShown(
        source="row.revocations.all", many=True, help_text="Approvals of this version that were withdrawn."
    )


class VersionShown(VersionListed):
    """A stored version with its decisions; on request with all that it was made from and all that it says."""

    heavy = ("choices", "plan", "given")
    status = Value(PlanStatus, help_text="Where the case's plan stands as a whole.")
    texts = serializers.SerializerMethodField(help_text="Address of `given` and `plan`: what lies there never changes.")
    choices = Value(Choices, source="given.choices", required=False)
    plan = Value(Plan, required=False)
    given = Value(PlanInput, required=False, help_text="All the plan rests on, as it was then.")

    def get_texts(self, version: Any) -> str:
        return f"{PREFIX}plan-versions/{version.row.pk}/texts/{version.row.hash}"


class CanalPlanListed(serializers.Serializer[Any]):
    """What is stored of a canal's plan for lists: micrometres there, millimetres here."""

    canal = serializers.CharField()
    length_state = Value(LengthState)
    stop_mm = Millimetres(source="stop_um", allow_null=True)
    end_mm = Millimetres(source="end_um", allow_null=True)
    final_size = serializers.IntegerField(allow_null=True, help_text="Null: a wide canal, no size chosen yet.")
    final_taper = serializers.IntegerField()
