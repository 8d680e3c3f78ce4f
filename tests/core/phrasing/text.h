// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QtCore/QString>
#include <string>

namespace sw::phrasing {

/// For comparing: UTF-8 with plain spaces for no-break ones.
inline std::string plain(QString text) {
  return text.replace(QChar(0x00A0), QChar(' ')).toStdString();
}

}  // namespace sw::phrasing
