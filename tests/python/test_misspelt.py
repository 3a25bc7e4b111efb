"""A word or a file's name that is typed wrongly is answered with the one that was meant."""

import json

import pytest

CAR = "scenarios/airfield_cyclecar.json"


def test_a_command_that_is_none(windwall):
    told = windwall("sped", CAR)
    assert (told.returncode, told.stdout) == (2, "")
    assert "invalid choice: 'sped'" in told.stderr
    assert told.stderr.rstrip().endswith("did you mean speed?")
    assert "did you mean" not in windwall("zzz", CAR).stderr


@pytest.mark.parametrize(
    "typed, meant",
    [("bypas", "bypass"), ("posi", "positive_blower"), ("blower", "positive_blower")],
)
def test_a_kind_that_is_none(windwall, typed, meant):
    told = windwall("kinds", typed)
    assert (told.returncode, told.stdout) == (2, "")
    assert told.stderr.startswith(f'kinds: there is no kind "{typed}"; did you mean "{meant}"?')
    assert "; there are limits" in windwall("kinds", "zzz").stderr


def test_an_upgrade_that_is_none(windwall):
    told = windwall("speed", CAR, "--install", "faring")
    assert told.returncode == 2
    assert 'there is no upgrade "faring"; did you mean "fairing"?; there are cooler,' in told.stderr
    assert (
        'no upgrade "zzz"; there are cooler,' in windwall("speed", CAR, "--install", "zzz").stderr
    )


def test_nothing_asked_lists_what_may_be_asked(windwall):
    told = windwall()
    assert (told.returncode, told.stdout) == (2, "")
    listed = " ".join(told.stderr.split())
    for command in ("new", "speed", "rank", "report"):
        assert f" {command} " in listed
    assert "how fast, why no faster" in listed
    assert listed.endswith("Begin with: windwall new mine.json")
    wrong = windwall("--units", "us")
    assert wrong.returncode == 2
    assert "how fast, why no faster" not in wrong.stderr


@pytest.mark.parametrize("asked", [("speed", "MISSING"), ("compare", CAR, "MISSING")])
def test_a_file_that_is_not_there(windwall, tmp_path, asked):
    (tmp_path / "my_car.json").write_text("{}", encoding="utf-8")
    missing = tmp_path / "my_cra.json"
    words = [missing if one == "MISSING" else one for one in asked]
    told = windwall(*words)
    assert (told.returncode, told.stdout) == (2, "")
    complaint = f'No such file or directory; did you mean "{tmp_path / "my_car.json"}"?'
    assert told.stderr.splitlines()[0] == f"{missing}: {complaint}"
    (problem,) = json.loads(windwall(*words, "--json").stdout)["problems"]
    assert (problem["address"], problem["message"]) == (str(missing), complaint)
    strange = windwall("speed", tmp_path / "zzz" / "my_car.json").stderr
    assert "No such file" in strange
    assert "did you mean" not in strange


def test_a_line_that_is_shown_is_of_the_file_that_is_wrong(windwall, tmp_path, document):
    document["bodi"] = document.pop("body")
    other = tmp_path / "other.json"
    other.write_text(json.dumps(document, indent=1), encoding="utf-8")
    told = windwall("compare", CAR, other)
    assert told.returncode == 2
    lines = told.stderr.splitlines()
    at = next(at for at, line in enumerate(lines) if 'did you mean "body"?' in line)
    assert lines[at].startswith(f"{other}:")
    assert lines[at + 1].strip() == '"bodi": {'
