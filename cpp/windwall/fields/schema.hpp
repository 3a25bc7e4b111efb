#pragma once
#include "windwall/fields/document.hpp"
#include "windwall/fields/member.hpp"

#include <string_view>

/// JSON Schema 2020-12 from rows, for editors. The reader remains the authority: a schema knows
/// neither the range of a number with a unit nor the rules across fields.
namespace windwall::fields {

/// The schema of a whole document. `more` holds properties that are read by somebody else.
Json document_schema(const GroupType& root, std::string_view title, const Json& more);

/// The schema of an object with these rows, and of one of several kinds. They refer to
/// `quantity_schemas`, which the document holds under "$defs".
Json schema_of(const GroupType& group, const Json& more);
Json schema_of(const TaggedType& tagged, const Json& more);
Json quantity_schemas();

/// The schema of a part's id.
Json part_id();

}  // namespace windwall::fields
