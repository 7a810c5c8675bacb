"""Reads the arithmetic that a plan shows and works it out again, by fractions and nothing of the planner's."""

from __future__ import annotations

import ast
import math
import re
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from planning.contract.plan_value import CanalPlan, Plan
from planning.contract.rationale import Calculation, Rounding

MILLIONTH = Fraction(1, 1_000_000)
HALF, HUNDREDTH = Fraction(1, 2), Fraction(1, 100)
SIGNS: Mapping[type[ast.operator], Any] = {
    ast.Add: lambda a, b: a + b,
    ast.Sub: lambda a, b: a - b,
    ast.Mult: lambda a, b: a * b,
    ast.Div: lambda a, b: a / b,
}
OF_A_LIST = {
    "size_range.options.wall_left_mm": lambda canal: [each.wall_left_mm for each in canal.size_range.options],
    "size_range.options.strain_pct": lambda canal: [each.strain_pct for each in canal.size_range.options],
    "strain": lambda canal: [each.strain_pct for each in canal.strain],
    "obturation.rests": lambda canal: [each.rests_mm for each in canal.obturation.rests],
    "irrigants": lambda canal: [each.volume_ml for each in canal.irrigants],
}
SEARCHED = {"size_range.options.wall_share", "obturation.volumes.before_mm3", "obturation.volumes.prepared_mm3"}
"""Numbers that were integrated: no line of arithmetic holds them."""
CHOSEN = {"size_range.proposed", "final_size", "outline", "needle.first_at_ceiling", "obturation.master_cone"}


def worked_out(text: str) -> Fraction:
    """What a line of arithmetic comes to, exactly as it is written."""
    return _value(ast.parse(text, mode="eval").body)


def _value(node: ast.expr) -> Fraction:
    match node:
        case ast.Constant(value=int() | float() as value):
            return Fraction(str(value))
        case ast.UnaryOp(op=ast.USub(), operand=inner):
            return -_value(inner)
        case ast.BinOp(left=left, op=sign, right=right):
            return Fraction(SIGNS[type(sign)](_value(left), _value(right)))
        case ast.Call(func=ast.Name(id="min" | "max" as name), args=args):
            return (min if name == "min" else max)(map(_value, args))
        case _:
            raise AssertionError(ast.dump(node))


def rounded(exact: Fraction, calculation: Calculation) -> bool:
    """Whether the number is what the line comes to, rounded as it says."""
    result = Fraction(str(calculation.result))
    match calculation.rounding:
        case Rounding.NONE:
            return abs(exact - result) <= MILLIONTH
        case Rounding.HALF_MM_DOWN:
            return math.floor(exact / HALF) * HALF == result
        case Rounding.HUNDREDTH:
            return (result / HUNDREDTH).denominator == 1 and abs(exact - result) <= HUNDREDTH / 2 + MILLIONTH
        case Rounding.HUNDREDTH_DOWN:
            # Half a micrometre is what doubles may leave.
            return (result / HUNDREDTH).denominator == 1 and -HUNDREDTH / 20 <= exact - result < HUNDREDTH


def filled_in(calculation: Calculation) -> str:
    """The formula with its values in place of names; every input is used, and nothing else is named."""
    values = {each.name: each.value for each in calculation.inputs}
    assert len(values) == len(calculation.inputs)
    assert set(re.findall(r"\{(.*?)\}", calculation.formula)) == set(values)
    return re.sub(r"\{(.*?)\}", lambda name: repr(values[name[1]]), calculation.formula)


def refuse_untrue(calculation: Calculation, of: str) -> None:
    text = filled_in(calculation)
    exact = worked_out(text)
    # An input is written to a millionth: a short taper makes a few of them of it.
    assert abs(exact - Fraction(str(calculation.exact))) <= 200 * MILLIONTH, (of, text, calculation)
    assert rounded(exact, calculation), (of, text, calculation)


def refuse_untrue_plan(plan: Plan) -> int:
    """Every line comes to the number that the plan has where the line says; how many lines there were."""
    for canal in plan.canals:
        _refuse_other_number(canal)
        _refuse_stop_without_line(plan, canal)
    _refuse_other_count(plan)
    rationales = [*plan.rationales, *(each for canal in plan.canals for each in canal.rationales)]
    lines = [(line, each.of) for each in rationales for line in each.calculations]
    for line, of in lines:
        refuse_untrue(line, of)
    return len(lines)


def _refuse_other_number(canal: CanalPlan) -> None:
    for why in canal.rationales:
        results = [line.result for line in why.calculations]
        if why.of in OF_A_LIST:
            assert results == [each or 0.0 for each in OF_A_LIST[why.of](canal)], why
        elif why.of in CHOSEN | SEARCHED or why.of.startswith("expectation."):
            assert results == [], why
        elif why.of in ("stops.full", "stops.end", "stops.to_length", "stops.to_resistance"):
            assert results == [canal.length.stop_mm if why.of == "stops.full" else canal.end_mm], why
        elif not why.of.startswith("stops."):
            assert results == [number_at(canal, why.of)], why


def number_at(value: Any, path: str) -> Any:
    for part in path.split("."):
        value = value[int(part)] if part.isdigit() else getattr(value, part)
    return value


def _refuse_stop_without_line(plan: Plan, canal: CanalPlan) -> None:
    lines = {why.of: [line.result for line in why.calculations] for why in canal.rationales}
    stops = [stop for row in plan.stop_table for stop in row.stops if stop.canal == canal.canal]
    assert all(lines[stop.why].count(stop.stop_mm) == 1 for stop in stops), (lines, stops)


def _refuse_other_count(plan: Plan) -> None:
    for why in plan.rationales:
        if why.calculations:
            assert [line.result for line in why.calculations] == [number_at(plan, why.of)]
