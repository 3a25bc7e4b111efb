"""
Handbook formulas, SI units.
"""
from __future__ import annotations
import collections.abc
import numpy
import numpy.typing
import typing
__all__: list[str] = ['adiabatic_equilibrium', 'air_drag', 'air_gamma', 'air_heat_capacity', 'air_speed', 'air_viscosity', 'asked_by_end_gas', 'asked_by_rule', 'belt_cvt_efficiency', 'belt_driven_radius', 'belt_driving_radius', 'belt_length', 'belt_pull', 'belt_tension_ratio', 'belt_wrap', 'belt_wrap_ratio', 'blend_properties', 'blower_indicated_work', 'blower_point', 'burnt_share', 'case_surface', 'caught_in_bend', 'centrifugal_clutch_torque', 'chain_speed_ripple', 'clamp_torque', 'coast_down_distance', 'coast_down_speed', 'coast_down_time', 'cooler_conductance', 'corrected_flow', 'corrected_speed', 'critical_ratio', 'crossflow_effectiveness', 'cycle_spread', 'darcy_friction_factor', 'density_altitude', 'dew_point', 'din70020_factor', 'drop_properties', 'drop_rate', 'dry_air_density', 'duct_pressure_drop', 'evaporated', 'evaporated_share', 'evaporative_cooling', 'exhaust_pressure_rise', 'filling_head_share', 'filling_temperature_share', 'filter_pressure_drop', 'flow_function', 'flyweight_force', 'flyweight_mass', 'flyweight_speed', 'fuel_air_efficiency', 'fuel_density', 'gas_constant', 'gas_enthalpy', 'gas_gamma', 'gas_heat_capacity', 'gas_temperature_shift', 'geopotential_altitude', 'head_temperature', 'heating_value', 'humid_air_density', 'humidity_ratio', 'ideal_volumetric_efficiency', 'ignition_delay', 'impeller_flow', 'impeller_pressure_ratio', 'impeller_work', 'injector_duty', 'injector_pulse_width', 'isentropic_head', 'iso1585_factor', 'j1349_factor', 'jet_metering', 'knock_integral', 'knock_probability', 'late_spark_wall_share', 'latent_heat', 'liquid_enthalpy', 'liquid_properties', 'load_index_mass', 'mach_filling', 'mach_index', 'mean_effective_pressure', 'mean_piston_speed', 'mixture_with_alcohol', 'molar_octane', 'monotone_cubic', 'nozzle_flow', 'octane_of_integral', 'octane_requirement', 'oil_viscosity_ratio', 'orifice_flow', 'outside_film', 'overall_ratio_engine_speed', 'overall_ratio_speed', 'petrol_pressure', 'pipe_conductance', 'road_load', 'road_load_polynomial', 'rolling_radius', 'roots_efficiency', 'rubbing_mean_pressure', 'run_up_constant_force_distance', 'run_up_constant_force_speed', 'run_up_constant_force_time', 'run_up_constant_power_distance', 'run_up_constant_power_speed', 'run_up_constant_power_time', 'saturation_pressure', 'sauter_diameter', 'share_that_burns', 'sheave_travel', 'slip_speed', 'slowed_burn', 'spark_penalty', 'speed_symbol_limit', 'spray_start', 'stage_loss', 'stage_torque', 'standard_atmosphere_density', 'standard_atmosphere_pressure', 'standard_atmosphere_temperature', 'station_pressure', 'stoichiometric_ratio', 'stokes_number', 'swept_flow', 'swept_volume', 'throttle_area', 'throttle_flow', 'top_speed_for_power', 'torque_cam_force', 'traction_limit', 'tyre_code', 'tyre_diameter', 'tyre_slip', 'unburnt_share', 'valve_mean_pressure', 'valve_open_share', 'vapour_pressure', 'water_alcohol_activity', 'yaw_angle']
def adiabatic_equilibrium(pressure: typing.SupportsFloat | typing.SupportsIndex, temperature: typing.SupportsFloat | typing.SupportsIndex, humidity_ratio: typing.SupportsFloat | typing.SupportsIndex = 0.0, liquid: dict = {}, liquid_temperature: typing.SupportsFloat | typing.SupportsIndex = 298.15) -> dict:
    """
    Air with liquid sprayed in, once nothing evaporates or condenses any more.
    
    Pa absolute, K; `liquid` gives kg per kg of dry air by name (water, methanol, ethanol, petrol).
    Constant pressure, no heat from outside, no ice. Returns temperature in K, vapour and liquid by name,
    enthalpy in J per kg of dry air, density of the gas in kg/m3.
    """
def air_drag(drag_area: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], air_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Drag, N, 1/2 rho CdA v |v|: drag area in m2, density in kg/m3, air speed in m/s. Mach below 0.3.
    """
def air_gamma(temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Ratio of heat capacities of dry air at a temperature in K.
    """
def air_heat_capacity(temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Heat capacity cp of dry air, J/(kg K), at a temperature in K, 200 to 1000.
    """
def air_speed(speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], wind: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], angle: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Speed of the air past the vehicle; any one unit of speed, angle in rad between where the wind comes from and the travel. 40 CFR 1037.528.
    """
def air_viscosity(temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Dynamic viscosity of air, Pa s, at a temperature in K.
    
    Sutherland's law with the constants of the U.S. Standard Atmosphere 1976.
    """
def asked_by_end_gas(compression_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 8.0, engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 261.79938779914943, manifold_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 100000.0, charge_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 298.15, exhaust_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 100000.0, lambda_: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.9586, water: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, methanol: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, retard: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    The same by the ignition delay of the end gas, from the same anchor.
    """
def asked_by_rule(compression_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 8.0, engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 261.79938779914943, manifold_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 100000.0, charge_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 298.15, exhaust_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 100000.0, lambda_: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.9586, water: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, methanol: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, retard: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Octane number that an engine of the usual class asks of the fuel in its tank, by the octane rule from the usual anchor. SI units; water and methanol are drops at the valve, kg per kg of dry air; retard in rad.
    """
def belt_cvt_efficiency(torque: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], rated_torque: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 400.0) -> typing.Any:
    """
    Efficiency of a rubber-belt variator with the default losses, which have no source; torque in N m and speed in rad/s at the driving sheave, ratio driven over driving radius.
    """
def belt_driven_radius(driving_radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], centre_distance: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], length: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    The other radius, m, that a belt of this length leaves.
    """
def belt_driving_radius(ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], centre_distance: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], length: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Pitch radius, m, of the driving sheave at which a belt of this length turns the driven one `ratio` times as slowly.
    """
def belt_length(driving_radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], driven_radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], centre_distance: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Pitch length, m, of an open belt on two pulleys, all in m; exact. Handbook geometry.
    """
def belt_pull(strands: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], linear_density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], tension_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Pull, N, at which a belt slips whose two strands are stretched to `strands` N together; kg/m and m/s.
    """
def belt_tension_ratio(friction: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], wrap: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], half_angle: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Tight over slack tension at slip, each less the centrifugal tension; half the groove angle in rad, a quarter turn for a flat belt. Euler and Eytelwein.
    """
def belt_wrap(radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], other_radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], centre_distance: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Angle, rad, that an open belt wraps on the first pulley.
    """
def belt_wrap_ratio(driving_radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], driven_radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], centre_distance: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Wrap of the driving sheave over that of the driven one: in what ratio the forces along both shafts balance, and by how much one radius falls while the other rises. Virtual work of an inextensible belt without friction.
    """
def blend_properties(ethanol: typing.SupportsFloat | typing.SupportsIndex, methanol: typing.SupportsFloat | typing.SupportsIndex, by_mass: bool) -> dict:
    """
    Properties of petrol with shares of ethanol and methanol by volume before mixing, or by mass. SI units.
    """
def blower_indicated_work(inlet_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], outlet_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], displacement: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], built_in_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 1.0, gamma: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 1.4) -> typing.Any:
    """
    Work of one revolution of a positive-displacement blower on the gas, J.
    
    Pa, m3 a revolution. Isentropic inside by built_in_ratio (1 for a Roots), then at constant volume to the outlet pressure, from either side.
    """
def blower_point(inlet_pressure: typing.Any, inlet_temperature: typing.Any, outlet_pressure: typing.Any, rotor_speed: typing.Any, displacement: typing.Any, leak_area: typing.Any = 0.0, built_in_ratio: typing.Any = 1.0, friction_torque: typing.Any = 0.0, friction_to_charge: typing.Any = 0.5, case_conductance: typing.Any = 0.0, case_to_air: typing.Any = 0.0, gas_constant: typing.Any = 287.05, gamma: typing.Any = 1.4) -> dict:
    """
    A leaking positive-displacement blower between two given pressures.
    
    Pa absolute, K, rad/s, m3 a revolution, m2 (effective), N m, W/K, J/(kg K); arrays broadcast. The heat
    capacity is constant, gamma R/(gamma - 1). Returns a dictionary: flow and leak_flow in kg/s,
    outlet_temperature in K, indicated_power, friction_power, shaft_power, heat_to_charge, casing_loss and bearing_loss in W,
    case_temperature in K (conductances in W/K; the air around the case is as warm as the inlet),
    volumetric_efficiency, shaft_efficiency, temperature_efficiency, and status. The hot leak takes up
    room at the inlet, so the balance has two solutions or none: the larger flow is taken; without one
    the numbers are NaN and status says "runaway" (the leak heats the inlet without end) or
    "overwhelmed" (even cold, the leak is more than the rotors take in).
    """
def burnt_share(part: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Share burnt at a part of the burn duration. Wiebe, a = 5, m = 2, normalised.
    """
def case_surface(displacement: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Outer surface of a blower's case, m2, by what it moves a revolution, m3.
    """
def caught_in_bend(stokes_number: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], angle: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Share of drops that a bend of `angle` rad puts on its wall, by the Stokes number on the bore.
    
    Pui, Romay-Novas and Liu 1987.
    """
def centrifugal_clutch_torque(speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], engagement_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], shoe_mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], drum_radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], shoe_radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], shoes: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 3.0, friction: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.3) -> typing.Any:
    """
    Torque, N m, that a centrifugal clutch carries; speeds in rad/s, kg and m.
    """
def chain_speed_ripple(teeth: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Share by which a chain's speed dips on a sprocket, 1 - cos(pi/z). From 5 teeth up. Polygon effect of machine-element textbooks.
    """
def clamp_torque(friction: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], force: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], half_angle: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Greatest torque, N m, of a belt between sheaves pressed with an axial force, N.
    """
def coast_down_distance(mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], start: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], end: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Distance, m, to roll from one speed to a lower one against a + c v^2.
    """
def coast_down_speed(mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], start: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], time: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Speed, m/s, after rolling for a time in s; a not negative.
    """
def coast_down_time(mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], start: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], end: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], linear: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Time, s, to roll from one speed to a lower one against A + B v + C v^2; SI, accelerated mass in kg.
    """
def cooler_conductance(charge_flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], cooling_flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], conductance: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], at_charge_flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], at_cooling_flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], hot_side_share: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.5, charge_exponent: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.7, cooling_exponent: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.6) -> typing.Any:
    """
    Conductance of a charge cooler, W/K, away from its rated flows (kg/s).
    
    Two films in series, each following its flow by a power law.
    """
def corrected_flow(flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], reference_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 100000.0, reference_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 298.15) -> typing.Any:
    """
    Flow, kg/s, of the same compressor at the reference state of its map: m sqrt(T/T_ref)/(p/p_ref); Pa and K at its inlet.
    """
def corrected_speed(speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], reference_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 298.15) -> typing.Any:
    """
    Speed that goes with the same Mach number at the reference temperature: N/sqrt(T/T_ref).
    """
def critical_ratio(gamma: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Pressure ratio at and below which an opening is choked.
    """
def crossflow_effectiveness(transfer_units: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], capacity_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Effectiveness of a cross-flow exchanger, both streams unmixed, exact.
    
    transfer_units UA/C_min 0 to 60, capacity_ratio C_min/C_max 0 to 1. Mason's series (1955).
    """
def cycle_spread(period: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], open_share: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], mixing_time: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    How far what one intake stroke catches of pulses is from what the next does, one standard deviation over the mean; s, rad/s. A stroke lasts 240 of 720 degrees; a stirred vessel before it takes `mixing_time` s to pass.
    """
def darcy_friction_factor(reynolds: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], relative_roughness: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Darcy friction factor of a round pipe, laminar to rough turbulent.
    
    Churchill, Chemical Engineering 84 (1977) 91. Reynolds number above 0.001.
    """
def density_altitude(density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Geopotential altitude, m, where the standard atmosphere has this density, kg/m3.
    """
def dew_point(vapour_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Temperature, K, at which vapour of this partial pressure in Pa condenses, below 273.16 K freezes.
    """
def din70020_factor(pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Reference power over measured power, DIN 70020 (withdrawn). Pa total, K. For reports only.
    """
def drop_properties(liquid: str) -> dict:
    """
    Surface tension, N/m, and viscosity, Pa s, of a liquid near 25 degC, and diffusivity of its vapour in air at 25 degC and 1 atm, m2/s.
    """
def drop_rate(pressure: typing.SupportsFloat | typing.SupportsIndex, temperature: typing.SupportsFloat | typing.SupportsIndex, humidity_ratio: typing.SupportsFloat | typing.SupportsIndex, liquid: dict) -> tuple[float, float]:
    """
    Temperature, K, and evaporation constant of d2 = d0^2 - K t, m2/s, of drops of a liquid (by mass shares) in still gas.
    
    Spalding's film, rule of one third.
    """
def dry_air_density(relative_humidity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Dry air in a cubic metre of moist air, kg/m3. Relative humidity 0 to 1, K, Pa.
    """
def duct_pressure_drop(flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], viscosity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], length: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], bore: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], loss_coefficient: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, roughness: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Pressure loss of a round pipe with bends, Pa: (f L/D + K) rho V^2/2.
    
    kg/s, kg/m3, Pa s, m. Darcy-Weisbach, incompressible: 1 % low at Mach 0.09, 5 % at 0.17.
    """
def evaporated(pressure: typing.SupportsFloat | typing.SupportsIndex, temperature: typing.SupportsFloat | typing.SupportsIndex, humidity_ratio: typing.SupportsFloat | typing.SupportsIndex, liquid: dict, liquid_temperature: typing.SupportsFloat | typing.SupportsIndex, drop_diameter: typing.SupportsFloat | typing.SupportsIndex, time: typing.SupportsFloat | typing.SupportsIndex) -> dict:
    """
    As adiabatic_equilibrium, but only as far as drops of this Sauter diameter, m, come in `time` s.
    """
def evaporated_share(evaporation_constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], time: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], diameter: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Share of the mass of equal drops gone after a time, s: 1 - (1 - K t/d^2)^1.5.
    """
def evaporative_cooling(dose: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], latent_heat: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], vapour_heat_capacity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], carried: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    K by which a dose (kg per kg of dry air) cools the gas it evaporates from. Latent heat in J/kg, heat capacities in J/(kg K); `carried` is that of fuel and vapours already there, per kg of dry air.
    """
def exhaust_pressure_rise(flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], back_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], at_flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], ambient_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], charge_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 298.15) -> typing.Any:
    """
    Pressure behind the exhaust valves above the weather, Pa, at a flow in kg/s, from the rise at one flow and 101 325 Pa. Square law over the density of a gas that leaves 800 K hotter than the charge.
    """
def filling_head_share(charge_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], head_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], reference_head_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 473.15, heating: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.2) -> typing.Any:
    """
    Filling over that with the head at a reference temperature; K. Estimate.
    """
def filling_temperature_share(charge_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], reference_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 298.15) -> typing.Any:
    """
    Volumetric efficiency, referred to the manifold, over that at the reference temperature, K. Square root, as in SAE J1349.
    """
def filter_pressure_drop(flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], drop: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], at_flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], linear_share: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.4, at_density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 1.2) -> typing.Any:
    """
    Pressure loss of an air filter, Pa, from one measured point.
    
    kg/s, kg/m3, Pa. Forchheimer's sum of a term in V and a term in rho V^2, of which linear_share is the first at the measured point.
    """
def flow_function(ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], gamma: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Isentropic flow function Psi of the ratio of downstream to upstream pressure.
    
    Choked below the critical ratio; a cubic of finite slope above 0.9995.
    """
def flyweight_force(speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], weights: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], ramp: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Force, N, with which weights on a ramp close a sheave that turns at a speed, rad/s: n m w2 R dR/dx; mass of one in kg, its radius in m, and how far it goes out for each metre of closing. Virtual work of the centrifugal force.
    """
def flyweight_mass(force: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], weights: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], ramp: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    The mass of one weight, kg, that closes with a force, N, at a speed, rad/s.
    """
def flyweight_speed(force: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], weights: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], ramp: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    The speed, rad/s, at which they close with a force, N: of the spring alone where the belt is gripped, with what the driven sheave answers where it shifts.
    """
def fuel_air_efficiency(compression_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], equivalence_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Indicated efficiency of the constant-volume fuel-air cycle with equilibrium products, compression ratio 6 to 12, equivalence ratio 0.6 to 1.4. Computed table, iso-octane, NASA properties.
    """
def fuel_density(ethanol: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Density, kg/m3, of petrol with this share of ethanol by volume, 0 to 1.
    """
def gas_constant(gas: str) -> float:
    """
    Gas constant of a gas by its name, J/(kg K).
    """
def gas_enthalpy(gas: str, temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Enthalpy of a gas by its name, J/kg, with the enthalpy of formation at 298.15 K.
    """
def gas_gamma(gas: str, temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Ratio of heat capacities of a gas by its name at a temperature in K.
    """
def gas_heat_capacity(gas: str, temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Heat capacity cp of a gas by its name, J/(kg K), at 200 to 1000 K.
    
    dry_air, nitrogen, oxygen, argon, carbon_dioxide, water, methanol, ethanol, petrol. NASA polynomials (TM-4513).
    """
def gas_temperature_shift(charge_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], equivalence_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    K by which the gas that heats a head is hotter than with charge of 25 degC and an equivalence ratio of 1.17. Estimate; no source.
    """
def geopotential_altitude(geometric: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Geopotential altitude, m, of a height above sea level in m. ISO 2533.
    """
def head_temperature(charge_flow_share: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], cooling_flow_share: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], air_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 298.15, known_head_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 473.15, known_air_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 298.15, gas_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 894.0) -> typing.Any:
    """
    Temperature of a head, K, from the flows of charge and of cooling air over those where it was known. Form of NACA TR 612 and 683, exponents 0.57 and 0.58; temperatures in K.
    """
def heating_value(ethanol: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Lower heating value, J/kg, of petrol with this share of ethanol by volume, 0 to 1.
    """
def humid_air_density(relative_humidity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Density of moist air, kg/m3, as an ideal mixture. Relative humidity 0 to 1, K, Pa.
    """
def humidity_ratio(relative_humidity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Vapour in kg per kg of dry air. Relative humidity 0 to 1, K, Pa.
    """
def ideal_volumetric_efficiency(compression_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], gamma: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Volumetric efficiency of the ideal cycle, referred to the manifold, for exhaust over intake pressure 0.3 to 3. Derived from the first law; Heywood 1988 has it as equation 6.2.
    """
def ignition_delay(octane_number: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Ignition delay of end gas, s; Pa, K, octane number 80 to 100. Douaud and Eyzat, SAE 780080, constants as they are commonly quoted.
    """
def impeller_flow(diameter: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], flow_coefficient: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Design flow, kg/s: flow coefficient, density, disc area and tip speed.
    """
def impeller_pressure_ratio(diameter: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], slip_factor: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], efficiency: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], heat_capacity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 1004.675, gamma: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 1.4) -> typing.Any:
    """
    Pressure ratio of an impeller at its design flow: (1 + eta sigma U2/(cp T))^(g/(g-1)).
    """
def impeller_work(diameter: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], slip_factor: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Work, J/kg, of an impeller at its design flow: sigma U2; m and rad/s. Textbooks of turbomachinery.
    """
def injector_duty(pulse_width: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Share of the four-stroke cycle that a pulse (s) takes at an engine speed in rad/s.
    """
def injector_pulse_width(fuel_flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], rated_flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], rated_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure_drop: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], fuel_density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], dead_time: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], count: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Pulse width of one injection a cycle, s. Fuel flow of all injectors in kg/s, rated flow of one in m3/s, pressures in Pa. Orifice law.
    """
def isentropic_head(pressure_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], heat_capacity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 1004.675, gamma: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 1.4) -> typing.Any:
    """
    Least work, J/kg, of a pressure ratio: cp T (r^((g-1)/g) - 1).
    """
def iso1585_factor(dry_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Reference power over measured power, ISO 1585, spark ignition. Pa, K.
    
    The standard holds it valid from 0.93 to 1.07. For reports only.
    """
def j1349_factor(dry_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Reference power over measured power, SAE J1349 in the form of 1990. Pa, K.
    
    For reports only; the engine model computes with the air of the day itself.
    """
def jet_metering(depression: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], bowl_above_inlet: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Fuel a carburettor draws over what its depression alone would draw; Pa.
    """
def knock_integral(compression_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], exponent: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], heat: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], burn_start: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], burn_duration: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], gas_constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 275.0) -> typing.Any:
    """
    Livengood-Wu integral of the end gas for octane number 100, to 85 % burnt. State at bottom dead centre in Pa and K; heat in J/kg of charge; angles in rad after top dead centre; engine speed in rad/s.
    """
def knock_probability(margin: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], spread: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Chance that a normally distributed margin is below zero.
    """
def late_spark_wall_share(retard: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Heat to the chamber over that at the best spark, for a retard in rad.
    """
def latent_heat(ethanol: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Heat of vaporisation, J/kg, of petrol with this share of ethanol by volume, 0 to 1.
    """
def liquid_enthalpy(liquid: str, temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Enthalpy of a liquid, J/kg, on the scale of gas_enthalpy.
    """
def liquid_properties(liquid: str) -> dict:
    """
    Density, heat capacity, latent heat, stoichiometric ratio, lower heating value and molar mass of water, methanol, ethanol or petrol at 25 degC, SI units.
    """
def load_index_mass(index: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Greatest load, kg, of a load index from 0 to 130; NaN outside.
    """
def mach_filling(mach_index: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], intake_closing: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Filling relative to the best, for Mach indices of 0.2 to 1.2 and an intake closing 20 to 60 degrees (in rad) after bottom dead centre. Computed table.
    """
def mach_index(piston_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], intake_area_share: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], sound_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Inlet Mach index. Speeds in m/s; mean flow area of the open intake valves as a share of the piston's area. JSME mechanical-engineering dictionary, 11:1002813.
    """
def mean_effective_pressure(power: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], swept_volume: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Mean effective pressure of a four-stroke, Pa. Power in W, swept volume in m3, engine speed in rad/s.
    """
def mean_piston_speed(stroke: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Mean piston speed, m/s: stroke (m) x engine speed (rad/s) / pi.
    """
def mixture_with_alcohol(methanol: typing.SupportsFloat | typing.SupportsIndex, ethanol: typing.SupportsFloat | typing.SupportsIndex, target: typing.SupportsFloat | typing.SupportsIndex, trimmed: bool) -> tuple:
    """
    Petrol per kg of dry air and lambda, where methanol and ethanol (kg per kg of dry air) come with the charge of a petrol engine set to a target lambda.
    """
def molar_octane(petrol_number: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], alcohol_number: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], alcohol_molar_share: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Octane number of a blend, linear in molecules. Anderson et al., Energy & Fuels 24 (2010) 6576.
    """
def monotone_cubic(points: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex], values: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex], at: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Monotone piecewise cubic through measured points, held at its ends outside.
    
    Fritsch and Butland 1984, as every table read with it.
    """
def nozzle_flow(rated_flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure_difference: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], rated_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Flow of a nozzle by the root of the pressure across it; any unit of flow, Pa.
    """
def octane_of_integral(integral: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Octane number that makes a knock integral 1.
    """
def octane_requirement(compression_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 8.0, engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 261.79938779914943, manifold_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 100000.0, charge_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 298.15, head_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 453.15, retard: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, lambda_: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.9586, humidity_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0071, exhaust_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 100000.0, anchor_octane_number: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 92.0) -> typing.Any:
    """
    Octane number needed to keep the usual anchor engine from knock, known to 10. SI units, retard in rad. Slopes of Russ, SAE 960497; to twice the pressure.
    """
def oil_viscosity_ratio(temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], other_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 373.15) -> typing.Any:
    """
    Viscosity of SAE 30 oil over that at another temperature; K. Form of Seireg and Dandage, held against SAE J300.
    """
def orifice_flow(effective_area: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], upstream_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], upstream_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], downstream_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], R: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], gamma: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Mass flow through an opening, kg/s; negative when the downstream pressure is the higher.
    
    m2, Pa absolute, K, Pa absolute, J/(kg K).
    """
def outside_film(air_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    From warm walls under the bodywork to air that passes them, W/(m2 K); m/s.
    
    A laminar flat plate of 0.1 m, and what radiates and rises by itself.
    """
def overall_ratio_engine_speed(road_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], slip: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Engine speed, rad/s, at a road speed in m/s; slip below 1.
    """
def overall_ratio_speed(engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], slip: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Road speed, m/s, at an engine speed in rad/s, overall ratio, rolling radius in m and slip as a share.
    """
def petrol_pressure(temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], evaporated: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Vapour pressure of petrol, Pa, of which a share 0 to 1 has evaporated; K. No source for its slope.
    """
def pipe_conductance(flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], viscosity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], bore: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], length: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], outside: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 15.0) -> typing.Any:
    """
    Conductance of a pipe between the gas inside and the air around, W/K.
    
    kg/s, Pa s, m, m, W/(m2 K). Dittus and Boelter inside.
    """
def road_load(speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], drag_area: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], rolling_resistance: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], headwind: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, grade: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, rolling_rise: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Drag, rolling resistance and slope together, N. Speeds in m/s, mass in kg, drag area in m2, density in kg/m3, grade as rise over run, rolling_rise as the share that rolling resistance gains at 100 km/h.
    """
def road_load_polynomial(speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], linear: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    A + B v + C v^2, in any one set of units. Form of 40 CFR 1066.310.
    """
def rolling_radius(size: str, factor: typing.SupportsFloat | typing.SupportsIndex = 0.969) -> float:
    """
    Rolling radius, m, of a tyre size; the factor is over half the overall diameter, by default the median of 70 cars of 1990 (Consumer Reports 1990).
    """
def roots_efficiency(pressure_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], gamma: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 1.4) -> typing.Any:
    """
    Isentropic work over the work of an ideal Roots blower.
    
    Pressure ratio above 0; g/(g-1) (r^((g-1)/g) - 1)/(r - 1).
    """
def rubbing_mean_pressure(piston_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], boost: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, oil_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 373.15) -> typing.Any:
    """
    Rubbing mean effective pressure, Pa, of a small warm engine with the usual constants: 60 kPa + 4 kPa per m/s + 0.17 of the boost in Pa; the films of an oil in K, at 100 degC unless given. No source; 4.4 % of the fuel at full load, where a published balance has 3 %.
    """
def run_up_constant_force_distance(mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], thrust: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], start: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], end: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Distance, m, of the same.
    """
def run_up_constant_force_speed(mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], thrust: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], start: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], distance: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Speed, m/s, after a distance in m under a constant thrust.
    """
def run_up_constant_force_time(mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], thrust: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], start: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], end: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Time, s, from one speed to a higher one under a constant thrust against a + c v^2; SI, accelerated mass in kg. Infinite beyond the terminal speed.
    """
def run_up_constant_power_distance(mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], power: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], end: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Distance, m, of the same.
    """
def run_up_constant_power_speed(mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], power: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], distance: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Speed, m/s, after a distance in m from rest under a constant power.
    """
def run_up_constant_power_time(mass: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], power: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], end: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Time, s, from rest to a speed under a constant power at the wheels, in W, against a + c v^2 with a not negative. Infinite beyond the terminal speed.
    """
def saturation_pressure(temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Saturation pressure of water, Pa, at a temperature in K.
    
    Over ice from 173.15 K, over liquid from 273.16 to 473.15 K. Hyland and Wexler 1983, as in the ASHRAE Handbook, Fundamentals.
    """
def sauter_diameter(surface_tension: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], viscosity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], flow: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure_difference: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], gas_density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Sauter mean diameter of a pressure-swirl nozzle after Lefebvre, m; +-40 %.
    
    N/m, Pa s, kg/s, Pa, kg/m3. Form as commonly quoted.
    """
def share_that_burns(dilution: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Share of the charge that burns before the flame goes out, for a share of burned gas.
    """
def sheave_travel(radius_change: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], half_angle: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    How far one moving half of a sheave goes, m, while the belt climbs by a radius, m: 2 tan(beta) dr, half the groove angle in rad.
    """
def slip_speed(leak_area: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], displacement: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], pressure_rise: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], inlet_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], inlet_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], gas_constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 287.05) -> typing.Any:
    """
    Rotor speed spent on the leak alone, rad/s.
    
    m2 (effective), m3 a revolution, Pa, K, J/(kg K). Incompressible jet at the density of the inlet, as in the industry's slip test at 1 psi.
    """
def slowed_burn(dilution: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Burn duration over that at 5 % of burned gas, for a share of burned gas.
    """
def spark_penalty(retard: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Indicated torque over that at the best spark, for a retard in rad, within 30 degrees. Fit to computed cycles.
    """
def speed_symbol_limit(symbol: str) -> float:
    """
    Greatest speed, m/s, of a speed symbol from A1 to Y.
    """
def spray_start(delay: typing.SupportsFloat | typing.SupportsIndex, rise_time: typing.SupportsFloat | typing.SupportsIndex, fill_time: typing.SupportsFloat | typing.SupportsIndex, film_share: typing.SupportsFloat | typing.SupportsIndex, film_time: typing.SupportsFloat | typing.SupportsIndex, time: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> dict:
    """
    The first seconds after a switch closes at 0: when the first liquid leaves the nozzle, and over `time` the share of the pump, of the flow at the nozzle and at the valves. s.
    
    A pump and a film of first order, a line that is filled first.
    """
def stage_loss(torque: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], efficiency: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], drag_torque: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, churning_torque: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Power, W, that the same stage turns into heat; never negative.
    """
def stage_torque(torque: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], efficiency: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], drag_torque: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, churning_torque: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Torque, N m, behind a chain or a pair of gears: (T - drag) ratio efficiency. Torque in N m and speed in rad/s at the input; drag in N m, churning in N m at 5000 rpm. In overrun the efficiency divides. Losses split into drag and load as in Joachim, Boerner and Kurz, Gear Technology, September 2012.
    """
def standard_atmosphere_density(altitude: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Density of the standard atmosphere, kg/m3, at a geopotential altitude in m.
    
    -5000 to 11 000 m; beyond, the nearer end. ISO 2533.
    """
def standard_atmosphere_pressure(altitude: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Pressure of the standard atmosphere, Pa, at a geopotential altitude in m.
    
    -5000 to 11 000 m; beyond, the nearer end. ISO 2533.
    """
def standard_atmosphere_temperature(altitude: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Temperature of the standard atmosphere, K, at a geopotential altitude in m.
    
    -5000 to 11 000 m; beyond, the nearer end. ISO 2533.
    """
def station_pressure(altitude: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], sea_level_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 101325.0) -> typing.Any:
    """
    Barometer at a place, Pa, from its height above sea level in m and the sea-level pressure in Pa.
    
    The altimeter equation: the standard atmosphere shifted in height.
    """
def stoichiometric_ratio(ethanol: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    kg of dry air that burn one kg of petrol with this share of ethanol by volume, 0 to 1.
    """
def stokes_number(liquid_density: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], drop_diameter: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], velocity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], gas_viscosity: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], bore: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Stopping distance of a drop over the bore, rho d^2 V/(18 mu D). SI.
    """
def swept_flow(swept_volume: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], engine_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Volume swept per second by the intake strokes of a four-stroke, m3/s. Swept volume in m3, engine speed in rad/s.
    """
def swept_volume(bore: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], stroke: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], cylinders: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Volume swept by all pistons, m3. Lengths in m.
    """
def throttle_area(bore: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], shaft: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], plate_angle: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], closed_angle: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.10471975511965978) -> typing.Any:
    """
    Open area of a butterfly throttle with a shaft across the bore, m2.
    
    Lengths in m; angles in rad from the plane across the bore, between closed_angle and pi/2.
    Exact for an elliptic plate of no thickness: bore less the plate's ellipse and the shaft's strip.
    """
def throttle_flow(inlet_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], inlet_temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], outlet_pressure: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], opening: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], bore: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], shaft: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.008, closed_angle: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.10471975511965978, discharge_coefficient: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.8, leak_area: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0, gas_constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 287.05, gamma: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 1.4) -> typing.Any:
    """
    Gas flow through a butterfly throttle, kg/s; negative backwards.
    
    Pa absolute, K, m, rad, m2; opening 0 (shut) to 1 (wide) is the share of the plate's travel.
    Isentropic jet without recovery up to half travel; from there on it regains pressure smoothly, up
    to the sudden expansion of Borda and Carnot wide open.
    """
def top_speed_for_power(power: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], constant: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], square: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], headwind: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.0) -> typing.Any:
    """
    Speed, m/s, at which a power in W at the wheels is used up by a + c (v + w) |v + w|, a in N and c in N s2/m2, headwind w in m/s. Closed form in still air.
    """
def torque_cam_force(torque: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], radius: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], angle: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], share: typing.Annotated[numpy.typing.ArrayLike, numpy.float64] = 0.5) -> typing.Any:
    """
    Force, N, along the shaft of a helix of a mean radius, m, and angle from the plane across the shaft, rad, over which a share of a torque, N m, goes: f T/(r tan(alpha)), without friction.
    """
def traction_limit(weight: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], grip: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], driven_share: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], height_over_wheelbase: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], axle: str = 'rear') -> typing.Any:
    """
    Greatest thrust, N, for a weight in N: friction coefficient, share of the standing weight on the driven axle, height of the centre of gravity over the wheelbase.
    """
def tyre_code(size: str) -> dict:
    """
    What a size such as "155/80 R13 79T", "3.50-10" or "11x7.10-5" says, SI units.
    """
def tyre_diameter(section_width: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], aspect: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], rim: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Overall diameter, m, rim + 2 width aspect; lengths in m, aspect as a share.
    """
def tyre_slip(thrust: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], load: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], stiffness: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Share of the wheels' speed lost, F / (C_s F_z), within +-0.5.
    """
def unburnt_share(equivalence_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Share of the fuel's energy in the carbon monoxide and hydrogen of a rich mixture. Water-gas equilibrium frozen at 1740 K.
    """
def valve_mean_pressure(piston_speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], density_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], valves: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], diameter_ratio: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Mean effective pressure lost in the intake or the exhaust valves, Pa. Piston speed in m/s, density over 1.184 kg/m3, valves of a cylinder on this side, valve over bore diameter. Form of SAE 890836, constant not read there, scaled with density alone.
    """
def valve_open_share(duty: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], period: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], dead_time: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Share of the time a pulsed valve is open: duty less dead time over period.
    """
def vapour_pressure(liquid: str, temperature: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Saturation pressure, Pa, of water, methanol, ethanol or petrol's first drop.
    
    K, 200 to 473.15. Hyland and Wexler over liquid; Wagner; Clausius and Clapeyron through Reid's 60 kPa at 37.8 degC.
    """
def water_alcohol_activity(alcohol_share: typing.SupportsFloat | typing.SupportsIndex, ethanol: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> tuple[float, float]:
    """
    Activity coefficients (alcohol, water) after van Laar, by the mole share of alcohol in the liquid; `ethanol` is the mole share of ethanol among the alcohols.
    
    Methanol 0.86 and 0.56, ethanol 1.6798 and 0.9227.
    """
def yaw_angle(speed: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], wind: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], angle: typing.Annotated[numpy.typing.ArrayLike, numpy.float64]) -> typing.Any:
    """
    Angle, rad, of that air to the travel. 40 CFR 1037.528.
    """
