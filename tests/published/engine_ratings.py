"""The table of published engine ratings, and which rows stay closed while priors are chosen."""

import csv
import hashlib
from pathlib import Path

TABLE = Path(__file__).parent / "data" / "engine_ratings.csv"


def engine_ratings():
    """Every row as texts by column; what columns mean stands in data/engine_ratings.md."""
    lines = TABLE.read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def sealed(row):
    """Whether a row stays closed: the first byte of SHA-256 of its id divides by three."""
    return hashlib.sha256(row["id"].encode()).digest()[0] % 3 == 0


def half(closed):
    """What a half is called."""
    return "sealed" if closed else "open"
