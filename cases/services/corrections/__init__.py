"""Readings and images put right, and what rested on them."""
