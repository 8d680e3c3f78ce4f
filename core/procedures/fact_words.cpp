// SPDX-License-Identifier: GPL-3.0-or-later
#include "procedures/fact_words.h"

#include "model/shop_facts.h"

namespace sw::procedures {

namespace {

using WordList = std::vector<std::string_view>;

/// "Unknown" is no word to wait for: an unknown fact counts as not known.
template <HasWords E>
WordList allWords() {
  WordList words;
  for (const auto& [value, text] : Words<E>::table) {
    if (text != "unknown") words.push_back(text);
  }
  return words;
}

/// Looks for one field of the arrangement and takes the words of its type.
struct FieldWords {
  std::string_view fact;
  std::optional<WordList>& found;

  template <class E>
  void operator()(std::string_view name, const std::optional<E>& /*value*/) const {
    if (name == fact) found = allWords<E>();
  }
};

}  // namespace

bool isObserved(std::string_view fact) {
  constexpr std::string_view kPrefix = "observed.";
  return fact.starts_with(kPrefix) && fact.size() > kPrefix.size();
}

std::optional<WordList> wordsOfFact(std::string_view fact) {
  if (fact == "side") return allWords<model::Side>();
  if (fact == "support") return allWords<model::SupportKind>();
  if (fact == "round") return WordList{"first", "later"};
  std::optional<WordList> found;
  const model::AxleArrangement any;
  model::AxleArrangement::fields(any, FieldWords{fact, found});
  return found;
}

}  // namespace sw::procedures
