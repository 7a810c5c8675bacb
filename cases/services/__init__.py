"""Every write. A service says who does what: guard, lock, change, log, and tell once it is kept."""
