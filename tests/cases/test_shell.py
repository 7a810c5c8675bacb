"""The shell where nothing was loaded; with a case at hand it is tested with the demonstration."""

from __future__ import annotations

import pytest
from django.core.management import call_command


@pytest.mark.django_db
def test_a_shell_without_a_case_says_how_one_comes(capsys: pytest.CaptureFixture[str]) -> None:
    call_command("shell", "--command", "print(Case)")
    assert "manage.py seed" in capsys.readouterr().out
