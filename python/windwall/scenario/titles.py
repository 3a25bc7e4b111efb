"""What people call a number, where its address would be too long to read."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

__all__ = ["LISTS", "MENU", "plain_name", "titles"]

MENU = "upgrades"
LISTS = ("charge_path/", "driveline/")


def plain_name(address: str) -> str:
    """What people call what stands at an address: `blower outlet temperature`."""
    below = next((address.removeprefix(one) for one in LISTS if address.startswith(one)), address)
    return below.replace("/", " ").replace("_", " ")


def titles(addresses: Iterable[str]) -> dict[str, str]:
    """Where it is and what it is, `body: drag area`; with what stands before where that is not
    clear yet.
    """
    made = {address: _title(address, 1) for address in addresses}
    seen = Counter(made.values())
    return {
        address: title if seen[title] == 1 else _title(address, 2)
        for address, title in made.items()
    }


def _title(address: str, above: int) -> str:
    keys = [key.replace("_", " ") for key in address.split("/")]
    *where, what = keys
    if keys[0] == MENU:
        where = keys[1:2] if above == 1 else [keys[1], *(one for one in keys[3:-1])]
    return f"{' '.join(where[-above:] if keys[0] != MENU else where)}: {what}"
