"""A start that is not safe is refused, with everything that is missing at once."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from pytest_django.fixtures import Settings

from frontend.server import env
from frontend.server.checks import NotReady, check_environment, refuse_unready
from frontend.server.env import LEAST_KEY_LENGTH, ROOT, Environment, database, image_storage

KEY = "k" * LEAST_KEY_LENGTH
READY = {
    "MODE": "production",
    "SECRET_KEY": KEY,
    "ALLOWED_HOSTS": "canal.example",
    "DATABASE_URL": "postgres://u@/socket/d",
    "IMAGE_FOLDER": "/var/lib/canal/images",
}


@pytest.fixture
def variables(monkeypatch: pytest.MonkeyPatch) -> pytest.MonkeyPatch:
    for name in (*READY, "BEHIND_PROXY", "TRUSTED_PROXIES", "DEPTH_KERNEL"):
        monkeypatch.delenv(name, raising=False)
    return monkeypatch


def _set(variables: pytest.MonkeyPatch, values: dict[str, str]) -> Environment:
    for name, value in values.items():
        variables.setenv(name, value)
    return Environment()


def test_without_being_told_anything_it_serves_this_machine_alone(variables: pytest.MonkeyPatch) -> None:
    environment = Environment()
    assert not environment.production
    assert environment.allowed_hosts == []
    assert environment.missing() == []
    refuse_unready(environment)


def test_a_bare_production_start_is_refused_with_the_whole_list(variables: pytest.MonkeyPatch) -> None:
    with pytest.raises(NotReady) as refused:
        refuse_unready(_set(variables, {"MODE": "production"}))
    assert all(name in str(refused.value) for name in ("SECRET_KEY", "ALLOWED_HOSTS", "DATABASE_URL", "IMAGE_FOLDER"))


def test_a_complete_production_start_is_allowed(variables: pytest.MonkeyPatch) -> None:
    environment = _set(variables, READY)
    refuse_unready(environment)
    assert environment.production
    assert environment.key() == KEY


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("SECRET_KEY", "k" * (LEAST_KEY_LENGTH - 1)),
        ("ALLOWED_HOSTS", "*"),
        ("DATABASE_URL", ""),
        ("IMAGE_FOLDER", ""),
        ("MODE", "prod"),
        ("DEPTH_KERNEL", "fast"),
        *(("CORS_ORIGINS", value) for value in ("*", "course.example", "https://course.example/", "http://a.example")),
    ],
)
def test_each_wrong_value_is_named(variables: pytest.MonkeyPatch, name: str, value: str) -> None:
    missing = _set(variables, {**READY, name: value}).missing()
    assert len(missing) == 1
    assert missing[0].startswith(name)


def test_behind_a_proxy_its_addresses_are_asked_for(variables: pytest.MonkeyPatch) -> None:
    (missing,) = _set(variables, {**READY, "BEHIND_PROXY": "true"}).missing()
    assert missing.startswith("TRUSTED_PROXIES")
    environment = _set(variables, {**READY, "BEHIND_PROXY": "true", "TRUSTED_PROXIES": "10.0.0.1, 192.0.2.0/24"})
    assert environment.missing() == []
    assert environment.trusted_proxies == ["10.0.0.1", "192.0.2.0/24"]


def test_with_a_database_of_its_own_nothing_is_made_where_the_program_lies(
    variables: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    variables.setattr(
        env, "DATA", tmp_path / "program" / "data"
    )  # its folder is not there, so nothing can be made in it
    variables.setenv("DATABASE_URL", "postgres://u@/socket/d")
    assert database()["NAME"] == "socket/d"
    variables.delenv("DATABASE_URL")
    variables.setattr(env, "DATA", tmp_path / "data")
    assert database()["NAME"].startswith(str(tmp_path / "data"))
    assert (tmp_path / "data").is_dir()


def test_the_check_command_tells_the_same_list(settings: Settings, variables: pytest.MonkeyPatch) -> None:
    settings.ENVIRONMENT = _set(variables, {"MODE": "production"})
    assert [message.msg for message in check_environment(None)] == settings.ENVIRONMENT.missing()


def test_a_key_of_its_own_is_new_for_each_process(variables: pytest.MonkeyPatch) -> None:
    assert Environment().key() != Environment().key()
    assert len(Environment().key()) >= LEAST_KEY_LENGTH


def test_the_secret_is_not_printed(variables: pytest.MonkeyPatch) -> None:
    assert KEY not in repr(_set(variables, READY))


def test_sqlite_writes_are_immediate_and_survive_a_power_cut(variables: pytest.MonkeyPatch) -> None:
    variables.setenv("DATABASE_URL", "sqlite:///somewhere.sqlite3")
    options = database()["OPTIONS"]
    assert options["transaction_mode"] == "IMMEDIATE"
    assert "synchronous=FULL" in options["init_command"]


def test_another_database_takes_its_place_by_address(variables: pytest.MonkeyPatch) -> None:
    variables.setenv("DATABASE_URL", "postgres://me@db.example:5433/canal")
    described = database()
    assert described["ENGINE"] == "django.db.backends.postgresql"
    assert (described["HOST"], described["PORT"], described["NAME"]) == ("db.example", 5433, "canal")
    assert "OPTIONS" not in described


def test_images_lie_in_a_folder_that_only_the_program_may_read(variables: pytest.MonkeyPatch) -> None:
    variables.setenv("IMAGE_FOLDER", "/srv/images")
    assert image_storage()["OPTIONS"] == {
        "location": "/srv/images",
        "file_permissions_mode": 0o600,
        "directory_permissions_mode": 0o700,
    }


def test_a_bucket_without_its_package_is_refused(variables: pytest.MonkeyPatch) -> None:
    with_bucket = {**READY, "IMAGE_FOLDER": "", "IMAGE_BUCKET": "canal"}
    assert _set(variables, with_bucket).missing() == []
    variables.setattr(env, "find_spec", lambda name: None)  # as where the packages were never installed
    missing = _set(variables, with_bucket).missing()
    assert missing == ["IMAGE_BUCKET needs more packages: those of .lock/s3.txt, beside those of .lock/run.txt."]


def test_a_bucket_takes_the_folders_place(variables: pytest.MonkeyPatch) -> None:
    variables.setenv("IMAGE_BUCKET", "canal")
    described = image_storage()
    assert described["BACKEND"] == "frontend.server.bucket.Bucket"
    assert described["OPTIONS"]["bucket_name"] == "canal"


def test_what_is_shown_of_queries_is_one_of_two(variables: pytest.MonkeyPatch) -> None:
    assert _set(variables, {"SHOW_QUERIES": "count"}).missing() == []
    with pytest.raises(NotReady, match="it is count or all"):
        refuse_unready(_set(variables, {"SHOW_QUERIES": "yes"}))


# Of the system, or of one request.
OTHERS = {"PATH", "XDG_CACHE_HOME", "PATH_INFO", "REQUEST_METHOD", "CONTENT_LENGTH"}
READ = re.compile(r"""(?:_read\.\w+|_names|_count|environ(?:\.get)?|getenv)[\[(]\s*"([A-Z_0-9]+)\"""")


def test_every_variable_has_its_row_on_the_page_for_operators() -> None:
    program = [path for package in ("cases", "frontend") for path in (ROOT / package).rglob("*.py")]
    read = {name for path in program for name in READ.findall(path.read_text(encoding="utf-8"))} - OTHERS
    table = [
        line for line in (ROOT / "frontend/OPERATING.md").read_text(encoding="utf-8").splitlines() if line[:3] == "| `"
    ]
    # Numba reads its own.
    assert set(re.findall(r"`([A-Z_0-9]{4,})`", "\n".join(table))) == read | {"NUMBA_CACHE_DIR"}
    assert len(read) > 20
