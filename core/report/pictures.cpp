// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/pictures.h"

namespace sw::report {

PictureMap thumbnailsOf(const workshop::JobState& job, const store::Book& book) {
  PictureMap pictures;
  for (const model::Entry* entry : job.valid) {
    const auto* photo = model::as<model::Photo>(*entry);
    if (photo == nullptr) continue;
    const auto picture = book.picture(photo->hash);
    if (!picture) continue;
    pictures[QString::fromStdString(photo->hash)] = {QByteArray::fromStdString(picture->thumbnail),
                                                     QString::fromStdString(picture->mime)};
  }
  return pictures;
}

}  // namespace sw::report
