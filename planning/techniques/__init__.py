"""Techniques as data: phases, what makes one unusable, reading one from text."""
