#pragma once

namespace windwall::engine {

/// What the metal and the oil come to at one operating point, K.
struct Temperatures {
    double head{};
    double oil{};
    bool known = true;  // false: the engine says nothing of them
};

}  // namespace windwall::engine
