#include "windwall/solve/drive/record.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/solve/results/describe.hpp"
#include "windwall/solve/results/describe_variator.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::solve {
namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
constexpr double kilo = 1000;

/// What stands whether the engine has an answer or not.
bool of_the_road(std::string_view address) { return address.starts_with("road/"); }

RoadResult road(const Mode& mode, const Moment& now, const vehicle::Vehicle& car) {
    return {now.road_speed,
            static_cast<double>(mode.gear) + 1,
            driveline::total_ratio(car.driveline, now.gear_state),
            now.thrust,
            now.thrust - now.load.total(),
            now.load.air,
            now.load.rolling,
            now.load.grade};
}

double film(const Motion& motion, std::span<const double> state) {
    double sum = 0;
    if (motion.layout().wet)
        for (std::size_t i = 0; i < Layout::liquids; ++i)
            sum += state[motion.layout().first_film() + i];
    return sum / kilo;
}

/// The belt drive of variable ratio, its belt as warm as it is by now.
std::optional<VariatorResult> variator(const Moment& now, std::span<const double> state,
                                       const Motion& motion) {
    const vehicle::Vehicle& car = motion.vehicle();
    FullThrottlePoint point;
    point.point = now.point;
    point.point.torque = now.torque;
    point.point.condition.engine_speed = now.engine_speed;
    point.gear = now.gear_state.gear;
    point.position = now.gear_state.position;
    point.road_speed = now.road_speed;
    auto made = variator_result(car, point);
    const auto& nodes = motion.layout().nodes;
    for (std::size_t i = 0; made && i < nodes.size(); ++i) {
        const vehicle::NodeOwner& owner = nodes[i].owner;
        if (owner.of == vehicle::NodeOwner::Of::driveline &&
            car.driveline[owner.part].part.as<driveline::BeltCvt>())
            made->temperature = state[Layout::first_node + i];
    }
    return made;
}

}  // namespace

std::span<const fields::Row> DriveMoment::rows() {
    using namespace fields;
    using D = DriveMoment;
    static constexpr Row table[] = {
        result("time", "t", at<&D::time>, fields::time("s"), "Since the vehicle set out"),
        result("distance", "s", at<&D::distance>, length("m"), "Road covered since then"),
        result("acceleration", "a", at<&D::acceleration>, fields::acceleration("m/s2"),
               "Of the vehicle along the road"),
        result("pedal", "o_p", at<&D::pedal>, percent(), "Share of the pedal's travel"),
        result("position", "x_v", at<&D::position>, number(),
               "Of a variator: 0 at its lowest gearing, 1 at its highest"),
        result("clutch_heat", "P_cl", at<&D::clutch_heat>, power("kW"),
               "Lost where crank and wheels turn apart"),
        result("fuel_used", "m_f", at<&D::fuel_used>, mass("kg"),
               "Fuel taken from its tank since it set out; what is sprayed is not"),
        result("liquid_used", "m_l", at<&D::liquid_used>, mass("kg"), "Sprayed since then"),
        result("film", "m_w", at<&D::film>, mass("g"), "Liquid on the walls before the valves"),
    };
    return table;
}

std::span<const fields::Row> NodeMoment::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        result("temperature", "T", at<&NodeMoment::temperature>, fields::temperature("degC"),
               "Of what takes time to warm up"),
    };
    return table;
}

void Record::find_columns(const Motion& motion) {
    for (const fields::Row& row : DriveMoment::rows())
        addresses_.emplace_back(row.key);
    paths_ = fields::all_numbers(fields::group_type<OperatingPoint>, &point_);
    for (const fields::FieldPath& path : paths_)
        addresses_.push_back(path.text());
    for (const DriveNode& node : motion.layout().nodes)
        addresses_.push_back(node.address + "/temperature");
    columns_.resize(addresses_.size());
}

void Record::look(const Mode& mode, const Moment& now, std::span<const double> state,
                  const Motion& motion, const vehicle::Balance& balance) {
    // While gears change no point is sought: the last one is not what the engine does there.
    runs_ = mode.phase != Phase::engine_off && mode.phase != Phase::shifting && now.answered;
    if (runs_) {
        describe(balance, now.point, point_);
        point_.variator = variator(now, state, motion);
    }
    point_.road = road(mode, now, motion.vehicle());
    point_.tyres = {now.tyre_slip,
                    motion.vehicle().tyres.load_per_tyre(motion.vehicle().body.mass, now.thrust)};
    point_.engine.speed = mode.phase == Phase::shifting ? nothing : now.engine_speed;
}

double Record::limited(std::size_t limit) {
    if (limit_paths_.empty())
        for (const Limit& each : limits_) {
            auto path =
                fields::find_number(fields::group_type<OperatingPoint>, &point_, each.address);
            limit_paths_.push_back(path ? path.value : std::nullopt);
        }
    const auto& path = limit_paths_[limit];
    return runs_ && path ? path->get(&point_).value_or(nothing) : nothing;
}

void Record::keep(double time, const Mode& mode, const Moment& now, std::span<const double> state,
                  const Motion& motion) {
    if (addresses_.empty()) find_columns(motion);
    // Between two steps the road is known to a few nanometres: it is not told to go back by them.
    distance_ = std::max(distance_, state[Layout::distance]);
    const DriveMoment beside{time,
                             distance_,
                             now.acceleration,
                             runs_ ? now.point.condition.opening : 0,
                             now.gear_state.position,
                             now.power[static_cast<std::size_t>(Energy::clutch)],
                             state[Layout::fuel_used] / kilo,
                             state[Layout::liquid_used] / kilo,
                             film(motion, state)};
    std::size_t k = 0;
    for (const fields::Row& row : DriveMoment::rows())
        columns_[k++].push_back(*static_cast<const double*>(row.member.of(&beside)));
    for (const fields::FieldPath& path : paths_) {
        const bool known = runs_ || of_the_road(addresses_[k]) || addresses_[k] == "engine/speed";
        columns_[k++].push_back(known ? path.get(&point_).value_or(nothing) : nothing);
    }
    for (std::size_t i = 0; i < motion.layout().nodes.size(); ++i)
        columns_[k++].push_back(state[Layout::first_node + i]);
    phase_.push_back(mode.phase);
}

void Record::hand_over(DriveResult& into) {
    into.addresses = std::move(addresses_);
    into.columns = std::move(columns_);
    into.phase = std::move(phase_);
}

}  // namespace windwall::solve
