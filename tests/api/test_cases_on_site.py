"""An on-site sign-off: a supervisor's one-time code on the student's phone."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from typing import Any
from unittest.mock import patch

import pyotp
import pytest
from django.test import override_settings

from cases.models import ChangeLog, OneTimeCode, Person, Programme, ToothPlanVersion, TreatmentEvent, WrongCode
from tests.api.test_cases_treatment import APPROVED, LAPTOP, PHONE, canal, event, report, to_the_length_hold_point
from tests.cast import API, client, problem
from tests.factories import PASSWORD

AT = "length/sign-off"
STEP = timedelta(seconds=30)


class Clock:
    """The server's clock, in the tests' hands."""

    def __init__(self) -> None:
        self.now = datetime(2026, 3, 5, 14, 20, tzinfo=UTC)

    def later(self, by: timedelta) -> None:
        self.now += by


@pytest.fixture
def clock() -> Iterator[Clock]:
    clock = Clock()
    # Where codes are made and judged; rows get their times from the same function.
    with patch("django.utils.timezone.now", lambda: clock.now):
        yield clock


class App:
    """A supervisor's code app: an independent maker of codes by the same standard, from the secret as text."""

    def __init__(self, secret: str, clock: Clock) -> None:
        self.totp, self.clock = pyotp.parse_uri(f"otpauth://totp/x?secret={secret}"), clock

    def code(self) -> str:
        assert isinstance(self.totp, pyotp.TOTP)
        return self.totp.at(self.clock.now)

    def wrong(self) -> str:
        """One that no step near counts."""
        assert isinstance(self.totp, pyotp.TOTP)
        near = {self.totp.at(self.clock.now + by * STEP) for by in (-1, 0, 1)}
        return next(code for code in ("000000", "111111", "222222", "333333") if code not in near)


def make(person: Person, password: str = PASSWORD) -> Any:
    return client(person).post(f"{API}/one-time-code", {"password": password}, format="json")


def confirm(person: Person, code: str) -> Any:
    return client(person).post(f"{API}/one-time-code/confirm", {"code": code}, format="json")


def state(person: Person) -> str:
    return str(client(person).get(f"{API}/one-time-code").json()["state"])


def enrolled(person: Person, clock: Clock) -> App:
    app = App(make(person).json()["secret"], clock)
    assert confirm(person, app.code()).json()["state"] == "counts"
    clock.later(STEP)
    return app


@pytest.fixture
def waiting(priya: Person, approved: ToothPlanVersion) -> ToothPlanVersion:
    to_the_length_hold_point(priya, approved)
    return approved


def sign_off(phone: Person, version: ToothPlanVersion, supervisor: Person, code: str, **more: Any) -> Any:
    body = {
        "supervisor_id": str(supervisor.pk),
        "code": code,
        "plan_hash": version.hash,
        "canal": "DB",
        "node": AT,
        "exit": "approved",
    }
    return client(phone).post(f"{API}/cases/{version.case_id}/on-site-sign-offs", body | more, format="json")


# --- the secret ---


def test_the_secret_is_shown_once_and_confirmed_by_a_code(vale: Person, clock: Clock) -> None:
    assert state(vale) == "none"
    made = make(vale)
    secret = made.json()
    assert made.status_code == 201
    assert "no-store" in made["Cache-Control"]
    assert secret["address"].startswith("otpauth://totp/Fourth%20Canal:vale?secret=")
    assert {len(row) for row in secret["square"]} == {len(secret["square"])}
    assert state(vale) == "to_confirm"
    assert confirm(vale, App(secret["secret"], clock).code()).json()["state"] == "counts"
    assert secret["secret"] not in client(vale).get(f"{API}/one-time-code").content.decode()


def test_the_database_alone_does_not_give_the_secret(
    priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock
) -> None:
    """Another server's key over the same rows: the code that counts here does not count there."""
    app = enrolled(vale, clock)
    with override_settings(SECRET_KEY="another key, of another server, over the same rows"):
        problem(sign_off(priya, waiting, vale, app.code()), 422, "code-refused")
    assert sign_off(priya, waiting, vale, app.code()).status_code == 200


def test_the_password_is_asked_for_once_more(vale: Person) -> None:
    assert list(problem(make(vale, "not-it"), 422, "password-wrong")) == ["#/password"]
    for _ in range(4):
        make(vale, "not-it")
    problem(make(vale), 429, "too-many-tries")


def test_students_and_strangers_have_no_codes(priya: Person) -> None:
    problem(make(priya), 403, "not-allowed")
    assert client(None).get(f"{API}/one-time-code").status_code == 401


def test_a_renewed_secret_takes_over_when_it_is_confirmed(
    priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock
) -> None:
    old = enrolled(vale, clock)
    new = App(make(vale).json()["secret"], clock)
    problem(sign_off(priya, waiting, vale, new.code()), 422, "code-refused")
    assert confirm(vale, new.code()).status_code == 200
    clock.later(STEP)
    problem(sign_off(priya, waiting, vale, old.code()), 422, "code-refused")
    assert sign_off(priya, waiting, vale, new.code()).status_code == 200


def test_a_removed_secret_counts_no_more(priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock) -> None:
    app = enrolled(vale, clock)
    assert client(vale).delete(f"{API}/one-time-code").status_code == 204
    assert client(vale).delete(f"{API}/one-time-code").status_code == 204
    assert state(vale) == "none"
    assert list(problem(sign_off(priya, waiting, vale, app.code()), 422, "code-refused")) == ["#/supervisor_id"]
    problem(confirm(vale, app.code()), 409, "conflict")


def test_the_programme_says_who_signs_at_the_bench(
    programme: Programme, priya: Person, vale: Person, amari: Person, clock: Clock
) -> None:
    make(amari)
    enrolled(vale, clock)
    supervisors = client(priya).get(f"{API}/programmes/{programme.pk}").json()["supervisors"]
    assert [(supervisor["name"], supervisor["signs_on_site"]) for supervisor in supervisors] == [
        ("Amari", False),
        ("Vale", True),
    ]


# --- the sign-off ---


def test_the_sign_off_is_the_supervisors_and_says_that_it_was_given_on_site(
    priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock
) -> None:
    app = enrolled(vale, clock)
    treatment = sign_off(priya, waiting, vale, app.code()).json()
    assert canal(treatment)["state"] == "open"
    last = treatment["events"][-1]
    assert last["actor"]["id"] == str(vale.pk)
    assert last["device_id"] == "00000000-0000-0000-0000-000000000000"
    assert last["payload"] == {
        "kind": "sign_off",
        "exit": "approved",
        "despite_missing": False,
        "reason": "",
        "on_site": True,
        "together": "",
    }
    logged = ChangeLog.objects.get(verb="take-sign-off")
    assert (logged.actor, str(vale.pk) in logged.after) == (priya, True)


P_TOO = {"canal": "P", "node": "length/sign-off", "exit": "approved"}


def p_too(priya: Person, waiting: ToothPlanVersion) -> None:
    """P comes to its length's hold point as well."""
    explored = event(waiting, 4, {"kind": "step", "exit": "reached"}, node="explore/10-02", canal="P")
    rinsed = event(waiting, 5, {"kind": "step", "exit": "done"}, node="explore/10-02/irrigate", canal="P")
    image = event(waiting, 6, {"kind": "step", "exit": "done"}, node="length/image", canal="P")
    assert report(priya, waiting.case, PHONE, explored, rinsed, image).status_code == 200


def test_one_code_gives_one_sign_off_for_several_canals(
    priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock
) -> None:
    p_too(priya, waiting)
    app = enrolled(vale, clock)
    treatment = sign_off(
        priya, waiting, vale, app.code(), also=[{**P_TOO, "exit": "returned", "reason": "Again."}]
    ).json()
    # DB goes on; P goes back to its image.
    assert (canal(treatment)["node"], canal(treatment, "P")["node"]) == ("glide-path/10-02", "length/image")
    sign_offs = [event_ for event_ in treatment["events"] if event_["payload"]["kind"] == "sign_off"]
    assert [sign_off_["canal"] for sign_off_ in sign_offs] == ["DB", "P"]
    assert len({sign_off_["payload"]["together"] for sign_off_ in sign_offs}) == 1
    assert sign_offs[0]["payload"]["together"]


def test_where_one_of_them_does_not_wait_there_nothing_is_signed_and_the_code_still_counts(
    priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock
) -> None:
    app = enrolled(vale, clock)
    problem(sign_off(priya, waiting, vale, app.code(), also=[P_TOO]), 409, "hold-point-answered")
    assert not TreatmentEvent.objects.filter(kind="sign_off").exists()
    assert sign_off(priya, waiting, vale, app.code()).status_code == 200


def test_a_code_counts_once(priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock) -> None:
    app = enrolled(vale, clock)
    code = app.code()
    returned = {"exit": "returned", "reason": "Not readable: repeat."}
    assert sign_off(priya, waiting, vale, code, **returned).status_code == 200
    again = event(waiting, 4, {"kind": "step", "exit": "done"}, node="length/image")
    assert canal(report(priya, waiting.case, PHONE, again).json())["node"] == AT
    problem(sign_off(priya, waiting, vale, code), 422, "code-refused")
    clock.later(STEP)
    assert sign_off(priya, waiting, vale, app.code()).status_code == 200


def test_five_wrong_tries_lock_it_for_fifteen_minutes(
    priya: Person, tom: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock
) -> None:
    app = enrolled(vale, clock)
    left = [problem(sign_off(priya, waiting, vale, app.wrong()), 422, "code-refused")["#/code"] for _ in range(5)]
    assert ["4 more tries" in left[0], "1 more try" in left[3], "No more tries for 15" in left[4]] == [True] * 3
    locked = sign_off(priya, waiting, vale, app.code())
    assert "Wait 15 minutes" in locked.json()["detail"]
    problem(locked, 429, "too-many-tries")
    assert WrongCode.objects.filter(supervisor=vale, by=priya, case=waiting.case).count() == 5
    clock.later(timedelta(minutes=14))
    assert "Wait 1 minutes" in sign_off(priya, waiting, vale, app.code()).json()["detail"]
    clock.later(timedelta(minutes=1, seconds=1))
    assert sign_off(priya, waiting, vale, app.code()).status_code == 200


def test_a_right_code_in_between_gives_no_new_tries(
    priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock
) -> None:
    app = enrolled(vale, clock)
    for _ in range(4):
        sign_off(priya, waiting, vale, app.wrong())
    back = {"exit": "returned", "reason": "Once more."}
    assert sign_off(priya, waiting, vale, app.code(), **back).status_code == 200
    report(priya, waiting.case, PHONE, event(waiting, 4, {"kind": "step", "exit": "done"}, node="length/image"))
    sign_off(priya, waiting, vale, app.wrong())
    problem(sign_off(priya, waiting, vale, app.wrong()), 429, "too-many-tries")


def test_where_the_canal_waits_no_more_the_code_is_not_used_up(
    priya: Person, vale: Person, amari: Person, waiting: ToothPlanVersion, clock: Clock
) -> None:
    app = enrolled(vale, clock)
    report(amari, waiting.case, LAPTOP, event(waiting, 1, APPROVED, node=AT))
    late = sign_off(priya, waiting, vale, app.code())
    assert "Amari: approved" in late.json()["detail"]
    problem(late, 409, "hold-point-answered")
    assert OneTimeCode.objects.get().last_step < int(clock.now.timestamp()) // 30


@pytest.mark.parametrize("elsewhere", [{"canal": "P"}, {"canal": "X"}, {"node": "final-size/sign-off"}])
def test_it_counts_for_the_hold_point_on_the_screen_alone(
    priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock, elsewhere: dict[str, str]
) -> None:
    app = enrolled(vale, clock)
    problem(sign_off(priya, waiting, vale, app.code(), **elsewhere), 409, "hold-point-answered")
    assert sign_off(priya, waiting, vale, app.code()).status_code == 200


def test_who_may_and_for_whom(
    priya: Person, tom: Person, vale: Person, stranger: Person, waiting: ToothPlanVersion, clock: Clock
) -> None:
    app = enrolled(vale, clock)
    problem(sign_off(tom, waiting, vale, app.code()), 404, "not-found")
    problem(sign_off(stranger, waiting, vale, app.code()), 404, "not-found")
    for nobody in (priya, stranger):
        assert list(problem(sign_off(priya, waiting, nobody, app.code()), 422, "not-usable")) == ["#/supervisor_id"]
    assert list(problem(sign_off(priya, waiting, vale, app.code(), plan_hash="0" * 64), 422, "not-usable")) == [
        "#/plan_hash"
    ]
    assert not TreatmentEvent.objects.filter(kind="sign_off").exists()


@pytest.mark.parametrize(
    "wrong", [{"exit": "returned"}, {"despite_missing": True}, {"despite_missing": True, "reason": " "}]
)
def test_a_sign_off_that_needs_its_reason_has_one(
    priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock, wrong: dict[str, Any]
) -> None:
    app = enrolled(vale, clock)
    assert list(problem(sign_off(priya, waiting, vale, app.code(), **wrong), 422, "not-usable")) == ["#/reason"]
    assert sign_off(priya, waiting, vale, app.code(), **wrong | {"reason": "Seen."}).status_code == 200


@pytest.mark.parametrize("code", ["12345", "1234567", "12a456", "", 123456, "١٢٣٤٥٦"])
def test_a_code_is_six_digits(priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock, code: Any) -> None:
    enrolled(vale, clock)
    assert sign_off(priya, waiting, vale, code).status_code == 400
    assert not WrongCode.objects.exists()


def test_a_code_may_be_typed_with_its_gap(priya: Person, vale: Person, waiting: ToothPlanVersion, clock: Clock) -> None:
    code = enrolled(vale, clock).code()
    assert sign_off(priya, waiting, vale, f"{code[:3]} {code[3:]}").status_code == 200


def test_an_approval_is_renewed_on_site_only_where_it_lapsed(
    priya: Person, vale: Person, clinic: ToothPlanVersion, clock: Clock
) -> None:
    app = enrolled(vale, clock)
    renew = {"canal": "", "node": "visit/renew"}
    problem(sign_off(priya, clinic, vale, app.code(), **renew), 409, "hold-point-answered")
    close = event(clinic, 1, {"kind": "close", "access_sealed": True}, canal="")
    again = event(clinic, 2, {"kind": "reopen", "as_left": ["DB"], "protected": True}, canal="")
    report(priya, clinic.case, PHONE, close, again)
    treatment = sign_off(priya, clinic, vale, app.code(), **renew).json()
    assert "approval_lapsed" not in treatment["course"]["missing"]
    assert treatment["events"][-1]["actor"]["id"] == str(vale.pk)
