"""Results as plain objects with units and sentences."""

import pickle

import pytest

from windwall.results.record import Record


def test_rows_are_attributes_items_and_addresses(best):
    point = best.point
    assert point.manifold.boost == point["manifold"]["boost"] == point["manifold/boost"]
    assert (
        point.charge_path.roots.outlet.temperature == point["charge_path/roots/outlet/temperature"]
    )
    assert point.charge_path.roots.kind == "compressed"
    assert point.injector is None


def test_a_misspelt_row_says_what_there_is(best):
    with pytest.raises(AttributeError, match="there are pressure, boost"):
        _ = best.point.manifold.bost
    with pytest.raises(KeyError):
        _ = best.point["manifold/bost"]


def test_records_do_not_change(best):
    with pytest.raises(AttributeError, match="do not change"):
        best.point.manifold.boost = 0


def test_every_number_has_a_unit(best):
    units = best.point.units()
    assert units["manifold/boost"] == "Pa"
    assert units["charge_path/roots/rotor_speed"] == "rad/s"
    assert units["road/gear"] == "1"

    def numbers(record, above=""):
        for key, value in record.items():
            if hasattr(value, "units"):
                yield from numbers(value, f"{above}{key}/")
            elif isinstance(value, float):
                yield above + key

    without_spray = {"knock/water_per_fuel"}
    assert set(numbers(best.point)) == set(units) - without_spray


def test_rows_say_what_they_mean(best):
    assert best.point.manifold.sentence("boost").startswith("Pressure in the manifold above")


def test_records_print_in_the_units_of_the_scenario(car, best):
    assert "kPa" in repr(best.point.manifold)
    american = pickle.loads(pickle.dumps(best.point.manifold))
    assert american == best.point.manifold
    info = best.scenario_info._replace(system="us")
    assert "psig" in repr(Record(dict(american), info, "manifold/"))


def test_records_pickle_and_become_dicts(best):
    again = pickle.loads(pickle.dumps(best.point))
    assert again == best.point
    assert again.to_dict()["manifold"]["boost"] == best.point.manifold.boost
    assert set(dir(best.point.manifold)) >= {"boost", "pressure"}
