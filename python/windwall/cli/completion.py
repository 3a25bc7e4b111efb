"""What a shell is told when somebody presses the tab key: words of the command, and of the file
that stands before the cursor.
"""

from __future__ import annotations

import argparse
import os
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

__all__ = [
    "ASKED", "FILES", "FORMAT", "HOW", "SHELLS", "WORDS", "add_completion", "addresses", "changes",
    "complete_if_asked", "kinds", "outings", "results", "scenarios", "script", "upgrades",
]  # fmt: skip

SHELLS = ("bash", "zsh", "fish")
FILES = ("file", "other")
FORMAT = b"windwall-scenario/"
ASKED = "_ARGCOMPLETE"  # which a shell sets
HOW = {
    "bash": 'put this line into ~/.bashrc:  eval "$(windwall completion bash)"',
    "zsh": 'put this line into ~/.zshrc:  eval "$(windwall completion zsh)"',
    "fish": "put this line into ~/.config/fish/config.fish:  windwall completion fish | source",
}


def complete_if_asked(parser: argparse.ArgumentParser) -> None:
    """Answers a shell and ends the process; does nothing for anybody else."""
    if ASKED not in os.environ:
        return
    import argcomplete

    for one in _questions(parser):
        asks = one.get_default("ask") is not None  # something of a scenario that is there
        for action in one._actions:
            if action.dest in WORDS:
                action.completer = _quietly(WORDS[action.dest])  # type: ignore[attr-defined]
            elif asks and action.dest in FILES:
                action.completer = scenarios  # type: ignore[attr-defined]
    argcomplete.autocomplete(parser, always_complete_options=False)


def script(shell: str) -> str:
    """What a shell has to run once."""
    from argcomplete.shell_integration import shellcode

    return shellcode(["windwall"], shell=shell)


def add_completion(commands: Any) -> None:
    """Not a question about a file."""
    said = "prints what a shell needs to complete words"
    lines = "; ".join(f"{shell}: {how}" for shell, how in HOW.items())
    made = commands.add_parser("completion", help=said, description=f"{said.capitalize()}. {lines}")
    made.add_argument("shell", choices=SHELLS, metavar="SHELL", help=", ".join(SHELLS))
    made.set_defaults(run=_print_script)


def _print_script(arguments: argparse.Namespace) -> int:
    from windwall.cli.output import say

    say(script(arguments.shell).rstrip("\n"))
    return 0


def _questions(parser: argparse.ArgumentParser) -> Iterable[argparse.ArgumentParser]:
    return [
        one
        for action in parser._actions
        if isinstance(action, argparse._SubParsersAction)
        for one in action.choices.values()
    ]


def _scenario(typed: argparse.Namespace) -> Any:
    from windwall.scenario import files
    from windwall.scenario.data import ScenarioData

    return ScenarioData.read(files.read(typed.file), typed.file)


def scenarios(prefix: str, **_further: Any) -> list[str]:
    """Folders, and the files that hold a scenario: as they are typed, or inside a page."""
    begun = prefix.rpartition("/")[2]
    start = prefix[: len(prefix) - len(begun)]
    found = []
    for one in sorted(Path(start or ".").iterdir()):
        if one.name.startswith(begun) and one.name.startswith(".") == begun.startswith("."):
            found += [f"{start}{one.name}/"] if one.is_dir() else []
            found += [f"{start}{one.name}"] if _holds_a_scenario(one) else []
    return found


def _holds_a_scenario(path: Path) -> bool:
    from windwall.scenario import files

    try:
        return path.suffix in (".json", ".html") and FORMAT in files.read(path)
    except OSError:
        return False


def addresses(typed: argparse.Namespace) -> list[str]:
    """Of the numbers of the vehicle in the file."""
    from windwall import _core

    return [address for address, _ in _core.numbers(_scenario(typed).core)]


def changes(typed: argparse.Namespace) -> list[str]:
    return [f"{address}=" for address in addresses(typed)]


def upgrades(typed: argparse.Namespace) -> list[str]:
    return list(_scenario(typed).upgrades)


def outings(typed: argparse.Namespace) -> list[str]:
    return list(_scenario(typed).outings)


def results(typed: argparse.Namespace) -> list[str]:
    from windwall.logs.addresses import result_addresses

    return result_addresses(_scenario(typed))


def kinds(_typed: argparse.Namespace) -> list[str]:
    from windwall.scenario.kinds import kinds

    return [one.name for one in kinds()]


WORDS: dict[str, Callable[[argparse.Namespace], list[str]]] = {
    "vary": addresses,
    "changes": changes,
    "of": addresses,
    "install": upgrades,
    "between": upgrades,
    "outing": outings,
    "read": results,
    "kind": kinds,
}


def _quietly(words: Callable[[argparse.Namespace], list[str]]) -> Callable[..., list[str]]:
    """A shell is told nothing rather than what is wrong with the file."""

    def completer(prefix: str, parsed_args: argparse.Namespace, **_further: Any) -> list[str]:
        try:
            return [one for one in words(parsed_args) if one.startswith(prefix)]
        except Exception:
            return []

    return completer
