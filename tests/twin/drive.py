"""docs/physics/drive.md: a full-throttle run over time, by SciPy's `solve_ivp` and its events."""

from functools import partial

import numpy as np
from scipy.integrate import solve_ivp

from twin import road, warming
from twin.twin import NoStateError, point

SPEED, DISTANCE, FIRST_NODE = 0, 1, 2
SETTLED = 1e-10  # of the lag of the wheels


def nodes_of(drive):
    """{address: K} of every thermal node at the first kept moment of a drive of the core."""
    return {node: float(column[0]) for node, column in node_columns(drive).items()}


def node_columns(drive):
    """What the core keeps of every thermal node; all but a node's name an answer of a point too."""
    columns = dict(zip(drive["addresses"], drive["columns"], strict=True))
    nodes = {"head", "oil", "block", "case", "wall", "core", "belt", "air"}
    return {
        "/".join(words[:-1]): columns["/".join(words)]
        for words in (address.split("/") for address in columns)
        if len(words) > 2 and words[-1] == "temperature" and words[-2] in nodes
    }


class Drive:
    """One run from standstill at full throttle, through the gears at a stated engine speed.

    `nodes`: temperature of every thermal node where it begins, K. `outing`: `launch_speed`,
    `shift_speed` in rad/s, `shift_time` in s, `launch_gear` from 1, `for_distance` in m.
    """

    def __init__(self, vehicle, nodes, outing, tolerance=1e-6):
        self.vehicle, self.outing, self.tolerance = vehicle, outing, tolerance
        self.names = list(nodes)
        self.state = np.array([0.0, 0.0, *nodes.values()])
        self.time, self.gear, self.lag = 0.0, outing["launch_gear"] - 1, 1.0
        self.events, self.pieces, self.evaluations, self.points = [], [], 0, 0
        self.standing_radius = road.rolling_radius(vehicle["tyres"], 0.0)
        self.before_shift = None  # the balance, whose charge the metal has while gears change

    # what one moment is

    def engine_at(self, engine_speed, state):
        nodes = dict(zip(self.names, state[FIRST_NODE:], strict=True))
        self.points += 1
        return point(self.vehicle, engine_speed, 1.0, max(state[SPEED], 0.0), nodes)

    def mass(self, phase):
        return road.accelerated_mass(
            self.vehicle, self.gear, self.standing_radius, phase != "driving"
        )

    def thrust(self, wheels, v, phase):
        """As far as the tyres hold, which what turns does not need; and the slip."""
        load = road.road_load(self.vehicle, self.vehicle["air"], v)
        limit, inertia = road.grip_limit(self.vehicle), self.mass(phase)
        turning = inertia - road.rolling_mass(self.vehicle, self.standing_radius)
        most = limit + turning * (limit - load) / (inertia - turning)
        thrust = min(wheels / road.rolling_radius(self.vehicle["tyres"], v), most)
        pushed = thrust - turning * (thrust - load) / inertia
        return thrust, road.slip(self.vehicle, pushed)

    def geared(self, v):
        """Engine speed without slip."""
        radius = road.rolling_radius(self.vehicle["tyres"], v)
        return v / radius * road.overall_ratio(self.vehicle, self.gear)

    def driving(self, state):
        """Engine speed, thrust and the point, repeated until the lag of the wheels agrees."""
        before = None
        while before is None or abs(self.lag / before - 1) > SETTLED:
            before, N = self.lag, self.geared(state[SPEED]) * self.lag
            answers = self.engine_at(N, state)
            wheels = road.wheel_torque(self.vehicle, self.gear, N, answers["torque"])
            thrust, slip = self.thrust(wheels, state[SPEED], "driving")
            self.lag = 1 / (1 - slip)
        return N, thrust, answers

    def slipping(self, state):
        """The same at the speed of the launch; the engine speed at which nothing would slip."""
        N, v, lag = self.outing["launch_speed"], state[SPEED], 1.0
        answers = self.engine_at(N, state)
        for _ in range(3):  # the drag of what turns with the wheels hardly knows of their slip
            turning = self.geared(v) * lag
            wheels = road.parted_torque(self.vehicle, self.gear, N, turning, answers["torque"])
            thrust, slip = self.thrust(wheels, v, "slipping")
            lag = 1 / (1 - slip)
        return self.geared(v) * lag, thrust, answers

    def rates(self, phase, _, state):
        self.evaluations += 1
        v = state[SPEED]
        if phase == "shifting":
            dragged = road.dragged(self.vehicle, self.gear, self.geared(v))
            thrust, _ = self.thrust(dragged, v, phase)
            now = dict(zip(self.names, state[FIRST_NODE:], strict=True))
            nodes = self.node_rates(self.before_shift, now)
        else:
            _, thrust, answers = getattr(self, phase)(state)
            nodes = self.node_rates(answers["balanced"])
        surplus = thrust - road.road_load(self.vehicle, self.vehicle["air"], v)
        return np.array([surplus / self.mass(phase), v, *nodes])

    def node_rates(self, balanced, now=None):
        found = warming.rates(self.vehicle, balanced, now)
        assert found.keys() == set(self.names)
        return [found[name] for name in self.names]

    # how one follows the other

    def go(self):
        phase = "slipping" if self.outing["launch_speed"] > 0 else "driving"
        while phase:
            phase = self.follow(phase)
        return self

    def follow(self, phase):
        """One phase until something ends it; the phase behind it, or None at the end."""
        watched = {"leg_ends": lambda t, state: state[DISTANCE] - self.outing["for_distance"]}
        last = self.time + 1e3
        if phase == "slipping":
            launch = self.outing["launch_speed"]
            watched["clutch_grips"] = lambda t, state: self.slipping(state)[0] / launch - 1
        if phase == "driving" and self.gear + 1 < road.gears(self.vehicle):
            shift = self.outing["shift_speed"]
            watched["shift_begins"] = lambda t, state: self.driving(state)[0] / shift - 1
        if phase == "shifting":
            last = self.time + self.outing["shift_time"]
        ended = self.integrate(phase, last, watched)
        if phase != "driving" and ended != "leg_ends":
            ended = {"slipping": "clutch_grips", "shifting": "shift_ends"}[phase]
        self.events.append((ended, self.time, *self.state[:2]))
        if ended == "shift_begins":
            self.before_shift = self.driving(self.state)[2]["balanced"]
            self.gear += 1
            return "shifting"
        if ended == "shift_ends" and self.geared(self.state[SPEED]) < self.outing["launch_speed"]:
            return "slipping"
        return None if ended == "leg_ends" else "driving"

    def integrate(self, phase, last, watched):
        events = list(watched.values())
        for event in events:
            event.terminal, event.direction = True, 1
        solved = solve_ivp(
            partial(self.rates, phase),
            (self.time, last),
            self.state,
            method="DOP853",
            rtol=self.tolerance,
            atol=self.tolerance,
            events=events,
            dense_output=True,
        )
        if not solved.success:
            raise NoStateError(solved.message)
        self.pieces.append(solved.sol)
        self.time, self.state = float(solved.t[-1]), solved.y[:, -1]
        happened = [name for name, at in zip(watched, solved.t_events, strict=True) if len(at)]
        return happened[0] if happened else None

    def at(self, time):
        """The state at one time: road speed, distance and every node."""
        after = (piece for piece in self.pieces if time <= piece.t_max)
        return next(after, self.pieces[-1])(time)
