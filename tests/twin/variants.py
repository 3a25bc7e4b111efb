"""What the example is changed into, for the twin and for the peer."""

SCREW = {
    "charge_path/blower/built_in_ratio": 1.35,
    "charge_path/blower/fill_loss": "4 %",
    "charge_path/blower/case_conductance": "6 W/K",
    "charge_path/blower/friction_torque_per_speed": "0.3 N m",
    "charge_path/blower/friction_to_charge": 0.8,
}
