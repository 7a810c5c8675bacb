"""Images in a store that speaks S3, as the environment describes it to the program: sent, served, private, tidied; and
the store away in the middle of it.
"""

from __future__ import annotations

import socket
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from io import StringIO
from typing import Any

import pytest
from django.core.management import CommandError, call_command
from django.utils import timezone
from pytest_django import DjangoCaptureOnCommitCallbacks

from cases.domain.uuid7 import uuid7
from cases.models import Case, Image, ImagePart, Person
from frontend.server import bucket, env
from tests import bucket as outside
from tests.api.test_cases_images import at, part, put
from tests.bucket import Store, free_port
from tests.cases.pictures import intra_oral, picture, written
from tests.cast import client, problem

pytestmark = pytest.mark.one_database

PNG = picture()


@pytest.fixture(scope="session")
def server() -> Iterator[Store]:
    with outside.running(free_port()) as store:
        yield store


@pytest.fixture
def store(server: Store, settings: Any, monkeypatch: pytest.MonkeyPatch) -> Store:
    """An empty bucket, and the program told of it as in earnest."""
    server.empty()
    point_at(settings, monkeypatch, server.url)
    return server


def point_at(settings: Any, monkeypatch: pytest.MonkeyPatch, url: str) -> None:
    for name, value in {
        "IMAGE_BUCKET": outside.NAME,
        "IMAGE_STORE_URL": url,
        "IMAGE_STORE_KEY": outside.KEY,
        "IMAGE_STORE_SECRET": outside.SECRET,
        "IMAGE_STORE_REGION": "us-east-1",
    }.items():
        monkeypatch.setenv(name, value)
    settings.STORAGES = {**settings.STORAGES, "images": env.image_storage()}


# --- kept and served ---


def test_an_image_sent_whole(priya: Person, vale: Person, opened: Case, store: Store) -> None:
    id_ = uuid7()
    assert put(priya, opened, id_, PNG).json()["state"] == "stored"
    assert store.names() == {f"{opened.pk}/{id_}/view", f"{opened.pk}/{id_}/thumbnail"}
    served = client(vale).get(at(opened, id_, "/content"))
    assert (served["Content-Type"], served.content[:8]) == ("image/png", b"\x89PNG\r\n\x1a\n")
    assert client(vale).get(at(opened, id_, "/thumbnail")).content[:2] == b"\xff\xd8"
    kept = sum(store.client.head_object(Bucket=outside.NAME, Key=name)["ContentLength"] for name in store.names())
    assert Image.objects.get(pk=id_).stored_bytes == kept


def test_an_image_sent_in_parts(priya: Person, opened: Case, store: Store) -> None:
    id_, whole = uuid7(), written(intra_oral())
    assert part(priya, opened, id_, whole, 0, 300).json()["state"] == "awaited"
    assert store.names() == set()  # parts wait in the database
    assert part(priya, opened, id_, whole, 300, len(whole)).json()["state"] == "stored"
    assert not ImagePart.objects.exists()
    data_set = client(priya).get(at(opened, id_, "/data-set"))
    assert (data_set["Content-Type"], data_set.content[128:132]) == ("application/dicom", b"DICM")


def test_only_who_may_see_the_case_sees_its_images(
    priya: Person, tom: Person, stranger: Person, opened: Case, store: Store
) -> None:
    id_ = uuid7()
    put(priya, opened, id_, written(intra_oral()))
    for more in ("/content", "/thumbnail", "/data-set"):
        assert client(priya).get(at(opened, id_, more)).status_code == 200
        assert client(tom).get(at(opened, id_, more)).status_code == 404
        assert client(stranger).get(at(opened, id_, more)).status_code == 404
        assert client(None).get(at(opened, id_, more)).status_code == 401


def test_the_bucket_answers_nobody_without_a_key_and_its_address_is_told_to_nobody(
    priya: Person, opened: Case, store: Store
) -> None:
    id_ = uuid7()
    answers = [put(priya, opened, id_, written(intra_oral()))]
    assert [store.unsigned(name) for name in store.names()] == [403] * 3
    # The store would answer a public object: the refusal is about these ones.
    store.client.put_object(Bucket=outside.NAME, Key="public", Body=b"x", ACL="public-read")
    assert store.unsigned("public") == 200
    answers += [client(priya).get(at(opened, id_, more)) for more in ("", "/content", "/thumbnail", "/data-set")]
    answers.append(client(priya).get(at(opened)))
    assert [answer.status_code for answer in answers] == [201, *[200] * 5]
    for answer in answers:
        telling = answer.content + repr(answer.headers).encode()
        assert not [word for word in (str(store.port), outside.NAME, outside.KEY) if word.encode() in telling]


# --- tidied ---


def test_what_no_image_owns_goes_once_it_is_old(
    priya: Person, opened: Case, store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    put(priya, opened, uuid7(), PNG)
    owned = store.names()
    lost, foreign = f"{opened.pk}/{uuid7()}/view", "somebody/else/here"
    # An empty object with the name of a folder: some programs that show buckets make them.
    folders = {"empty/", f"{opened.pk}/", "empty/one/"}
    for name in (lost, foreign, *folders):
        store.client.put_object(Bucket=outside.NAME, Key=name, Body=b"")
    call_command("tidy", stdout=StringIO())
    assert store.names() == owned | {lost, foreign} | folders
    monkeypatch.setattr(timezone, "now", lambda: datetime.now(UTC) + timedelta(days=15))
    out = StringIO()
    call_command("tidy", stdout=out)
    assert out.getvalue().splitlines()[-1] == "Removed 0 parts of uploads and 2 files."
    assert store.names() == owned | folders


def test_an_empty_bucket_is_tidy(db: None, store: Store) -> None:
    out = StringIO()
    call_command("tidy", stdout=out)
    assert out.getvalue().splitlines()[-1] == "Removed 0 parts of uploads and 0 files."


def test_files_left_by_a_crash_are_written_over(priya: Person, opened: Case, store: Store) -> None:
    id_ = uuid7()
    store.client.put_object(Bucket=outside.NAME, Key=f"{opened.pk}/{id_}/view", Body=b"half")
    put(priya, opened, id_, PNG)
    assert client(priya).get(at(opened, id_, "/content")).content[:4] == b"\x89PNG"


# --- away ---


def test_an_upload_goes_on_when_the_store_is_back(
    priya: Person, opened: Case, store: Store, settings: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    id_, whole_id = uuid7(), uuid7()
    point_at(settings, monkeypatch, f"http://127.0.0.1:{free_port()}")
    assert part(priya, opened, id_, PNG, 0, 50).status_code == 200
    refusal = part(priya, opened, id_, PNG, 50, len(PNG))
    problem(refusal, 503, "store-away")
    assert refusal["Retry-After"] == "10"
    problem(put(priya, opened, whole_id, PNG), 503, "store-away")
    asked = client(priya).head(at(opened, id_))
    # What came before is here; the part that was refused may come again.
    assert (asked["Upload-Offset"], asked["Upload-Complete"]) == (str(len(PNG)), "?0")
    point_at(settings, monkeypatch, store.url)
    assert part(priya, opened, id_, PNG, 50, len(PNG)).json()["state"] == "stored"
    assert put(priya, opened, whole_id, PNG).json()["state"] == "stored"
    assert client(priya).get(at(opened, id_, "/content")).content[:4] == b"\x89PNG"
    assert not ImagePart.objects.exists()


def test_a_stored_image_is_told_to_be_away_and_not_gone(
    priya: Person, opened: Case, store: Store, settings: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    id_ = uuid7()
    put(priya, opened, id_, PNG)
    point_at(settings, monkeypatch, f"http://127.0.0.1:{free_port()}")
    problem(client(priya).get(at(opened, id_, "/content")), 503, "store-away")
    assert client(priya).get(at(opened)).json()["images"][0]["state"] == "stored"
    with pytest.raises(CommandError, match="Images cannot be kept"):
        call_command("tidy")
    point_at(settings, monkeypatch, store.url)
    assert client(priya).get(at(opened, id_, "/content")).status_code == 200


def test_a_removed_images_files_go_also_when_the_store_is_away_at_the_time(
    priya: Person,
    opened: Case,
    store: Store,
    settings: Any,
    monkeypatch: pytest.MonkeyPatch,
    django_capture_on_commit_callbacks: DjangoCaptureOnCommitCallbacks,
) -> None:
    at_once, later = uuid7(), uuid7()

    def remove(id_: object) -> int:
        with django_capture_on_commit_callbacks(execute=True):
            answer = client(priya).post(at(opened, id_, "/remove"), {"reason": "names_somebody"}, format="json")
        return int(answer.status_code)

    put(priya, opened, later, PNG)
    files_of_later = store.names()
    put(priya, opened, at_once, PNG)
    assert remove(at_once) == 200
    assert store.names() == files_of_later
    point_at(settings, monkeypatch, f"http://127.0.0.1:{free_port()}")
    assert remove(later) == 200
    point_at(settings, monkeypatch, store.url)
    assert store.names() == files_of_later
    call_command("tidy", stdout=StringIO())
    assert store.names() == set()


def test_a_store_that_listens_and_says_nothing_is_given_up(
    priya: Person, opened: Case, settings: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bucket, "ANSWER_SECONDS", 0.2)
    with socket.create_server(("127.0.0.1", 0)) as silent:
        point_at(settings, monkeypatch, f"http://127.0.0.1:{silent.getsockname()[1]}")
        problem(put(priya, opened, uuid7(), PNG), 503, "store-away")


def test_a_bucket_that_is_not_there_is_a_store_away(
    priya: Person, opened: Case, store: Store, settings: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("IMAGE_BUCKET", "nobodys-bucket")
    settings.STORAGES = {**settings.STORAGES, "images": env.image_storage()}
    problem(put(priya, opened, uuid7(), PNG), 503, "store-away")
    assert Image.objects.get().state == "awaited"
