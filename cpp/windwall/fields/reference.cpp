#include "windwall/fields/reference.hpp"

#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/fields/row_text.hpp"

#include <set>

namespace windwall::fields {
namespace {

std::string cell(std::string_view text) {
    std::string escaped;
    for (const char letter : text)
        escaped += letter == '|' ? "\\|" : std::string(1, letter);
    return " " + escaped + " |";
}

std::string code(std::string_view text) {
    return text.empty() ? "" : "`" + std::string(text) + "`";
}

// What a value of the row looks like.
std::string form_of(const Row& row) {
    const auto& member = row.member;
    switch (member.shape) {
        case FieldType::flag: return "true or false";
        case FieldType::text: return "text";
        case FieldType::choice: return choices(member.choice->names);
        case FieldType::list: return "list of " + range_text(row);
        case FieldType::table: return "table";
        case FieldType::group:
        case FieldType::optional_group: return "object";
        case FieldType::tagged: return "one of " + choices(member.tagged->kinds);
        case FieldType::parts: return "list of " + choices(member.parts->tagged->kinds);
        default: return range_text(row);
    }
}

std::string usual_of(const Row& row, const GroupType& owner) {
    if (must_be_stated(row)) return "required";
    const auto usual = default_of(row, owner), sigma = default_sigma_of(row);
    return usual + (sigma.empty() ? "" : " ± " + sigma);
}

std::string columns_of(const Row& row) {
    std::string text;
    for (const auto& column : row.columns)
        text += "; " + code(column.key) + " (" + std::string(column.measure.unit) +
                "): " + std::string(column.sentence);
    return text;
}

std::string line_of(const Row& row, const GroupType& owner) {
    return "|" + cell(code(row.key)) + cell(row.symbol) + cell(form_of(row)) +
           cell(usual_of(row, owner)) + cell(std::string(row.sentence) + columns_of(row)) +
           cell(row.source) + "\n";
}

// Walks everything that can be reached, each struct once.
class Page {
public:
    void add(const GroupType& group, const std::string& heading) {
        if (!seen_.insert(reinterpret_cast<const void*>(group.rows)).second) return;
        text_ += "\n" + reference_section(group, heading);
        for (const auto& row : group.rows()) {
            if (row.member.group) add(*row.member.group, code(row.key));
            if (row.member.tagged) add(*row.member.tagged);
            if (row.member.parts) add(*row.member.parts->tagged);
        }
    }
    const std::string& text() const { return text_; }

private:
    void add(const TaggedType& tagged) {
        for (std::size_t at = 0; at < tagged.kinds.size(); ++at)
            add(*tagged.types[at], code(tagged.kinds[at]));
    }

    std::set<const void*> seen_;
    std::string text_;
};

}  // namespace

std::string reference_section(const GroupType& group, std::string_view heading) {
    auto text = "## " + std::string(heading) + "\n\n";
    if (!group.description.empty()) text += std::string(group.description) + "\n\n";
    if (group.rows().empty()) return text;
    text += "| key | symbol | value | default ± sigma | meaning | source of the default |\n";
    text += "| --- | --- | --- | --- | --- | --- |\n";
    for (const auto& row : group.rows())
        text += line_of(row, group);
    return text;
}

std::string reference_page(const GroupType& root, std::string_view title) {
    Page page;
    page.add(root, "The document");
    return "# " + std::string(title) + "\n" + page.text();
}

}  // namespace windwall::fields
