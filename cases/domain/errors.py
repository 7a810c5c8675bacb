"""What the records refuse, each with a code and a sentence that says what to do.

Docstrings explain the codes to those who ask the API: what a code means, then what to do.
"""

from __future__ import annotations

from planning.foundation.errors import Refusal


class CaseError(Refusal):
    """What the records refuse."""


# --- not there, or not for this person ---


class NotHere(CaseError):
    """Does not exist, or belongs to another programme or another student: the two are not told apart.

    Look at the address, and at who is signed in.
    """

    code = "not-found"
    sentence = "There is no such {what} here."


class NotAllowed(CaseError):
    """Is there, and not for this person or service.

    Have it done by whom the sentence names; signing in again changes nothing.
    """

    code = "not-allowed"
    sentence = "{reason}"


class SignInRefused(CaseError):
    """The name or the password is wrong.

    Type both again; whoever looks after the server can set a new password.
    """

    code = "sign-in-refused"
    sentence = "Name or password is wrong."


class KeyRefused(CaseError):
    """An access key that does not count: unknown, ended or revoked.

    Have a new key made, and send that.
    """

    code = "key-refused"
    sentence = "{reason}"


class InvitationRefused(CaseError):
    """A link to join that does not count: unknown, used, ended or withdrawn.

    Ask the coordinator who sent it for a new one.
    """

    code = "invitation-refused"
    sentence = "{reason}"


class TooManyTries(CaseError):
    """Names, passwords or codes were wrong too often.

    Wait as many seconds as `Retry-After` says.
    """

    code = "too-many-tries"
    sentence = "Too many wrong tries. Wait {minutes} minutes and try again."


# --- good data that cannot be used ---


class NotUsable(CaseError):
    """Good data that cannot be used here.

    Change what the sentence names, and send it again.
    """

    code = "not-usable"
    sentence = "{reason}"


class AliasRefused(NotUsable):
    """The alias of a patient holds what an alias must not hold.

    Make up another one, in letters and a few digits, without a date or an e-mail address.
    """

    code = "alias-refused"


class AliasLooksLikeAName(NotUsable):
    """The alias may be a name. It is asked about once: whoever says that it is none has it taken.

    Make up an alias, or send `alias_is_no_name`.
    """

    code = "alias-looks-like-a-name"
    sentence = "This looks like somebody's name. Make up an alias, or say that it is no name."


class PasswordWrong(NotUsable):
    """The password that is asked for once more is not that of who is signed in.

    Type your own again.
    """

    code = "password-wrong"
    sentence = "This is not your password."


class CodeRefused(NotUsable):
    """A one-time code that does not count.

    Wait for the next code, and look whether the phone's clock is right.
    """

    code = "code-refused"


class NothingSaid(NotUsable):
    """A plan is returned without a word.

    Send a note, or a remark on a canal.
    """

    code = "nothing-said"
    sentence = "A returned plan needs a note or a remark on a canal: the student must know what to change."


class NotAcknowledged(NotUsable):
    """A plan is approved while a caution asks to be acknowledged.

    Send the names that are missing among those acknowledged.
    """

    code = "not-acknowledged"
    sentence = "Acknowledge by its name what must be put right before you approve. Still missing: {missing}"


class NoSuchCanal(NotUsable):
    """The plan has no canal of that name.

    Take a name from the plan.
    """

    code = "no-such-canal"
    sentence = "The plan has no canal '{canal}'. It has {canals}."


# --- not now ---


# --- at odds with how things stand ---


class Conflict(CaseError):
    """At odds with how things stand.

    Read again what it is about; the sentence says what stands in the way.
    """

    code = "conflict"
    sentence = "{reason}"


class MoveNotPossible(Conflict):
    """A plan that is where it is cannot be moved so.

    Read the plan again; the sentence names the way out.
    """

    code = "move-not-possible"
    sentence = "A plan that is {state} cannot be {done}. {way_out}"


class DecidedBefore(MoveNotPossible):
    """Another supervisor was first."""

    sentence = "{by} was first: plan {number} was {decision} at {when}. Look at what was said before you go on."


class PlanStale(Conflict):
    """The case has changed since the plan was made.

    Have it planned again, and go on with the new plan.
    """

    code = "plan-stale"
    sentence = "The case has changed since plan {number} was made. Have it planned again and {verb} the new plan."


class ReasonMissing(Conflict):
    """A final size lies outside the advised range, and no reason is given.

    Write the reason, and submit the new version.
    """

    code = "reason-missing"
    sentence = (
        "{canal}: the final size lies outside the advised range and no reason is given. "
        "Write it and submit the new version."
    )


class EmptyPlan(Conflict):
    """No canal of the plan has a length.

    Measure one at least, plan again, and submit that.
    """

    code = "empty-plan"
    sentence = "Plan {number} is empty: no canal has a length. Measure one at least, plan again and submit that plan."


class SentDifferently(Conflict):
    """An id of the sender's was used before for something else.

    Make a new id, and send it with that.
    """

    code = "id-used-differently"
    sentence = "The id {id} was used before for something else. Send this with a new id."


class TakenAlready(Conflict):
    """Something of that name is there already.

    Choose another name.
    """

    code = "taken-already"
    sentence = "{what} '{name}' is there already. Choose another name."


class CanalInUse(Conflict):
    """Something was measured or done in the canal, so it stays in the record.

    Record it as searched and not found instead.
    """

    code = "canal-in-use"
    sentence = "{canal} is in the record and stays there. Record it as searched and not found instead."


class SettingFixed(Conflict):
    """Lengths rest on the setting of the case.

    Open a new case in the other setting.
    """

    code = "setting-fixed"
    sentence = "The setting cannot be changed once lengths are recorded: they rest on it. Open a new case."


class HoldPointAnswered(Conflict):
    """The canal does not wait for a sign-off at this step, or waits no more.

    Read the events again: somebody may have been first.
    """

    code = "hold-point-answered"
    sentence = "{canal} does not wait for a sign-off at this step. {last}"


class OtherPerson(Conflict):
    """What a device sends was done by somebody else than who is signed in.

    Keep it until that person signs in again.
    """

    code = "other-person"
    sentence = "Somebody else has signed in on this device. It keeps this until the person who did it signs in again."


class NotOfThisFeed(Conflict):
    """Nothing, or another change, stands where a reader of the feed says it has read to: a server was restored.

    Ask with `after=last`, copy what there is, and go on from the answer's `next`.
    """

    code = "not-of-this-feed"
    sentence = "These changes do not go on from there. Ask with after=last, copy anew, and go on from its answer."


class SequenceGap(Conflict):
    """Events of a device came with one left out; from there on nothing was stored.

    Go on with the number in `expected`.
    """

    code = "sequence-gap"
    sentence = "Expected event {expected} of this device, got {given}. Nothing from there on was stored."

    @property
    def expected(self) -> int:
        """The number the device has to go on with."""
        return int(self.fields["expected"])


# --- at odds with what was on the screen ---


class ChangedSince(CaseError):
    """What If-Match names is not the present state.

    Read it again, look at what is new, and send the new ETag.
    """

    code = "changed-since"
    sentence = "{what} has changed since it was shown. Look at it again before you go on."


class HashMissing(CaseError):
    """A change that rests on what was seen came without If-Match.

    Send the ETag of what you saw as If-Match.
    """

    code = "precondition-missing"
    sentence = "Say which state you saw: send its ETag as If-Match."
