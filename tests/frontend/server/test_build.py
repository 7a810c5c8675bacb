"""Packages of a folder are installed once, and those for tests stay where they were."""

from __future__ import annotations

from pathlib import Path

import pytest

from frontend.server import build


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[tuple[str, ...]]:
    """What npm was asked to do."""
    asked: list[tuple[str, ...]] = []

    def npm(*arguments: str, folder: Path) -> None:
        (folder / "node_modules").mkdir(exist_ok=True)
        asked.append(arguments)

    monkeypatch.setattr(build, "npm", npm)
    return asked


@pytest.mark.parametrize(("tests_before", "without_tests"), [(None, True), (False, True), (True, False)])
def test_a_newer_lock_takes_nobody_the_packages_for_tests(
    tmp_path: Path, asked: list[tuple[str, ...]], tests_before: bool | None, without_tests: bool
) -> None:
    lock = tmp_path / "package-lock.json"
    if tests_before is not None:
        lock.write_text("1")
        build.install_packages(tmp_path, tests=tests_before)
    lock.write_text("2")
    for _ in range(2):
        build.install_packages(tmp_path, tests=False)
    assert ["--omit=dev" in arguments for arguments in asked[-1:]] == [without_tests]
    assert len(asked) == 1 + (tests_before is not None)
