#include "windwall/solve/results/account_entry.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> AccountEntry::rows() {
    static constexpr Row table[] = {
        fact("use", at<&AccountEntry::use>, "What the power is there for, or becomes"),
        fact("part", at<&AccountEntry::part>, "The part it is in, where it is in one"),
        result("watts", "P", at<&AccountEntry::watts>, power("W"), "How much it is"),
    };
    return table;
}

}  // namespace windwall::solve
