"""What events come to: the state of a case, its canals, visits, depths and uses."""
