"""Where the command starts: nothing is loaded before an interrupt has somewhere to go."""

import os
import sys

__all__ = ["end_at_once", "loaded", "main"]

TYPE_CHECKING = False  # naming a type would load modules
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence


def main(arguments: "Sequence[str] | None" = None) -> int:
    """Runs one command and returns its exit code."""
    try:
        run_command = loaded()
    except KeyboardInterrupt:
        return end_at_once()
    return run_command(arguments)


def end_at_once(*_signal: object) -> int:
    """While modules load there is nothing to tidy up, and no line of theirs to be shown."""
    os.write(2, b"interrupted\n")
    os._exit(130)


def loaded() -> "Callable[[Sequence[str] | None], int]":
    """The command. Some modules swallow an exception while they load, so none is raised."""
    import signal

    before = signal.getsignal(signal.SIGINT)
    if before is signal.default_int_handler:
        signal.signal(signal.SIGINT, end_at_once)
    from windwall.cli.command import run_command

    signal.signal(signal.SIGINT, before)
    return run_command


if __name__ == "__main__":
    sys.exit(main())
