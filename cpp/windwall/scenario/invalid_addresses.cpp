#include "windwall/scenario/invalid_addresses.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

using fields::is_within;

std::string_view first_words(std::string_view address, int count) {
    std::size_t end = 0;
    for (; count > 0 && end < address.size(); --count)
        end = std::min(address.find('/', end + 1), address.size());
    return address.substr(0, end);
}

bool holds_parts(std::string_view list) { return list == "charge_path" || list == "driveline"; }

// "charge_path/4/id": a part that has no good id may be any that is looked for.
bool without_id(std::string_view problem, std::string_view list) {
    return is_within(problem, list) && problem.size() > list.size() + 1 &&
           problem[list.size() + 1] >= '0' && problem[list.size() + 1] <= '9';
}

}  // namespace

InvalidAddresses::InvalidAddresses(const fields::Problems& problems) {
    for (auto& problem : problems.sorted())
        addresses_.push_back(std::move(problem.address));
}

bool InvalidAddresses::touches(std::string_view address) const {
    const auto list = first_words(address, 1);
    const auto whole = holds_parts(list) ? first_words(address, 2) : address;
    return std::ranges::any_of(addresses_, [&](std::string_view problem) {
        return is_within(problem, whole) || is_within(whole, problem) ||
               (holds_parts(list) && without_id(problem, list));
    });
}

}  // namespace windwall::scenario
