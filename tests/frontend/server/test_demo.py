"""What the one command refuses before it starts anything."""

from __future__ import annotations

import socket

import pytest
from django.core.management import CommandError, call_command
from pytest_django.fixtures import Settings


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


def test_known_passwords_and_production_do_not_meet(settings: Settings) -> None:
    settings.PRODUCTION = True
    with pytest.raises(CommandError, match="MODE=production"):
        call_command("demo")
