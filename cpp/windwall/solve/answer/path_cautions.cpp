#include "windwall/solve/answer/path_cautions.hpp"

#include "windwall/fields/readable.hpp"

namespace windwall::solve {
namespace {

using fields::readable;
using vehicle::Balance;
using vehicle::Station;

constexpr double hottest_charge = 273.15 + 200;  // K; coated rotors are rated to 130 to 150 degC
constexpr double near_runaway = 0.5;             // share of what the rotors carry that leaks back
constexpr double least_condensate = 1e-6;        // kg per kg of dry air
constexpr double least_siphoned = 1e-6;          // kg/s

void add_blower(const Balance& balance, const std::string& address, const Station& station,
                std::vector<Caution>& cautions) {
    const double depression = balance.surroundings().ambient_pressure - station.inlet.pressure;
    if (depression > seal_depression) {
        cautions.push_back({Concern::inlet_depression, address + "/inlet_depression",
                            "The blower's inlet is " +
                                readable(depression, fields::pressure_difference("kPa"), {}, 2) +
                                " below the air around: unvented seals draw oil into the charge, "
                                "which costs octane and fouls plugs."});
    }
    if (station.outlet.temperature > hottest_charge) {
        cautions.push_back(
            {Concern::hot_charge, address + "/outlet/temperature",
             "The charge leaves the blower at " +
                 readable(station.outlet.temperature, fields::temperature("degC"), {}, 3) +
                 ": rotors grow into the case far below that."});
    }
    const double leak = station.leak_share();
    if (leak > near_runaway) {
        cautions.push_back({Concern::thermal_runaway, address + "/leak_share",
                            "The hot leak is " + readable(leak, fields::percent(), {}, 2) +
                                " of what the rotors carry: a little more pressure or less speed "
                                "and the temperature runs away."});
    }
    if (station.compression.surging) {
        cautions.push_back({Concern::surge, address + "/pressure_ratio",
                            "The compressor is asked for more pressure than its speed holds at "
                            "this flow: it surges, which shakes belt and bearings to pieces. What "
                            "is printed here is a continuation, not a prediction."});
    }
    if (station.compression.choked) {
        cautions.push_back({Concern::choke, address + "/outlet/flow",
                            "The compressor is beyond the choke end of its speed line: it passes "
                            "little more, and the map says nothing of its efficiency here."});
    }
}

void add_nozzle(const std::string& address, const charge::Spray& spray, double least_pressure,
                std::vector<Caution>& cautions) {
    if (spray.flow > spray.siphoned && !spray.atomises) {
        const auto text = [](double pressure) {
            return readable(pressure, fields::pressure_difference("kPa"), {}, 3);
        };
        cautions.push_back({Concern::coarse_spray, address + "/pressure_difference",
                            "The nozzle has " + text(spray.pressure_difference) +
                                " across it, less than the " + text(least_pressure) +
                                " of a fine spray: it dribbles, and most of it wets the wall."});
    }
    if (spray.siphoned > least_siphoned) {
        cautions.push_back(
            {Concern::siphoning, address + "/siphoned",
             "Vacuum draws " + readable(spray.siphoned, fields::mass_flow("g/s"), {}, 2) +
                 " of liquid out of the tank while the pump rests: a check valve in the line "
                 "holds it back."});
    }
}

void add_cooler(const std::string& address, const Station& station,
                std::vector<Caution>& cautions) {
    const std::size_t water = media::index(media::Vapour::water);
    const double condensed = station.outlet.liquid[water] - station.inlet.liquid[water];
    if (condensed < least_condensate) return;
    cautions.push_back(
        {Concern::condensation, address + "/outlet/temperature",
         "Water condenses in the cooler, " +
             readable(condensed * station.inlet.dry_air, fields::mass_flow("g/s"), {}, 2) +
             ": it pools there and comes out in gulps."});
}

}  // namespace

std::vector<Caution> path_cautions(const Balance& balance) {
    std::vector<Caution> cautions;
    const auto& path = balance.vehicle().charge_path;
    for (std::size_t i = 0; i < path.size(); ++i) {
        const std::string address = "charge_path/" + path[i].id;
        path[i].part.visit([&]<class Part>([[maybe_unused]] const Part& part) {
            const Station& station = balance.stations()[i];
            if constexpr (charge::Driven<Part>) add_blower(balance, address, station, cautions);
            if constexpr (std::is_same_v<Part, charge::ChargeCooler>)
                add_cooler(address, station, cautions);
            if constexpr (charge::Spraying<Part>)
                add_nozzle(address, part.spray(station.inlet, balance.surroundings()),
                           part.least_pressure, cautions);
        });
    }
    return cautions;
}

}  // namespace windwall::solve
