"""A store that speaks S3 on this machine, a process of its own (moto's server): nothing of the program runs in it."""

from __future__ import annotations

import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from typing import Any
from urllib.error import HTTPError
from urllib.request import urlopen

import boto3

NAME = "canal-images"
KEY, SECRET = "check-key", "check-secret"
STARTS_WITHIN_S = 60


@dataclass(frozen=True)
class Store:
    port: int

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    @property
    def client(self) -> Any:
        """An outside reader of the bucket."""
        keys = {"aws_access_key_id": KEY, "aws_secret_access_key": SECRET, "region_name": "us-east-1"}
        return boto3.client("s3", endpoint_url=self.url, **keys)

    def names(self) -> set[str]:
        """Everything in the bucket."""
        return {each["Key"] for each in self.client.list_objects_v2(Bucket=NAME).get("Contents", ())}

    def unsigned(self, name: str) -> int:
        """How the store answers somebody without a key who knows the name."""
        try:
            with urlopen(f"{self.url}/{NAME}/{name}") as answer:  # noqa: S310 - our own store
                return int(answer.status)
        except HTTPError as refusal:
            return refusal.code

    def empty(self) -> None:
        """The bucket, there and with nothing in it."""
        client = self.client
        with suppress(client.exceptions.BucketAlreadyOwnedByYou):
            client.create_bucket(Bucket=NAME)
        for name in self.names():
            client.delete_object(Bucket=NAME, Key=name)


def free_port() -> int:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        return int(taken.getsockname()[1])


@contextmanager
def running(port: int) -> Iterator[Store]:
    """A store with nothing in it, for as long as the block lasts."""
    command = [sys.executable, "-m", "moto.server", "-H", "127.0.0.1", "-p", str(port)]
    process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        _wait_for(process, port)
        yield Store(port)
    finally:
        process.kill()
        process.wait()


def _wait_for(process: subprocess.Popen[bytes], port: int) -> None:
    until = time.monotonic() + STARTS_WITHIN_S
    while process.poll() is None and time.monotonic() < until:
        with suppress(OSError), socket.create_connection(("127.0.0.1", port), timeout=1):
            return
        time.sleep(0.1)
    raise RuntimeError("The store did not start.")
