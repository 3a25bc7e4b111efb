"""The digest is the SHA-256 of the canonical JSON of the physics, by hashlib and rfc8785."""

import hashlib
import json
import subprocess
from decimal import Decimal
from pathlib import Path

import pytest
import rfc8785

import windwall as ww

SCENARIOS = sorted((Path(__file__).parents[2] / "scenarios").glob("*.json"))


def number(value):
    """As ECMA-262 writes it, section 6.1.6.1.20."""
    sign, figures, exponent = Decimal(repr(value)).normalize().as_tuple()
    digits, point = "".join(map(str, figures)), len(figures) + exponent
    if value == 0:
        return "0"
    if point > 21 or point < -5:
        shown = digits[0] + ("." + digits[1:] if len(digits) > 1 else "")
        shown += f"e{point - 1:+d}"
    elif point <= 0:
        shown = "0." + "0" * -point + digits
    elif point < len(digits):
        shown = digits[:point] + "." + digits[point:]
    else:
        shown = digits + "0" * (point - len(digits))
    return "-" * sign + shown


def canonical(value):
    """RFC 8785 once more, for keys and texts of ASCII."""
    if isinstance(value, dict):
        return "{" + ",".join(f'"{k}":{canonical(value[k])}' for k in sorted(value)) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(canonical, value)) + "]"
    if isinstance(value, bool) or value is None or isinstance(value, str):
        return json.dumps(value)
    return number(value)


@pytest.mark.parametrize("file", SCENARIOS, ids=lambda file: file.stem)
def test_two_implementations_agree(file):
    car = ww.load(file)
    physics = json.loads(car.core.physics())
    text = canonical(physics).encode()
    assert text.isascii()
    assert car.digest == hashlib.sha256(rfc8785.dumps(physics)).hexdigest()
    said = subprocess.run(["sha256sum"], input=text, capture_output=True, check=True)
    assert said.stdout.decode().split()[0] == car.digest


@pytest.mark.parametrize(
    "value, text",
    [(1e21, "1e+21"), (1e-7, "1e-7"), (0.000001, "0.000001"), (-0.0, "0"), (120.0, "120")],
)
def test_numbers_are_those_of_the_standard(value, text):
    """RFC 8785, appendix B."""
    assert number(value) == text
    assert rfc8785.dumps(value).decode() == text
