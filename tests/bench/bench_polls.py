"""What a list, a plan and a preview cost that are asked for again with nothing new, and what a plan takes to keep.

    python -m tests.bench.bench_polls

Ratios to an empty request (e), taken in turns in one run, the least of several. DATABASE_URL names an empty database;
without it, SQLite.
"""

from __future__ import annotations

from tests.bench.bench_events import in_turns
from tests.bench.scratch import scratch

WAITING = 20
TIMES, FEWER_TIMES = 60, 5
SAMPLES = 500


def main() -> None:
    from django.contrib.auth import get_user_model
    from django.db import connection
    from django.test import Client
    from django.test.utils import override_settings

    from cases.domain.plans.lifecycle import PlanState
    from cases.services.planning import plans, remembered
    from tests.bench.chair import Chair
    from tests.cast import API, client
    from tests.many import copies

    chair = Chair()
    list(copies(chair.version, WAITING, state=PlanState.WAITING))
    browser, empty_client = client(chair.supervisor), Client()
    empty_client.force_login(get_user_model().objects.create_user(username="bench"))
    worklist, version = f"{API}/programmes/{chair.programme.pk}/worklist", f"{API}/plan-versions/{chair.version.pk}"
    known = {"If-None-Match": browser.get(worklist)["ETag"]}

    kit, student = chair.version.kit_id, client(chair.student)
    asked = {"kit": str(kit), "technique": "crown-down", "choices": browser.get(version).json()["choices"]}

    def preview() -> None:
        answer = student.post(f"{API}/cases/{chair.version.case_id}/preview", asked, format="json")
        assert answer.status_code == 200, answer.content

    def first_preview() -> None:
        remembered.kept.clear()
        preview()

    def empty() -> None:
        with override_settings(ROOT_URLCONF="tests.bench.empty_view", ALLOWED_HOSTS=["testserver"]):
            assert empty_client.get("/empty").status_code == 200

    plans.SAMPLES = SAMPLES
    works = {
        "empty": empty,
        f"the worklist of {WAITING}": lambda: browser.get(worklist),
        "the same, nothing new": lambda: browser.get(worklist, headers=known),
        "a version, whole": lambda: browser.get(version, headers={"Accept-Encoding": "gzip"}),
        "its summary": lambda: browser.get(f"{version}/summary"),
        "its texts": lambda: browser.get(f"{version}/texts/{chair.version.hash}", headers={"Accept-Encoding": "gzip"}),
    }
    took = in_turns(works, TIMES) | in_turns({"a preview": first_preview, "the same again": preview}, FEWER_TIMES)
    texts = chair.version.texts
    print(f"{connection.vendor}: in empty requests of {took['empty']:.2f} ms")
    for name, took_ms in took.items():
        print(f"  {name:24s} {took_ms / took['empty']:6.1f} e")
    print(f"  texts: {sum(map(len, texts.both())):,d} characters, kept in {len(texts.packed):,d} bytes")


if __name__ == "__main__":
    with scratch():
        main()
