"""The whole tooth: refusals, all canals, cautions, rationales. The front door."""
