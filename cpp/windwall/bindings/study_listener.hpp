#pragma once
#include "windwall/study/batch.hpp"

#include <pybind11/pybind11.h>

#include <exception>

namespace windwall::bindings {

/// Lets Python listen while workers run without it: called on the waiting thread, it takes the GIL,
/// looks for signals and passes the progress on. An exception there, Ctrl-C among them, stops the
/// work and is raised once the work has come to rest.
class Listener {
public:
    /// `callback(done, total)` stops the work by returning False; None only listens for signals.
    explicit Listener(pybind11::object callback) : callback_(std::move(callback)) {}

    study::Progress progress() {
        return [this](std::size_t done, std::size_t total) { return go_on(done, total); };
    }
    /// Raises what was raised while listening; with the GIL held.
    void raise() const {
        if (raised_) std::rethrow_exception(raised_);
    }

private:
    bool go_on(std::size_t done, std::size_t total);
    bool hear(std::size_t done, std::size_t total);

    pybind11::object callback_;
    std::exception_ptr raised_;
};

}  // namespace windwall::bindings
