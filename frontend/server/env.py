"""What the process is told by its environment; every variable the program knows stands here once."""

from __future__ import annotations

import re
import secrets
from dataclasses import dataclass, field
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import environ

ROOT = Path(__file__).resolve().parents[2]
DATA = ROOT / ".data"
# Enough that a key typed in by hand is not guessed.
LEAST_KEY_LENGTH = 50

# Of a page, as a browser tells it; plain HTTP for this machine alone.
ORIGIN = re.compile(r"https://[a-z0-9.-]+(:[0-9]+)?|http://(localhost|127\.0\.0\.1)(:[0-9]+)?")

_read = environ.Env()


def _names(variable: str) -> list[str]:
    return [str(name).strip() for name in _read.list(variable, default=[])]


@dataclass(frozen=True, slots=True)
class Environment:
    """The settings of one process.

    `mode` is `local` (the default: this machine only) or `production` (others come in, by HTTPS only).
    """

    mode: str = field(default_factory=lambda: str(_read.str("MODE", default="local")))
    secret_key: str = field(default_factory=lambda: str(_read.str("SECRET_KEY", default="")), repr=False)
    allowed_hosts: list[str] = field(default_factory=lambda: _names("ALLOWED_HOSTS"))
    # True if a proxy in front ends HTTPS and sets X-Forwarded-Proto itself.
    behind_proxy: bool = field(default_factory=lambda: bool(_read.bool("BEHIND_PROXY", default=False)))
    # Addresses and networks of that proxy, separated by commas. It alone is believed who asks (X-Forwarded-For).
    trusted_proxies: list[str] = field(default_factory=lambda: _names("TRUSTED_PROXIES"))
    # Origins whose pages may ask the API with a key, such as https://course.example, separated by commas.
    cors_origins: list[str] = field(default_factory=lambda: _names("CORS_ORIGINS"))
    log_level: str = field(default_factory=lambda: str(_read.str("LOG_LEVEL", default="INFO")))
    # `count` or `all`: what each request asks of the database, in the log. For whoever changes the program.
    show_queries: str = field(default_factory=lambda: str(_read.str("SHOW_QUERIES", default="")))
    # `numpy` or `compiled`: what estimates depths. Left out, it is compiled where the packages for it are installed.
    # What was compiled is kept in the folder that NUMBA_CACHE_DIR names, else beside the program, with the user or
    # with temporary files, whichever can be written.
    depth_kernel: str = field(default_factory=lambda: str(_read.str("DEPTH_KERNEL", default="")))

    # True lets webhooks go to addresses inside (private, this machine's, of one line), and there without HTTPS too.
    webhooks_inside: bool = field(default_factory=lambda: bool(_read.bool("WEBHOOKS_INSIDE", default=False)))
    # Certificates, as PEM, that vouch for receivers instead of those everybody knows.
    webhooks_ca_file: str = field(default_factory=lambda: str(_read.str("WEBHOOKS_CA_FILE", default="")))

    @property
    def production(self) -> bool:
        return self.mode == "production"

    @property
    def compiled(self) -> bool:
        """Depths are to be estimated by the compiled kernel."""
        return self.depth_kernel != "numpy" and find_spec("numba") is not None

    def missing(self) -> list[str]:
        """Everything that stands against a start, one sentence each; empty when the process may serve."""
        faults = []
        if self.mode not in ("local", "production"):
            faults.append(f"MODE is {self.mode!r}; it is local or production.")
        for origin in self.cors_origins:
            if not ORIGIN.fullmatch(origin):
                faults.append(f"CORS_ORIGINS has {origin!r}; an origin is https://name, without a path.")
        if self.show_queries not in ("", "count", "all"):
            faults.append(f"SHOW_QUERIES is {self.show_queries!r}; it is count or all, or left out.")
        if self.depth_kernel not in ("", "numpy", "compiled"):
            faults.append(f"DEPTH_KERNEL is {self.depth_kernel!r}; it is numpy or compiled, or left out.")
        if self.depth_kernel == "compiled" and not self.compiled:
            faults.append("DEPTH_KERNEL=compiled needs more packages: start with EXTRAS=fast.")
        if self.production:
            if len(self.secret_key) < LEAST_KEY_LENGTH:
                faults.append(f"SECRET_KEY is missing or shorter than {LEAST_KEY_LENGTH} characters.")
            if not self.allowed_hosts:
                faults.append("ALLOWED_HOSTS is missing: the names this server answers to, separated by commas.")
            if "*" in self.allowed_hosts:
                faults.append("ALLOWED_HOSTS names every host (*); name those this server answers to.")
            if self.behind_proxy and not self.trusted_proxies:
                faults.append("TRUSTED_PROXIES is missing: the addresses of the proxy, or all people share one.")
            if not _read.str("DATABASE_URL", default=""):
                faults.append("DATABASE_URL is missing: the database that keeps the records.")
            if not (_read.str("IMAGE_FOLDER", default="") or _read.str("IMAGE_BUCKET", default="")):
                faults.append("IMAGE_FOLDER is missing, or IMAGE_BUCKET: where images are kept.")
            if _read.str("IMAGE_BUCKET", default="") and not find_spec("storages"):
                faults.append("IMAGE_BUCKET needs more packages: those of .lock/s3.txt, beside those of .lock/run.txt.")
        return faults

    def key(self) -> str:
        """The secret key; one of this process alone where none is given, so that sessions end with it."""
        return self.secret_key or secrets.token_urlsafe(LEAST_KEY_LENGTH)


def database() -> dict[str, Any]:
    """Django's description of the database: DATABASE_URL, else an SQLite file in the data folder."""
    if not _read.str("DATABASE_URL", default=""):
        # Only then: a server with a database of its own may not be allowed to write where the program lies.
        DATA.mkdir(exist_ok=True)
    described: dict[str, Any] = _read.db("DATABASE_URL", default=f"sqlite:///{DATA / 'fourth-canal.sqlite3'}")
    if described["ENGINE"].endswith("sqlite3"):
        described["OPTIONS"] = SQLITE
    # One connection for each thread, for good: opening it took as long as a small request, and SQLite works its log off
    # whenever the last one closes. One that was lost meanwhile is found out by asking, and opened anew.
    return {**described, "CONN_MAX_AGE": None, "CONN_HEALTH_CHECKS": True}


def image_storage() -> dict[str, Any]:
    """Django's description of where images lie: an S3-compatible store where IMAGE_BUCKET names one, else a folder.

    IMAGE_FOLDER is that folder. Neither is reachable from outside: the API serves images to those who may see the case.
    """
    bucket = _read.str("IMAGE_BUCKET", default="")
    if not bucket:
        folder = _read.str("IMAGE_FOLDER", default=str(DATA / "images"))
        options = {"location": folder, "file_permissions_mode": 0o600, "directory_permissions_mode": 0o700}
        return {"BACKEND": "django.core.files.storage.FileSystemStorage", "OPTIONS": options}
    options = {
        "bucket_name": bucket,
        "endpoint_url": _read.str("IMAGE_STORE_URL", default="") or None,
        "access_key": _read.str("IMAGE_STORE_KEY", default="") or None,
        "secret_key": _read.str("IMAGE_STORE_SECRET", default="") or None,
        "region_name": _read.str("IMAGE_STORE_REGION", default="") or None,
    }
    return {"BACKEND": "frontend.server.bucket.Bucket", "OPTIONS": options}


# IMMEDIATE: a transaction that will write takes the lock at its start, or it fails with "database is locked".
# secure_delete: parts of an image that was not kept leave the file.
# FULL: an event that was acknowledged survives a power cut, not only a crash of the process.
SQLITE: dict[str, Any] = {
    "transaction_mode": "IMMEDIATE",
    "timeout": 20,
    "init_command": (
        "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON; PRAGMA secure_delete=ON;"
    ),
}
