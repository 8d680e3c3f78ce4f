// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/vin.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string>

namespace sw::model {

namespace {

constexpr std::size_t kLength = 17;
constexpr std::size_t kCheckPlace = 8;  // the ninth
constexpr int kModulus = 11;
constexpr std::array<int, kLength> kWeights{8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};
// 'A' to 'Z'; 0 stands for the letters a VIN does not use.
constexpr std::array<int, 26> kLetters{1, 2, 3, 4, 5, 6, 7, 8, 0, 1, 2, 3, 4,
                                       5, 0, 7, 0, 9, 2, 3, 4, 5, 6, 7, 8, 9};

bool isSkipped(char c) {
  return c == ' ' || c == '\t' || c == '-';
}

bool continuesCharacter(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

char capital(char c) {
  return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

/// One char a character; what is not ASCII becomes one that no VIN holds.
std::string characters(std::string_view text) {
  std::string result;
  for (const char c : text) {
    if (isSkipped(c) || continuesCharacter(c)) continue;
    result += static_cast<unsigned char>(c) < 0x80U ? capital(c) : '?';
  }
  return result;
}

std::optional<int> numberOf(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c < 'A' || c > 'Z') return std::nullopt;
  const int number = kLetters[static_cast<std::size_t>(c - 'A')];
  return number == 0 ? std::nullopt : std::optional(number);
}

char checkDigit(const std::string& vin) {
  int sum = 0;
  for (std::size_t i = 0; i < kLength; ++i) sum += kWeights[i] * numberOf(vin[i]).value_or(0);
  const int remainder = sum % kModulus;
  return remainder == kModulus - 1 ? 'X' : static_cast<char>('0' + remainder);
}

}  // namespace

std::string_view word(VinHint hint) {
  switch (hint) {
    case VinHint::NotSeventeen:
      return "not_seventeen";
    case VinHint::ForbiddenCharacter:
      return "forbidden_character";
    case VinHint::CheckDigitDiffers:
      return "check_digit_differs";
    case VinHint::CheckDigitAgrees:
      return "check_digit_agrees";
  }
  return {};
}

std::vector<VinHint> vinHints(std::string_view text) {
  const std::string vin = characters(text);
  if (vin.empty()) return {};
  if (vin.size() != kLength) return {VinHint::NotSeventeen};
  if (std::any_of(vin.begin(), vin.end(), [](char c) { return !numberOf(c); })) {
    return {VinHint::ForbiddenCharacter};
  }
  return {vin[kCheckPlace] == checkDigit(vin) ? VinHint::CheckDigitAgrees
                                              : VinHint::CheckDigitDiffers};
}

}  // namespace sw::model
