#pragma once
#include "windwall/fields/problems.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace windwall::scenario {

/// The addresses that have a problem already, so that what leads there is not reported again.
class InvalidAddresses {
public:
    explicit InvalidAddresses(const fields::Problems& problems);

    /// Whether what an address leads to has a problem, or cannot be found because of one.
    bool touches(std::string_view address) const;

private:
    std::vector<std::string> addresses_;
};

}  // namespace windwall::scenario
