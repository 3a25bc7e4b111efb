#include "windwall/solve/path_cautions.hpp"

#include "windwall/fields/readable.hpp"

namespace windwall::solve {
namespace {

using fields::readable;
using vehicle::Balance;
using vehicle::Station;

constexpr double hottest_charge = 273.15 + 200;  // K; coated rotors are rated to 130 to 150 degC
constexpr double near_runaway = 0.5;             // share of what the rotors carry that leaks back
constexpr double least_condensate = 1e-6;        // kg per kg of dry air

void add_blower(const Balance& balance, const std::string& address, const Station& station,
                std::vector<Caution>& cautions) {
    const double depression = balance.around().ambient_pressure - station.inlet.pressure;
    if (depression > seal_depression) {
        cautions.push_back({address + "/inlet_depression",
                            "The blower's inlet is " +
                                readable(depression, fields::pressure_difference("kPa"), {}, 2) +
                                " below the air around: unvented seals draw oil into the charge, "
                                "which costs octane and fouls plugs."});
    }
    if (station.outlet.temperature > hottest_charge) {
        cautions.push_back(
            {address + "/outlet/temperature",
             "The charge leaves the blower at " +
                 readable(station.outlet.temperature, fields::temperature("degC"), {}, 3) +
                 ": rotors grow into the case far below that."});
    }
    const double leak = station.leak_share();
    if (leak > near_runaway) {
        cautions.push_back({address + "/leak_share",
                            "The hot leak is " + readable(leak, fields::percent(), {}, 2) +
                                " of what the rotors carry: a little more pressure or less speed "
                                "and the temperature runs away."});
    }
}

void add_cooler(const std::string& address, const Station& station,
                std::vector<Caution>& cautions) {
    const std::size_t water = media::index(media::Vapour::water);
    const double condensed = station.outlet.liquid[water] - station.inlet.liquid[water];
    if (condensed < least_condensate) return;
    cautions.push_back(
        {address + "/outlet/temperature",
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
        path[i].part.visit([&]<class Part>(const Part&) {
            const Station& station = balance.stations()[i];
            if constexpr (charge::Driven<Part>) add_blower(balance, address, station, cautions);
            if constexpr (std::is_same_v<Part, charge::ChargeCooler>)
                add_cooler(address, station, cautions);
        });
    }
    return cautions;
}

}  // namespace windwall::solve
