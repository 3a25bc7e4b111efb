"""Shows the equations of the physics pages, typed in plain letters, as a reader expects them.

A block that is indented by four blanks is a table: one line an equation, and what is said beside
it stands two blanks or more to its right.
"""

import re
from html import escape
from itertools import pairwise

from docutils import nodes
from mathml import mathml
from symbols import is_word, tokens

GAP = re.compile(r"\s{2,}")
AROUND_SIGN = re.compile(r"\s+(<=|>=|[=≤≥<>])\s+")
UNIT_ALONE = re.compile(r"(?:Pa|W|m|J/kg|m/s|m³/s|m³|kg/kg|N m)\b")


def math(text, flat=False):
    size = "" if flat else ' displaystyle="true"'
    return f'<math{size} alttext="{escape(text)}">{mathml(text, flat)}</math>'


def prose(text):
    """Whether two words stand side by side: a remark and no equation."""
    found = tokens(text)
    words = [is_word(one) for one in found]
    return any(map(all, pairwise(words))) or (len(found) == 1 and any(words))


def remark(text):
    """Words as words, and the symbols between them set as such."""
    pieces, symbols = [], []
    chunks = text.split(" ")
    for place, chunk in enumerate([*chunks, ""]):
        if chunk and not of_prose(chunk, chunks[place + 1 : place + 2], place):
            symbols.append(chunk)
            continue
        if symbols:
            pieces.append(math(" ".join(symbols), flat=True))
            symbols = []
        pieces.append(escape(chunk))
    return " ".join(pieces).strip()


def of_prose(chunk, following, place):
    found = [one for one in tokens(chunk.strip("(),.;:")) if one.text]
    if len(found) == 1 and is_word(found[0]):
        return True
    if place == 0 and UNIT_ALONE.fullmatch(chunk.strip("(),.;:")):
        return True
    return chunk == "a" and bool(following) and is_word(tokens(following[0])[0])


def sides(text):
    """What stands before the first sign of relation outside brackets, and the rest with it."""
    depth, at = 0, 0
    for token in tokens(text):
        at = text.index(token.text, at)
        depth += (token.kind == "open") - (token.kind == "close")
        if token.kind == "relation" and depth == 0:
            return text[:at].strip(), text[at:]
        at += len(token.text)
    return "", text


def line(text):
    """One row of the table: left side, right side, and what is said of it."""
    cells = GAP.split(AROUND_SIGN.sub(r" \1 ", text.strip()))
    if len(cells) > 1 and not sides(cells[0])[0] and is_label(cells[0]):
        left, right, rest = remark(cells[0]), math(cells[1]), cells[2:]
    elif len(cells) > 1 and cells[0].endswith(":"):
        left, right, rest = math(cells[0], flat=True), shown(cells[1]), cells[2:]
    elif prose(cells[0]) and not sides(cells[0])[0]:
        return f'<tr><td></td><td colspan="2">{remark(" ".join(cells))}</td></tr>'
    else:
        before, after = sides(cells[0])
        equation, said = without_words(after)
        left, right, rest = math(before) if before else "", math(equation), [*said, *cells[1:]]
    said = "".join(f"<span>{shown(cell)}</span>" for cell in rest)
    return f"<tr><td>{left}</td><td>{right}</td><td>{said}</td></tr>"


def without_words(text):
    """An equation, and the sentence that follows it, if one does."""
    found, depth, at = tokens(text), 0, 0
    for place, token in enumerate(found):
        at = text.index(token.text, at)
        depth += (token.kind == "open") - (token.kind == "close")
        if place > 1 and depth == 0 and is_word(token) and begins_words(found[place + 1 :]):
            if is_word(found[place - 1]):
                break
            return text[:at].strip(), [text[at:]]
        at += len(token.text)
    return text, []


def begins_words(following):
    following = [one for one in following[:2] if one.text != "a"]
    return bool(following) and is_word(following[0])


def is_label(cell):
    """Whether a cell names its line and is no equation or part of one."""
    first = tokens(cell)[0]
    return first.kind == "name" and (is_word(first) or first.text.isupper() or cell.endswith(":"))


def shown(cell):
    return math(cell) if sides(cell)[0] and not prose(cell) else remark(cell)


def table(block):
    rows = "\n".join(line(one) for one in block.splitlines() if one.strip())
    return f'<div class="equations"><table role="presentation">\n{rows}\n</table></div>'


def set_equations(app, doctree):
    if not app.env.docname.startswith("docs/physics/"):
        return
    for block in list(doctree.findall(nodes.literal_block)):
        block.replace_self(nodes.raw("", table(block.astext()), format="html"))


def setup(app):
    app.connect("doctree-read", set_equations)
    return {"parallel_read_safe": True}
