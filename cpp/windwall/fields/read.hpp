#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/row.hpp"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Reading walks the rows of a struct over an object of a document. It never throws and never
/// stops at the first problem; what it fills is worth something only if there was none.
namespace windwall::fields {

/// Keys of one object that somebody else reads.
using Known = std::vector<std::string_view>;

/// Reads a struct. Keys that are absent leave the member as it is.
void read(const GroupType& group, void* into, const Cursor& object, const Known& known = {});

/// Reads one of several kinds of part, chosen by its key "kind".
void read_tagged(const TaggedType& tagged, void* into, const Cursor& object,
                 const Known& known = {});

/// Reads a list of parts, each with an id of its own.
void read_parts(const Row& row, void* into, const Cursor& list);

/// Reads a table: {"columns": {key: unit}, "rows": [[...]]}.
void read_table(const Row& row, Columns& into, const Cursor& object);

/// Reads the number of a row and leaves a note of it.
std::optional<double> read_number(const Row& row, const Cursor& value);

/// Reads a quantity that has no row, such as a factor of an upgrade.
std::optional<Quantity> read_quantity(const Measure& measure, const Cursor& value);

/// Reads several numbers of one row.
void read_list(const Row& row, std::vector<double>& into, const Cursor& list);

void read_flag(bool& into, const Cursor& value);

/// Reads one word of a few; empty where it is none of them.
std::optional<std::size_t> read_word(std::span<const std::string_view> words, const Cursor& value);

/// Whether a value is a list of no more things than may be; complains where it is not.
bool is_list_of(std::string_view things, std::size_t most, const Cursor& value);

/// The same of an object, which counts its keys.
bool is_object_of(std::string_view things, std::size_t most, const Cursor& value);

/// The id of a `what`, if it can serve in addresses; otherwise a problem. `violation` is empty or
/// says why this word cannot be one.
std::optional<std::string> read_id(const Cursor& owner, std::string_view what,
                                   const std::function<std::string(std::string_view)>& violation);

/// Reads a text fit to be shown.
std::optional<std::string> read_text(const Cursor& value);

/// Reads whatever a row stands for into its member.
void read_member(const Row& row, void* member, const Cursor& value);

/// Complains about keys that no row and nobody else knows, and about required ones that are
/// absent; one that is near the other is one problem.
void check_keys(const Cursor& object, std::span<const Row> rows, const Known& known);

/// Whether a row has to be in the file, itself or because something in it has to.
bool must_be_stated(const Row& row);

}  // namespace windwall::fields
