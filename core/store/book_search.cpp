// SPDX-License-Identifier: GPL-3.0-or-later
// Finding what people remember of a job by a few typed words.
#include <QtCore/QString>
#include <QtCore/QStringList>
#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <utility>

#include "store/book.h"
#include "store/book_access.h"

namespace sw::store {

namespace {

#define SW_STANDING(id) "NOT EXISTS (SELECT 1 FROM \"entry\" r WHERE r.\"replaces\" = " id ")"

/// How many words SQLite looks for itself.
constexpr std::size_t kWordsInSql = 3;
constexpr qsizetype kLongestPattern = 200;
#define SW_ALL_WORDS(text)                                                     \
  "(" text ") LIKE ? ESCAPE '\\' AND (" text ") LIKE ? ESCAPE '\\' AND (" text \
  ") LIKE ? ESCAPE '\\' "

// The plate stands twice, the second time as it is typed in a hurry.
#define SW_VEHICLE_TEXT                                                                      \
  "f.\"registration\" || char(10) || replace(replace(f.\"registration\", ' ', ''), '-', '')" \
  " || char(10) || f.\"make_model\" || char(10) || f.\"vin\" || char(10) || f.\"owner\""     \
  " || char(10) || f.\"notes\""

// CROSS JOIN keeps the order: first the words, then whether the fact and its job still stand.
#define SW_JOB_FACT(table, text, more)                                                          \
  "SELECT o.\"vehicle\", e.\"job\", f.\"entry\", " text " FROM " table                          \
  " f CROSS JOIN \"entry\" e ON e.\"id\" = f.\"entry\" CROSS JOIN \"entry\" j ON j.\"kind\" = " \
  "'job_opened' AND j.\"job\" = e.\"job\" CROSS JOIN \"fact_job_opened\" o ON o.\"entry\" = "   \
  "j.\"id\" WHERE " SW_ALL_WORDS(text) "AND " SW_STANDING("e.\"id\"") " AND " SW_STANDING(      \
      "j.\"id\"") more " ORDER BY f.\"entry\" DESC"

// A complaint said anew stands beside the one before; the newest counts.
#define SW_NEWEST_COMPLAINT                                                                    \
  " AND NOT EXISTS (SELECT 1 FROM \"entry\" n WHERE n.\"kind\" = 'complaint' AND n.\"job\" = " \
  "e.\"job\" AND n.\"id\" > e.\"id\" AND " SW_STANDING("n.\"id\"") ")"
#define SW_PART_TEXT \
  "f.\"name\" || CASE f.\"number\" WHEN '' THEN '' ELSE ' (' || f.\"number\" || ')' END"

constexpr SqlLiteral kVehicles(
    "SELECT f.\"vehicle\", NULL, f.\"entry\", f.\"registration\", f.\"make_model\", f.\"vin\", "
    "f.\"owner\", f.\"notes\" FROM \"fact_vehicle\" f WHERE " SW_ALL_WORDS(SW_VEHICLE_TEXT)
        "AND " SW_STANDING("f.\"entry\"") " AND NOT EXISTS (SELECT 1 FROM \"fact_vehicle\" n WHERE "
                                          "n.\"vehicle\" = f.\"vehicle\" AND n.\"entry\" > "
                                          "f.\"entry\" AND " SW_STANDING("n.\"entry\"")
                                              ") ORDER BY f.\"registration\", f.\"vehicle\"");
constexpr int kFirstText = 3;
constexpr int kVehicleColumns = 5;

struct JobFactSearch {
  SearchHit::Kind kind;
  SqlLiteral sql;
};
constexpr std::array kJobFacts{
    JobFactSearch{SearchHit::Kind::Request,
                  SW_JOB_FACT("\"fact_job_opened\"", "f.\"request\"", "")},
    JobFactSearch{SearchHit::Kind::Complaint,
                  SW_JOB_FACT("\"fact_complaint\"", "f.\"words\"", SW_NEWEST_COMPLAINT)},
    JobFactSearch{SearchHit::Kind::Part, SW_JOB_FACT("\"fact_part_used\"", SW_PART_TEXT, "")},
    JobFactSearch{SearchHit::Kind::Note, SW_JOB_FACT("\"fact_note\"", "f.\"text\"", "")}};

/// What was typed, as words in their composed form.
class TypedWords {
 public:
  static Result<TypedWords> of(const std::string& typed) {
    const QString text = QString::fromStdString(typed);
    if (text.toStdString() != typed || typed.find('\0') != std::string::npos) {
      return fail(ErrorCode::InvalidInput, "store.bad_text");
    }
    return TypedWords(text.normalized(QString::NormalizationForm_C)
                          .simplified()
                          .split(QLatin1Char(' '), Qt::SkipEmptyParts));
  }

  [[nodiscard]] bool none() const { return m_words.isEmpty(); }

  void bindTo(Query& query) const {
    for (std::size_t i = 0; i < kWordsInSql; ++i) {
      const auto at = static_cast<qsizetype>(i);
      query.bind(std::string_view(at < m_words.size() ? patternOf(m_words[at]) : "%"));
    }
  }

  /// What SQLite gives needs no second look: few words of ASCII letters.
  [[nodiscard]] bool foundBySql() const { return m_foundBySql; }

  [[nodiscard]] bool allIn(const QString& text) const {
    const QString composed = text.normalized(QString::NormalizationForm_C);
    return std::all_of(m_words.begin(), m_words.end(), [&](const QString& word) {
      return composed.contains(word, Qt::CaseInsensitive);
    });
  }

 private:
  explicit TypedWords(QStringList words)
      : m_words(std::move(words)),
        m_foundBySql(m_words.size() <= static_cast<qsizetype>(kWordsInSql) &&
                     std::all_of(m_words.begin(), m_words.end(), simple)) {}

  static bool simple(const QString& word) {
    return word.size() <= kLongestPattern &&
           std::all_of(word.begin(), word.end(), [](QChar c) { return c.unicode() < 0x80; });
  }

  /// A pattern that lets through at least all texts with the word. SQLite folds the case of ASCII
  /// letters alone, so other letters stand for anything.
  static std::string patternOf(const QString& word) {
    QString pattern = QStringLiteral("%");
    for (const QChar c : word.left(kLongestPattern)) {
      if (c == QLatin1Char('%') || c == QLatin1Char('_') || c == QLatin1Char('\\')) {
        pattern += QLatin1Char('\\');
      }
      if (c.unicode() < 0x80) {
        pattern += c;
      } else if (!pattern.endsWith(QLatin1Char('%'))) {
        pattern += QLatin1Char('%');
      }
    }
    return (pattern + QLatin1Char('%')).toStdString();
  }

  QStringList m_words;
  bool m_foundBySql = false;
};

/// What is shown of a row and, a line a field, what the words are looked for in.
struct RowTexts {
  std::string (*shown)(const Query&);
  QString (*searched)(const Query&);
};

std::string shownVehicle(const Query& query) {
  std::string shown;
  for (int i = 0; i < kVehicleColumns; ++i) {
    const std::string part = query.text(kFirstText + i);
    if (!part.empty()) shown += (shown.empty() ? "" : ", ") + part;
  }
  return shown;
}

QString searchedVehicle(const Query& query) {
  QString searched = QString::fromStdString(query.text(kFirstText));
  searched.remove(QLatin1Char(' ')).remove(QLatin1Char('-'));
  for (int i = 0; i < kVehicleColumns; ++i) {
    searched += QLatin1Char('\n') + QString::fromStdString(query.text(kFirstText + i));
  }
  return searched;
}

std::string shownFact(const Query& query) {
  return query.text(kFirstText);
}

QString searchedFact(const Query& query) {
  return QString::fromStdString(query.text(kFirstText));
}

constexpr RowTexts kVehicleTexts{shownVehicle, searchedVehicle};
constexpr RowTexts kFactTexts{shownFact, searchedFact};

/// The hits of one kind, the most recently recorded first, read one by one.
class Stream {
 public:
  static Result<Stream> open(Connection& connection, SearchHit::Kind kind, SqlLiteral sql,
                             RowTexts texts, const TypedWords& words) {
    auto query = connection.query(sql);
    if (!query) return failAs(query);
    words.bindTo(*query);
    if (const auto ran = query->run(); !ran) return failAs(ran);
    Stream stream(std::move(*query), kind, texts);
    if (const auto moved = stream.advance(words); !moved) return failAs(moved);
    return stream;
  }

  [[nodiscard]] const std::optional<SearchHit>& hit() const { return m_hit; }

  /// Gives the hit and moves on to the next one.
  Result<SearchHit> take(const TypedWords& words) {
    SearchHit taken = std::move(*m_hit);
    if (const auto moved = advance(words); !moved) return failAs(moved);
    return taken;
  }

 private:
  Stream(Query query, SearchHit::Kind kind, RowTexts texts)
      : m_query(std::move(query)), m_kind(kind), m_texts(texts) {}

  Result<void> advance(const TypedWords& words) {
    for (m_hit.reset(); !m_hit;) {
      const auto more = m_query.next();
      if (!more) return failAs(more);
      if (!*more) return {};
      if (!words.foundBySql() && !words.allIn(m_texts.searched(m_query))) continue;
      m_hit = SearchHit{m_kind, {m_query.integer(0)}, std::nullopt, {m_query.integer(2)}, {}};
      if (!m_query.isNull(1)) m_hit->job = model::JobId{m_query.integer(1)};
      m_hit->text = m_texts.shown(m_query);
    }
    return {};
  }

  Query m_query;
  SearchHit::Kind m_kind;
  RowTexts m_texts;
  std::optional<SearchHit> m_hit;
};

/// Adds what was recorded last over all streams until there are `limit` hits.
Result<void> takeNewest(std::vector<Stream>& streams, const TypedWords& words, std::size_t limit,
                        std::vector<SearchHit>& hits) {
  while (hits.size() < limit) {
    Stream* newest = nullptr;
    for (Stream& stream : streams) {
      const bool newer =
          stream.hit() && (newest == nullptr || stream.hit()->entry > newest->hit()->entry);
      if (newer) newest = &stream;
    }
    if (newest == nullptr) return {};
    auto hit = newest->take(words);
    if (!hit) return failAs(hit);
    hits.push_back(std::move(*hit));
  }
  return {};
}

}  // namespace

Result<std::vector<SearchHit>> Book::search(const std::string& text, std::size_t limit) const {
  const auto words = TypedWords::of(text);
  if (!words) return failAs(words);
  std::vector<SearchHit> hits;
  if (words->none()) return hits;
  Connection& connection = *m->opened.connection;
  auto vehicles =
      Stream::open(connection, SearchHit::Kind::Vehicle, kVehicles, kVehicleTexts, *words);
  if (!vehicles) return failAs(vehicles);
  while (vehicles->hit() && hits.size() < limit) {
    auto hit = vehicles->take(*words);
    if (!hit) return failAs(hit);
    hits.push_back(std::move(*hit));
  }
  if (hits.size() == limit) return hits;
  const auto ofVehicles = static_cast<std::ptrdiff_t>(hits.size());
  std::vector<Stream> streams;
  for (const JobFactSearch& one : kJobFacts) {
    auto stream = Stream::open(connection, one.kind, one.sql, kFactTexts, *words);
    if (!stream) return failAs(stream);
    streams.push_back(std::move(*stream));
  }
  if (const auto taken = takeNewest(streams, *words, limit, hits); !taken) return failAs(taken);
  std::sort(hits.begin() + ofVehicles, hits.end(), [](const SearchHit& a, const SearchHit& b) {
    return std::pair(*a.job, a.entry) > std::pair(*b.job, b.entry);
  });
  return hits;
}

}  // namespace sw::store
