// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

// The members of the JSON value are made once, in json_instances.cpp: for folders that precompile
// this header it saves a fifth of their compile time.
extern template class nlohmann::basic_json<nlohmann::ordered_map>;
