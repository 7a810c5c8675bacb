"""What the records refuse, each with a code and a sentence that says what to do."""

from __future__ import annotations

from planning.foundation.errors import Refusal


class CaseError(Refusal):
    """What the records refuse."""


# --- not there, or not for this person ---


class NotHere(CaseError):
    """Does not exist, or belongs to another programme: the two are not told apart."""

    code = "not-found"
    sentence = "There is no such {what} here."


class NotAllowed(CaseError):
    code = "not-allowed"
    sentence = "{reason}"


class SignInRefused(CaseError):
    code = "sign-in-refused"
    sentence = "Name or password is wrong."


class KeyRefused(CaseError):
    """An access key that does not count."""

    code = "key-refused"
    sentence = "{reason}"


class TooManyTries(CaseError):
    code = "too-many-tries"
    sentence = "Too many wrong tries. Wait {minutes} minutes and try again."


# --- good data that cannot be used ---


class NotUsable(CaseError):
    code = "not-usable"
    sentence = "{reason}"


class AliasRefused(NotUsable):
    code = "alias-refused"


class AliasLooksLikeAName(NotUsable):
    """The alias may be a name. It is asked about once: whoever says that it is none has it taken."""

    code = "alias-looks-like-a-name"
    sentence = "This looks like somebody's name. Make up an alias, or say that it is no name."


class PasswordWrong(NotUsable):
    code = "password-wrong"
    sentence = "This is not your password."


class CodeRefused(NotUsable):
    """A one-time code that does not count."""

    code = "code-refused"


class NothingSaid(NotUsable):
    code = "nothing-said"
    sentence = "A returned plan needs a note or a remark on a canal: the student must know what to change."


class NotAcknowledged(NotUsable):
    code = "not-acknowledged"
    sentence = "Acknowledge by its name what must be put right before you approve. Still missing: {missing}"


class NoSuchCanal(NotUsable):
    code = "no-such-canal"
    sentence = "The plan has no canal '{canal}'. It has {canals}."


class ImageRefused(NotUsable):
    code = "image-refused"


class ImageDamaged(NotUsable):
    code = "image-damaged"
    sentence = "The image was changed on the way: its SHA-256 is not what was announced. Send it again from the start."


class ImageRemoved(CaseError):
    """Was here once, and is not taken again under this id."""

    code = "image-removed"
    sentence = "This image was removed: {why}. Nothing more is taken for it."


class ImagesFull(NotUsable):
    code = "images-full"
    sentence = (
        "The programme's room for images is used up: {left_mb} MB are left of {most_mb}. "
        "Ask the coordinator for more; the image stays where it is."
    )


# --- not now ---


class StoreAway(CaseError):
    """The images' storage does not answer, or takes nothing more."""

    code = "store-away"
    sentence = (
        "Images cannot be kept or shown just now; nothing of what was sent before is lost. "
        "Send it again in a moment; if it lasts, tell whoever runs the server."
    )


class ReadingBusy(CaseError):
    """The machine had no time to read an image."""

    code = "reading-busy"
    sentence = "The server had no time to read the image. Send it again in a moment; it goes on where it was."


# --- at odds with how things stand ---


class Conflict(CaseError):
    code = "conflict"
    sentence = "{reason}"


class MoveNotPossible(Conflict):
    code = "move-not-possible"
    sentence = "A plan that is {state} cannot be {done}. {way_out}"


class DecidedBefore(MoveNotPossible):
    """Another supervisor was first."""

    sentence = "{by} was first: plan {number} was {decision} at {when}. Look at what was said before you go on."


class PlanStale(Conflict):
    code = "plan-stale"
    sentence = "The case has changed since plan {number} was made. Have it planned again and {verb} the new plan."


class ReasonMissing(Conflict):
    code = "reason-missing"
    sentence = (
        "{canal}: the final size lies outside the advised range and no reason is given. "
        "Write it and submit the new version."
    )


class EmptyPlan(Conflict):
    code = "empty-plan"
    sentence = "Plan {number} is empty: no canal has a length. Measure one at least, plan again and submit that plan."


class SentDifferently(Conflict):
    code = "id-used-differently"
    sentence = "The id {id} was used before for something else. Send this with a new id."


class TakenAlready(Conflict):
    code = "taken-already"
    sentence = "{what} '{name}' is there already. Choose another name."


class CanalInUse(Conflict):
    code = "canal-in-use"
    sentence = "{canal} is in the record and stays there. Record it as searched and not found instead."


class SettingFixed(Conflict):
    code = "setting-fixed"
    sentence = "The setting cannot be changed once lengths are recorded: they rest on it. Open a new case."


class HoldPointAnswered(Conflict):
    code = "hold-point-answered"
    sentence = "{canal} does not wait for a sign-off at this step. {last}"


class OtherPerson(Conflict):
    code = "other-person"
    sentence = "Somebody else has signed in on this device. It keeps this until the person who did it signs in again."


class SequenceGap(Conflict):
    code = "sequence-gap"
    sentence = "Expected event {expected} of this device, got {given}. Nothing from there on was stored."

    @property
    def expected(self) -> int:
        """The number the device has to go on with."""
        return int(self.fields["expected"])


class OffsetMismatch(Conflict):
    code = "offset-mismatch"
    sentence = "The upload goes on from byte {expected}; this part begins at {given}."

    @property
    def expected(self) -> int:
        """The byte to go on from."""
        return int(self.fields["expected"])


# --- at odds with what was on the screen ---


class ChangedSince(CaseError):
    """The ETag that came with the request is not the present one."""

    code = "changed-since"
    sentence = "{what} has changed since it was shown. Look at it again before you go on."


class HashMissing(CaseError):
    code = "precondition-missing"
    sentence = "Say which state you saw: send its ETag as If-Match."
