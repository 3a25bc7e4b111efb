"""A scenario as data: its file, its inputs, and what is derived from them without solving."""
