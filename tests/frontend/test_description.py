"""The description of the API: made once, whoever asks at once, and not sent again to who has it."""

from __future__ import annotations

import gzip
import json
import os
import subprocess
import sys

import pytest
from django.test import Client

from frontend import description
from frontend.server.environment import ROOT

SCHEMA = "/api/v1/schema"
# Threads that have never asked before, in a process that has never been asked.
AT_ONCE = """
import threading
import django
django.setup()
from django.test import Client

together, told = threading.Barrier(16), []
def ask(number):
    browser = Client(raise_request_exception=False)
    together.wait()
    told.append(browser.get("/api/v1/schema", {"format": "json"} if number % 2 else {}).status_code)
threads = [threading.Thread(target=ask, args=(number,)) for number in range(16)]
for thread in threads: thread.start()
for thread in threads: thread.join()
print(sorted(set(told)), len(told))
"""


def test_sixteen_threads_that_ask_a_fresh_process_at_once_are_all_answered() -> None:
    env = {**os.environ, "DJANGO_SETTINGS_MODULE": "frontend.server.settings", "DATABASE_URL": "sqlite://:memory:"}
    env["ALLOWED_HOSTS"] = "testserver"
    done = subprocess.run([sys.executable, "-c", AT_ONCE], cwd=ROOT, env=env, capture_output=True, text=True)
    assert done.stdout.strip() == "[200] 16", done.stderr[-2000:]


def test_it_is_made_once(client: Client, monkeypatch: pytest.MonkeyPatch) -> None:
    first = client.get(SCHEMA)
    monkeypatch.setattr(description, "_made", lambda: pytest.fail("made again"))
    again = client.get(SCHEMA, {"format": "json"})
    assert first["Content-Type"] == "application/vnd.oai.openapi; charset=utf-8"
    assert again["Content-Type"] == "application/vnd.oai.openapi+json"
    assert json.loads(again.content)["openapi"].startswith("3.1")
    assert client.head(SCHEMA).status_code == 200


@pytest.mark.parametrize("how", [{}, {"accept-encoding": "gzip"}, {"accept": "application/json"}])
def test_who_has_it_is_told_so_by_a_strong_tag(client: Client, how: dict[str, str]) -> None:
    """RFC 9110, 8.8: a strong tag names exactly these bytes, so each form has one of its own."""
    answer = client.get(SCHEMA, headers=how)
    tag = answer["ETag"]
    assert tag.startswith('"')
    same = client.get(SCHEMA, headers={**how, "if-none-match": tag})
    assert (same.status_code, same.content, same["ETag"]) == (304, b"", tag)
    assert client.get(SCHEMA, headers={**how, "if-none-match": '"another"'}).content == answer.content
    other = {} if how else {"accept-encoding": "gzip"}
    assert client.get(SCHEMA, headers=other)["ETag"] != tag


def test_compressed_it_is_the_same(client: Client) -> None:
    packed = client.get(SCHEMA, headers={"accept-encoding": "gzip, br"})
    assert packed["Content-Encoding"] == "gzip"
    assert int(packed["Content-Length"]) == len(packed.content)
    assert gzip.decompress(packed.content) == client.get(SCHEMA).content


def test_a_form_that_it_has_not_is_not_made_up(client: Client) -> None:
    assert client.get(SCHEMA, headers={"accept": "text/html"}).status_code == 406
