"""Numbers on their way in and out: what a text or a float means, and how a number is shown."""
