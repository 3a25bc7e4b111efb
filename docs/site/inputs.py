"""Inputs as `windwall kinds` lists them, read where that reads them: those of a physics page end
it, and a page of the reference has all of a place in the file by ```{kinds} charge_path```.
"""

from functools import cache

from docutils import nodes
from docutils.parsers.rst import Directive

from windwall.scenario.kinds import all_kinds

# Which parts and groups of a file each page explains; a group brings what stands in it.
EXPLAINS = {
    "air_and_gas": ["day"],
    "bypass": ["bypass", "under_hood"],
    "charge_path": [
        "filter",
        "duct",
        "throttle",
        "leak",
        "positive_blower",
        "charge_cooler",
        "plenum",
    ],
    "compressor_map": ["mapped_compressor"],
    "drive": ["outings", "idle", "launch", "full_throttle", "hold_speed", "coast", "stop"],
    "driveline": [
        *("clutch", "centrifugal_clutch", "chain", "belt"),
        *("gearbox", "final_drive", "belt_cvt"),
    ],
    "engine": [
        "cylinder",
        *(f"cylinder/{group}" for group in ("valves", "breathing", "combustion", "friction")),
        *("cylinder/exhaust", "cylinder/accessories", "cylinder/evaporation", "cylinder/injector"),
        "torque_curve",
    ],
    "engine_classes": ["cylinder/design", "cylinder/rated"],
    "fuels": ["fuel"],
    "heat": ["cylinder/walls", "cylinder/cooling", "cylinder/oil"],
    "knock": ["cylinder/spark", "cylinder/knock_anchor"],
    "ranking": ["goal", "limits", "upgrades", "correlations"],
    "road": ["body", "tyres", "observed"],
    "wet_charge": ["evaporative_injection", "carburettor"],
}


@cache
def explained(page):
    """The kinds of a page, each with the groups inside it that no other page has."""
    named = {name for names in EXPLAINS.values() for name in names}
    found = []
    for name in EXPLAINS.get(page, []):
        inside = [
            one
            for one in all_kinds()
            if one.name == name or (one.name.startswith(name + "/") and not named & {one.name})
        ]
        found += [one for one in inside if not nearer(one.name, name, named)]
    return found


def nearer(kind, name, named):
    """Whether another page has a group between a name and a kind in it."""
    return any(kind.startswith(other + "/") for other in named if other.startswith(name + "/"))


def table(head, rows, widths):
    group = nodes.tgroup(cols=len(head))
    group += [nodes.colspec(colwidth=width) for width in widths]
    group += nodes.thead("", line(head))
    group += nodes.tbody("", *map(line, rows))
    return nodes.table("", group, classes=["table-sm"])


def line(cells):
    return nodes.row("", *(nodes.entry("", paragraph(cell)) for cell in cells))


def paragraph(cell):
    return nodes.paragraph("", "", cell if isinstance(cell, nodes.Node) else nodes.Text(str(cell)))


def inputs_of(kind):
    """A kind with its sentence and its keys."""
    title = nodes.title("", "", nodes.literal("", kind.name))
    made = nodes.section("", title, ids=[f"inputs-{kind.name.replace('/', '-')}"])
    if kind.meaning:
        made += nodes.paragraph("", kind.meaning)
    rows = [
        [nodes.literal("", key.name), key.meaning, "needed" if key.needed else "", key.example]
        for key in kind.keys
    ]
    if rows:
        made += table(["key", "what it is", "", "for example"], rows, [20, 60, 8, 20])
    return made


def append_inputs(app, doctree):
    folder, _, page = app.env.docname.rpartition("/")
    if folder != "docs/physics" or not explained(page):
        return
    section = nodes.section("", nodes.title("", "Inputs"), ids=["inputs"])
    section += nodes.paragraph("", "As `windwall kinds` lists them; made of the rows of the core.")
    section += [inputs_of(kind) for kind in explained(page)]
    doctree[0] += section


class Kinds(Directive):
    """Everything that may stand at these places of a file, with every key."""

    required_arguments = 1
    optional_arguments = 20

    def run(self):
        return [inputs_of(kind) for place in self.arguments for kind in at(place)]


def at(place):
    """The kinds of a place and of what stands inside it."""
    found = [one for one in all_kinds() if one.place == place or one.place.startswith(place + "/")]
    if not found:
        raise ValueError(f"nothing stands at {place} in a file")
    return found


def setup(app):
    app.add_directive("kinds", Kinds)
    app.connect("doctree-read", append_inputs, priority=400)
    return {"parallel_read_safe": True}
