// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "base/error.h"

namespace sw::app {

/// The sentence of an error, without its field. Those of arguments and of the command line's inputs
/// are made here, where text is shown between plain quotes; all others in phrasing.
[[nodiscard]] std::string errorSentence(const Error& error);

}  // namespace sw::app
