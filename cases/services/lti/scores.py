"""One grade on its way to a platform, by the kept library (LTI Assignment and Grade Services 2.0)."""

from __future__ import annotations

from dataclasses import dataclass
from http import HTTPStatus

import requests
from pylti1p3.assignments_grades import AssignmentsGradesService
from pylti1p3.exception import LtiServiceException
from pylti1p3.grade import Grade
from pylti1p3.service_connector import ServiceConnector

from cases.domain.errors import NotUsable
from cases.domain.lti import SCORE_OF, SCORE_SCOPE, Progress
from cases.models import LtiPlatform, LtiWork
from cases.services.lti.line import PlatformSession
from cases.services.lti.messages import CLAIM, registration_of
from cases.services.webhooks.line import no_answer_of, retry_after_s
from cases.services.webhooks.outbox import AWAY

DEPLOYMENT = f"{CLAIM}deployment_id"


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """Why a grade was not taken: for the coordinator, and without a word of the platform's own."""

    says: str
    away: bool = False
    """No other grade would be taken either."""
    retry_after_s: int = 0


class ScoreLine(ServiceConnector):
    """To one platform. A token is kept as long as grades go to one deployment, and asked for anew where it counts no
    more."""

    def __init__(self, platform: LtiPlatform, session: PlatformSession) -> None:
        super().__init__(registration_of(platform), session)
        self._token: str | None = None
        self._deployment_id = ""

    def put(self, work: LtiWork, progress: Progress) -> Refusal | None:
        """None where the platform took it; raises nothing that has to do with the platform."""
        if self._deployment_id != work.deployment_id:
            self._deployment_id, self._token = work.deployment_id, None
        had_token = self._token is not None
        refusal = self._put(work, progress)
        # One that was asked for just now would be refused once more.
        return self._put(work, progress) if refusal and had_token and self._token is None else refusal

    def _put(self, work: LtiWork, progress: Progress) -> Refusal | None:
        service = AssignmentsGradesService(self, {"scope": [SCORE_SCOPE], "lineitem": work.line_item})
        try:
            service.put_grade(_grade(work, progress))
        except LtiServiceException as refused:
            return self._refusal(refused.response)
        # It took the grade, and said so in words of its own.
        except requests.JSONDecodeError:
            return None
        except NotUsable:
            return Refusal(says="Its address leads nowhere that a grade is sent to.")
        except requests.RequestException as failure:
            return Refusal(says=f"It gave no answer: {no_answer_of(failure).value}.", away=True)
        except (AttributeError, KeyError, TypeError, ValueError):
            return Refusal(says="What it answered is no token.", away=True)
        return None

    def _refusal(self, answer: requests.Response) -> Refusal:
        status, pause_s = answer.status_code, retry_after_s(answer.headers.get("Retry-After", ""))
        if self._token is None:
            return Refusal(says=f"It gave no token: HTTP {status}.", away=True, retry_after_s=pause_s)
        if status == HTTPStatus.UNAUTHORIZED:
            self._token = None
        return Refusal(says=f"It did not take the grade: HTTP {status}.", away=status in AWAY, retry_after_s=pause_s)

    def encode_jwt(self, message: dict[str, str | int], private_key: str, headers: dict[str, str]) -> str:
        """What a token is asked for with, and for which deployment."""
        return super().encode_jwt({**message, DEPLOYMENT: self._deployment_id}, private_key, headers)

    def _get_cached_access_token(self, scope_key: str) -> str | None:
        return self._token

    def _cache_access_token(self, scope_key: str, access_token: str, expires_in: float) -> None:
        self._token = access_token


def _grade(work: LtiWork, progress: Progress) -> Grade:
    """Without a score the platform clears the one that it had. Of the person it says the platform's own subject."""
    grade = Grade().set_user_id(work.person.subject).set_comment(work.record_address)
    if work.sent_at is not None:
        grade.set_timestamp(work.sent_at.isoformat(timespec="milliseconds"))
    activity, grading = SCORE_OF[progress]
    grade.set_activity_progress(activity).set_grading_progress(grading)
    return grade.set_score_given(1).set_score_maximum(1) if progress is Progress.APPROVED else grade
