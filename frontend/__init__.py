"""The outermost package: the phone app (`src/`) and the process that serves everything (`server/`)."""
