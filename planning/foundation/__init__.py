"""What everything stands on: lengths as whole micrometres, figures with their sources, refusals, JSON."""
