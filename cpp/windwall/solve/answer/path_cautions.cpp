#include "windwall/solve/answer/path_cautions.hpp"

namespace windwall::solve {
namespace {

using vehicle::Balance;
using vehicle::Station;

constexpr double hottest_charge = 273.15 + 200;  // K; coated rotors are rated to 130 to 150 degC
constexpr double near_runaway = 0.5;             // share of what the rotors carry that leaks back
constexpr double least_condensate = 1e-6;        // kg per kg of dry air
constexpr double least_siphoned = 1e-6;          // kg/s

void add_blower(const Balance& balance, const std::string& address, const Station& station,
                std::vector<Caution>& cautions) {
    const auto add = [&](bool near, CautionKind about, std::string_view result,
                         std::optional<double> found = {}, std::optional<double> high = {}) {
        if (near) cautions.push_back({about, address + "/" + std::string(result), found, {}, high});
    };
    const double depression = balance.surroundings().ambient_pressure - station.inlet.pressure;
    const double hot = station.outlet.temperature, leak = station.leak_share();
    add(depression > charge::rotor_seals.max, CautionKind::inlet_depression, "inlet_depression",
        depression, charge::rotor_seals.max);
    add(hot > hottest_charge, CautionKind::hot_charge, "outlet/temperature", hot, hottest_charge);
    add(leak > near_runaway, CautionKind::thermal_runaway, "leak_share", leak, near_runaway);
    add(station.compression.surging, CautionKind::surge, "pressure_ratio");
    add(station.compression.choked, CautionKind::choke, "outlet/flow");
}

void add_nozzle(const std::string& address, const charge::Spray& spray, double least_pressure,
                std::vector<Caution>& cautions) {
    if (spray.flow > spray.siphoned && !spray.atomises) {
        cautions.push_back({CautionKind::coarse_spray, address + "/pressure_difference",
                            spray.pressure_difference, least_pressure});
    }
    if (spray.siphoned > least_siphoned)
        cautions.push_back({CautionKind::siphoning, address + "/siphoned", spray.siphoned});
}

void add_cooler(const std::string& address, const Station& station,
                std::vector<Caution>& cautions) {
    const std::size_t water = media::index(media::Vapour::water);
    const double condensed = station.outlet.liquid[water] - station.inlet.liquid[water];
    if (condensed < least_condensate) return;
    cautions.push_back({CautionKind::condensation, address + "/outlet/temperature",
                        condensed * station.inlet.dry_air});
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
            if constexpr (charge::Condensing<Part>) add_cooler(address, station, cautions);
            if constexpr (charge::Spraying<Part>)
                add_nozzle(address, part.spray(station.inlet, balance.surroundings()),
                           part.least_pressure, cautions);
        });
    }
    return cautions;
}

}  // namespace windwall::solve
