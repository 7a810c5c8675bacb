"""Walks one canal's run sheet: which step is next, given what was answered so far.

The phone walks the same graph by the same rules; both compare whole micrometres.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from planning.foundation.errors import PlanningError
from planning.run_sheet.graph import Ask, AtLength, End, Exit, Gained, PassesBelow, RunSheet, Step


class StepRefused(PlanningError):
    """A step is left by a way that it has not.

    Take one of the exits of its node in the run sheet.
    """

    code = "step-refused"
    sentence = "{node} cannot be left by '{exit}'."


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """How a step was left."""

    node: str
    exit: Exit
    depth_um: int | None = None
    """Where the tip stopped; None where no depth was given."""
    pass_number: int = 1
    """Which time the walk came to the step, counted from 1."""


@dataclass(slots=True)
class Walk:
    """A walk in progress. `at` is always a step to do or an end: questions are answered on the way."""

    sheet: RunSheet
    at: str = ""
    passes: dict[str, int] = field(default_factory=dict)
    depths_um: dict[str, list[int | None]] = field(default_factory=dict)
    """Depths at every pass of an instrument step; None where it stopped short and no depth was given."""
    path: list[str] = field(default_factory=list)
    left: list[Left] = field(default_factory=list)
    """What was answered so far."""

    def __post_init__(self) -> None:
        if self.sheet.walked_before is not None:
            self.passes.update(self.sheet.walked_before.passes)
            self.depths_um.update({step: list(each) for step, each in self.sheet.walked_before.depths_um.items()})
        # Only now, with the counts of earlier work in place: a question at the very start is answered from them.
        self._go(self.sheet.start)

    @property
    def node(self) -> Step | End:
        node = self.sheet.nodes[self.at]
        if isinstance(node, Ask):
            raise TypeError(f"{node.id} is a question: a walk never stands on one")
        return node

    @property
    def ended(self) -> bool:
        return isinstance(self.node, End)

    def stop_um(self) -> int | None:
        """The stop of the present step, worked out where it depends on another instrument's depth; None without one."""
        node = self.node
        if isinstance(node, End) or node.stop_um is None:
            return None
        if node.shorter_than is None:
            return node.stop_um
        # Where the other instrument's depth is not known the step's own stop holds, and that stop is never exceeded.
        last = (self.depths_um.get(node.shorter_than.node) or [None])[-1]
        return node.stop_um if last is None else min(node.stop_um, last - node.shorter_than.less_um)

    def leave(self, exit_: Exit, depth_um: int | None = None) -> None:
        """Answers the present step. A depth at the stop or beyond counts as reached. Raises StepRefused."""
        node = self.node
        stop = self.stop_um() if exit_ in (Exit.REACHED, Exit.SHORT) else None
        # What was measured decides, not the button: a depth at the stop is the stop.
        if exit_ is Exit.SHORT and depth_um is not None and stop is not None and depth_um >= stop:
            exit_ = Exit.REACHED
        if isinstance(node, End) or exit_ not in node.exits:
            raise StepRefused(node=self.at, exit=exit_)
        # Noted before the depth and before the next step: `passes` still tells which time this step was come to.
        self.left.append(Left(node=node.id, exit=exit_, depth_um=depth_um, pass_number=self.passes[node.id]))
        # Every pass leaves an entry, also one without a depth, so that `gained` compares one pass with the one before
        # it.
        if exit_ in (Exit.REACHED, Exit.SHORT):
            self.depths_um.setdefault(node.id, []).append(
                stop if exit_ is Exit.REACHED and depth_um is None else depth_um
            )
        self._go(node.exits[exit_])

    def go_to(self, id_: str) -> bool:
        """Goes on at a step that a supervisor names. False where the sheet has no such step."""
        if not isinstance(self.sheet.nodes.get(id_), Step):
            return False
        self._go(id_)
        return True

    def take_back(self) -> None:
        """Takes back the last answer, which must not be a depth: the walk stands at the step that it answered."""
        # A depth could not be taken back like this: questions on the way may have been answered from it.
        self.passes[self.at] -= 1
        self.path.pop()
        self.at = self.left.pop().node

    def _go(self, id_: str) -> None:
        node = self.sheet.nodes[id_]
        # This ends: a sheet is proved to have no round of questions alone when it is made.
        while isinstance(node, Ask):
            node = self.sheet.nodes[node.exits[Exit.YES if self._answer(node) else Exit.NO]]
        self.at = node.id
        # Counted on coming to a step and not on leaving it, so that an answer knows which pass it belongs to.
        self.passes[node.id] = self.passes.get(node.id, 0) + 1
        self.path.append(node.id)

    def _answer(self, ask: Ask) -> bool:
        match ask.question:
            case PassesBelow(node=node, n=n):
                return self.passes.get(node, 0) < n
            case AtLength(nodes=nodes):
                return all(self._at_length(node) for node in nodes)
            case Gained(nodes=nodes, least_um=least_um):
                return any(self._gained(node, least_um) for node in nodes)

    def _at_length(self, id_: str) -> bool:
        node, depths = self.sheet.nodes[id_], self.depths_um.get(id_)
        if not depths or not isinstance(node, Step) or node.stop_um is None:
            return False
        last = depths[-1]
        return last is not None and last >= node.stop_um

    def _gained(self, id_: str, least_um: int) -> bool:
        """Whether the step went that much deeper than in the pass before. In the first pass there is nothing to compare
        with; that counts as a gain, and so do unknown depths.
        """
        depths = self.depths_um.get(id_) or []
        if len(depths) < 2:  # one depth so far: first pass
            return True
        before, now = depths[-2:]
        return before is None or now is None or now - before >= least_um


def expected_path(sheet: RunSheet, smallest: str | None, passes: int) -> tuple[str, ...]:
    """Node ids in the order expected: every step to length reaches it, and the series' smallest does on the last pass.

    `smallest` is the step that ends the descending series, None for a technique without one.
    """
    walk = Walk(sheet)
    while isinstance(node := walk.node, Step):
        # The series goes to resistance, so a walk as expected would never bring it to length. In the pass that the
        # technique expects to be the last one, its smallest instrument is taken to get there.
        last = node.id == smallest and walk.passes[node.id] >= passes
        walk.leave(Exit.REACHED if last else expected_exit(node))
    return tuple(walk.path)


def expected_exit(node: Step) -> Exit:
    """How a step is left if all goes as planned: approved, at length, short where it goes to resistance."""
    if Exit.DONE in node.exits:
        return Exit.DONE
    if Exit.APPROVED in node.exits:
        return Exit.APPROVED
    return Exit.SHORT if node.target == "to_resistance" else Exit.REACHED
