"""Questions put to the core, and what is found by asking it again and again."""
