"""A list of people is read as spreadsheets save it, and each wrong cell is named by line and column."""

from __future__ import annotations

import pytest

from cases.domain.access.invited import MOST_AT_ONCE, Invited
from cases.domain.access.people_list import read_people
from cases.domain.access.roles import Role
from cases.domain.errors import NotUsable

HEAD = "name,user name,role,group\n"
MIRA = Invited(name="Mira Holm, called Mi", username="mira", role=Role.STUDENT, group="Tuesday")
# As RFC 4180 has it, and as spreadsheets of other countries and of another system's line ends save the same.
WRITTEN = {
    "RFC 4180": 'name,user name,role,group\r\n"Mira Holm, called Mi",mira,student,Tuesday\r\n',
    "semicolons": "name;user name;role;group\nMira Holm, called Mi;mira;student;Tuesday\n",
    "tabs": "name\tuser name\trole\tgroup\nMira Holm, called Mi\tmira\tstudent\tTuesday",
    "byte order mark": '\ufeffName,User  name,Role,Group\n"Mira Holm, called Mi", mira ,Student,Tuesday\n\n',
    "another order": 'group,role,user name,name\nTuesday,STUDENT,mira,"Mira Holm, called Mi"\n,,,\n',
}


@pytest.mark.parametrize("text", WRITTEN.values(), ids=WRITTEN)
def test_it_is_read_as_it_was_saved(text: str) -> None:
    (line,) = read_people(text)
    assert (line.line, line.person, line.faults) == (2, MIRA, ())


@pytest.mark.parametrize(
    ("cells", "column", "word"),
    [
        (",mira,student,", "name", "Nothing"),
        ("Mira,,student,", "user name", "Nothing"),
        ("Mira,mira holm,student,", "user name", "sign"),
        ("Mira,mira,studnt,", "role", "'studnt' is no role"),
        ("Mira,mira,,", "role", "student, supervisor, coordinator"),
        (f"Mira,{'m' * 61},student,", "user name", "at most 60"),
        (f"Mira,mira,student,{'g' * 61}", "group", "at most 60"),
        ("M\ufffdra,mira,student,", "name", "UTF-8"),
        ("M\u200bra,mira,student,", "name", "cannot be seen"),
        ("Holm, Mira,mira,student,", "group", "quotation marks"),
    ],
)
def test_what_is_wrong_is_named_by_line_and_column(cells: str, column: str, word: str) -> None:
    first, second = read_people(f"{HEAD}Tom,tom,student,\n{cells}\n")
    assert (first.line, first.faults, second.line, second.person) == (2, (), 3, None)
    assert word in {str(fault.column): fault.says for fault in reversed(second.faults)}[column]


def test_one_user_name_is_one_persons() -> None:
    lines = read_people(f"{HEAD}Mira,mira,student,\nTom,tom,student,\nMira,Mira,student,\n")
    assert [line.person is None for line in lines] == [False, False, True]
    assert "line 2" in lines[2].faults[0].says


def test_a_cell_over_two_lines_does_not_shift_the_count() -> None:
    lines = read_people(f'{HEAD}"Mira\nHolm",mira,student,\nTom,tom,studnt,\n')
    assert [line.line for line in lines if line.faults] == [3, 4]


@pytest.mark.parametrize(
    "text",
    [
        "",
        HEAD,
        "name,user name,role\nMira,mira,student\n",
        "name,user name,role,group,born\nMira,mira,student,,2001\n",
        "name,name,user name,role,group\n",
        f'{HEAD}"Mira,mira,student,\n',
        HEAD + "".join(f"P,p{number},student,\n" for number in range(MOST_AT_ONCE + 1)),
    ],
    ids=["empty", "nobody", "a column missing", "a column too many", "a column twice", "not closed", "too many"],
)
def test_what_is_no_such_list_is_refused_whole(text: str) -> None:
    with pytest.raises(NotUsable) as refused:
        read_people(text)
    assert refused.value.pointer == ("text",)
