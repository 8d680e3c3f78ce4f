// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "workshop/workshop.h"

namespace sw::report_print {

/// Prepares photos with Qt's image readers: turned by their EXIF orientation, shrunk to a long side
/// of 1600 px, written anew (JPEG, or PNG where parts are transparent) so that no EXIF data - with
/// it the place where the photo was taken - comes along, with a thumbnail of 240 px. Needs no
/// display.
class QtPictureIntake final : public workshop::PictureIntake {
 public:
  /// Errors: NotFound "picture.missing"; InvalidInput "picture.unreadable" (detail format: the
  /// name's suffix), "picture.too_large" (more than 50 megapixels, or 128 MB of
  /// file); Internal "picture.not_written".
  [[nodiscard]] Result<Prepared> prepare(const std::string& path) const override;
};

}  // namespace sw::report_print
