"""
The C++ core of windwall; use it through the package windwall.
"""
from __future__ import annotations
import collections.abc
import numpy
import numpy.typing
import typing
from . import physics
__all__: list[str] = ['Scenario', 'accelerated_masses', 'answer_rows', 'axis', 'build_info', 'class_priors', 'class_units', 'class_values', 'correlations', 'drive', 'drive_limits', 'drive_rows', 'fit_flyweights', 'flyweights_question_rows', 'fuel_density', 'full_throttle_curve', 'gears', 'given', 'heading', 'hold_speed', 'hold_speed_curve', 'idle', 'idle_curve', 'in_unit', 'limits', 'loads', 'measure', 'menu', 'numbers', 'observed', 'observed_rows', 'operating_point', 'physics', 'question_rows', 'rank', 'rank_groups', 'rated_fit', 'read_quantity', 'readable', 'readable_number', 'result_row', 'rolling_free', 'scenario_rows', 'schema_text', 'si_unit', 'sigma', 'solve_groups', 'sweep', 'top_speed', 'uncertain', 'unit_shown', 'unrated', 'world', 'world_answers', 'world_speeds']
class Scenario:
    """
    One scenario file, understood.
    """
    def chosen(self, ids: collections.abc.Sequence[str | bytes], values: collections.abc.Sequence[tuple[str | bytes, str | bytes, typing.Any]]) -> list:
        """
        What fitting these takes of each choice.
        """
    def fit(self, ids: collections.abc.Sequence[str | bytes], values: collections.abc.Sequence[tuple[str | bytes, str | bytes, typing.Any]]) -> Scenario:
        """
        Another scenario, with these upgrades fitted; of what they leave open the fastest.
        """
    def get(self, address: str | bytes) -> None | float | bool | str | list[float]:
        """
        What stands at an input address, numbers in SI.
        """
    def money(self, text: str | bytes) -> float:
        """
        A sum in the currency of the file.
        """
    def physics(self) -> str:
        """
        All that a result can depend on, as JSON.
        """
    def set(self, changes: collections.abc.Sequence[tuple[str | bytes, typing.Any]]) -> Scenario:
        """
        Another scenario, with these values.
        """
    def text(self) -> str:
        """
        The text of its file.
        """
def accelerated_masses(scenario: Scenario) -> list[float]:
    """
    Mass with all that turns, kg, in each gear at its lowest ratio.
    """
def answer_rows() -> dict:
    """
    What the rows of every answer say.
    """
def axis(scenario: Scenario, address: str, values: collections.abc.Sequence[None | typing.SupportsFloat | typing.SupportsIndex | bool | str | collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex]]) -> list[float]:
    """
    Values of an input as the file would have them, in SI.
    """
def build_info() -> dict:
    """
    What the core was built with: versions of windwall, compiler and libraries, and the compiler's flags.
    """
def class_priors() -> list:
    """
    The table of what engines of one design share.
    """
def class_units() -> dict:
    """
    The unit of each quantity of that table.
    """
def class_values(scenario: Scenario) -> list:
    """
    What the design of the engine says of its values; empty where none is described.
    """
def correlations(scenario: Scenario) -> list:
    """
    Uncertain numbers that err together, by two addresses: those of the file, and what the rated figures leave.
    """
def drive(scenario: Scenario, outing: str, mark_distances: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex] = [], mark_speeds: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex] = [], tolerance: typing.SupportsFloat | typing.SupportsIndex = 1e-06, every: typing.SupportsFloat | typing.SupportsIndex = 0.5, progress: typing.Any = None) -> dict:
    """
    An outing over time, as plain objects. `progress(time, 0)` stops it by returning False; what was driven until then is in the answer.
    """
def drive_limits(scenario: Scenario) -> list:
    """
    The same on a drive, where the road may turn an engine beyond its limit.
    """
def drive_rows() -> dict:
    """
    What the rows of a moment of a drive say, beside those of an operating point.
    """
def fit_flyweights(scenario: Scenario, stated: collections.abc.Mapping[str, typing.SupportsFloat | typing.SupportsIndex | str]) -> dict:
    """
    Weights and spring of the belt drive for wanted engine speeds.
    """
def flyweights_question_rows() -> dict:
    """
    What may be wanted of them.
    """
def fuel_density(scenario: Scenario) -> float:
    """
    Density of what is in the tank, kg/m3.
    """
def full_throttle_curve(scenario: Scenario, gear: typing.SupportsInt | typing.SupportsIndex | None, points: typing.SupportsInt | typing.SupportsIndex) -> dict:
    """
    Full throttle over engine speed, one column a result address.
    """
def gears(scenario: Scenario) -> int:
    """
    How many gears the vehicle has.
    """
def given(scenario: Scenario, address: str | bytes) -> bool:
    """
    Whether the file states this, rather than leaving the default.
    """
def heading(scenario: Scenario) -> dict:
    """
    What the file says about itself.
    """
def hold_speed(scenario: Scenario, road_speed: typing.SupportsFloat | typing.SupportsIndex | str, gear: typing.SupportsInt | typing.SupportsIndex | None) -> dict:
    """
    The pedal that holds a road speed, explained, as plain objects.
    """
def hold_speed_curve(scenario: Scenario, road_speeds: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex | str], gear: typing.SupportsInt | typing.SupportsIndex | None) -> dict:
    """
    The same over road speeds, one column a result address.
    """
def idle(scenario: Scenario, engine_speed: typing.SupportsFloat | typing.SupportsIndex | str | None) -> dict:
    """
    The pedal of an idle, explained, as plain objects.
    """
def idle_curve(scenario: Scenario, engine_speeds: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex | str]) -> dict:
    """
    The same over engine speeds, one column a result address.
    """
def in_unit(si: typing.SupportsFloat | typing.SupportsIndex, dimension: str, unit: str, system: str) -> float:
    """
    An SI number in the unit that people of this system use.
    """
def limits(scenario: Scenario) -> list:
    """
    The limits, as stated or built in.
    """
def loads(text: str | bytes, source: str | bytes) -> Scenario:
    """
    A scenario from the text of its file.
    """
def measure(scenario: Scenario, address: str | bytes) -> tuple:
    """
    The dimension and the unit of an input.
    """
def menu(scenario: Scenario) -> list:
    """
    The upgrades of the file.
    """
def numbers(scenario: Scenario) -> list:
    """
    Every number of the vehicle and what it means.
    """
def observed(scenario: Scenario) -> list:
    """
    What the vehicle was seen to do.
    """
def observed_rows() -> dict:
    """
    What the rows of an observation say.
    """
def operating_point(scenario: Scenario, stated: collections.abc.Mapping[str, typing.SupportsFloat | typing.SupportsIndex | str]) -> dict:
    """
    One operating point, explained, as plain objects.
    """
def question_rows() -> dict:
    """
    What the rows of a question say.
    """
def rank(scenario: Scenario, budget: typing.SupportsFloat | typing.SupportsIndex | None, upgrades: collections.abc.Sequence[str] | None, threads: typing.SupportsInt | typing.SupportsIndex, progress: typing.Any, solved: collections.abc.Sequence[str] | None = None) -> dict:
    """
    Every allowed set of the menu at three knock anchors, as plain objects; of sets that were solved in pieces, where they are handed over.
    """
def rank_groups(scenario: Scenario, upgrades: collections.abc.Sequence[str] | None) -> list[int]:
    """
    How many sets of a ranking are solved together, group by group.
    """
def rated_fit(scenario: Scenario) -> typing.Any:
    """
    How the stock engine meets its rated figures, SI; None where none are stated.
    """
def read_quantity(text: str, dimension: str, unit: str, example: str) -> tuple[float, float | None]:
    """
    Value and standard deviation in SI of a text such as "0.70 ± 0.05 m2".
    """
def readable(si: typing.SupportsFloat | typing.SupportsIndex, dimension: str, unit: str, system: str, digits: typing.SupportsInt | typing.SupportsIndex = 3) -> str:
    """
    An SI number for people, in the unit their system uses in place of this one.
    """
def readable_number(number: typing.SupportsFloat | typing.SupportsIndex, digits: typing.SupportsInt | typing.SupportsIndex = 3) -> str:
    """
    A plain number for people.
    """
def result_row(address: str | bytes) -> typing.Any:
    """
    What the row of a result says, from its address alone; None where there is none.
    """
def rolling_free(scenario: Scenario) -> dict:
    """
    Mass with the turning wheels, kg, and density of the day's air, kg/m3.
    """
def scenario_rows() -> dict:
    """
    What the rows of all that a scenario tells say.
    """
def schema_text() -> str:
    """
    The JSON Schema of scenario files.
    """
def si_unit(dimension: str) -> str:
    """
    The SI unit that numbers of a dimension are held in.
    """
def sigma(scenario: Scenario, address: str | bytes) -> float:
    """
    One standard deviation of an input, SI.
    """
def solve_groups(scenario: Scenario, upgrades: collections.abc.Sequence[str] | None, first: typing.SupportsInt | typing.SupportsIndex, last: typing.SupportsInt | typing.SupportsIndex, threads: typing.SupportsInt | typing.SupportsIndex, progress: typing.Any) -> bytes:
    """
    The sets of some groups, packed.
    """
def sweep(scenario: Scenario, addresses: collections.abc.Sequence[str], values: collections.abc.Sequence[collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex]], outputs: collections.abc.Sequence[str], threads: typing.SupportsInt | typing.SupportsIndex, progress: typing.Any) -> dict:
    """
    The top speed of every variant, one column for each input.
    """
def top_speed(scenario: Scenario, brief: bool = False) -> dict:
    """
    The top speed, explained, as plain objects; briefly, only how fast and the point there.
    """
def uncertain(scenario: Scenario) -> list:
    """
    Every number that is not known exactly, SI, and the range that it is cut at.
    """
def unit_shown(dimension: str, unit: str, system: str) -> str:
    """
    The unit that people of this system use in place of this one.
    """
def unrated(scenario: Scenario) -> list[str]:
    """
    Results that no rating is given for.
    """
def world(scenario: Scenario, values: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex]) -> Scenario:
    """
    The scenario with a value, SI, for each of its uncertain numbers, in their order.
    """
def world_answers(scenario: Scenario, values: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], situations: collections.abc.Sequence[collections.abc.Mapping[str, typing.SupportsFloat | typing.SupportsIndex | None]], results: collections.abc.Sequence[collections.abc.Sequence[str]], threads: typing.SupportsInt | typing.SupportsIndex, progress: typing.Any) -> dict:
    """
    What every world has in each situation, result by result.
    """
def world_speeds(scenario: Scenario, values: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], sets: collections.abc.Sequence[collections.abc.Sequence[str]], threads: typing.SupportsInt | typing.SupportsIndex, progress: typing.Any) -> dict:
    """
    The speed of every set in every world, and how each ended.
    """
