#include "windwall/study/result_reader.hpp"

#include <limits>
#include <utility>

namespace windwall::study {

ResultReader::ResultReader(std::vector<std::string> addresses)
    : addresses_(std::move(addresses)), paths_(addresses_.size()) {}

double ResultReader::read(std::size_t which, const solve::OperatingPoint& point) {
    constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
    auto& path = paths_[which];
    if (!path)
        path = fields::find_number(fields::group_type<solve::OperatingPoint>, &point,
                                   addresses_[which])
                   .value;
    return path ? path->get(&point).value_or(nothing) : nothing;
}

}  // namespace windwall::study
