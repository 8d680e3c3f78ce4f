// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <cstdio>
#include <limits>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "measure/evaluation.h"

// The verdict against SciPy (Debian package python3-scipy): verdict_boundary.py draws 1,000 series,
// instruments and limits, and puts a limit exactly on the edge of the verdict. Moving it by 1e-6 of
// the standard uncertainty across the edge must flip our verdict, for provisional and extended
// series too.

namespace sw {
namespace {

constexpr double kStep = 1e-6;  ///< in standard uncertainties

using Row = std::map<std::string, std::string>;

struct Edges {
  std::vector<Row> rows;
  std::string trouble;
};

std::vector<std::string> splitAt(const std::string& text, char mark) {
  std::vector<std::string> parts;
  std::istringstream stream(text);
  for (std::string part; std::getline(stream, part, mark);) parts.push_back(part);
  return parts;
}

std::string outputOf(const std::string& command, int& status) {
  std::string text;
  FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return text;
  char buffer[4096];
  while (std::fgets(buffer, sizeof buffer, pipe) != nullptr) text += buffer;
  status = pclose(pipe);
  return text;
}

Edges readEdges() {
  Edges edges;
  int status = -1;
  const std::string script = std::string(SW_SOURCE_DIR) + "/tests/core/measure/verdict_boundary.py";
  const auto lines = splitAt(outputOf("/usr/bin/python3 '" + script + "' 2>&1", status), '\n');
  if (status != 0 || lines.empty()) {
    edges.trouble =
        "the comparison needs /usr/bin/python3 with SciPy (Debian package python3-scipy); "
        "the script said: " +
        (lines.empty() ? std::string("nothing") : lines.back());
    return edges;
  }
  const auto names = splitAt(lines.front(), ';');
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const auto fields = splitAt(lines[i], ';');
    Row row;
    for (std::size_t k = 0; k < fields.size() && k < names.size(); ++k) row[names[k]] = fields[k];
    edges.rows.push_back(std::move(row));
  }
  return edges;
}

std::optional<double> maybe(const Row& row, const std::string& name) {
  const std::string& text = row.at(name);
  if (text.empty()) return std::nullopt;
  return std::stod(text);
}

double number(const Row& row, const std::string& name) {
  return std::stod(row.at(name));
}

InstrumentCapability instrumentOf(const Row& row) {
  InstrumentCapability instrument;
  instrument.graduation = number(row, "graduation");
  instrument.permissibleError = maybe(row, "permissible");
  instrument.errorShape = errorShapeFromWord(row.at("shape")).value();
  instrument.coverageFactor = number(row, "factor");
  instrument.differenceOfTwo = row.at("difference") == "1";
  instrument.localError = maybe(row, "local");
  if (const auto applied = maybe(row, "applied")) {
    instrument.check = OwnCheck{*applied, number(row, "shown"), number(row, "applied_u")};
  }
  return instrument;
}

SeriesInput inputOf(const Row& row) {
  SeriesInput input;
  for (const auto& text : splitAt(row.at("readings"), ' ')) {
    input.readings.push_back(std::stod(text));
  }
  input.instrument = instrumentOf(row);
  input.pullAngleWithin = number(row, "angle");
  if (const auto s = maybe(row, "pooled_s")) {
    input.pooled = PooledScatter{*s, number(row, "pooled_nu")};
  }
  input.confidence = number(row, "confidence");
  input.planned = static_cast<int>(number(row, "planned"));
  input.extended = row.at("extended") == "1";
  input.rule = decisionRuleFromWord(row.at("rule")).value();
  return input;
}

/// The limits on the edge, the one that moves (or both, for a band) shifted.
LimitBand limitOf(const Row& row, double shift) {
  LimitBand limit{maybe(row, "min"), maybe(row, "max")};
  const std::string& moves = row.at("moves");
  if (limit.min && moves != "max") *limit.min += shift;
  if (limit.max && moves != "min") *limit.max += shift;
  return limit;
}

std::string describeRow(const Row& row) {
  std::string text;
  for (const auto& [name, value] : row) text += name + "=" + value + " ";
  return text;
}

void expectDecision(const Row& row, double shift, const std::string& expected) {
  SeriesInput input = inputOf(row);
  input.limit = limitOf(row, shift * number(row, "u"));
  const SeriesOutcome outcome = evaluateSeries(input).value();
  EXPECT_EQ(word(outcome.decisionSoFar), expected) << describeRow(row);
  const bool provisional =
      row.at("verdict_is_provisional") == "1" && expected != "instrument_too_coarse";
  EXPECT_EQ(word(outcome.verdict), provisional ? "provisional" : expected) << describeRow(row);
}

class VerdictBoundary : public testing::Test {
 protected:
  void SetUp() override {
    m_edges = readEdges();
    ASSERT_EQ(m_edges.trouble, "");
  }
  Edges m_edges;
};

TEST_F(VerdictBoundary, VerdictFlipsWhereSciPyPutsTheEdge) {
  std::set<std::string> cases;
  for (const Row& row : m_edges.rows) {
    cases.insert(row.at("case"));
    expectDecision(row, +kStep, row.at("above"));
    expectDecision(row, -kStep, row.at("below"));
    if (HasFailure()) return;  // one case explained is enough
  }
  EXPECT_EQ(cases.size(), 1000U);
}

TEST_F(VerdictBoundary, ValueUncertaintyAndBarAreSciPys) {
  for (const Row& row : m_edges.rows) {
    SeriesInput input = inputOf(row);
    input.limit = limitOf(row, 0);
    const SeriesOutcome got = evaluateSeries(input).value();
    const double u = number(row, "u");
    EXPECT_NEAR(got.correctedMean, number(row, "value"), 1e-9 * u) << describeRow(row);
    // The spread of the cosine is a difference of nearly equal numbers: 1e-9 is what it leaves.
    EXPECT_NEAR(got.standardUncertainty, u, 1e-9 * u) << describeRow(row);
    const double nu = number(row, "nu");
    if (std::isinf(nu)) {
      EXPECT_EQ(got.degreesOfFreedom, std::nullopt) << describeRow(row);
    } else {
      EXPECT_NEAR(got.degreesOfFreedom.value_or(0), nu, 1e-8 * nu) << describeRow(row);
    }
    EXPECT_NEAR(got.bar, number(row, "bar"), 1e-15) << describeRow(row);
    if (HasFailure()) return;
  }
}

TEST_F(VerdictBoundary, EveryKindOfEdgeAndSeriesIsAmongTheCases) {
  std::map<std::string, int> seen;
  for (const Row& row : m_edges.rows) {
    ++seen[row.at("moves")];
    ++seen[row.at("rule")];
    if (row.at("verdict_is_provisional") == "1") ++seen["provisional"];
    if (row.at("extended") == "1") ++seen["extended"];
    if (row.at("extended") == "1" && row.at("verdict_is_provisional") == "1") ++seen["both"];
    if (!row.at("pooled_s").empty()) ++seen["pooled"];
    if (!row.at("applied").empty()) ++seen["own check"];
    if (row.at("below") == "instrument_too_coarse") ++seen["too coarse"];
  }
  for (const char* kind :
       {"max", "min", "band", "conformance_probability", "guard_band_k2", "provisional", "extended",
        "both", "pooled", "own check", "too coarse"}) {
    EXPECT_GE(seen[kind], 50) << kind;
  }
}

}  // namespace
}  // namespace sw
