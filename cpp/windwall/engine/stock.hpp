#pragma once
#include "windwall/engine/cylinder.hpp"

namespace windwall::engine {

/// The engine as its maker rated it: its ratio, and bare where the figures are gross.
Cylinder stock_of(const Cylinder& engine);

/// Full throttle of a stock engine on a day, without a blower, with the flow that it draws.
Intake full_throttle(const Cylinder& stock, const media::Fuel& fuel, double engine_speed,
                     double temperature);

}  // namespace windwall::engine
