"""The planner's version: it rises when a change moves a number (see CHANGES.md)."""

VERSION = "1.4.0"
