#include "windwall/scenario/result_address.hpp"

#include "windwall/fields/field_path.hpp"
#include "windwall/solve/results/operating_point.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

const auto& point_type = fields::group_type<solve::OperatingPoint>;

// A point that nothing was solved for, with every result but those of parts.
solve::OperatingPoint blank() {
    solve::OperatingPoint point;
    point.knock.emplace();
    point.injector.emplace();
    point.road.emplace();
    point.tyres.emplace();
    point.variator.emplace();
    return point;
}

// With those of this vehicle's parts.
solve::OperatingPoint blank(const vehicle::Vehicle& vehicle) {
    solve::OperatingPoint point = blank();
    for (const auto& [id, part] : vehicle.charge_path)
        point.charge_path.push_back(
            {id, part.visit([]<class Part>(const Part&) -> solve::PartResult {
                 return solve::ResultOf<Part>{};
             })});
    return point;
}

// The id in `charge_path/blower/rotor_speed`; empty where there is none.
std::string part_in(std::string_view address) {
    const auto start = std::min(address.find('/'), address.size() - 1) + 1;
    return std::string(address.substr(start, address.find('/', start) - start));
}

}  // namespace

const fields::Row* result_row(std::string_view address) {
    if (address.empty()) return nullptr;
    const auto& kinds = fields::tagged_type<solve::PartResult>;
    for (std::size_t kind = 0; kind < kinds.types.size(); ++kind) {
        solve::OperatingPoint point = blank();
        point.charge_path.push_back({part_in(address), {}});
        kinds.emplace(&point.charge_path.back().part, kind);
        if (const auto found = fields::find_number(point_type, &point, address))
            return &found->row();
    }
    return nullptr;
}

void collect_results(const vehicle::Vehicle& vehicle, Results& results) {
    const auto point = blank(vehicle);
    for (const auto& path : fields::all_numbers(point_type, &point))
        results.emplace(path.text(), &path.row());
}

bool is_result(const vehicle::Vehicle& vehicle, std::string_view address) {
    Results results;
    collect_results(vehicle, results);
    return results.contains(address);
}

std::string no_result(const vehicle::Vehicle& vehicle, std::string_view address) {
    const auto point = blank(vehicle);
    return fields::find_number(point_type, &point, address).violation;
}

}  // namespace windwall::scenario
