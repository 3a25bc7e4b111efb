#pragma once
#include <string>
#include <string_view>

namespace windwall::fields {

/// SHA-256 of some bytes in 64 hexadecimal digits. [FIPS 180-4, section 6.2]
std::string sha256(std::string_view bytes);

}  // namespace windwall::fields
