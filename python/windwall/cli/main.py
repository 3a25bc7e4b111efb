"""Where the command starts: nothing is loaded before an interrupt has somewhere to go."""

from __future__ import annotations

import os
import signal
import sys
from collections.abc import Sequence
from typing import Any

from windwall.cli.exit_codes import INTERRUPTED


def end_at_once(_signal: int, _frame: Any) -> None:
    """While modules load there is nothing to tidy up, and no line of theirs to be shown."""
    os.write(2, b"interrupted\n")
    os._exit(INTERRUPTED)


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command and returns its exit code."""
    before = signal.getsignal(signal.SIGINT)
    ours = before is signal.default_int_handler
    if ours:
        signal.signal(signal.SIGINT, end_at_once)
    from windwall.cli.command import run_command

    if ours:
        signal.signal(signal.SIGINT, before)
    return run_command(arguments)


if __name__ == "__main__":
    sys.exit(main())
