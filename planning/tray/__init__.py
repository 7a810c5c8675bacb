"""The order at the tray: fewest changes of instrument over all canals.

order            sections between hold points, shared and one canal at a time
supersequence    the shortest list that holds every canal's own, by A*
level_search     the same over all levels at once, where little is in common
"""

from planning.tray.order import TrayRun, one_at_a_time, shared, tray_run

__all__ = ["TrayRun", "one_at_a_time", "shared", "tray_run"]
