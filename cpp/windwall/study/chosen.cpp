#include "windwall/study/chosen.hpp"

#include "windwall/fields/units.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"

namespace windwall::study {

using namespace fields;

std::span<const Row> Chosen::rows() {
    using C = Chosen;
    static constexpr Row table[] = {
        fact("upgrade", at<&C::upgrade>, "Id of the upgrade that leaves the choice"),
        fact("address", at<&C::address>, "The input that is chosen"),
        fact("place", at<&C::place>, "Which of the values on offer it takes, from 0"),
        fact("number", at<&C::number>, "The value where it is a number, in its SI unit"),
        fact("text", at<&C::text>, "The value as a file has it"),
        fact("dimension", at<&C::dimension>, "What the number measures"),
        fact("unit", at<&C::unit>, "The unit that it is shown in"),
        fact("counted", at<&C::counted>, "Whether it is a number of things"),
    };
    return table;
}

std::vector<Chosen> chosen_values(const scenario::Scenario& scenario, scenario::UpgradeSet set,
                                  const scenario::Choices& choices) {
    const auto open = scenario::open_choices(scenario.menu, set);
    std::vector<Chosen> made;
    if (choices.size() != open.size()) return made;
    for (std::size_t i = 0; i < open.size(); ++i) {
        const FieldPath& path = open[i].choice->path;
        const scenario::Value& value = open[i].choice->values[choices[i]];
        const auto* number = std::get_if<double>(&value);
        made.push_back({scenario.menu[open[i].upgrade].id, path.text(), choices[i],
                        number ? std::optional(*number) : std::nullopt,
                        scenario::file_text(path, value),
                        std::string(name_of(path.row().measure.dimension)),
                        std::string(path.row().measure.unit), path.row().whole});
    }
    return made;
}

scenario::Choices fastest_choices(const scenario::Scenario& scenario, scenario::UpgradeSet set,
                                  const scenario::Wanted& wanted) {
    const auto speed = [](const vehicle::Vehicle& vehicle, const scenario::Choices&) {
        return solve::speed_of(vehicle);
    };
    return scenario::resolve_choice(scenario, set, speed, wanted);
}

}  // namespace windwall::study
