"""How the command ends."""

__all__ = ["ANSWERED", "CLOSED_PIPE", "INTERRUPTED", "NO_ANSWER", "WRONG_INPUT"]

ANSWERED, NO_ANSWER, WRONG_INPUT = 0, 1, 2
INTERRUPTED = 130
CLOSED_PIPE = 141  # as a shell counts a process that nobody listens to any more
