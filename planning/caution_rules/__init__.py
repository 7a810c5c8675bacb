"""Which cautions a plan carries: one small rule each, over what was typed in, what came out and what was felt."""

from planning.caution_rules.canal import canal_cautions, passed_on
from planning.caution_rules.tooth import tooth_cautions
from planning.caution_rules.work import work_cautions, worn_cautions

__all__ = ["canal_cautions", "passed_on", "tooth_cautions", "work_cautions", "worn_cautions"]
