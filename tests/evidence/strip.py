"""A strip of dots for each part of a distribution, as a small SVG that is the same every time."""

import numpy as np

WIDTH, LEFT, HEIGHT = 640, 150, 46
FULL = 60.0  # per cent at the right end; what lies beyond is drawn there
STEP = 1.5  # per cent: dots nearer than this are stacked
STYLE = (
    "text{font:11px sans-serif;fill:#333}circle{fill:#4a6fa5;fill-opacity:.6}"
    "line{stroke:#999}.median{stroke:#b22;stroke-width:2}rect{fill:#ddd}"
)


def strip(title, parts):
    """`parts`: errors, relative, and the target for their median size, by the name of the part."""
    bottom = 24 + HEIGHT * len(parts)
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {bottom + 20}" '
        f'role="img" aria-label="{title}"><style>{STYLE}</style>',
        f'<text x="4" y="14">{title}: model over print less one, per cent</text>',
    ]
    for number, (name, (errors, within)) in enumerate(parts.items()):
        lines += one_strip(name, 100 * errors, 100 * within, 24 + HEIGHT * number)
    for tick in range(-int(FULL), int(FULL) + 1, 20):
        lines.append(f'<text x="{at(tick):g}" y="{bottom + 14}" text-anchor="middle">{tick}</text>')
    return "\n".join([*lines, "</svg>"]) + "\n"


def at(percent):
    """Where on the width, in tenths of a pixel."""
    half = (WIDTH - LEFT - 16) / 2
    return round(LEFT + half * (1 + np.clip(percent, -FULL, FULL) / FULL), 1)


def one_strip(name, errors, within, top):
    floor = top + HEIGHT - 8
    left, right, middle = at(-within), at(within), at(np.median(errors))
    lines = [
        f'<rect x="{left:g}" y="{top}" width="{right - left:g}" height="{HEIGHT - 8}"/>',
        f'<line x1="{at(0):g}" y1="{top}" x2="{at(0):g}" y2="{floor}"/>',
        f'<text x="4" y="{top + HEIGHT / 2:g}">{name} ({len(errors)})</text>',
    ]
    stacked = {}
    for error in np.sort(errors):
        place = round(error / STEP)
        stacked[place] = stacked.get(place, 0) + 1
        y = floor - 2 - 4 * (stacked[place] - 1)
        lines.append(f'<circle cx="{at(STEP * place):g}" cy="{y:g}" r="2"/>')
    line = f'<line class="median" x1="{middle:g}" y1="{top}" x2="{middle:g}" y2="{floor}"/>'
    return [*lines, line]
