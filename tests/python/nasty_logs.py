"""Logs as bad as loggers, spreadsheets and flat batteries make them: fifty, one name each.

Each is a run of a second or two whose numbers are known: engine speed 3000 + 17.3 i rpm and road
speed 50 + 0.31 i km/h at 0.1 i s. `READ` holds those that are understood, with a word of what has
to be said of it (empty where nothing was wrong); `REFUSED` those that are not, with words of the
message, which has to name the line, and the column where it is one column's fault.
"""

ROWS = 30


def turning(i):
    return 3000 + 17.3 * i


def road(i):
    return 50 + 0.31 * i


def line(i, part=",", mark=".", time=None):
    stamp = f"{0.1 * i:.2f}".replace(".", mark) if time is None else time
    return part.join([stamp, *(f"{x:.2f}".replace(".", mark) for x in (turning(i), road(i)))])


def body(part=",", mark=".", rows=range(ROWS), stamp=None):
    return "".join(line(i, part, mark, stamp(i) if stamp else None) + "\n" for i in rows)


HEAD = "Time [s],RPM,Speed [km/h]\n"
GERMAN = "Zeit [s];Drehzahl [1/min];Geschwindigkeit [km/h]\n"


def cell(text, row, column, new, part=","):
    """A text with one cell changed; the heading is row 0."""
    rows = text.split("\n")
    cells = rows[row].split(part)
    cells[column] = new
    rows[row] = part.join(cells)
    return "\n".join(rows)


def clock(i, form):
    whole = 50 + 0.1 * i
    return form.format(m=3 + int(whole // 60), s=whole % 60)


def spliced(text, *lines_at):
    """Lines put in before a row."""
    rows = text.split("\n")
    for at, new in lines_at:
        rows.insert(at, new)
    return "\n".join(rows)


PLAIN = HEAD + body()
DEGREES = "Time [s],RPM,Speed [km/h],CHT °C\n" + body().replace("\n", ",95.5\n")

READ = {
    "plain": (PLAIN, ""),
    "semicolons and decimal commas": (GERMAN + body(";", ","), ""),
    "tabs": (HEAD.replace(",", "\t") + body("\t"), ""),
    "bars": (HEAD.replace(",", "|") + body("|"), ""),
    "columns of spaces": ("Time RPM Speed\ns rpm km/h\n" + body("   "), ""),
    "tabs and decimal commas": (HEAD.replace(",", "\t") + body("\t", ","), ""),
    "a mark in front, UTF-8": (b"\xef\xbb\xbf" + PLAIN.encode(), ""),
    "UTF-16 with its mark": (PLAIN.encode("utf-16"), ""),
    "UTF-16 without its mark": (PLAIN.encode("utf-16-le"), "no mark says so"),
    "UTF-16 cut within a letter": (PLAIN.encode("utf-16")[:-1], "ends within a letter"),
    "cp1252 degrees": (DEGREES.encode("cp1252"), "no UTF-8"),
    "UTF-8 cut within a letter": (DEGREES.encode() + "°".encode()[:1], "ends within a letter"),
    "lines end as on old machines": (PLAIN.replace("\n", "\r").encode(), ""),
    "lines end with two characters": (PLAIN.replace("\n", "\r\n").encode(), ""),
    "preamble of many kinds": (
        "Logger 7, firmware 1.2\nDriver,M. Ferlow\n\nChannels,3\n" + PLAIN,
        "",
    ),
    "a spreadsheet says what parts it": ("sep=;\n" + GERMAN + body(";", ","), ""),
    "a row of units": ("Time,RPM,Speed\ns,rpm,km/h\n" + body(), ""),
    "a row of units in brackets": ("Time,RPM,Speed\n[s],[1/min],[km/h]\n" + body(), ""),
    "a ruled line below the heading": (spliced(PLAIN, (1, "----,----,----")), ""),
    "the heading behind a remark": ("# made by hand\n# " + HEAD + body(), ""),
    "remarks between the rows": (spliced(PLAIN, (9, "# second gear"), (15, "// third")), ""),
    "no heading at all": (body(), "called by their number"),
    "a heading broken inside its quotes": (
        '"Time\n[s]","RPM","Speed\n[km/h]"\n' + body(),
        "",
    ),
    "every cell in quotes": (
        "".join(",".join(f'"{c}"' for c in r.split(",")) + "\n" for r in PLAIN.split("\n")[:-1]),
        "",
    ),
    "thousands parted, in quotes": (
        HEAD + "".join(f'{0.1 * i:.2f},"{turning(i):,.2f}",{road(i):.2f}\n' for i in range(ROWS)),
        "",
    ),
    "thousands parted by points": (
        GERMAN
        + "".join(
            f"{0.1 * i:.2f};{turning(i):,.2f};{road(i):.2f}\n".translate(str.maketrans(",.", ".,"))
            for i in range(ROWS)
        ),
        "",
    ),
    "thousands parted by thin spaces": (
        GERMAN
        + "".join(
            f"{0.1 * i:.2f};{turning(i):,.2f};{road(i):.2f}\n".translate({44: "\u202f", 46: ","})
            for i in range(ROWS)
        ),
        "",
    ),
    "units behind every number": (
        "Time;RPM;Speed\n"
        + "".join(
            f"{0.1 * i:.2f} s;{turning(i):.2f} rpm;{road(i):.2f} km/h\n" for i in range(ROWS)
        ),
        "",
    ),
    "milliseconds": ("Time [ms],RPM,Speed [km/h]\n" + body(stamp=lambda i: str(100 * i)), ""),
    "milliseconds that nobody names": (
        "Time,RPM,Speed [km/h]\n" + body(stamp=lambda i: str(100 * i)),
        "steps of 100 are milliseconds",
    ),
    "minutes and seconds": (
        "Time,RPM,Speed [km/h]\n" + body(stamp=lambda i: clock(i, "{m:02d}:{s:05.2f}")),
        "",
    ),
    "hours, with a decimal comma": (
        "Zeit;RPM;Speed [km/h]\n"
        + body(";", ",", stamp=lambda i: clock(i, "14:{m:02d}:{s:05.2f}").replace(".", ",")),
        "",
    ),
    "date and time": (
        "Time,RPM,Speed [km/h]\n"
        + body(stamp=lambda i: clock(i, "2026-07-04T14:{m:02d}:{s:06.3f}Z")),
        "",
    ),
    "a date that may stand either way": (
        "Time,RPM,Speed [km/h]\n"
        + body(stamp=lambda i: clock(i, "04/07/2026 14:{m:02d}:{s:06.3f}")),
        "the other way round",
    ),
    "seconds since 1970": (
        "Time,RPM,Speed [km/h]\n" + body(stamp=lambda i: f"{1.78e9 + 0.1 * i:.1f}"),
        "read as seconds",
    ),
    "over midnight": (
        "Time,RPM,Speed [km/h]\n"
        + body(
            stamp=lambda i: (
                f"23:59:{58.5 + 0.1 * i:04.1f}" if i < 15 else f"00:00:{0.1 * (i - 15):04.1f}"
            )
        ),
        "midnight",
    ),
    "stamps as coarse as a second": (
        "Time [s],RPM,Speed [km/h]\n" + body(stamp=lambda i: str(i // 10)),
        "spread evenly",
    ),
    "a stamp twice": (cell(PLAIN, 12, 0, "1.00"), "the first is kept"),
    "a row twice": (spliced(PLAIN, (13, line(11))), "the same row"),
    "rows that came late": (
        HEAD + body(rows=[*range(10), 12, 10, 11, *range(13, ROWS)]),
        "came late",
    ),
    "a gap": (HEAD + body(rows=[*range(12), *range(22, 40)]), "nothing was written"),
    "a clock that begins anew": (
        HEAD + body() + body(rows=range(8)),
        "begins anew",
    ),
    "the heading again": (HEAD + body() + HEAD + body(rows=range(8)), "heading stands here again"),
    "words for nothing": (cell(cell(PLAIN, 5, 1, "NaN"), 6, 1, "#N/A"), ""),
    "junk in a cell": (cell(PLAIN, 5, 1, "0x1F3A"), '"0x1F3A" is no number'),
    "a letter for a digit": (cell(PLAIN, 7, 2, "5O.1"), '"5O.1" is no number'),
    "two points in a number": (cell(PLAIN, 7, 2, "52.1.7"), "is no number"),
    "the last line cut short": (PLAIN + "3.0", "cut short"),
    "the last number cut short": (PLAIN[:-2], "cut short"),
    "a column without anything": (
        "Time [s],,RPM,Speed [km/h],\n"
        + "".join(r.replace(",", ",,", 1) + ",\n" for r in body().split("\n")[:-1]),
        "",
    ),
    "two columns of one name": (
        "Time [s],RPM,Speed [km/h],Speed [km/h]\n" + body().replace("\n", ",1.5\n"),
        "is called",
    ),
    "a row with too much": (spliced(PLAIN, (9, "0.75,3000,50,7")), "more cells than columns"),
    "a quote that is never closed": (cell(PLAIN, 5, 1, '"3069.2'), ""),
    "no stamp in a row": (cell(PLAIN, 8, 0, ""), "no time stands here"),
}

REFUSED = {
    "empty": ("", "it is empty"),
    "nothing but a heading": (HEAD, "line 1"),
    "a letter to somebody": ("Dear Joost,\nhere is the log.\n", "line 1"),
    "a picture": (b"\x89PNG\r\n\x1a\n" + bytes(range(1, 32)) * 40, "this is no text"),
    "nothing but zeros": (b"\0" * 400, "NUL"),
    "a NUL among the rows": (PLAIN.replace("3069.20", "30\x0069.20"), "line 6: a NUL"),
    "decimal commas between commas": (
        "Time,RPM,Speed\n" + body(",", ","),
        "decimal commas between commas",
    ),
    "a comma that parts either": (
        "Zeit [s];RPM;Speed [km/h]\n"
        + "".join(f"{i};{3 + i % 7},{100 + 7 * i};1,{200 + i}\n" for i in range(ROWS)),
        "line 2, column 2",
    ),
    "commas and points for one": (
        cell(GERMAN + body(";", ","), 5, 1, "3069.2", ";"),
        "has a decimal comma",
    ),
    "steps of one of something": (
        "Time,RPM,Speed [km/h]\n" + body(stamp=lambda i: str(i)),
        "line 2, column Time: steps of 1 in what?",
    ),
    "no clock": (
        "RPM,Speed [km/h]\n" + "".join(r.partition(",")[2] + "\n" for r in body().splitlines()),
        "line 1: no column is called like a clock",
    ),
    "a clock that stands still": (
        "Time [s],RPM,Speed [km/h]\n" + body(stamp=lambda i: "5.00"),
        "column Time: the clock stands still",
    ),
    "a clock in bananas": (
        "Time;RPM;Speed\nkg;rpm;km/h\n" + body(";"),
        "line 3, column Time",
    ),
    "half the rows longer than the heading": (
        HEAD + "".join(line(i) + (",7" if i % 2 else "") + "\n" for i in range(ROWS)),
        "line 3, column 4: 4 cells stand below 3 headings",
    ),
    "three rows": (HEAD + body(rows=range(3)), "3 rows"),
}  # fmt: skip
