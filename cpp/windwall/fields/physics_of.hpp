#pragma once
#include "windwall/fields/document.hpp"
#include "windwall/fields/member.hpp"
#include "windwall/fields/provenance.hpp"

#include <string_view>

namespace windwall::fields {

/// The physics of a struct and nothing else: every number, given or by default, as
/// [SI value, SI sigma]; an empty optional as null; texts left out.
Json physics_of(const GroupType& group, const void* from, const Provenance& notes,
                std::string_view address = {});

}  // namespace windwall::fields
