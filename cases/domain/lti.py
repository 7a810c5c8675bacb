"""LTI 1.3: what a course's platform is, what its roles are here, and what an assignment asks for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, Final, Self

from cases.domain.access.roles import Role
from cases.domain.errors import NotUsable
from planning import anatomy
from planning.anatomy import Notation, ToothName
from planning.foundation.errors import PlanningError
from planning.techniques.technique import Setting

MOST_NAME = 80
# Of a subject, a deployment and a link in ASCII characters (LTI Core 1.3, 5.3.3, 5.3.5 and 5.3.6, read); for an issuer
# and a client the standard has no bound, and this one is ours.
MOST_ID = 255
MOST_ADDRESS = 1000
MOST_DEPLOYMENTS = 20
MOST_REFUSAL = 120

GRADES_CLAIM = "https://purl.imsglobal.org/spec/lti-ags/claim/endpoint"
SCORE_SCOPE: Final = "https://purl.imsglobal.org/spec/lti-ags/scope/score"


class Progress(StrEnum):
    """How far an assignment is, as its platform is told."""

    UNDER_WAY = "under_way"
    """Nothing is asked for: no plan, a draft, or one that was returned or whose approval was withdrawn."""
    SUBMITTED = "submitted"
    APPROVED = "approved"


# Of the activity and of its grading (Assignment and Grade Services 2.0, 3.4.7 and 3.4.8, read).
SCORE_OF: Final = {
    Progress.UNDER_WAY: ("InProgress", "NotReady"),
    Progress.SUBMITTED: ("Submitted", "PendingManual"),
    Progress.APPROVED: ("Completed", "FullyGraded"),
}

MEMBERSHIP = "http://purl.imsglobal.org/vocab/lis/v2/membership"
LEARNER, INSTRUCTOR = f"{MEMBERSHIP}#Learner", f"{MEMBERSHIP}#Instructor"
ASSISTANT = f"{MEMBERSHIP}/Instructor#TeachingAssistant"


def teaches(roles: Iterable[str]) -> bool:
    """Whether these are the roles of who leads the course. An assistant may be no licensed clinician."""
    held = set(roles)
    return INSTRUCTOR in held and not held & {LEARNER, ASSISTANT}


def role_of(roles: Iterable[str], *, teachers_supervise: bool) -> Role | None:
    """What a person with these roles of a course is in the programme; None: nothing. Nobody is a coordinator.

    Roles in the course alone count: an institution's students and staff may be anything in this course. Who learns is
    a student, whatever else they are.
    """
    held = set(roles)
    if LEARNER in held:
        return Role.STUDENT
    return Role.SUPERVISOR if teachers_supervise and teaches(held) else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Assignment:
    """What is to be planned: custom parameters of a link, all text."""

    iso: str
    """By ISO 3950."""
    setting: Setting
    canals: tuple[str, ...] | None = None
    """None: the tooth's usual ones."""

    @classmethod
    def of(cls, custom: Mapping[str, Any]) -> Self | None:
        """None where nothing is asked for. Raises NotUsable for what cannot be opened."""
        if not custom.get("tooth"):
            return None
        iso, setting = str(custom["tooth"]).strip(), str(custom.get("setting", Setting.EXTRACTED)).strip()
        try:
            tooth = anatomy.find(ToothName(designation=iso, notation=Notation.ISO_3950))
        except PlanningError as refusal:
            raise NotUsable(reason=str(refusal), at=("tooth",)) from None
        if tooth.primary:
            raise NotUsable(reason="Primary teeth are charted, not planned. Choose a permanent one.", at=("tooth",))
        if setting not in set(Setting):
            raise NotUsable(reason=f"The setting is one of {', '.join(Setting)}.", at=("setting",))
        names = tuple(dict.fromkeys(str(custom.get("canals", "")).replace(",", " ").split()))
        offered = [offer.name for offer in (*tooth.canals, *tooth.look_for)]
        if unknown := [name for name in names if name not in offered]:
            raise NotUsable(reason=f"{unknown[0]} is not on offer for tooth {tooth.iso}.", at=("canals",))
        return cls(iso=tooth.iso, setting=Setting(setting), canals=names or None)

    @property
    def custom(self) -> dict[str, str]:
        """As a link carries it."""
        return {
            "tooth": self.iso,
            "setting": self.setting.value,
            **({"canals": ",".join(self.canals)} if self.canals else {}),
        }
