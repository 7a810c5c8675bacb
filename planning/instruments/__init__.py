"""Instruments by ISO 3630-1: sizes, colours, diameters; what bending does to them."""
