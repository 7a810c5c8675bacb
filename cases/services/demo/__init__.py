"""Invented cases for the demo."""
