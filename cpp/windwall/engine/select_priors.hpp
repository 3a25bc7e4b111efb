#pragma once
#include "windwall/engine/class_priors.hpp"

#include <functional>

namespace windwall::engine {

/// Whether a value of the engine is stated, by its address from the engine.
using Stated = std::function<bool(std::string_view)>;

/// The design with what else the file tells of it: a carburettor or injectors, several intake
/// valves, coolant. Unknown throughout where the builder described nothing.
Design known_design(const Cylinder& engine, bool carburetted, const Stated& stated);

/// Puts what its design tells, or else the usual value, wherever nothing is stated. The anchor of
/// the knock rule is then known to what its class tells.
void select_priors(Cylinder& engine, bool carburetted, const Stated& stated);

/// The same for an engine that an upgrade made of another one: what is not stated moves with its
/// class, and keeps as many sigma from it as before.
void move_priors(const Cylinder& before, bool carburetted_before, Cylinder& after,
                 bool carburetted_after, const Stated& stated);

}  // namespace windwall::engine
