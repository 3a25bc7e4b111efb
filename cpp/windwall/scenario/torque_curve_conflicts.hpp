#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/upgrade.hpp"

namespace windwall::scenario {

/// A measured torque curve holds the charge path of its day. Complains of a driven part beside one,
/// and of every upgrade that changes the charge path, which no such curve can answer.
void find_torque_curve_conflicts(const vehicle::Vehicle& vehicle, const Menu& menu,
                                 const fields::Cursor& root);

}  // namespace windwall::scenario
