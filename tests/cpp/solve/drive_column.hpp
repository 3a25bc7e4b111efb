#pragma once
// Columns of a drive by their addresses.
#include "windwall/solve/drive/drive.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::solve {

inline const std::vector<double>& column(const DriveResult& drive, std::string_view address) {
    const auto at = std::ranges::find(drive.addresses, address);
    if (at == drive.addresses.end()) throw std::runtime_error("no column " + std::string(address));
    return drive.columns[static_cast<std::size_t>(at - drive.addresses.begin())];
}

}  // namespace windwall::solve
