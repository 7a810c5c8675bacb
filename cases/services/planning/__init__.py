"""Versions of a plan: from what goes in to approval, release, withdrawal and planning anew."""
