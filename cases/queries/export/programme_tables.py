"""What a programme has beside cases: its people, and what its plans are made from."""

from __future__ import annotations

from cases.domain.column import ColumnType
from cases.mapping.kits import kit_of
from cases.queries import figures, people, programmes
from cases.queries.export.table import KEY, Line, Table, of_row, of_value
from cases.queries.figures import FigureShown
from planning.contract.plan_input import Kit
from planning.foundation.encoding import encode
from planning.techniques.technique import Technique

ID, TEXT, YES_NO = ColumnType.ID, ColumnType.TEXT, ColumnType.YES_NO

PEOPLE = Table(
    name="people",
    meaning="Who belongs to the programme, by id alone: a name that stands in a file cannot be erased any more.",
    columns=(
        of_row(KEY, ID, "", "person_id"),
        of_row("external_id", TEXT, "The key by which the service that asks knows them."),
        of_row("role", TEXT),
        of_row("group", TEXT),
    ),
    of_programme=people.people,
    key="person_id",
)
KITS = Table(
    name="kits",
    meaning="Sets of instruments, as the programme stated them. Plans copy them: what one is made from stands in it.",
    columns=(
        of_row(KEY, ID),
        of_row("external_id", TEXT, "The key by which the service that asks knows it."),
        *of_value(Kit),
    ),
    of_programme=programmes.kits,
    line=lambda _: lambda row: Line(row, encode(kit_of(row))),
)
TECHNIQUES = Table(
    name="techniques",
    meaning="Techniques to choose from, those provided with the planner and the programme's own.",
    columns=(
        of_row(KEY, TEXT, "The key by which a plan names it.", "technique.key"),
        of_row("provided", YES_NO, "It comes with the planner; else it is the programme's own."),
        *of_value(Technique, without=("key",)),
    ),
    of_programme=lambda _, programme_id: programmes.techniques(programme_id).results,
    line=lambda _: lambda row: Line(row, encode(row.technique)),
)
FIGURES = Table(
    name="figures",
    meaning="Figures that plans rest on, each with its source; the programme's own value where it has set one.",
    columns=(of_row(KEY, TEXT, "The key by which a plan names it.", "key"), *of_value(FigureShown, without=("key",))),
    of_programme=lambda _, programme_id: figures.figures(programme_id).results,
    line=lambda _: lambda row: Line(row, encode(row)),
)
