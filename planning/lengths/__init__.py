"""Readings of a canal's length, and the working length that follows from them."""
