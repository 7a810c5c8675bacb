"""Which cautions a plan carries: one small rule each, over what was typed in, what came out and what was felt."""

from planning.whole_tooth.cautions.canal import canal_cautions, passed_on
from planning.whole_tooth.cautions.tooth import tooth_cautions
from planning.whole_tooth.cautions.work import work_cautions, worn_cautions

__all__ = ["canal_cautions", "passed_on", "tooth_cautions", "work_cautions", "worn_cautions"]
