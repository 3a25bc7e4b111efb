#pragma once
#include "windwall/numerics/table.hpp"
#include "windwall/solve/drive/drive.hpp"
#include "windwall/solve/drive/guards.hpp"
#include "windwall/solve/drive/integrator.hpp"
#include "windwall/solve/drive/record.hpp"
#include "windwall/solve/drive/shift_speeds.hpp"

#include <optional>
#include <string>
#include <vector>

namespace windwall::solve {

/// One drive on its way: legs become modes, modes are integrated until a guard is passed.
class Run {
public:
    Run(const vehicle::Vehicle& vehicle, const vehicle::Outing& outing,
        const DriveOptions& options);
    DriveResult go();

private:
    using State = std::vector<double>;
    enum class Verdict { leg_goes_on, leg_done, drive_ends };

    // Legs.
    bool set_out();
    void drive_legs();
    std::string_view lasting(std::string_view name) const;
    void warm_up();
    void begin(const vehicle::Leg& leg);
    void begin(const vehicle::Idle& leg);
    void begin(const vehicle::Launch& leg);
    void begin(const vehicle::FullThrottle& leg);
    void begin(const vehicle::HoldSpeed& leg);
    void begin(const vehicle::Coast& leg);
    void begin(const vehicle::Stop& leg);
    void stand(double time, bool engine_off);
    void stand(const vehicle::Stop& leg);
    void until_time(double seconds);
    void until_distance(double metres);
    void until_speed(double speed, bool falling);
    void launch(std::optional<double> engine_speed);
    void full_throttle();
    void engage(std::size_t gear);
    void hold();
    void until_held(bool falling);
    bool turns_too_slowly(std::size_t gear) const;
    void shift_to(std::size_t gear);
    void pull(std::size_t gear);
    Verdict lose_speed();
    void gain_speed();
    Mode pulling(std::size_t gear);
    void end_at_once(DriveEnd end);
    bool next_gear_pulls();
    double looks_below(std::size_t gear) const;
    double idles_at(std::size_t gear) const;
    void look_round();
    double gain_in(std::size_t gear);
    std::size_t gear_for(double road_speed) const;
    const Moment& shifting_freely(std::size_t gear, double pedal);
    Mode in_gear(std::size_t gear, double pedal);
    Mode held_in(std::size_t gear);
    double position_kept(const Mode& next);
    std::size_t holding_gear(double road_speed);
    double road_ahead() const;

    // Time.
    Verdict drive_leg();
    Verdict step();
    bool advance(double longest);
    bool too_long() const;
    std::optional<DriveEnd> gets_nowhere();
    void set(const Mode& mode);
    void watch_road();
    bool unsettled();
    std::optional<DriveEnd> chatters();
    bool passed_over(const Guard& guard) const;
    Verdict happens(const Guard& guard);
    Verdict react(const Guard& guard);
    Mode after(Happening what);
    Verdict ends_at_the_rev_limit();
    Verdict come_to_rest();
    Verdict meet();
    Verdict let_go();
    Mode geared() const;
    Mode turn_apart();
    void pump(const Guard& guard);
    void rest_line(std::size_t number);
    const charge::EvaporativeInjection* nozzle_of(std::size_t number) const;
    double liquid_on_board() const;
    std::optional<std::pair<const Guard*, double>> first_passed();
    double value(const Guard& guard, double time, const State& state);
    double crossing(const Guard& guard, double from, double to);
    void rates(double time, std::span<const double> state, std::span<double> rate);
    const Moment& moment(std::span<const double> state);
    Place place(double distance) const;
    std::optional<double> next_turn() const;
    void keep(double time, const State& state);
    void note(Happening what);
    std::string about(Happening what) const;
    void note_limits(double from, double to, const State& state);
    double limited(std::size_t limit, double time);
    bool driven() const;
    bool marked(std::optional<double> distance, std::optional<double> speed) const;
    void note_marks(double from, double to);
    double speed() const { return state_[Layout::road_speed]; }
    double run_distance() const { return state_[Layout::distance] - run_start_distance_; }

    const vehicle::Vehicle& vehicle_;
    const vehicle::Outing& outing_;
    const DriveOptions& options_;
    Motion motion_;
    Integrator integrator_;
    Record record_;
    DriveResult result_;
    ShiftSpeeds shifts_;
    std::optional<numerics::Table> grade_, headwind_;
    double shift_time_{}, rev_limit_{}, launch_speed_{};

    State state_;
    double time_ = 0;
    Mode mode_;
    std::vector<Guard> guards_;      // of the mode
    std::vector<Guard> leg_guards_;  // of the leg
    std::size_t leg_ = 0;
    bool waits_for_speed_ = false, waits_for_less_ = false;
    double leg_speed_ = 0;                     // to hold, m/s
    bool held_ = false;                        // it was, in this leg
    bool lost_ = false;                        // and in this leg speed was lost
    std::optional<vehicle::Stop> then_stand_;  // behind braking
    double run_start_time_ = 0, run_start_distance_ = 0;
    double road_from_ = 0, direction_ = 1;  // where along the road a run begins, and which way
    bool turned_ = false;                   // while it stands, for the run that comes
    std::optional<double> slow_since_;      // s, at full throttle
    long run_ = 0;
    double kept_at_ = -1e9;
    double leg_begun_ = 0;
    long steps_before_ = 0;     // before the leg
    double dense_from_ = 0;     // s, since when the state is known at every time
    std::vector<char> beyond_;  // of each limit, as last kept
    int at_once_ = 0;           // events with next to no time between them
    double last_event_ = -1;
    double calm_until_ = -1;  // s
    bool broken_ = false;
};

}  // namespace windwall::solve
