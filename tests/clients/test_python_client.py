"""The Python client that the project makes of its description drives a case to its approval.

An outside generator makes it; an outside type checker judges what it says of itself.
"""

from __future__ import annotations

import compileall
import os
import subprocess
import sys
import zipfile
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from typing import Any

import httpx
import pytest
from django.core.management import call_command
from django.core.wsgi import get_wsgi_application

from cases.domain.access.scopes import Scope
from cases.models import Kit, Person, Programme, ToothPlanVersion
from tests.keys import own_key, service_key

COURSE = Path(__file__).with_name("course.py")


@pytest.fixture(scope="module")
def package(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """The folder that an installed wheel would be in."""
    folder = tmp_path_factory.mktemp("client")
    call_command("api_client", folder, verbosity=0)
    (wheel,) = folder.glob("*.whl")
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(folder)
    sys.path.insert(0, str(folder))
    yield folder
    sys.path.remove(str(folder))


def test_the_course_is_typed_as_the_client_is(package: Path, tmp_path: Path) -> None:
    assert compileall.compile_dir(package, quiet=1)
    assert checked(package, COURSE) == "Success: no issues found in 1 source file\n"
    wrong = tmp_path / "wrong.py"
    wrong.write_text(COURSE.read_text().replace("client=service, after=after", "client=service, after=1"))
    assert 'Argument "after" to "sync" has incompatible type "int"' in checked(package, wrong)


def checked(package: Path, file: Path) -> str:
    """What the type checker says."""
    command = [sys.executable, "-m", "mypy", "--strict", "--follow-imports=silent", "--config-file=", str(file)]
    variables = os.environ | {"MYPYPATH": str(package)}
    return subprocess.run(command, cwd=package, env=variables, capture_output=True, text=True, check=False).stdout


def test_a_case_is_entered_planned_and_approved(
    package: Path, programme: Programme, kit: Kit, priya: Person, vale: Person, rosa: Person
) -> None:
    course = import_module("tests.clients.course")
    service = signed_in(service_key(rosa).text)
    after = course.programme_changes.sync(programme.pk, client=service, after="last").next_
    case = course.enter_case(service, programme.pk, priya.pk)
    version = course.ask_for_approval(signed_in(own_key(priya).text), programme.pk, case.id)
    reviewer = signed_in(own_key(vale, [Scope.CASES_READ, Scope.REVIEWS_WRITE]).text)
    plan = course.approve(reviewer, version)
    assert [canal.canal for canal in plan.canals] == [canal.name for canal in case.canals]
    row = ToothPlanVersion.objects.get(pk=version.id)
    assert (str(row.state), row.case_id, row.hash) == ("approved", case.id, version.hash_)
    kinds = course.kinds_since(service, programme.pk, after)
    assert [kinds[0], kinds[-1]] == ["case_opened", "version_approved"]
    assert kinds.count("reading_taken") == 2 * len(case.canals)


def test_a_refusal_ends_it_in_the_server_s_words(package: Path, programme: Programme, priya: Person) -> None:
    course = import_module("tests.clients.course")
    with pytest.raises(SystemExit, match="scope cases:write"):
        course.enter_case(signed_in(own_key(priya, [Scope.CASES_READ]).text), programme.pk, priya.pk)


def signed_in(key: str) -> Any:
    """A client with this key that asks the application in this process."""
    client = import_module("fourth_canal_client").AuthenticatedClient(base_url="http://testserver", token=key)
    transport = httpx.WSGITransport(app=get_wsgi_application())
    headers = {"Authorization": f"Bearer {key}"}
    return client.set_httpx_client(httpx.Client(transport=transport, base_url="http://testserver", headers=headers))
