#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/upgrade.hpp"

namespace windwall::scenario {

/// A measured torque curve holds the charge path of its day. Complains of a driven part beside one,
/// and of every upgrade that changes the charge path, which no such curve can answer.
void refuse_beside_a_curve(const vehicle::Vehicle& vehicle, const Menu& menu,
                           const fields::Cursor& root);

}  // namespace windwall::scenario
