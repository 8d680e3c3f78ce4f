# SPDX-License-Identifier: GPL-3.0-or-later
# Helpers shared by every folder: warnings, core libraries (their links are the arrows), tests.
include(GoogleTest)

# Off: g++ 12 sees overlaps and bounds of 2^63 in plain std::string code (GCC bug 105651 and its kin, mended in 13).
add_library(sw_warnings INTERFACE)
target_compile_options(sw_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -Wshadow -Wdouble-promotion
  -Wnon-virtual-dtor -Wold-style-cast -Woverloaded-virtual -Wcast-align -Wunused
  $<$<CXX_COMPILER_ID:GNU>:-Wduplicated-cond -Wlogical-op -Wno-restrict -Wno-stringop-overflow
    -Wno-stringop-overread>
  $<$<BOOL:${SW_WARNINGS_AS_ERRORS}>:-Werror>)

# Precompiled: what nearly every file includes. No JSON here: it would cost each file a second; a
# folder that is full of it precompiles it with PRECOMPILE_ALSO.
set(SW_STANDARD_HEADERS <functional> <map> <memory> <optional> <set> <string> <string_view> <variant> <vector>
  <tl/expected.hpp>)

# Third-party headers reach our files as system headers only.
# sw_core_library(base SOURCES a.cpp ... LINKS units ... EXTERNAL Qt6::Core ...)
# makes the static library sw_<name>; LINKS name core folders: an arrow of the design. The headers of
# the standard library are precompiled once, with base; PRECOMPILED names another folder to share with,
# PRECOMPILE_ALSO headers that this folder precompiles for itself.
function(sw_core_library name)
  cmake_parse_arguments(arg "" "PRECOMPILED" "SOURCES;LINKS;EXTERNAL;PRIVATE_EXTERNAL;PRECOMPILE_ALSO" ${ARGN})
  add_library(sw_${name} STATIC ${arg_SOURCES})
  target_include_directories(sw_${name} PUBLIC ${PROJECT_SOURCE_DIR}/core)
  list(TRANSFORM arg_LINKS PREPEND sw_ OUTPUT_VARIABLE links)
  target_link_libraries(sw_${name}
    PUBLIC ${links} ${arg_EXTERNAL}
    PRIVATE sw_warnings ${arg_PRIVATE_EXTERNAL})
  if(NOT arg_PRECOMPILED)
    set(arg_PRECOMPILED base)
  endif()
  if(name STREQUAL arg_PRECOMPILED OR arg_PRECOMPILE_ALSO)
    target_precompile_headers(sw_${name} PRIVATE ${SW_STANDARD_HEADERS} ${arg_PRECOMPILE_ALSO})
  else()
    target_precompile_headers(sw_${name} REUSE_FROM sw_${arg_PRECOMPILED})
  endif()
endfunction()

# Builds the tests labelled core and nothing else.
add_custom_target(sw_core_tests)

# sw_test(name SOURCES a_test.cpp ... LINKS sw_units ...): one binary, every case its own ctest test
# FIXTURE names a ctest fixture all its cases need
# (under the sanitizers, whose start costs more than most cases, the binary as a whole).
function(sw_test name)
  cmake_parse_arguments(arg "" "FIXTURE" "SOURCES;LINKS;LABELS;PRECOMPILE_ALSO" ${ARGN})
  add_executable(${name} ${arg_SOURCES})
  target_link_libraries(${name} PRIVATE sw_test_main sw_warnings ${arg_LINKS})
  if(arg_PRECOMPILE_ALSO)
    target_precompile_headers(${name} PRIVATE <gmock/gmock.h> ${SW_STANDARD_HEADERS} ${arg_PRECOMPILE_ALSO})
  else()
    target_precompile_headers(${name} REUSE_FROM sw_test_main)
  endif()
  target_compile_options(${name} PRIVATE $<$<NOT:$<CONFIG:Debug>>:-O0>)
  target_compile_definitions(${name} PRIVATE SW_SOURCE_DIR="${PROJECT_SOURCE_DIR}")
  if(core IN_LIST arg_LABELS)
    add_dependencies(sw_core_tests ${name})
  endif()
  if(SW_TEST_BINARIES_WHOLE)
    add_test(NAME ${name} COMMAND ${name})
    list(LENGTH arg_SOURCES cost)  # the large ones first, so that none runs alone at the end
    set_tests_properties(${name} PROPERTIES LABELS "${arg_LABELS}" COST ${cost} TIMEOUT 900)
  else()
    # Parameters are numbered: their printed values may hold what ctest takes for a list.
    gtest_discover_tests(${name} NO_PRETTY_VALUES DISCOVERY_TIMEOUT 60
      PROPERTIES LABELS "${arg_LABELS}" TIMEOUT 300 FIXTURES_REQUIRED "${arg_FIXTURE}")
  endif()
endfunction()
