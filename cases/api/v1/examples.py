"""Examples of what is sent. All invented."""

from __future__ import annotations

from typing import Any

from drf_spectacular.utils import OpenApiExample

from cases.api.v1.example_answers import example_id
from planning.foundation.encoding import encode
from planning.techniques.files import provided_techniques


def _given(name: str, value: Any) -> OpenApiExample:
    return OpenApiExample(name, value=value, request_only=True)


SIGN_IN = _given("A student", {"username": "mira", "password": "not-this-one"})
SESSION = OpenApiExample(
    "A student",
    value={
        "person": {"id": example_id(1), "username": "mira", "name": "Mira Example"},
        "memberships": [
            {
                "programme": {"id": example_id(2), "name": "Example programme", "invented": True},
                "role": "student",
                "group": "Tuesday",
                "treats_patients_until": None,
            }
        ],
    },
    response_only=True,
)
INVITATIONS = _given(
    "A student, and somebody who chooses their own names",
    {
        "people": [
            {"name": "Mira Example", "username": "mira", "role": "student", "group": "Tuesday"},
            {"role": "supervisor"},
        ],
        "days": 14,
    },
)
RENEWAL = _given("For a week", {"days": 7})
PEOPLE_LIST = _given("One student", {"text": "name,user name,role,group\nMira Example,mira,student,Tuesday\n"})
LINK = _given("A link", {"invitation": "0" * 32})
NEW_ACCOUNT = _given(
    "Somebody who chooses all", {"invitation": "0" * 32, "username": "mira", "name": "Mira", "password": "not-this-one"}
)
MEMBER_CHANGES = _given("Another group", {"group": "Friday"})
EXTERNAL_ID = _given("A row of another system", {"external_id": "course-7.item-3120"})
KNOWN_CASE = _given(
    "A molar on the bench",
    {
        "student_id": example_id(1),
        "patient_alias": "Bench 7",
        "tooth": {"notation": "iso_3950", "designation": "26"},
        "setting": "extracted",
        "root_filled": True,
    },
)
EXERCISE = _given("The level that is proposed", {})
ACT = _given("The step that is due, with a prediction", {"act": {"kind": "work", "predicted_mm": 18.0}})
PRACTICE_TASK = _given("For a group", {"level": "curved-canal", "group": "Tuesday"})
KIT = _given(
    "A small kit",
    {
        "id": example_id(3),
        "kit": {
            "name": "Bench kit",
            "instruments": [
                {
                    "size": 10,
                    "taper": 2,
                    "motion": "hand",
                    "use": "hand",
                    "length_mm": 25,
                    "cutting_part_mm": 16,
                }
            ],
            "needles": [{"gauge": 30, "tip": "side_vented"}],
            "filling": [{"kind": "cone", "size": 30, "taper": 2}],
        },
    },
)
_STEP_BACK = {**encode(provided_techniques()["step-back"]), "key": "step-back-ours", "name": "Step-back, our way"}
TECHNIQUE = _given("A copy of a provided one", {"id": example_id(4), "technique": _STEP_BACK})
FIGURE = _given("Longer before a curve", {"value": 1.5})
WIDTHS = _given(
    "A narrow canal",
    {
        "widths": [
            {"from_end_mm": 0.0, "narrow_mm": 0.18},
            {"from_end_mm": 2.0, "narrow_mm": 0.2, "wide_mm": 0.3},
            {"from_end_mm": 5.0, "narrow_mm": 0.3, "wide_mm": 0.45},
        ]
    },
)
CASE = _given(
    "A premolar in Palmer notation",
    {
        "id": example_id(5),
        "patient_alias": "Bench tooth 7",
        "tooth": {"notation": "palmer", "designation": "LL4"},
        "setting": "extracted",
    },
)
CASE_CHANGES = _given("The dam is on; the mouth opens little", {"isolated": True, "factors": ["opening:moderate"]})
CANAL = _given(
    "A second canal found",
    {
        "id": example_id(6),
        "name": "L",
        "root": "single",
        "reference_point": "buccal cusp",
        "finding": "found",
        "orifice_mm": 9.0,
    },
)
CANAL_CHANGES = _given("Seen, and curved", {"finding": "found", "curvature_deg": 18, "curve_start_mm": 15.5})
ROOT = _given("Two canals that join", {"pattern": "2-1", "main_canal": "B"})
STRIKE = _given("Put to another canal than it was taken in", {"why": "wrong_canal"})
READING = _given(
    "A confirming image",
    {
        "id": example_id(7),
        "reading": {
            "method": "confirming_image",
            "set_mm": 23.0,
            "tip_short_mm": 0.5,
            "reference_point": "buccal cusp",
        },
    },
)
JUNCTION = _given(
    "By the mark on a cone", {"id": example_id(8), "junction": {"from_terminus_mm": 4.5, "method": "cone_mark"}}
)
ASKED = _given(
    "Crown-down with saline",
    {
        "kit_id": example_id(3),
        "technique": "crown-down",
        "choices": {
            "needle": {"gauge": 30, "tip": "side_vented"},
            "irrigant": "saline",
            "canals": [{"canal": "B", "final_size": 30}],
        },
    },
)
ASKED_AGAINST = _given("The same, against the first version", {**ASKED.value, "against": 1})
IMAGE_MOVE = _given("It is of the palatal canal", {"canal": "P"})
REMOVAL = _given("A name is written in it", {"reason": "names_somebody"})
OVERRIDE = _given(
    "A wide apex, seen",
    {"id": example_id(10), "code": "apex-wide", "canal": "B", "reason": "1.1 mm on two images; I stay at the chair."},
)
REVIEW = _given(
    "Returned with a remark",
    {
        "id": example_id(9),
        "decision": "returned",
        "note": "",
        "remarks": [{"canal": "L", "text": "Gauge it again before you settle on the size."}],
    },
)
PASSWORD_AGAIN = _given("One's own password once more", {"password": "quay-lantern-41"})
ONE_TIME_CODE = _given("The code that the app shows now", {"code": "287 082"})
ON_SITE_SIGN_OFF = _given(
    "A length signed off on site",
    {
        "supervisor_id": example_id(11),
        "code": "287 082",
        "plan_hash": "0f" * 32,
        "canal": "MB1",
        "node": "length/sign-off",
        "exit": "approved",
    },
)
PUSH_SUBSCRIPTION = _given(
    "As the browser tells it; the keys are those of the example in RFC 8291, 5",
    {
        "endpoint": "https://push.example.net/push/JzLQ3raZJfFBR0aqvOMsLrt54w4rJUsV",
        "p256dh": "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4",
        "auth": "BTBZMqHH6r4Tts7J_aSIgg",
    },
)
KEY = _given(
    "A script that copies the cases of its owner",
    {"name": "Nightly copy", "scopes": ["cases:read"], "days": 90, "password": "not-this-one"},
)
SERVICE_KEY = _given(
    "A system that opens cases and sends images",
    {
        "name": "Image archive",
        "scopes": ["cases:read", "cases:write", "images:write", "people:read"],
        "days": 180,
        "password": "not-this-one",
    },
)
WEBHOOK = _given(
    "Decisions on plans, from now on",
    {
        "address": "https://records.example/fourth-canal",
        "kinds": ["version_approved", "version_returned", "version_revoked"],
    },
)
WEBHOOK_CHANGES = _given("Nothing for a while", {"state": "paused"})
REPLAY = _given("All there ever was", {"after": "0"})
CLIENT = _given(
    "A program on the students' own devices",
    {
        "name": "Course diary",
        "acts_for": "people",
        "client_type": "public",
        "scopes": ["cases:read", "images:read"],
        "redirect_uris": ["https://diary.example/back", "http://127.0.0.1/back"],
        "password": "not-this-one",
    },
)
PLATFORM = _given(
    "A school's platform for courses",
    {
        "name": "Courses",
        "issuer": "https://courses.example",
        "client_id": "fourth-canal-1",
        "deployment_ids": ["1"],
        "login_address": "https://courses.example/lti/authorize",
        "token_address": "https://courses.example/lti/token",
        "key_set_address": "https://courses.example/lti/keys",
        "teachers_supervise": True,
        "password": "not-this-one",
    },
)
MARKING = _given(
    "One canal, scaled by the instrument that stands in it",
    {
        "marks": {
            "lines": [
                {
                    "canal": "P",
                    "points": [{"x_px": 412, "y_px": 180}, {"x_px": 418, "y_px": 420}, {"x_px": 440, "y_px": 655}],
                    "reference_point": "palatal cusp",
                }
            ],
            "known": {
                "what": "instrument",
                "length_mm": 18,
                "points": [{"x_px": 412, "y_px": 180}, {"x_px": 436, "y_px": 610}],
            },
        },
        "take": ["P"],
    },
)
BEND_IN_SPACE = _given(
    "A straight view and one with the tube turned to the mesial",
    {"first_id": example_id(12), "second_id": example_id(13), "apart_deg": 25, "other_side": False},
)
RELEASE = _given("The canal that was returned, and its partner", {"canals": ["MB1", "MB2"]})
REVOKE = _given("Why the approval is withdrawn", {"reason": "The image is of another tooth."})
EVENTS = _given(
    "A step that stopped short, and the irrigation after it",
    {
        "device_id": example_id(10),
        "events": [
            {
                "id": example_id(11),
                "device_seq": 1,
                "seen_position": 0,
                "plan_hash": "0" * 64,
                "device_time": "2026-03-05T14:20:00Z",
                "canal": "B",
                "node": "descending/35-05",
                "payload": {"kind": "step", "exit": "short", "depth_um": 14500, "stop_um": 19500},
            },
            {
                "id": example_id(12),
                "device_seq": 2,
                "seen_position": 0,
                "plan_hash": "0" * 64,
                "device_time": "2026-03-05T14:20:40Z",
                "canal": "B",
                "node": "descending/35-05/irrigate",
                "payload": {"kind": "step", "exit": "done", "irrigant": "saline", "volume_ml": 2},
            },
        ],
    },
)
