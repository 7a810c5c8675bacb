"""Arithmetic that is written once: every term knows how it reads and what it comes to."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from planning.contract.rationale import Calculation, RationaleInput, Rounding
from planning.foundation.quantities import mm, um

DIGITS = 6  # of an input or a result before rounding, in millimetres far below anything that is measured
SUM, PRODUCT, SINGLE = 0, 1, 2
"""How tightly a term holds together; a looser one within a tighter one stands in brackets."""


@dataclass(frozen=True, slots=True)
class Term:
    formula: str
    value: float
    inputs: tuple[RationaleInput, ...] = ()
    binds: int = SINGLE

    def __add__(self, other: Term | int) -> Term:
        return self._with("+", other, SUM, lambda a, b: a + b)

    def __sub__(self, other: Term | int) -> Term:
        return self._with("-", other, SUM, lambda a, b: a - b)

    def __mul__(self, other: Term | int) -> Term:
        return self._with("*", other, PRODUCT, lambda a, b: a * b)

    def __truediv__(self, other: Term | int) -> Term:
        return self._with("/", other, PRODUCT, lambda a, b: a / b)

    def within(self, binds: int) -> str:
        return self.formula if self.binds >= binds else f"({self.formula})"

    def _with(self, sign: str, other: Term | int, binds: int, of: Callable[[float, float], float]) -> Term:
        right = _term(other)
        # `a - (b - c)` and `a / (b * c)` keep their brackets; what stands on the left needs none of its own kind.
        inside = binds if sign in "+*" else binds + 1
        formula = f"{self.within(binds)} {sign} {right.within(inside)}"
        return Term(formula, of(self.value, right.value), self.inputs + right.inputs, binds)


def known(name: str, value: float, unit: str) -> Term:
    """A number by its name."""
    return Term(f"{{{name}}}", value, (RationaleInput(name=name, value=round(float(value), DIGITS), unit=unit),))


def length(name: str, value_mm: float) -> Term:
    """A length, taken to a hundredth of a millimetre as the planner takes it."""
    return known(name, mm(um(value_mm)), "mm")


def _term(value: Term | int) -> Term:
    return value if isinstance(value, Term) else Term(str(value), value)


def least(*terms: Term | int) -> Term:
    return _of("min", min, *terms)


def most(*terms: Term | int) -> Term:
    return _of("max", max, *terms)


def no_more(term: Term, bound: Term | int) -> Term:
    """The smaller of both; the bound is named only where it counts."""
    return term if term.value <= _term(bound).value else least(term, bound)


def no_less(term: Term, bound: Term | int) -> Term:
    return term if term.value >= _term(bound).value else most(term, bound)


def _of(name: str, function: Callable[..., float], *given_: Term | int) -> Term:
    terms = [_term(each) for each in given_]
    if len(terms) == 1:
        return terms[0]
    formula = f"{name}({', '.join(term.formula for term in terms)})"
    inputs = tuple(each for term in terms for each in term.inputs)
    return Term(formula, function(term.value for term in terms), inputs)


def added(terms: Sequence[Term]) -> Term:
    """All of them together; there must be one."""
    first, *others = terms
    return sum(others, first)


def comes_to(term: Term, result: float, unit: str, rounding: Rounding = Rounding.NONE) -> Calculation:
    """The calculation of a number that the plan has: `result`, what the term comes to once it is rounded."""
    return Calculation(
        formula=term.formula,
        inputs=tuple(dict.fromkeys(term.inputs)),
        exact=round(float(term.value), DIGITS),
        rounding=rounding,
        result=float(result),
        unit=unit,
    )
