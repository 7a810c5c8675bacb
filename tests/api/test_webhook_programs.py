"""Programs that receive webhooks as an integrator writes them: the one that the README prints, and the bridge."""

from __future__ import annotations

import json
import os
import re
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any
from urllib.error import HTTPError
from urllib.request import Request, urlopen

import pytest
from pytest_django import Settings
from pytest_django.live_server_helper import LiveServer
from standardwebhooks import Webhook

from cases.api.v1.webhook_messages import message_of
from cases.domain.plans.lifecycle import Decision
from cases.models import Delivery, Person, Programme, ToothPlanVersion
from cases.models import Webhook as WebhookRow
from cases.services.webhooks.deliver import Worker
from frontend.server.environment import ROOT
from tests.api.test_webhooks import made
from tests.cast import decide
from tests.keys import program, service_key

PATIENCE_S = 60


@pytest.fixture(autouse=True)
def inside(settings: Settings) -> None:
    settings.WEBHOOKS_INSIDE = True


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def listens(port: int) -> bool:
    with socket.socket() as probe:
        return probe.connect_ex(("127.0.0.1", port)) == 0


@contextmanager
def running(port: int, *command: str, **variables: str) -> Iterator[subprocess.Popen[str]]:
    """The program, once it listens."""
    own = {**os.environ, **variables}
    with subprocess.Popen([sys.executable, *command], env=own, text=True, stdout=subprocess.PIPE) as process:
        try:
            until = time.monotonic() + PATIENCE_S
            while not listens(port):
                assert process.poll() is None
                assert time.monotonic() < until
            yield process
        finally:
            process.kill()


def readme_receiver(folder: Path) -> str:
    """The program that the README prints, in a file."""
    (code,) = re.findall(r"```python\n(.*?)```", (ROOT / "README.md").read_text(encoding="utf-8"), re.DOTALL)
    assert len(code.splitlines()) <= 20
    file = folder / "receiver.py"
    file.write_text(code, encoding="utf-8")
    return str(file)


def sent(port: int, body: str, secret: str, at: datetime, **headers: str) -> int:
    """The status that a message signed by the scheme's own library is answered with."""
    own = {
        "webhook-id": "msg_1",
        "webhook-timestamp": str(int(at.timestamp())),
        "webhook-signature": Webhook(secret).sign("msg_1", at, body),
    }
    request = Request(f"http://127.0.0.1:{port}/", body.encode(), own | headers)
    try:
        with urlopen(request, timeout=PATIENCE_S) as answer:  # noqa: S310
            return int(answer.status)
    except HTTPError as refusal:
        refusal.close()
        return refusal.code


def test_the_receiver_of_the_readme_takes_each_genuine_message_once(tmp_path: Path) -> None:
    port, secret, now = free_port(), "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw", datetime.now(UTC)
    with running(port, readme_receiver(tmp_path), PORT=str(port), SECRET=secret) as process:
        assert sent(port, "{}", "whsec_" + "0" * 32, now) == 400
        assert sent(port, "{}", secret, now - timedelta(minutes=6)) == 400
        assert sent(port, '{"changed":1}', secret, now, **{"webhook-signature": "v1,é v2,x"}) == 400
        for _ in range(2):
            assert sent(port, '{"right":1}', secret, now) == 204
        process.terminate()
        assert process.stdout is not None
        assert process.stdout.read() == '{"right":1}\n'


def test_the_receiver_of_the_readme_takes_what_is_sent(
    tmp_path: Path, programme: Programme, rosa: Person, submitted: ToothPlanVersion
) -> None:
    port = free_port()
    hook = made(program(service_key(rosa).text), programme, address=f"http://127.0.0.1:{port}/", kinds=[], after="0")
    with running(port, readme_receiver(tmp_path), PORT=str(port), SECRET=hook["secret"]) as process:
        Worker(message_of).run_once()
        process.terminate()
        assert process.stdout is not None
        positions = [json.loads(line)["data"]["position"] for line in process.stdout]
    assert positions == list(range(1, len(positions) + 1))
    assert WebhookRow.objects.get().reached == len(positions) > 5


def test_the_bridge_puts_each_approved_plan_into_a_folder(
    tmp_path: Path,
    live_server: LiveServer,
    programme: Programme,
    rosa: Person,
    vale: Person,
    submitted: ToothPlanVersion,
) -> None:
    port, key = free_port(), service_key(rosa).text
    address = f"http://127.0.0.1:{port}/"
    hook = made(program(key), programme, address=address, kinds=["version_approved", "version_returned"])
    decide(vale, submitted, Decision.APPROVED)
    bridge = str(ROOT / "tests/reference/approved_bridge.py")
    with running(port, bridge, live_server.url, str(tmp_path), str(port), KEY=key, SECRET=hook["secret"]):
        Worker(message_of).run_once()
    assert Delivery.objects.get().state == "delivered"
    (file,) = tmp_path.iterdir()
    plan: dict[str, Any] = json.loads(file.read_text())
    assert (file.stem, plan["hash"], plan["state"]) == (str(submitted.case_id), submitted.hash, "approved")
