"""What is said of an image that could not be read: for each fault what it is and what to do. Knows no decoder."""

from __future__ import annotations

from cases.imaging.value import Unreadable

CUT_OFF = "The file is damaged: it ends before the picture does. Send it again, or take another image."
NO_HEAD = "The file is damaged: its beginning says nothing of a picture. Export it again as JPEG or PNG."
DAMAGED = "The file is damaged: it could not be read to its end. Send it again, or take another image."
FELL_OVER = "The file is damaged: the reader fell over it. Export it again as JPEG or PNG, or take another image."
NOT_THIS_FORM = "The image is of a form that is not read here. Export it again as JPEG or PNG."
TOO_LARGE = "The image needs more memory than one image may take. Send a smaller one."
TOO_LONG = "The image took too long to read. Send it in another form, or smaller."
# What decoders say of a file that is too short; none of them has an error of its own for it.
SHORT = ("truncated", "less than expected", "end of file", "end-of-file", "eof", "not enough data")


def sentence_for(error: Exception) -> str:
    """The sentence for what a decoder raised. Raises it again where the installation and not the image is at fault."""
    if isinstance(error, Unreadable):
        return str(error)
    if isinstance(error, ImportError):
        raise error
    if isinstance(error, MemoryError):
        return TOO_LARGE
    if isinstance(error, EOFError) or any(word in str(error).lower() for word in SHORT):
        return CUT_OFF
    # By its name, as this module knows no decoder.
    if type(error).__name__ == "UnidentifiedImageError":
        return NO_HEAD
    return NOT_THIS_FORM if isinstance(error, NotImplementedError) else DAMAGED
