#pragma once
#include <exception>

namespace windwall::solve {

/// What `ask` answers. An exception inside it ends here, as what `broken` makes of it: every
/// question that can be put to the core is asked through this, so that none ends in one.
template <class Ask, class Broken>
auto guarded(Ask&& ask, Broken&& broken) -> decltype(ask()) {
    try {
        return ask();
    } catch (const std::exception&) {
        return broken();
    }
}

}  // namespace windwall::solve
