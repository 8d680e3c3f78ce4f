// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "compute/common_fields.h"
#include "compute/output.h"
#include "compute/swivel/shim_fields.h"
#include "compute/swivel/shim_pack_picture.h"
#include "compute/swivel/shim_pack_texts.h"
#include "compute/swivel/swivel.h"
#include "measure/type_b.h"
#include "mechanics/swivel/pack_advice.h"

namespace sw::compute {

namespace {

using mechanics::PackAdvice;
using mechanics::PackPulls;
using mechanics::PackQuestion;
using mechanics::PackRow;

constexpr int kMostPulls = 100;
constexpr int kUsualPulls = 5;
constexpr double kPastPulls = 1e6;

/// What a pull on the scale means as a force square to the arm that the limit speaks of.
struct PullTerms {
  double factor = 1;      ///< of arm and angle
  double angleShare = 0;  ///< relative standard uncertainty of the unknown angle
};

Result<PullTerms> readPullTerms(InputReader& reader) {
  const auto arm = reader.optional<Length>("arm", Sign::Positive);
  const auto limitArm = reader.optional<Length>("limit_arm", Sign::Positive);
  const auto offSquare = reader.optional<Angle>("off_square");
  const auto within = reader.optional<Angle>("pull_angle_within", Sign::NotNegative);
  PullTerms terms;
  if (limitArm) reader.requireKey("arm");
  if (arm && limitArm) terms.factor = *arm / *limitArm;
  if (offSquare) {
    if (std::abs(offSquare->si()) >= degrees(90).si()) {
      return fail(ErrorCode::OutOfRange, "starting_force.not_square", "off_square");
    }
    terms.factor *= std::cos(offSquare->si());
  }
  if (within) {
    const auto angle = measure::pullAngleFactor(within->si());
    if (!angle) return tl::make_unexpected(angle.error().about("pull_angle_within"));
    terms.factor *= angle->factor;
    terms.angleShare = angle->standardUncertainty / angle->factor;
  }
  return terms;
}

struct StatedPulls {
  PackPulls pulls;
  std::string state;
};

StatedPulls readPulls(InputReader& reader, double factor) {
  StatedPulls stated;
  stated.pulls.pack = reader.required<Length>("pack", Sign::NotNegative);
  reader.requireKey("pulls");
  for (const Force pull : reader.list<Force>("pulls", Sign::NotNegative)) {
    stated.pulls.pulls.push_back(factor * pull);
  }
  stated.state = reader.fields().text("state").value_or("");
  return stated;
}

/// Pulls of one state only: that asked for, or that of the last pack.
void keepOneState(InputReader& reader, std::vector<StatedPulls> stated, PackQuestion& question,
                  std::vector<Note>& notes) {
  const auto asked = reader.fields().text("state");
  const std::string state = asked ? *asked : stated.empty() ? std::string{} : stated.back().state;
  int left = 0;
  for (StatedPulls& each : stated) {
    if (each.state == state) {
      question.measured.push_back(std::move(each.pulls));
    } else {
      ++left;
    }
  }
  if (left > 0) notes.push_back(otherStates(left));
}

void readLimit(InputReader& reader, PackQuestion& question) {
  if (!reader.fields().has("limit_torque")) {
    reader.requireKey("limit");
    reader.inObject("limit", [&](InputReader& limit) {
      question.limit = readBand(limit, {.kind = QuantityKind::Force, .sign = Sign::NotNegative});
    });
    return;
  }
  reader.inObject("limit_torque", [&](InputReader& limit) {
    question.limit = readBand(limit, {.kind = QuantityKind::Torque, .sign = Sign::NotNegative});
  });
  reader.requireKey("arm");
  const bool other = reader.fields().has("limit_arm");
  const auto arm = reader.optional<Length>(other ? "limit_arm" : "arm", Sign::Positive);
  if (!arm) return;
  for (auto* end : {&question.limit.min, &question.limit.max}) {
    if (*end) **end /= arm->si();
  }
}

void readInstrument(InputReader& reader, const PullTerms& terms, PackQuestion& question) {
  double error = 0;
  reader.inObject("instrument", [&](InputReader& scale) {
    const auto graduation = scale.required<Force>("graduation", Sign::Positive);
    question.terms.graduationUncertainty =
        newtons(terms.factor * measure::graduationUncertainty(graduation.si()));
    const auto permissible = scale.optional<Force>("permissible_error", Sign::Positive);
    if (permissible) error = terms.factor * measure::rectangular(permissible->si());
  });
  double middle = 0;
  if (question.limit.min || question.limit.max) {
    const double min = question.limit.min.value_or(*question.limit.max);
    middle = 0.5 * (min + question.limit.max.value_or(min));
  }
  question.terms.instrumentUncertainty = newtons(std::hypot(error, terms.angleShare * middle));
}

void readScatter(InputReader& reader, PackQuestion& question) {
  reader.inObject("scatter", [&](InputReader& scatter) {
    scatter.requireKey("readings");
    const auto amount = scatter.required<Force>("amount", Sign::Positive);
    const auto readings =
        scatter.number("readings", {.least = 1, .most = kPastPulls, .text = "1 to 1000000"});
    question.scatter = mechanics::ScatterWords{amount, readings.value_or(1)};
  });
  question.rebuildScatter =
      reader.optional<Force>("rebuild_scatter", Sign::NotNegative).value_or(Force{});
}

void readBeliefs(InputReader& reader, PackQuestion& question) {
  reader.inObject("measured_float", [&](InputReader& measured) {
    question.knee =
        mechanics::MeasuredKnee{measured.required<Length>("pack", Sign::NotNegative),
                                measured.required<Length>("standard_uncertainty", Sign::Positive)};
  });
  reader.inObject("film", [&](InputReader& film) {
    const auto least = film.required<Length>("least", Sign::NotNegative);
    const auto most = film.required<Length>("most", Sign::NotNegative);
    if (least > most) film.fail({ErrorCode::OutOfRange, "measure.empty_limit", "/film", {}});
    question.terms.film = mechanics::SealantFilm{least, most};
  });
  question.otherSide = reader.optional<Force>("other_side", Sign::NotNegative);
}

void readHistory(InputReader& reader, const PullTerms& terms, PackQuestion& question) {
  std::vector<mechanics::HistoricSide> sides;
  reader.eachObject("history", [&](InputReader& side) {
    side.requireKey("packs");
    mechanics::HistoricSide historic;
    side.eachObject("packs", [&](InputReader& pack) {
      historic.packs.push_back(readPulls(pack, terms.factor).pulls);
    });
    sides.push_back(std::move(historic));
  });
  const bool usable = std::all_of(sides.begin(), sides.end(), [](const auto& side) {
    return std::none_of(side.packs.begin(), side.packs.end(),
                        [](const PackPulls& pack) { return pack.pulls.empty(); });
  });
  if (!usable) {
    reader.fail({ErrorCode::Missing, "measure.no_readings", "/history", {}});
    return;
  }
  const double guess = std::max(question.terms.graduationUncertainty.si() * std::sqrt(12.0), 0.1);
  const auto scatter = question.scatter.value_or(mechanics::ScatterWords{newtons(guess), 2.0});
  question.history = mechanics::learnedFrom(sides, question.effect, scatter);
}

Result<PackQuestion> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  PackQuestion question;
  question.effect = readLayout(reader);
  question.stock = readStock(reader);
  const auto terms = readPullTerms(reader);
  if (!terms) return asInputError(terms.error());
  readLimit(reader, question);
  std::vector<StatedPulls> stated;
  reader.eachObject("measured",
                    [&](InputReader& pack) { stated.push_back(readPulls(pack, terms->factor)); });
  keepOneState(reader, std::move(stated), question, notes);
  readInstrument(reader, *terms, question);
  readScatter(reader, question);
  readBeliefs(reader, question);
  if (reader.fields().ok()) readHistory(reader, *terms, question);
  question.terms.pulls = kUsualPulls;
  reader.inObject("options", [&](InputReader& options) {
    question.terms.pulls = options.wholeNumber("planned", 1, kMostPulls).value_or(kUsualPulls);
  });
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return question;
}

void putPrediction(const PackRow::Prediction& prediction, Json& row) {
  row["expected"] = quantityText(prediction.expected);
  row["true_low"] = quantityText(prediction.trueForce.low);
  row["true_high"] = quantityText(prediction.trueForce.high);
  row["shown_low"] = quantityText(prediction.shownForce.low);
  row["shown_high"] = quantityText(prediction.shownForce.high);
  row["within"] = plainNumber(prediction.within);
  row["below"] = plainNumber(prediction.below);
  row["above"] = plainNumber(prediction.above);
  row["proved"] = plainNumber(prediction.proved);
  if (prediction.fromOtherSide) {
    row["from_other_side"] = quantityText(*prediction.fromOtherSide);
  }
}

Json tableJson(const PackAdvice& advice) {
  Json table = Json::array();
  for (const PackRow& row : advice.rows) {
    Json line = packJson(row.pack);
    line["reach"] = word(row.reach);
    if (row.prediction) putPrediction(*row.prediction, line);
    table.push_back(std::move(line));
  }
  return table;
}

Json stiffnessRange(double low, double middle, double high) {
  return {{"middle", quantityText(Stiffness::fromSi(middle))},
          {"low", quantityText(Stiffness::fromSi(low))},
          {"high", quantityText(Stiffness::fromSi(high))}};
}

void putLine(const PackAdvice& advice, Json& result) {
  if (!advice.line) return;
  const auto slope = advice.line->slope();
  const auto knee = advice.line->knee();
  result["slope"] = stiffnessRange(slope.low, slope.middle, slope.high);
  result["float_gone_at"] = {{"middle", quantityText(Length::fromSi(knee.middle))},
                             {"low", quantityText(Length::fromSi(std::min(knee.low, knee.high)))},
                             {"high", quantityText(Length::fromSi(std::max(knee.low, knee.high)))}};
  if (advice.wanted) result["wanted"] = quantityText(*advice.wanted);
}

}  // namespace

Result<Outcome> runShimPack(const Json& json) {
  Outcome outcome;
  const auto question = read(json, outcome.notes);
  if (!question) return failAs(question);
  const auto advice = mechanics::advisePack(*question);
  if (!advice) return asInputError(advice.error());
  Json& result = outcome.result;
  if (advice->recommended) {
    result["recommended"] = packJson(advice->rows[*advice->recommended].pack);
  }
  result["reason"] = word(advice->reason);
  result["basis"] = word(advice->basis);
  result["float_left_likely"] = advice->floatLikely;
  putLine(*advice, result);
  if (question->history) {
    const auto& history = *question->history;
    result["history"] = {
        {"sides", history.sides},
        {"slope", stiffnessRange(history.slopeLow, history.slopeMiddle, history.slopeHigh)}};
  }
  result["table"] = tableJson(*advice);
  for (Note& note : shimPackNotes(*question, *advice)) outcome.notes.push_back(std::move(note));
  outcome.options = {{"planned", question->terms.pulls}};
  outcome.shown = shimPackShown(*question, *advice);
  outcome.draw = [question = *question, advice = *advice](figure::Size size) {
    return shimPackPicture(question, advice, size);
  };
  return outcome;
}

}  // namespace sw::compute
