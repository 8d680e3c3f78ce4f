// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/json_instances.h"

template class nlohmann::basic_json<nlohmann::ordered_map>;
