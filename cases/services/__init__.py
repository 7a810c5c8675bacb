"""Every write. A service is a sentence with a doer: guard, lock, change, log."""
