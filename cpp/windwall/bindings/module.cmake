# The Python module `_core`, from the sources in this folder.

# A build by hand takes the checkout's own interpreter and the pybind11 that lives in it.
if(NOT SKBUILD AND NOT Python_EXECUTABLE AND EXISTS ${PROJECT_SOURCE_DIR}/.venv/bin/python)
    set(Python_EXECUTABLE ${PROJECT_SOURCE_DIR}/.venv/bin/python)
endif()
find_package(Python 3.11 QUIET COMPONENTS Interpreter Development.Module)
if(NOT Python_FOUND)
    message(FATAL_ERROR "windwall needs Python 3.11 or newer with its headers: on Debian, apt-get install python3-dev.")
endif()
if(NOT pybind11_DIR)
    execute_process(COMMAND ${Python_EXECUTABLE} -m pybind11 --cmakedir
        OUTPUT_VARIABLE pybind11_DIR OUTPUT_STRIP_TRAILING_WHITESPACE ERROR_QUIET)
endif()
set(PYBIND11_FINDPYTHON ON)
find_package(pybind11 3.0 CONFIG QUIET)
if(NOT pybind11_FOUND)
    message(FATAL_ERROR "windwall needs pybind11 3: pip install 'pybind11>=3.0,<4', or set WINDWALL_PYTHON to OFF.")
endif()

file(GLOB sources CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/cpp/windwall/bindings/*.cpp)
pybind11_add_module(_core NO_EXTRAS ${sources})
compile_together(_core bindings/build_info.cpp bindings/solve_drive.cpp bindings/solve_speed.cpp bindings/physics_road.cpp bindings/rows_values.cpp bindings/scenario_facts.cpp)
target_compile_definitions(_core PRIVATE WINDWALL_VERSION="${PROJECT_VERSION}" PYBIND11_DETAILED_ERROR_MESSAGES)
# What every file of the core was compiled with, for whoever compares two machines.
string(TOUPPER "${CMAKE_BUILD_TYPE}" build_type)
string(STRIP "-std=c++${CMAKE_CXX_STANDARD} ${CMAKE_CXX_FLAGS} ${CMAKE_CXX_FLAGS_${build_type}}" flags)
string(REGEX REPLACE " +" " " flags "${flags}")
string(APPEND flags "$<$<BOOL:${WINDWALL_INTERPROCEDURAL}>: -flto>")
set_source_files_properties(${PROJECT_SOURCE_DIR}/cpp/windwall/bindings/build_info.cpp PROPERTIES
    COMPILE_DEFINITIONS "WINDWALL_FLAGS=\"${flags}\";WINDWALL_BUILD_TYPE=\"${CMAKE_BUILD_TYPE}\"")
target_link_libraries(_core PRIVATE windwall_study windwall_warnings)
install(TARGETS _core LIBRARY DESTINATION windwall)
