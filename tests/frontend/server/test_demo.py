"""What the one command refuses before it starts anything."""

from __future__ import annotations

import socket

import pytest
from django.core.management import CommandError, call_command
from pytest_django.fixtures import Settings

from frontend.server import serve
from frontend.server.env import Environment


@pytest.mark.parametrize("port", ["", "http", "0", "70000", "-1"])
def test_a_port_that_is_none_is_told(port: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PORT", port)
    with pytest.raises(CommandError, match="whole number from 1 to 65535"):
        call_command("demo")


def test_a_taken_port_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        monkeypatch.setenv("PORT", str(port))
        with pytest.raises(CommandError, match=f"Port {port} on 127.0.0.1 is not free"):
            call_command("demo")


def test_an_unready_server_is_not_started_and_says_what_is_missing(settings: Settings) -> None:
    settings.ENVIRONMENT = Environment(mode="production", secret_key="", allowed_hosts=[])
    with pytest.raises(CommandError, match="ALLOWED_HOSTS is missing"):
        call_command("serve")


def test_serving_becomes_the_server(monkeypatch: pytest.MonkeyPatch) -> None:
    became: list[list[str]] = []
    monkeypatch.setattr("os.execv", lambda program, command: became.append(command))
    monkeypatch.setattr("os.chdir", lambda folder: None)
    monkeypatch.setattr("frontend.server.build.build", lambda: None)
    with socket.create_server(("127.0.0.1", 0)) as taken:
        monkeypatch.setenv("PORT", str(taken.getsockname()[1]))
    call_command("serve")
    assert became == [serve.command(serve.asked())]


def test_known_passwords_and_production_do_not_meet(settings: Settings) -> None:
    settings.PRODUCTION = True
    with pytest.raises(CommandError, match="MODE=production"):
        call_command("demo")
