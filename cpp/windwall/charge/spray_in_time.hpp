#pragma once
#include "windwall/charge/evaporative_injection.hpp"

/// A spray over time: what an integration asks of a nozzle whose pump and line it holds.
namespace windwall::charge {

/// How far what switches the pump is met, in widths of its steps: the pump is switched on above 0.
/// One that was on stays so down to its hysteresis. 1 where nothing switches it.
double switch_margin(const EvaporativeInjection& part, bool was_on, const media::Stream& in,
                     const Surroundings& surroundings) noexcept;

bool switched_on(const EvaporativeInjection& part, bool was_on, const media::Stream& in,
                 const Surroundings& surroundings) noexcept;

/// Share of its pump to which it runs up: none while the switch is off or its delay is not over. In
/// a long pull without hysteresis what `spray` answers where nothing is held.
double running_wanted(const EvaporativeInjection& part, bool on, const media::Stream& in,
                      const Surroundings& surroundings) noexcept;

/// 1/s, by which the share of the pump nears what is wanted: a lag of first order.
double running_rate(const EvaporativeInjection& part, double running, double wanted) noexcept;

/// Share of the line that holds liquid once the pump rests: all of it behind a check valve, or
/// where vacuum draws; else it has run back into the tank.
double line_at_rest(const EvaporativeInjection& part, double siphoned) noexcept;

/// 1/s, by which a line fills from a flow in kg/s; none once it is full.
double line_fill_rate(const EvaporativeInjection& part, double filled, double flow) noexcept;

}  // namespace windwall::charge
