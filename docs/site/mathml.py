"""Sets an equation typed as on the physics pages, `m = C_d A p/sqrt(R T) Psi(r)`, in MathML.

A fraction is `a/b` of the two factors beside the stroke, `a b / c` of all that stands before it.
What is not understood is set as it stands; nothing is left out.
"""

from html import escape

from symbols import (
    FUNCTIONS,
    LOWERED,
    NAME,
    RAISED,
    SPLIT,
    Token,
    below_text,
    is_key,
    is_word,
    set_below,
    set_letters,
    tokens,
)

THIN = '<mspace width="0.18em"/>'
CLOSING = {"(": ")", "[": "]", "{": "}"}
SIGNS = {"<=": "≤", ">=": "≥", "-": "−", "'": "′"}
END = Token("end", "", False)


def row(parts):
    return parts[0] if len(parts) == 1 else f"<mrow>{''.join(parts)}</mrow>"


def sign(text, **attributes):
    given = "".join(f' {key}="{value}"' for key, value in attributes.items())
    return f"<mo{given}>{escape(SIGNS.get(text, text))}</mo>"


class Setter:
    """Reads tokens from left to right; `flat` sets a fraction on one line."""

    def __init__(self, found, flat=False):
        self.tokens, self.at, self.flat = found, 0, flat

    @property
    def next(self):
        return self.tokens[self.at] if self.at < len(self.tokens) else END

    def take(self):
        token = self.next
        self.at += 1
        return token

    def expression(self, closing=""):
        """All up to the bracket that closes, which stays."""
        done, product = [], []
        while self.next is not END and self.next.text != closing:
            token = self.next
            if token.text == "/" and product:
                self.fraction(product)
            elif token.kind == "relation" or token.text in "+-−±×·,;:":
                done += [*product, self.operator(self.take(), bool(product))]
                product = []
            else:
                if product and (token.spaced or self.follows_word(token)):
                    product.append(THIN)
                product.append(self.factor())
        return row([*done, *product] or ["<mrow/>"])

    def follows_word(self, token):
        return is_word(token) and self.at > 0 and is_word(self.tokens[self.at - 1])

    def operator(self, token, between):
        if token.text in ",;:":
            return sign(token.text) + '<mspace width="0.4em"/>'
        form = "infix" if between or token.kind == "relation" else "prefix"
        return sign(token.text, form=form)

    def fraction(self, product):
        """The factor before the stroke, or with blanks around it all of them, over the next."""
        stroke = self.take()
        if self.flat:
            product.append(sign("/"))
            product.append(self.factor())
            return
        above = product[:] if stroke.spaced else [product[-1]]
        del product[len(product) - len(above) :]
        product.append(f"<mfrac>{bare(row(above))}{bare(self.factor())}</mfrac>")

    def factor(self):
        """One symbol, number, bracket or function with its powers."""
        made = self.primary()
        while True:
            token = self.next
            if token.kind == "raised" and not token.spaced:
                made = raised(made, f"<mn>{self.take().text.translate(RAISED)}</mn>")
            elif token.text == "^":
                self.take()
                made = raised(made, self.exponent())
            elif token.text == "!":
                made = row([made, sign(self.take().text, form="postfix")])
            elif self.tokens[self.at - 1].kind == "number" and self.touches(token):
                made = row([made, self.factor()])
            else:
                return made

    def touches(self, token):
        """Whether a symbol stands at a number without a blank, as in `4x`."""
        return token.kind == "name" and not token.spaced and not is_word(token)

    def exponent(self):
        flat, self.flat = self.flat, True
        minus = sign(self.take().text, form="prefix") if self.next.text in ("-", "−") else ""
        made = bare(self.primary())
        self.flat = flat
        return f"<mrow>{minus}{made}</mrow>" if minus else made

    def primary(self):
        token = self.take()
        if token.kind == "open":
            return self.bracket(token.text)
        if token.text == "|":
            return self.bracket("|", "|")
        if token.text == "√" or token.text == "sqrt":
            return f"<msqrt>{self.under_root()}</msqrt>"
        if token.kind == "name":
            return self.name(token)
        return self.simple(token)

    def under_root(self):
        minus = sign(self.take().text, form="prefix") if self.next.text in ("-", "−") else ""
        return minus + bare(self.primary())

    def bracket(self, opening, closing=None):
        closing = closing or CLOSING[opening]
        inner = self.expression(closing)
        if self.next.text != closing:
            return row([sign(opening), inner])
        self.take()
        size = {"stretchy": "true"}
        ends = sign(opening, form="prefix", **size), sign(closing, form="postfix", **size)
        return f'<mrow class="bracket">{ends[0]}{inner}{ends[1]}</mrow>'

    def name(self, token):
        made = set_name(token, self.flat)
        following = self.next
        if following.kind == "open" and not following.spaced and not is_word(following):
            return row([made, sign("\u2061"), self.bracket(self.take().text)])
        if token.text in FUNCTIONS:  # of one factor: `sin β` is a whole denominator
            return row([made, sign("\u2061"), THIN, self.factor()])
        return made

    def simple(self, token):
        if token.kind == "number":
            return f"<mn>{exponential(token.text)}</mn>"
        if token.kind == "quantity":
            return f"<mtext>{escape(exponential(token.text))}</mtext>"
        if token.kind == "big":
            return set_big(token.text)
        if token.kind == "code":
            return f"<mtext>{escape(token.text.strip('`').split(']')[0].strip('['))}</mtext>"
        return sign(token.text)


def exponential(text):
    head, e, power = text.partition("e") if text[:1].isdigit() else (text, "", "")
    if not e or not power.lstrip("-+").split(" ")[0].isdigit():
        return text
    digits, _, unit = power.partition(" ")
    raised_digits = digits.lstrip("+").translate(str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻"))
    return f"{head}·10{raised_digits}{' ' + unit if unit else ''}"


def bare(made):
    """Without the brackets that a stroke, a root or a power makes needless."""
    start, end = '<mrow class="bracket">', "</mrow>"
    if not made.startswith(start) or matching(made) != len(made):
        return made
    inner = made[len(start) : -len(end)]
    inner = inner[inner.index("</mo>") + 5 : inner.rindex("<mo")]
    return inner if "|" not in made[len(start) : made.index("</mo>")] else made


def matching(made):
    """Where the first element of a text ends."""
    depth, at = 0, 0
    while True:
        opening, closing = made.find("<mrow", at), made.find("</mrow>", at)
        if 0 <= opening < closing:
            depth += not made.startswith("<mrow/>", opening)
            at = opening + 5
        else:
            depth -= 1
            at = closing + 7
            if depth == 0:
                return at


def raised(made, power):
    if made.startswith("<msub>") and made.count("<msub>") == 1 and made.endswith("</msub>"):
        return f"<msubsup>{made[6:-7]}{power}</msubsup>"
    return f"<msup>{made}{power}</msup>"


def set_name(token, flat=False):
    text = token.text
    if is_word(token) or is_key(text):
        return f"<mi>{escape(text)}</mi>"
    parts = NAME.fullmatch(text)
    if parts is None or text in FUNCTIONS:
        return f"<mi>{escape(text)}</mi>"
    base, digits = parts["base"], parts["digits"].translate(LOWERED)
    first, inside, after = SPLIT.get(base, (base, "", ""))
    hanging = [set_below(one) for one in (inside, digits) if one and not after]
    if parts["below"]:
        below, expression = below_text(parts["below"])
        hanging.append(
            Setter(tokens(below), flat=True).expression() if expression else set_below(below)
        )
    made = set_letters(first) + (sign("′") if parts["p"] or parts["q"] else "")
    made = f"<mrow>{made}</mrow>" if made.count("<m") > 1 and "′" in made else made
    if after:
        after_made = set_letters(after)
        if hanging:
            after_made = f"<msub>{after_made}{row(hanging)}</msub>"
        return f"<mrow><msub>{made}{set_below(inside)}</msub>{after_made}</mrow>"
    return f"<msub>{made}{row(hanging)}</msub>" if hanging else made


def set_big(text):
    made = sign(text[0].replace("Σ", "∑").replace("Π", "∏"), form="prefix")
    if len(text) == 1:
        return made
    below, expression = below_text(text[1:])
    inner = Setter(tokens(below), flat=True).expression() if expression else set_below(below)
    return f"<munder>{made}{inner}</munder>"


def mathml(text, flat=False):
    """The inside of a `math` element."""
    return Setter(tokens(text), flat).expression()
