# One GoogleTest binary a folder of this one, named test_<folder>; a folder that is no floor sees all floors.

need(GTest "" libgtest-dev)
include(GoogleTest)

# Counts what is taken from the heap; the linker takes it only where a test asks.
add_library(counted_heap STATIC ${PROJECT_SOURCE_DIR}/tests/cpp/allocations.cpp)
target_link_libraries(counted_heap PRIVATE windwall_warnings)

# The heavy ones; the others are quick and share names of helpers.
set(heavy_tests fields study)
file(GLOB folders CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/tests/cpp/*)
foreach(folder IN LISTS folders)
    cmake_path(GET folder FILENAME name)
    file(GLOB sources CONFIGURE_DEPENDS ${folder}/*.cpp)
    if(NOT sources)
        continue()
    endif()
    if(name IN_LIST floors)
        set(library windwall_${name})
    else()
        set(library windwall_study)
    endif()
    add_executable(test_${name} ${sources})
    if(name IN_LIST heavy_tests)
        compile_together(test_${name})
    endif()
    # Nothing here is timed, and the code under test keeps its own flags.
    target_compile_options(test_${name} PRIVATE $<$<CONFIG:Release>:-O1>)
    target_include_directories(test_${name} PRIVATE ${PROJECT_SOURCE_DIR}/tests/cpp)
    target_link_libraries(test_${name} PRIVATE ${library} counted_heap windwall_warnings GTest::gtest GTest::gtest_main)
    gtest_discover_tests(test_${name} TEST_PREFIX ${name}. DISCOVERY_MODE PRE_TEST PROPERTIES TIMEOUT 120)
endforeach()

# Counts and times, built and run by `make bench` only.
add_executable(bench EXCLUDE_FROM_ALL ${PROJECT_SOURCE_DIR}/tests/bench/bench.cpp)
target_link_libraries(bench PRIVATE windwall_study windwall_warnings)
