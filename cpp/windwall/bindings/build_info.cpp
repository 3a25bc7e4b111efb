#include <Eigen/Core>
#include <boost/version.hpp>
#include <nlohmann/json_fwd.hpp>
#include <pybind11/pybind11.h>

#include <string>

namespace windwall::bindings {

namespace {

std::string dotted(int major, int minor, int patch) {
    return std::to_string(major) + '.' + std::to_string(minor) + '.' + std::to_string(patch);
}

std::string compiler() {
#if defined(__clang__)
    return "Clang " + dotted(__clang_major__, __clang_minor__, __clang_patchlevel__);
#elif defined(__GNUC__)
    return "GCC " + dotted(__GNUC__, __GNUC_MINOR__, __GNUC_PATCHLEVEL__);
#else
    return "unknown";
#endif
}

pybind11::dict build_info() {
    pybind11::dict info;
    info["windwall"] = WINDWALL_VERSION;
    info["compiler"] = compiler();
    info["build_type"] = WINDWALL_BUILD_TYPE;
    info["flags"] = WINDWALL_FLAGS;
    info["eigen"] = dotted(EIGEN_WORLD_VERSION, EIGEN_MAJOR_VERSION, EIGEN_MINOR_VERSION);
    info["boost"] = dotted(BOOST_VERSION / 100000, BOOST_VERSION / 100 % 1000, BOOST_VERSION % 100);
    info["nlohmann_json"] = dotted(NLOHMANN_JSON_VERSION_MAJOR, NLOHMANN_JSON_VERSION_MINOR,
                                   NLOHMANN_JSON_VERSION_PATCH);
    info["pybind11"] =
        dotted(PYBIND11_VERSION_MAJOR, PYBIND11_VERSION_MINOR, PYBIND11_VERSION_MICRO);
    info["python"] = PY_VERSION;
    return info;
}

}  // namespace

void bind_build_info(pybind11::module_& module) {
    module.def(
        "build_info", &build_info,
        "What the core was built with: versions of windwall, compiler and libraries, and the "
        "compiler's flags.");
}

}  // namespace windwall::bindings
