"""The two ends of the planner as frozen values: what a plan is computed from, and what a plan says."""
