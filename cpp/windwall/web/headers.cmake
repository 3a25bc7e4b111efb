# A compiler for browsers has a C library of its own, so it is shown these three folders of headers
# and nothing else of the machine.
set(headers ${CMAKE_BINARY_DIR}/headers)
file(MAKE_DIRECTORY ${headers})
foreach(folder eigen3 boost nlohmann)
    find_path(found_${folder} ${folder} PATHS /usr/include /usr/local/include
        NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH REQUIRED)
    file(CREATE_LINK ${found_${folder}}/${folder} ${headers}/${folder} SYMBOLIC)
endforeach()
foreach(target Eigen3::Eigen Boost::headers nlohmann_json::nlohmann_json)
    add_library(${target} INTERFACE IMPORTED)
    target_include_directories(${target} SYSTEM INTERFACE ${headers} ${headers}/eigen3)
endforeach()
add_compile_options(-fwasm-exceptions -include windwall/web/older_library.hpp)
