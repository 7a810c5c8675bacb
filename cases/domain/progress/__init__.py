"""The fold: the state of a case after its events, with its canals, visits, depths and uses."""
