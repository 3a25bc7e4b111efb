"""Letters, names and words of the equations as they are typed, and how each is set."""

import re
from html import escape
from typing import NamedTuple

GREEK_NAMES = (
    *("alpha", "beta", "gamma", "epsilon", "eta", "theta", "lambda", "mu", "rho", "sigma", "tau"),
    *("phi", "omega", "Psi", "Delta"),
)
GREEK = dict(zip(GREEK_NAMES, "αβγεηθλµρστφωΨΔ", strict=True))
FUNCTIONS = {
    *("exp", "ln", "log", "max", "min", "erfc", "sinc", "smoothstep"),
    *(f"{a}{one}{h}" for one in ("sin", "cos", "tan") for a in ("", "a") for h in ("", "h")),
    "atan2",
}
SPLIT = {"CdA": ("C", "d", "A"), "cp": ("c", "p", ""), "Vd": ("V", "d", ""), "pc": ("p", "c", "")}
SHORT_WORDS = {
    *("of", "at", "up", "in", "on", "is", "to", "by", "or", "no", "as", "it", "an", "be", "so"),
    "if",
}
LOWERED = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")
RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789−")
UNITS = (
    *("W/(m² K)", "W/(m K)", "J/(kg K)", "N m", "Pa s", "g/mol", "kg/kg", "J/kg", "W/K"),
    *("m/s", "km/h", "rad/s", "kg/s", "m³/s", "kg/m³", "kPa", "MPa", "mbar", "atm", "rpm", "mm"),
    *("ms", "°C", "°", "Pa", "K"),
)
UNIT = "|".join(map(re.escape, UNITS))

LETTER = "A-Za-zΑ-ΡΤ-Ωα-ωµ"  # the capital sigma and pi are operators
BELOW = rf"_(?:\([^()]*\)|\{{[^}}]*\}}|[{LETTER}0-9∞]+(?:_[{LETTER}0-9]+)*(?:\.\d+)?)"
TOKEN = re.compile(
    rf"""(?P<code>`[^`]+`|\[\w[\w ]*\]\(\w+\.md\)|\w+\.md)
    |(?P<quantity>\d+(?:\.\d+)?(?:e[-+]?\d+)?\s?(?:{UNIT})(?![\w²³]))
    |(?P<number>\d+(?:\.\d+)?(?:e[-+]?\d+)?|[½⅓¼])
    |(?P<name>Δ?(?![ΣΠ])[{LETTER}]+['’][a-z]+|Δ(?=[^\w]|$)|Δ?[{LETTER}]+[0-9₀-₉]*'?(?:{BELOW})?'?)
    |(?P<raised>[⁰¹²³⁴-⁹⁻]+)
    |(?P<big>[ΣΠ∫](?:{BELOW})?)
    |(?P<relation><=|>=|[=≤≥<>∝≠]|→)
    |(?P<open>[(\[{{])|(?P<close>[)\]}}])
    |(?P<other>\S)""",
    re.VERBOSE,
)


class Token(NamedTuple):
    kind: str
    text: str
    spaced: bool  # whether a blank stands before it


def tokens(text):
    found, end = [], 0
    for match in TOKEN.finditer(text):
        found.append(Token(match.lastgroup, match.group(), match.start() > end))
        end = match.end()
    return found


def is_word(token):
    """Whether a name is a word of English and not a symbol."""
    text = token.text
    if token.kind != "name" or text in GREEK or text in FUNCTIONS or text in SPLIT:
        return False
    letters = text.replace("'", "").replace("’", "")
    return (
        letters.isalpha()
        and letters.isascii()
        and (text in SHORT_WORDS or (len(letters) > 2 and letters[1:].islower()))
    )


NAME = re.compile(
    rf"(?P<base>Δ?[{LETTER}]*)(?P<digits>[0-9₀-₉]*)(?P<p>'?)(?P<below>{BELOW})?(?P<q>'?)"
)


def is_key(text):
    """Whether it is the key of an input or a result, such as `film_time`."""
    head, _, rest = text.partition("_")
    return len(head) > 2 and head.islower() and len(rest) > 1 and head not in GREEK


def below_text(below):
    """What hangs below a symbol, and whether it is an expression of its own."""
    inner = below[1:]
    return (inner[1:-1], True) if inner[:1] in ("(", "{") else (inner, False)


def set_below(text):
    if len(text) == 1 and text.isalpha():
        return f"<mi>{text}</mi>"
    tag = "mn" if text.isdigit() else "mtext"
    return f"<{tag}>{escape(text)}</{tag}>"


def set_letters(base):
    """One symbol; a difference or a differential is two."""
    if base in GREEK:
        return f"<mi>{GREEK[base]}</mi>"
    if base[:1] in ("d", "Δ") and (len(base) == 2 or base[1:] in GREEK):
        return f'<mrow><mi mathvariant="normal">{base[0]}</mi>{set_letters(base[1:])}</mrow>'
    return f"<mi>{base}</mi>"
