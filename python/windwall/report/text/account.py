"""Where the watts go, as a table."""

from __future__ import annotations

from windwall.quantities.measures import POWER
from windwall.report.text_layout import Bars, Blocks, Title, section, table
from windwall.report.wording.names import by_name
from windwall.results.account import Account
from windwall.results.views import content

__all__ = ["HEADINGS", "NOT_STATED", "SMALLEST", "account_table", "account_text"]

NOT_STATED = "not stated"  # and counted as nothing
SMALLEST = 0.5  # W; a smaller entry is printed as 0


HEADINGS = {"shaft": "Shaft: where the power goes", "heat": "Heat: where the fuel goes"}


@content.register(Account)
def account_text(account: Account) -> Blocks:
    """One account alone."""
    return [Title(account.scenario_info.title), *account_table(account)]


def account_table(account: Account) -> Blocks:
    """The total, then every entry in the unit of the system and as a share of the total."""
    info, entries = account.scenario_info, account.entries
    system = info.system
    total = entries[0].number if entries else 0
    unit = POWER.shown(system)
    decimals = 0 if unit == "W" else 2

    def cells(name: str, power: float) -> tuple[str, str, str]:
        if name == "accessories" and not info.accessories_stated:
            return name, NOT_STATED, ""
        value = POWER.value(power, system) if abs(power) >= SMALLEST else 0.0
        share = round(100 * power / total, 1) if total else 0.0
        return name, f"{value:z,.{decimals}f}".replace(",", " "), f"{share:z.1f}"

    bars = Bars("share", tuple((one, one, one) for one in by_name(entries).values()))
    rows = [cells(*one) for one in by_name(entries).items()]
    return section(HEADINGS[account.name], table(rows, head=("", unit, "%"), bars=bars))
