"""What a patient may be called here: an alias, and nothing that leads to a person.

A plain rule, not a judgement: what has the form of an address, a date or a number of somebody is refused; what has
the form of a name is asked about once. No list of names is kept.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from itertools import pairwise, permutations

from cases.domain.errors import AliasLooksLikeAName, AliasRefused

AT = ("patient_alias",)
MOST_CHARACTERS = 40
MOST_DIGITS = 5  # in one run, with what people write between digits; telephone and record numbers have more
MOST_MARKS = 2  # accents on one letter: more make a text run over the lines around it
BIDI = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""The characters with the property Bidi_Control (UAX #9, section 2)."""
BLANK = frozenset("\u00ad\u034f\u115f\u1160\u17b4\u17b5\u180b\u180c\u180d\u180e\u180f\u2800\u3164\uffa0")
"""Nothing is seen of these, though their category is that of letters, marks or signs (UAX #44,
Default_Ignorable_Code_Point; the empty braille pattern)."""
UNSEEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})
"""General categories of what shows nothing by itself, or means nothing to everybody."""
TITLES = frozenset(
    [
        "mr",
        "mrs",
        "ms",
        "miss",
        "mister",
        "madam",
        "dr",
        "doctor",
        "prof",
        "professor",
        "sir",
        "herr",
        "frau",
        "mme",
        "mlle",
        "monsieur",
        "madame",
        "sr",
        "sra",
    ]
)
SMALL = ("and", "at", "by", "for", "from", "in", "no", "nr", "number", "of", "on", "or", "the", "to", "with")
THINGS = ("bench", "block", "canal", "evening", "exam", "group", "model", "molar", "morning", "phantom", "practice")
MORE_THINGS = ("premolar", "row", "sample", "slot", "table", "teeth", "tooth", "training", "tray")
IN_NO_NAME = frozenset([*SMALL, *THINGS, *MORE_THINGS])
"""Small words, and what a tooth on the bench is called by. Common practice, no source."""
MONTHS = (
    "jan(uary)?|feb(ruary)?|mar(ch)?|apr(il)?|may|june?|july?|aug(ust)?|"
    "sept?(ember)?|oct(ober)?|nov(ember)?|dec(ember)?"
)
MONTHS_OF_A_YEAR, DAYS_OF_A_MONTH = 12, 31


def alias_of(text: str, *, is_no_name: bool) -> str:
    """The alias as it is kept: composed (NFC), full and half width as one, one blank between words.

    Raises AliasRefused, and AliasLooksLikeAName unless somebody said that it is none.
    """
    _refuse_unseen(text)
    # What is kept has one form: typed on another keyboard, the same alias has to be the same patient.
    alias = " ".join(unicodedata.normalize("NFC", "".join(map(_one_width, text))).split())
    read = "".join(map(_as_read, alias))
    if not 0 < len(alias) <= MOST_CHARACTERS:
        raise AliasRefused(at=AT, reason=f"An alias has 1 to {MOST_CHARACTERS} characters.")
    if re.search(r"\S\s*@\s*\S", read):
        raise AliasRefused(at=AT, reason="This looks like an e-mail address. Make up an alias without one.")
    if _is_date(read):
        raise AliasRefused(at=AT, reason="This looks like a date, of birth perhaps. Make up an alias without one.")
    if any(sum(map(str.isdigit, run)) > MOST_DIGITS for run in re.findall(r"\d(?:[ ./()+#-]*\d)*", read)):
        raise AliasRefused(
            at=AT,
            reason=f"More than {MOST_DIGITS} digits look like a number of somebody. Make up an alias with fewer.",
        )
    if not is_no_name and looks_like_a_name(read):
        raise AliasLooksLikeAName(at=AT)
    return alias


def _refuse_unseen(text: str) -> None:
    """Raises AliasRefused for what cannot be seen, or turns round what can."""
    for character in text:
        unseen = unicodedata.category(character) in UNSEEN or character in BIDI | BLANK
        if unseen or unicodedata.name(character, "").startswith("VARIATION SELECTOR"):
            raise AliasRefused(at=AT, reason="There is a character in it that cannot be seen. Type the alias by hand.")
    if not unicodedata.normalize("NFC", text).strip() or _most_marks(text) > MOST_MARKS:
        raise AliasRefused(at=AT, reason="This cannot be read as it stands. Type the alias in letters and digits.")


def _most_marks(text: str) -> int:
    """The most accents on one letter that no letter of its own stands for."""
    runs = "".join("m" if unicodedata.category(c) in {"Mn", "Me"} else " " for c in unicodedata.normalize("NFC", text))
    return max(map(len, runs.split()), default=0)


def _one_width(character: str) -> str:
    """A full-width or half-width form as the ordinary one (UAX #11)."""
    if unicodedata.decomposition(character).startswith(("<wide>", "<narrow>")):
        return unicodedata.normalize("NFKC", character)
    return character


def _as_read(character: str) -> str:
    """A digit of any script as 0 to 9, any dash as a hyphen: what it is read as counts (UTS #39)."""
    digit = unicodedata.digit(character, None)
    if digit is not None:
        return str(digit)
    return "-" if unicodedata.category(character) == "Pd" else character


def _is_date(read: str) -> bool:
    apart = re.findall(r"(?<!\d)(\d{1,4})\s*[./\-\s年年월月]\s*(\d{1,2})\s*[./\-\s월月]\s*(\d{1,4})(?!\d)", read)
    in_words = re.search(rf"(?i)\b({MONTHS})\b", read) and re.search(r"(?<!\d)\d{4}(?!\d)|\d{1,2}\D+\d{2}(?!\d)", read)
    return bool(in_words) or any(map(can_be_date, apart))


def can_be_date(parts: Sequence[str]) -> bool:
    """Whether the three can be a day, a month and a year of two or four digits, in any order that is in use."""
    return any(
        len(year) in {2, 4}
        and len(day) <= 2
        and len(month) <= 2
        and 1 <= int(day) <= DAYS_OF_A_MONTH
        and 1 <= int(month) <= MONTHS_OF_A_YEAR
        for day, month, year in permutations(parts)
    )


def looks_like_a_name(read: str) -> bool:
    """A title before a word, or two words beside each other that may be a person's, in capitals or not."""
    words = re.findall(r"[^\s,;._]+\.?", read)
    pairs = list(pairwise(words))
    titled = any(first.strip(".").casefold() in TITLES and second[:1].isalpha() for first, second in pairs)
    return titled or any(_as_a_name(first) and _as_a_name(second) for first, second in pairs)


def _as_a_name(word: str) -> bool:
    """Letters alone; one letter is an initial with its full stop."""
    letters = re.sub(r"['\u2019\-.]", "", word)
    as_such = len(letters) > 1 or word.endswith(".")
    return letters.isalpha() and as_such and letters.casefold() not in IN_NO_NAME
