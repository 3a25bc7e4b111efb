"""What is typed may stand in any order: options before, between and behind the other words."""

from __future__ import annotations

import argparse
import os
from typing import Any

from windwall.cli.completion import ASKED

__all__ = ["AnyOrder"]


class AnyOrder(argparse.ArgumentParser):
    """Reads the options of a command first and then the rest, as `argparse` offers it; a shell that
    completes words needs them where they stand.
    """

    _reading = False

    def parse_known_args(self, args: Any = None, namespace: Any = None) -> Any:
        if self._subparsers is not None or self._reading or ASKED in os.environ:
            return super().parse_known_args(args, namespace)
        self._reading = True
        try:
            return self.parse_known_intermixed_args(args, namespace)
        finally:
            self._reading = False
