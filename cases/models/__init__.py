"""The tables.

Lengths in columns are whole micrometres: a decimal column is a binary float on SQLite, which does not compare or round
as PostgreSQL does; a whole number does. Torques are floats, which both databases keep exactly. What no query asks for
lies in one JSON column, written and read by the planner's encoder.

A record is only added to (`base.AppendOnly`). Every rule that the database can hold is a constraint.
"""

from cases.models.access_keys import AccessKey, Service
from cases.models.bends_in_space import BendInSpace
from cases.models.clients import Client, ClientToken, Consent
from cases.models.events import FoldKept, InstrumentUse, RunningWork, TreatmentEvent
from cases.models.external_ids import ExternalId
from cases.models.feed import Change
from cases.models.images import Image, ImagePart, ImagePutRight
from cases.models.invitations import Invitation
from cases.models.kept_answers import KeptAnswer
from cases.models.kits import (
    Kit,
    KitFilling,
    KitInstrument,
    KitNeedle,
    ProgrammeWidths,
    TechniqueRecord,
    ThresholdOverride,
)
from cases.models.log import ChangeLog
from cases.models.lti import LtiKey, LtiLaunch, LtiPerson, LtiPlatform, LtiWork
from cases.models.markings import Marking
from cases.models.one_time_codes import OneTimeCode, WrongCode
from cases.models.overrides import CautionOverride
from cases.models.people import FailedSignIn, FormerMembership, Membership, Person, Programme
from cases.models.plans import CanalPlan, PlanTexts, ToothPlanVersion
from cases.models.practice import PracticeAct, PracticeExercise, PracticeTask
from cases.models.push import PushKey, PushSubscription
from cases.models.readings import JunctionReading, LengthReading
from cases.models.reviews import Review, ReviewRemark, Revocation
from cases.models.teeth import Canal, Case, DemoPatient, Root, Tooth
from cases.models.webhooks import Delivery, Webhook

__all__ = [
    "AccessKey",
    "BendInSpace",
    "Canal",
    "CanalPlan",
    "Case",
    "CautionOverride",
    "Change",
    "ChangeLog",
    "Client",
    "ClientToken",
    "Consent",
    "Delivery",
    "DemoPatient",
    "ExternalId",
    "FailedSignIn",
    "FoldKept",
    "FormerMembership",
    "Image",
    "ImagePart",
    "ImagePutRight",
    "InstrumentUse",
    "Invitation",
    "JunctionReading",
    "KeptAnswer",
    "Kit",
    "KitFilling",
    "KitInstrument",
    "KitNeedle",
    "LengthReading",
    "LtiKey",
    "LtiLaunch",
    "LtiPerson",
    "LtiPlatform",
    "LtiWork",
    "Marking",
    "Membership",
    "OneTimeCode",
    "Person",
    "PlanTexts",
    "PracticeAct",
    "PracticeExercise",
    "PracticeTask",
    "Programme",
    "ProgrammeWidths",
    "PushKey",
    "PushSubscription",
    "Review",
    "ReviewRemark",
    "Revocation",
    "Root",
    "RunningWork",
    "Service",
    "TechniqueRecord",
    "ThresholdOverride",
    "Tooth",
    "ToothPlanVersion",
    "TreatmentEvent",
    "Webhook",
    "WrongCode",
]
