// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "demo/mechanic.h"
#include "finished_job.h"
#include "shop_fixture.h"
#include "workshop/rules.h"

namespace sw::test {

/// The situation of the fixture's instruments.
inline app::demo::Situation situation() {
  app::demo::Situation situation;
  situation.scale = "scale";
  situation.micrometer = "micrometer";
  situation.dial = "dial";
  situation.rule = "rule";
  situation.tape = "rule";
  situation.feeler = "feeler";
  situation.gauge = "gauge";
  situation.smallWrench = "small";
  situation.largeWrench = "large";
  situation.left.interferenceMillimetres = 0.46;  // pulls of about 20 N with the pack found
  situation.right.interferenceMillimetres = 0.45;
  return situation;
}

/// Works the whole plan; everything but the sign-off.
inline void workWholePlan(Shop& shop, app::demo::Mechanic& mechanic,
                          const app::demo::Situation& what, const std::string& plan) {
  shop.ok(R"({"do":"complaint","words":"shakes","braking":"no","after_bump":"yes"})");
  shop.ok(R"({"do":"start_plan","plan":")" + plan + "\"}");
  const auto worked = mechanic.work({shop.job}, what);
  ASSERT_TRUE(worked) << worked.error().key << " " << worked.error().field << " "
                      << worked.error().detail("refusal") << worked.error().detail("text");
}

}  // namespace sw::test
