"""Docstrings are plain sentences: only a backtick means something in them."""

import re

MEANS_SOMETHING = re.compile(r"(`[^`]*`)|([|*\\])|(\w_)(?!\w)")


def plain(app, what, name, of, options, lines):
    lines[:] = [MEANS_SOMETHING.sub(escaped, line) for line in lines]


def escaped(found):
    code, sign, name = found.groups()
    return code or (f"\\{sign}" if sign else f"{name[:-1]}\\_")


def setup(app):
    app.connect("autodoc-process-docstring", plain)
    return {"parallel_read_safe": True}
