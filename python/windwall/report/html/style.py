"""How fragments look. Everything is below one class, and nothing is fetched.

Text takes the colour of the page that it stands in, whatever chose that, so that it reads in a
light notebook of a dark desktop and the other way round; rules are the same colour, thinned. The
two colours of bars stand out from white and from black alike, and from one another by brightness.
"""

__all__ = ["ON_DARK", "ON_LIGHT", "STYLE", "bars"]

ON_LIGHT = "--bar:#3f7fb5;--range:#c2570c"
ON_DARK = "--bar:#5b9bd5;--range:#e8924a"


def bars(scope: str) -> str:
    """The rules of the bars beside a table, for all that lies below a selector."""
    return f"""
{scope}{{{ON_LIGHT}}}
@media (prefers-color-scheme:dark){{{scope}{{{ON_DARK}}}}}
@media print{{{scope}{{{ON_LIGHT}}}}}
{scope} .bar{{vertical-align:middle;line-height:0}}
{scope} .bar svg{{overflow:visible}}
{scope} .gain,{scope} .middle{{fill:var(--bar)}}
{scope} .loss{{fill:none;stroke:var(--bar);stroke-width:1}}
{scope} .axis{{stroke:currentColor;stroke-width:.5;fill:none}}
{scope} .range{{stroke:var(--range);stroke-width:1.1;fill:none}}
"""


STYLE = """
.windwall{--rule:rgba(128,128,128,.45);font:14px/1.45
system-ui,sans-serif;max-width:68em;color:inherit;text-align:left}
.windwall h3{font-size:1.25em;margin:.4em 0 .1em}
.windwall h4{font-size:1em;margin:1.2em 0 .3em;font-weight:600}
.windwall p{margin:.3em 0;max-width:46em}
.windwall .asked{opacity:.8}
.windwall .lead{font-size:1.12em;margin:.6em 0;max-width:42em}
.windwall ul{margin:.3em 0;padding-left:1.3em;max-width:46em}
.windwall li{margin:.2em 0}
.windwall .sections{display:flex;flex-wrap:wrap;column-gap:3em}
.windwall section{flex:1 0 100%;min-width:0}
.windwall section.narrow{flex:0 1 auto}
.windwall .wide{overflow-x:auto}
.windwall .sections+.wide{margin-top:1.2em}
.windwall table{border-collapse:collapse;border:0;margin:.2em 0;font-size:1em;
font-variant-numeric:tabular-nums;color:inherit;background:none}
.windwall table tr,.windwall table tr:nth-child(even){background:none}
.windwall table th,.windwall table td{padding:.16em .9em .16em 0;border:0;
border-bottom:1px solid var(--rule);text-align:right;vertical-align:top;font-weight:400;
white-space:nowrap;color:inherit}
.windwall table .left{text-align:left}
.windwall table td.left{white-space:normal}
.windwall thead th,.windwall thead td{border-bottom:1px solid currentColor;vertical-align:bottom}
.windwall thead th{font-weight:600;white-space:normal}
.windwall .facts td{font-weight:600}
.windwall table .bar{padding:0 .9em 0 0;vertical-align:middle}
@media print{.windwall{font-size:9.5pt;max-width:none}
.windwall .wide{overflow:visible}.windwall tr,.windwall li,.windwall p{break-inside:avoid}
.windwall h3,.windwall h4{break-after:avoid}
.windwall table td,.windwall table th{white-space:normal}
.windwall svg{print-color-adjust:exact;-webkit-print-color-adjust:exact}}
""" + bars(".windwall")
