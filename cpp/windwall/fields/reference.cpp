#include "windwall/fields/reference.hpp"

#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/fields/row_text.hpp"
#include "windwall/fields/visit.hpp"

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
struct Form {
    const Row& row;

    std::string operator()(double) const { return allowed_text(row); }
    std::string operator()(const std::optional<double>&) const { return allowed_text(row); }
    std::string operator()(bool) const { return "true or false"; }
    std::string operator()(const std::string&) const { return "text"; }
    std::string operator()(const ChoiceRef<const void>& choice) const {
        return choices(choice.type.names);
    }
    std::string operator()(const std::vector<double>&) const {
        return "list of " + range_text(row);
    }
    std::string operator()(const Columns&) const { return "table"; }
    std::string operator()(const GroupRef<const void>&) const { return "object"; }
    std::string operator()(const TaggedRef<const void>& tagged) const {
        return "one of " + choices(tagged.type.kinds);
    }
    std::string operator()(const PartsRef<const void>& parts) const {
        return "list of " + choices(parts.type.tagged->kinds);
    }
};

std::string usual_of(const Row& row) {
    if (must_be_stated(row)) return "required";
    const auto usual = default_of(row), sigma = default_sigma_of(row);
    return usual + (sigma.empty() ? "" : " ± " + sigma);
}

std::string columns_of(const Row& row) {
    std::string text;
    for (const auto& column : row.columns)
        text += "; " + code(column.key) + " (" + std::string(column.measure.unit) +
                "): " + std::string(column.sentence);
    return text;
}

std::string chooser_of(const Row& row) {
    return row.chosen.empty() ? "" : "; chosen by " + code(row.chosen) + " where that is stated";
}

std::string line_of(const Row& row) {
    return "|" + cell(code(row.key)) + cell(row.symbol) + cell(visit_default(row, Form{row})) +
           cell(usual_of(row)) +
           cell(std::string(row.sentence) + columns_of(row) + chooser_of(row)) + cell(row.source) +
           "\n";
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
        text += line_of(row);
    return text;
}

std::string reference_page(const GroupType& root, std::string_view title) {
    Page page;
    page.add(root, "The document");
    return "# " + std::string(title) + "\n" + page.text();
}

}  // namespace windwall::fields
