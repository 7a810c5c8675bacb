"""Images in a store that speaks S3. Loaded only where IMAGE_BUCKET names a bucket: its packages are those of `s3`."""

from __future__ import annotations

from typing import Any

from botocore.config import Config
from storages.backends.s3 import S3Storage

# A store that does not answer is told of while whoever waits for it is still there; it is tried twice.
CONNECT_SECONDS = 4
ANSWER_SECONDS = 15


class Bucket(S3Storage):  # type: ignore[misc]  # carries no types
    """Private objects, asked for within a bound of time, in words that every such store knows."""

    def get_default_settings(self) -> dict[str, Any]:
        config = Config(
            connect_timeout=CONNECT_SECONDS,
            read_timeout=ANSWER_SECONDS,
            retries={"mode": "standard", "total_max_attempts": 2},
            # Checksums beyond the first edition of the protocol are unknown to older stores.
            request_checksum_calculation="when_required",
            response_checksum_validation="when_required",
        )
        # No access list of its own: whoever may read the bucket is the bucket's to say.
        return {**super().get_default_settings(), "client_config": config, "default_acl": None}
