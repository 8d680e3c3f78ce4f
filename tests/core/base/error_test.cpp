// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/error.h"

#include <set>

#include "base/result.h"

namespace sw {
namespace {

TEST(Error, FindsItsDetailsByName) {
  const Error error{ErrorCode::InvalidInput, "units.wrong_kind", "gap", {{"a", "1"}, {"b", "2"}}};
  EXPECT_EQ(error.detail("b"), "2");
  EXPECT_EQ(error.detail("c"), "");
}

TEST(Error, MovesToAnotherField) {
  const Error error{ErrorCode::Missing, "key", "", {{"a", "1"}}};
  const Error moved = error.about("odometer");
  EXPECT_EQ(moved.field, "odometer");
  EXPECT_EQ(moved.key, "key");
  EXPECT_EQ(moved.detail("a"), "1");
  EXPECT_EQ(error.field, "");
}

// Words that scripts rely on: a change here breaks them.
TEST(ErrorCodes, HaveWordsOfTheirOwn) {
  std::set<std::string_view> words;
  for (int i = 0; i <= static_cast<int>(ErrorCode::Internal); ++i) {
    words.insert(word(static_cast<ErrorCode>(i)));
  }
  EXPECT_EQ(words.size(), static_cast<std::size_t>(ErrorCode::Internal) + 1);
  EXPECT_EQ(word(ErrorCode::OutOfRange), "out_of_range");
  EXPECT_EQ(word(ErrorCode::Missing), "missing_field");
  EXPECT_EQ(word(ErrorCode::BookNewer), "book_newer");
}

TEST(Result, CarriesAnErrorOn) {
  const Result<int> first = fail(ErrorCode::NotFound, "job.unknown", "job", {{"id", "7"}});
  const Result<std::string> second = failAs(first);
  ASSERT_FALSE(second.has_value());
  EXPECT_EQ(second.error(), first.error());
}

}  // namespace
}  // namespace sw
