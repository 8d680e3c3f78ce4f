// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>

#include "base/clock.h"

namespace sw::report_print {

/// QPdfWriter takes the time of creation from the computer's clock and offers no other way: the
/// date it wrote is replaced by one of the same length, so that every offset in the file stays
/// true.
void setCreationDate(QByteArray& pdf, const Timestamp& created);

}  // namespace sw::report_print
