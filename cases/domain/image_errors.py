"""What is refused of images and their storage: codes and sentences as in errors.py."""

from __future__ import annotations

from cases.domain.errors import CaseError, Conflict, NotUsable


class ImageRefused(NotUsable):
    """A file that cannot be kept as an image.

    The sentence names its fault: export it anew, and send that.
    """

    code = "image-refused"


class ImageDamaged(NotUsable):
    """The image was changed on its way.

    Send it again from the start.
    """

    code = "image-damaged"
    sentence = "The image was changed on the way: its SHA-256 is not what was announced. Send it again from the start."


class ImageRemoved(CaseError):
    """Was here once, and is not taken again under this id.

    Leave it, or send another image under a new id.
    """

    code = "image-removed"
    sentence = "This image was removed: {why}. Nothing more is taken for it."


class ImagesFull(NotUsable):
    """The programme's room for images is used up.

    Keep the image, and ask the coordinator for more room.
    """

    code = "images-full"
    sentence = (
        "The programme's room for images is used up: {left_mb} MB are left of {most_mb}. "
        "Ask the coordinator for more; the image stays where it is."
    )


class StoreAway(CaseError):
    """The images' storage does not answer, or takes nothing more.

    Send it again after `Retry-After`; an upload goes on where it was.
    """

    code = "store-away"
    sentence = (
        "Images cannot be kept or shown just now; nothing of what was sent before is lost. "
        "Send it again in a moment; if it lasts, tell whoever runs the server."
    )


class ReadingBusy(CaseError):
    """The machine had no time to read an image.

    Send it again after `Retry-After`; an upload goes on where it was.
    """

    code = "reading-busy"
    sentence = "The server had no time to read the image. Send it again in a moment; it goes on where it was."


class OffsetMismatch(Conflict):
    """A part of an upload does not begin where the last one ended.

    Go on from the byte in `expected`.
    """

    code = "offset-mismatch"
    sentence = "The upload goes on from byte {expected}; this part begins at {given}."

    @property
    def expected(self) -> int:
        """The byte to go on from."""
        return int(self.fields["expected"])
