#include "windwall/solve/answer/path_cautions.hpp"

#include "windwall/solve/answer/declared_cautions.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace windwall::solve {
namespace {

using vehicle::Balance;
using vehicle::Station;

constexpr double least_condensate = 1e-6;  // kg per kg of dry air
constexpr double least_siphoned = 1e-6;    // kg/s
constexpr double least_leak = 1e-3;        // of what arrives

void add_blower(const std::string& address, const charge::Compression& did,
                std::vector<Caution>& cautions) {
    if (did.surging) cautions.push_back({CautionKind::surge, address + "/pressure_ratio"});
    if (did.choked) cautions.push_back({CautionKind::choke, address + "/outlet/flow"});
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

void add_leak(const std::string& address, const Station& station, std::vector<Caution>& cautions) {
    const double lost = station.inlet.gas_flow() - station.outlet.gas_flow();
    if (std::abs(lost) < least_leak * station.inlet.gas_flow()) return;
    cautions.push_back(
        {lost > 0 ? CautionKind::leak : CautionKind::false_air, address + "/lost", std::abs(lost)});
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

std::vector<Caution> throttled_sprays(const Balance& balance) {
    std::vector<Caution> cautions;
    const auto& path = balance.vehicle().charge_path;
    for (std::size_t i = 0; i < path.size(); ++i) {
        path[i].part.visit([&]<class Part>([[maybe_unused]] const Part& part) {
            if constexpr (charge::Spraying<Part>) {
                const Station& station = balance.stations()[i];
                const auto made = part.spray(station.inlet, balance.surroundings_of(station));
                if (made.above_start && *made.above_start < part.full_after)
                    cautions.push_back({CautionKind::throttled_spray,
                                        "charge_path/" + path[i].id + "/liquid_flow",
                                        made.running});
            }
        });
    }
    return cautions;
}

std::vector<Caution> path_cautions(const Balance& balance, const OperatingPoint& now) {
    std::vector<Caution> cautions;
    const auto& path = balance.vehicle().charge_path;
    for (std::size_t i = 0; i < path.size(); ++i) {
        const std::string address = "charge_path/" + path[i].id;
        path[i].part.visit([&]<class Part>([[maybe_unused]] const Part& part) {
            const Station& station = balance.stations()[i];
            std::ranges::move(declared_cautions(fields::group_type<Part>, address, now),
                              std::back_inserter(cautions));
            if constexpr (charge::Driven<Part>) add_blower(address, station.compression, cautions);
            if constexpr (charge::Leaking<Part>) add_leak(address, station, cautions);
            if constexpr (charge::Condensing<Part>) add_cooler(address, station, cautions);
            if constexpr (charge::Spraying<Part>)
                add_nozzle(address, part.spray(station.inlet, balance.surroundings_of(station)),
                           part.least_pressure, cautions);
        });
    }
    return cautions;
}

}  // namespace windwall::solve
