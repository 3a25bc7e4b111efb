#include "windwall/scenario/read_menu.hpp"

#include "windwall/fields/read.hpp"
#include "windwall/scenario/apply.hpp"
#include "windwall/scenario/check_menu.hpp"
#include "windwall/scenario/conflicts.hpp"
#include "windwall/scenario/currency.hpp"
#include "windwall/scenario/read_upgrade.hpp"
#include "windwall/scenario/relations.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

using fields::Cursor;

class MenuReader {
public:
    MenuReader(const Cursor& list, const vehicle::Vehicle& vehicle)
        : list_(list), vehicle_(vehicle), sound_vehicle_(list.findings().problems.empty()) {}

    MenuRead read() {
        read_upgrades();
        for (const auto& [at, key, entry, sentence] : relate(menu_))
            cursors_[at][key].entry(entry).complain(sentence);
        contradictions();
        lay_out();
        change();
        for (const auto& fault : find_conflicts(menu_))
            complain(fault);
        check_choices(menu_, cursors_);
        if (sound_vehicle_) check_resolved(menu_, cursors_, layouts_);
        auto currency = read_currency(cursors_, currency_of_budget(list_.findings().notes));
        layouts_.push_back(vehicle_);
        std::rotate(layouts_.begin(), layouts_.end() - 1, layouts_.end());
        return {std::move(menu_), std::move(currency), std::move(layouts_)};
    }

private:
    const Action& action_of(const Fault& fault) const {
        return menu_[fault.upgrade].actions[fault.action];
    }

    void complain(const Fault& fault) const {
        cursor_of(cursors_[fault.upgrade], action_of(fault)).complain(fault.sentence);
    }

    void read_upgrades() {
        std::vector<std::string> taken;
        for (std::size_t at = 0; at < list_.size(); ++at)
            cursors_.push_back(read_upgrade(list_.entry(at), menu_.emplace_back(), taken));
    }

    // What can never be fitted, because what it requires cannot stand together.
    void contradictions() {
        for (std::size_t at = 0; at < menu_.size(); ++at)
            if (auto why = refusal(menu_, with_required(menu_, at)); !why.empty())
                cursors_[at].complain("it can never be fitted: " + why);
    }

    // The parts of the vehicle with each upgrade and what it requires.
    void lay_out() {
        const InvalidAddresses invalid(list_.findings().problems);
        for (std::size_t at = 0; at < menu_.size(); ++at) {
            Faults faults;
            layouts_.push_back(vehicle_);
            rearrange(layouts_.back(), menu_, with_required(menu_, at), faults);
            for (const auto& fault : faults)
                if (fault.upgrade == at && !amiss(invalid, at) && !lost(invalid, fault))
                    complain(fault);
        }
    }

    // Whether the parts that an upgrade and its requirements bring have problems already.
    bool amiss(const InvalidAddresses& invalid, std::size_t at) const {
        for (std::size_t other = 0; other < menu_.size(); ++other) {
            if (!holds(with_required(menu_, at), other)) continue;
            for (const auto key : {"requires", "replace", "remove", "insert"})
                if (invalid.touches(cursors_[other].address() + "/" + key)) return true;
        }
        return false;
    }

    // Whether the part that was looked for may be there under a broken id.
    bool lost(const InvalidAddresses& invalid, const Fault& fault) const {
        if (vehicle_.charge_path.empty() || vehicle_.driveline.empty()) return true;
        const auto sought = std::visit(Overloaded{
                                           [](const Insert& action) { return action.anchors[0]; },
                                           [](const auto& action) {
                                               if constexpr (requires { action.id; })
                                                   return action.id;
                                               return std::string();
                                           },
                                       },
                                       action_of(fault).what);
        return invalid.touches("charge_path/" + sought) || invalid.touches("driveline/" + sought);
    }

    void change() {
        const InvalidAddresses invalid(list_.findings().problems);
        const bool no_parts = vehicle_.charge_path.empty() || vehicle_.driveline.empty();
        for (std::size_t at = 0; at < menu_.size(); ++at)
            read_changes(cursors_[at], menu_[at],
                         {layouts_[at], menu_, invalid, no_parts || amiss(invalid, at)});
    }

    const Cursor& list_;
    const vehicle::Vehicle& vehicle_;
    bool sound_vehicle_;
    Menu menu_;
    std::vector<Cursor> cursors_;
    std::vector<vehicle::Vehicle> layouts_;
};

}  // namespace

MenuRead read_menu(const Cursor& list, const vehicle::Vehicle& vehicle) {
    if (!fields::is_list_of("upgrades", most_upgrades, list))
        return {{}, currency_of_budget(list.findings().notes), {vehicle}};
    return MenuReader(list, vehicle).read();
}

}  // namespace windwall::scenario
