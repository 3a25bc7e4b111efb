#include "windwall/scenario/result_address.hpp"

#include "windwall/fields/field_path.hpp"
#include "windwall/solve/results/operating_point.hpp"

namespace windwall::scenario {
namespace {

const auto& point_type = fields::group_type<solve::OperatingPoint>;

// A point with the results of this vehicle's parts, which nothing was solved for.
solve::OperatingPoint blank(const vehicle::Vehicle& vehicle) {
    solve::OperatingPoint point;
    for (const auto& [id, part] : vehicle.charge_path)
        point.charge_path.push_back(
            {id, part.visit([]<class Part>(const Part&) -> solve::PartResult {
                 return solve::ResultOf<Part>{};
             })});
    point.knock.emplace();
    point.injector.emplace();
    point.road.emplace();
    point.tyres.emplace();
    return point;
}

}  // namespace

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
