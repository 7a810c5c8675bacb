"""What the packages of a lock file are under: by their metadata, the texts in their wheels, the libraries they bring.

What a wheel was linked with and says nothing of is not seen here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.metadata import Distribution, PackagePath, distribution

from frontend.server import environment

# As packages write it in whatever field, to the name of the SPDX list.
NAMES = {
    "0bsd": "0BSD",
    "apache 2.0": "Apache-2.0",
    "apache license 2.0": "Apache-2.0",
    "apache software license": "Apache-2.0",
    "apache-2.0": "Apache-2.0",
    "apache-2.0 with llvm-exception": "Apache-2.0 WITH LLVM-exception",
    "bsd": "BSD-3-Clause",
    "bsd 3-clause": "BSD-3-Clause",
    "bsd license": "BSD-3-Clause",
    "bsd-2-clause": "BSD-2-Clause",
    "bsd-3-clause": "BSD-3-Clause",
    "cc0-1.0": "CC0-1.0",
    "lgpl-3.0-only": "LGPL-3.0-only",
    "lgpl-3.0-or-later": "LGPL-3.0-or-later",
    "mit": "MIT",
    "mit license": "MIT",
    "mit-0": "MIT-0",
    "mit-cmu": "MIT-CMU",
    "mozilla public license 2.0 (mpl 2.0)": "MPL-2.0",
    "mpl-2.0": "MPL-2.0",
    "ofl-1.1": "OFL-1.1",
    "psf-2.0": "PSF-2.0",
    "psfl": "PSF-2.0",
    "python software foundation license": "PSF-2.0",
    "zlib": "Zlib",
}
# What a text is under that says so in its own words alone.
WORDS = {
    "Permission is hereby granted, free of charge, to any person obtaining a copy": "MIT",
    "Redistribution and use in source and binary forms": "BSD-3-Clause",
    "Apache License": "Apache-2.0",
}
STRONG = re.compile(r"\bA?GPL(?:[-v ]?\d|-only|-or)|GNU (?:AFFERO )?GENERAL PUBLIC|\bA?GPL\b", re.IGNORECASE)
WEAK = re.compile(r"\bLGPL|GNU (?:LESSER|LIBRARY) GENERAL PUBLIC", re.IGNORECASE)
TEXT = re.compile(r"licen[cs]e|copying|notice", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Package:
    """What an installed package says of itself."""

    name: str
    version: str
    licences: frozenset[str]
    """Of the SPDX list; as written where they are not known."""
    speaks_of: frozenset[str]
    """The GPL and the LGPL ("strong", "weak"), where a text in the wheel does."""
    libraries: frozenset[str]


def pinned(wanted: str) -> list[str]:
    """Names of the packages of a lock file that are installed on this kind of machine."""
    lock = environment.lock_file(wanted).read_text(encoding="utf-8")
    rows = re.findall(r"^([a-z0-9._-]+)(?:\[[^\]]*\])?==\S+ (?:; (.*?) )?\\$", lock, re.MULTILINE)
    return [name for name, condition in rows if "win32" not in condition]


def package(name: str) -> Package:
    installed = distribution(name)
    texts = [path.read_binary().decode(errors="replace") for path in _texts(installed)]
    stated = frozenset(_stated(installed))
    return Package(
        name=name,
        version=installed.version,
        licences=stated or frozenset(licence for text in texts for licence in _by_words(text)),
        speaks_of=frozenset(kind for text in texts for kind in _speaks_of(text)),
        libraries=frozenset(path.name for path in installed.files or () if ".libs" in path.parts[0]),
    )


def _stated(installed: Distribution) -> Iterator[str]:
    """By the field that is made for it, else by the older ones."""
    about = installed.metadata
    (first, *_) = about.get_all("License-Expression") or about.get_all("License") or [""]
    expression = str(first).split("\n")[0].strip()
    if expression.startswith("Copyright"):
        expression = ""  # the text of a licence where its name is due
    names = [part for part in re.split(r"\s+(?:AND|OR)\s+", expression) if part and part != "Dual License"]
    names = names or [
        each.split("::")[-1].strip() for each in about.get_all("Classifier") or () if "License ::" in each
    ]
    yield from (NAMES.get(each.lower(), each) for each in names)


def _texts(installed: Distribution) -> Iterator[PackagePath]:
    for path in installed.files or ():
        if TEXT.search(path.name) and path.suffix in ("", ".txt", ".md", ".rst", ".APACHE", ".BSD", ".python"):
            yield path


def _by_words(text: str) -> Iterator[str]:
    return (licence for words, licence in WORDS.items() if words in " ".join(text.split()))


def _speaks_of(text: str) -> Iterator[str]:
    if WEAK.search(text):
        yield "weak"
    if STRONG.search(WEAK.sub("", text)):
        yield "strong"
