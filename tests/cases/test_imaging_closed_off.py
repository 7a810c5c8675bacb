"""The process that reads images opens nothing, starts nothing, keeps within its bounds, and is one of two at most."""

from __future__ import annotations

import json
import socket
import subprocess
import sys
import time
from dataclasses import replace
from pathlib import Path

import pytest

from cases.domain.images import ImageKind
from cases.imaging import reading, turns
from cases.imaging.reading import read
from cases.imaging.turns import a_turn
from cases.imaging.value import ReaderBusy
from tests.cases.hostile import heic
from tests.cases.pictures import SAMPLES, intra_oral, picture, written
from tests.cases.test_imaging import LIMITS, UIDS

FORMS = ("JPEG", "PNG", "WEBP", "TIFF")


@pytest.fixture(autouse=True)
def places(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    """Places of this test alone: others on the machine read images meanwhile."""
    folder = tmp_path_factory.mktemp("places")
    own = [folder / "one", folder / "two"]
    for place in own:
        place.touch()
    monkeypatch.setattr(turns, "PLACES", own)


def ran(*arguments: str) -> str:
    command = [sys.executable, "-m", "tests.cases.closed_off_tries", *arguments]
    done = subprocess.run(command, cwd=reading.ROOT, env=reading.ENVIRONMENT, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr.decode()
    return done.stdout.decode()


def tried(tmp_path: Path, machine: str) -> dict[str, object]:
    """What failed, and how. Nothing else happened in the folder or at the port."""
    (tmp_path / "there").touch()
    with socket.create_server(("127.0.0.1", 0)) as listening:
        outcomes: dict[str, object] = json.loads(ran("tries", str(tmp_path), str(listening.getsockname()[1]), machine))
        listening.setblocking(False)
        with pytest.raises(BlockingIOError):
            listening.accept()
    assert [path.name for path in tmp_path.iterdir()] == ["there"]
    return outcomes


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux can be told which calls to refuse")
def test_it_opens_starts_removes_and_reaches_nothing(tmp_path: Path) -> None:
    failed = tried(tmp_path, "")
    assert failed.pop("closed off") is True
    kinds = {"OSError", "PermissionError"}
    assert failed.pop("memory") == "MemoryError"
    assert set(failed) == {
        *("read", "write", "list", "remove", "rename", "connect", "send", "start", "fork", "signal"),
    }
    assert set(failed.values()) <= kinds


def test_where_the_system_cannot_be_told_it_still_opens_nothing(tmp_path: Path) -> None:
    """A machine whose numbers of calls are not written down here."""
    failed = tried(tmp_path, "another")
    assert failed.pop("closed off") is False
    assert failed.pop("memory") == "MemoryError"
    assert set(failed) == {"read", "write", "list", "connect", "send"}


def test_closed_off_it_reads_what_it_reads_open(tmp_path: Path) -> None:
    """What a decoder would load when first used was loaded before: each kind, and every sample of pydicom's."""
    for form in FORMS:
        (tmp_path / f"x.{form}").write_bytes(picture(form=form))
    (tmp_path / "x.heic").write_bytes(heic())
    (tmp_path / "x.dcm").write_bytes(written(intra_oral()))
    closed = ran("reads", "closed", str(tmp_path), str(SAMPLES))
    assert closed == ran("reads", "open", str(tmp_path), str(SAMPLES))
    assert {kind.value for kind in ImageKind} <= {line.split()[0] for line in closed.splitlines()}


# --- two at once ---


def test_of_three_the_third_waits_for_a_place() -> None:
    with a_turn(), a_turn(), pytest.raises(ReaderBusy), a_turn(wait_s=0.1):
        pass
    with a_turn(wait_s=0), a_turn(wait_s=0):
        pass


def test_a_reader_whose_server_ended_still_holds_its_place() -> None:
    with a_turn() as place:
        reader = subprocess.Popen([sys.executable, "-c", "input()"], stdin=subprocess.PIPE, pass_fds=[place])
    try:
        with a_turn(wait_s=0), pytest.raises(ReaderBusy), a_turn(wait_s=0.1):
            pass
    finally:
        reader.communicate(b"\n")
    with a_turn(wait_s=0), a_turn(wait_s=0):
        pass


def test_the_reader_is_handed_its_place(monkeypatch: pytest.MonkeyPatch) -> None:
    handed: list[list[int]] = []
    real = subprocess.run

    def other(command: list[str], **more: object) -> object:
        handed.append(more["pass_fds"])  # type: ignore[arg-type]
        return real(command, **more)  # type: ignore[call-overload]

    monkeypatch.setattr(subprocess, "run", other)
    read(picture(), LIMITS, UIDS)
    assert [len(places) for places in handed] == [1]


def test_what_the_machine_has_no_time_for_is_not_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    real = subprocess.run
    asleep = [sys.executable, "-c", "import time; time.sleep(30)"]
    monkeypatch.setattr(subprocess, "run", lambda command, **more: real(asleep, **more))
    began = time.monotonic()
    with pytest.raises(ReaderBusy):
        read(picture(), replace(LIMITS, clock_seconds=1), UIDS)
    assert time.monotonic() - began < 20
