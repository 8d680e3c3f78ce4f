// SPDX-License-Identifier: GPL-3.0-or-later
// Walks all pages and the panels of all kinds of step: names for assistive tools, sizes and gaps of
// targets, words that fit in both modes and in a language 40 % longer, the way of the Tab key.
#include "ui/pages.h"

#include <QAbstractButton>
#include <QAccessible>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTranslator>
#include <set>

#include "ui/common/word_button.h"
#include "window_fixture.h"

namespace sw::ui {
namespace {

/// Every text in accents and at least 40 % longer; marks to be filled in stay as they are.
class LongerLanguage final : public QTranslator {
 public:
  [[nodiscard]] QString translate(const char*, const char* source, const char*,
                                  int) const override {
    static const QString kPlain = QStringLiteral("aeiouAEIOU");
    static const QString kAccent = QStringLiteral("åéîøûÅÉÎØÛ");
    QString text = QString::fromUtf8(source);
    bool inside = false;  // of a {name} that is filled in
    for (QChar& letter : text) {
      if (letter == QLatin1Char('{')) inside = true;
      if (letter == QLatin1Char('}')) inside = false;
      const auto at = kPlain.indexOf(letter);
      if (!inside && at >= 0) letter = kAccent.at(at);
    }
    const auto more = (text.size() * 2 + 4) / 5;
    QString tail;
    while (tail.size() < more) tail += QStringLiteral(" øné");
    return text + tail.left(more);
  }
  [[nodiscard]] bool isEmpty() const override { return false; }
};

/// One thing to be looked at: a page about a job, or a step of it.
struct View {
  PageId page;
  std::int64_t job;
  std::string step;
  std::optional<model::Side> side;
};

class Pages : public WindowTest {
 protected:
  void SetUp() override { makeDemoBook(); }
  void TearDown() override { applyTheme({}); }

  /// The kinds of panel a step can have.
  static std::string kindOf(const procedures::Step& step) {
    if (step.hold) return "hold " + step.hold->key;
    if (step.measure) {
      return "measure " + std::string(word(step.measure->quantity)) +
             (step.measure->limit.empty() ? "" : " with limit");
    }
    if (step.torque) return "torque";
    if (step.shimPack) return "pack";
    if (step.roadTest) return "road test";
    if (step.waitMinutes) return "wait";
    if (!step.parts.empty()) return "parts";
    return step.observe.empty() ? "plain" : "observe";
  }
  /// A closed job, one that is up on a lift with a hold to be asked again, one at its beginning;
  /// and of that one a step of every kind.
  std::vector<View> views() {
    std::vector<View> all;
    for (const std::int64_t job : {1, 11, 12}) {
      for (const PageRow& row : pages()) all.push_back({row.id, job, {}, {}});
    }
    const auto job = session->job({12});
    EXPECT_TRUE(job);
    std::set<std::string> kinds;
    for (std::size_t i = 0; i < (*job)->steps.size(); ++i) {
      const auto& view = (*job)->steps[i];
      if (!kinds.insert(kindOf(*view.step)).second) continue;
      all.push_back({PageId::Work, 12, whereOf(**job, i).step, view.side});
    }
    EXPECT_GE(kinds.size(), 12U);
    return all;
  }
  template <class Visit>
  void onEveryView(const Theme& theme, Visit visit) {
    applyTheme(theme);
    openWindow();
    session->setPerson("MT");
    for (const View& view : views()) {
      SCOPED_TRACE(std::string(wordOf(view.page)) + ", job " + std::to_string(view.job) + " " +
                   view.step);
      Goal goal;
      goal.job = model::JobId{view.job};
      goal.step = view.step;
      goal.side = view.side;
      ASSERT_TRUE(showPage(*window, wordOf(view.page), goal));
      settle();
      visit();
    }
  }
  template <class Visit>
  void onEveryWidget(const Theme& theme, Visit visit) {
    onEveryView(theme, [&] {
      for (QWidget* widget : window->findChildren<QWidget*>()) {
        if (widget->isVisible()) visit(*widget);
      }
    });
  }
};

bool isFocusable(const QWidget& widget) {
  return widget.focusPolicy() != Qt::NoFocus && widget.isEnabled();
}

/// Parts of a composite widget answer for it.
bool isInternal(const QWidget& widget) {
  return widget.objectName().startsWith("qt_");
}

bool isTarget(const QWidget& widget) {
  return !isInternal(widget) && (qobject_cast<const QAbstractButton*>(&widget) != nullptr ||
                                 qobject_cast<const QLineEdit*>(&widget) != nullptr ||
                                 qobject_cast<const QComboBox*>(&widget) != nullptr);
}

int longestWord(const QFontMetrics& metrics, const QString& text) {
  int longest = 0;
  for (const QString& word : text.split(QRegularExpression(QStringLiteral("\\s")))) {
    longest = qMax(longest, metrics.horizontalAdvance(word));
  }
  return longest;
}

void expectWordsFit(const QWidget& widget) {
  const QFontMetrics metrics = widget.fontMetrics();
  if (const auto* label = qobject_cast<const QLabel*>(&widget)) {
    const std::string text = label->text().toStdString();
    if (text.empty()) return;
    if (label->wordWrap()) {
      EXPECT_GE(label->height(), label->heightForWidth(label->width()))
          << label->width() << " wide: " << text;
      EXPECT_GE(label->width(), longestWord(metrics, label->text())) << "too narrow: " << text;
    } else {
      EXPECT_GE(label->height(), label->sizeHint().height()) << text;
      EXPECT_GE(label->width(), label->sizeHint().width()) << text;
    }
  } else if (const auto* wrapped = qobject_cast<const WordButton*>(&widget)) {
    EXPECT_GE(wrapped->height(), wrapped->heightForWidth(wrapped->width()))
        << wrapped->text().toStdString();
    EXPECT_GE(wrapped->width(), longestWord(metrics, wrapped->text()))
        << wrapped->text().toStdString();
  } else if (const auto* button = qobject_cast<const QAbstractButton*>(&widget)) {
    EXPECT_GE(button->width(), metrics.horizontalAdvance(button->text()))
        << button->text().toStdString();
  }
}

/// What lies wider than its page is cut at the edge.
void expectNothingBeyondTheEdge(const QWidget& widget) {
  const auto* scroll = qobject_cast<const QScrollArea*>(&widget);
  if (scroll == nullptr || scroll->widget() == nullptr) return;
  if (scroll->objectName() == QStringLiteral("pageView")) return;  // paper may be wider
  std::string widest;
  for (const QWidget* inside : scroll->widget()->findChildren<QWidget*>()) {
    if (!inside->isVisible() ||
        inside->minimumSizeHint().width() <= scroll->viewport()->width() / 2)
      continue;
    widest += " " + inside->objectName().toStdString() + "(" + inside->metaObject()->className() +
              ") " + std::to_string(inside->minimumSizeHint().width());
  }
  EXPECT_LE(scroll->widget()->width(), scroll->viewport()->width())
      << scroll->objectName().toStdString() << ":" << widest;
}

TEST_F(Pages, EveryFocusableWidgetHasItsNames) {
  onEveryWidget({}, [](const QWidget& widget) {
    if (!isFocusable(widget) || isInternal(widget)) return;
    EXPECT_FALSE(widget.objectName().isEmpty()) << widget.metaObject()->className();
    const auto* face = QAccessible::queryAccessibleInterface(const_cast<QWidget*>(&widget));
    ASSERT_NE(face, nullptr);
    EXPECT_FALSE(face->text(QAccessible::Name).isEmpty()) << widget.objectName().toStdString();
  });
}

// WCAG 2.2, 2.5.8 asks for 24 px; 32 px at the desk and 72 px (19 mm) with gloves are our own.
TEST_F(Pages, TargetsHaveTheSizeOfTheMode) {
  for (const Mode mode : {Mode::Desk, Mode::Workshop}) {
    const int least = mode == Mode::Desk ? 32 : 72;
    onEveryWidget({Look::Light, mode}, [&](const QWidget& widget) {
      if (!isTarget(widget)) return;
      EXPECT_GE(widget.height(), least) << widget.objectName().toStdString();
      EXPECT_GE(widget.width(), least) << widget.objectName().toStdString();
    });
  }
}

TEST_F(Pages, TargetsKeepTheGapOfTheMode) {
  for (const Mode mode : {Mode::Desk, Mode::Workshop}) {
    const int least = mode == Mode::Desk ? 6 : 24;
    onEveryView({Look::Light, mode}, [&] {
      std::vector<std::pair<QRect, std::string>> targets;
      for (const QWidget* widget : window->findChildren<QWidget*>()) {
        // What is scrolled out of sight, wholly or in part, has no neighbour there.
        const bool whole = widget->visibleRegion().boundingRect().size() == widget->size();
        if (!widget->isVisible() || !isTarget(*widget) || !whole) continue;
        targets.emplace_back(QRect(widget->mapTo(window.get(), QPoint(0, 0)), widget->size()),
                             widget->objectName().toStdString());
      }
      for (std::size_t i = 0; i < targets.size(); ++i) {
        for (std::size_t j = i + 1; j < targets.size(); ++j) {
          const QRect grown = targets[i].first.adjusted(-least, -least, least, least);
          EXPECT_FALSE(grown.intersects(targets[j].first))
              << targets[i].second << " and " << targets[j].second;
        }
      }
    });
  }
}

TEST_F(Pages, NoWordIsCut) {
  for (const Mode mode : {Mode::Desk, Mode::Workshop}) {
    onEveryWidget({Look::Light, mode}, [](const QWidget& widget) {
      expectWordsFit(widget);
      expectNothingBeyondTheEdge(widget);
    });
  }
}

TEST_F(Pages, NoWordIsCutInALongerLanguage) {
  LongerLanguage language;
  QCoreApplication::installTranslator(&language);
  for (const Mode mode : {Mode::Desk, Mode::Workshop}) {
    onEveryWidget({Look::Light, mode}, [](const QWidget& widget) {
      expectWordsFit(widget);
      expectNothingBeyondTheEdge(widget);
    });
  }
  window.reset();
  QCoreApplication::removeTranslator(&language);
}

TEST_F(Pages, TheTabKeyGoesTheWayOneReads) {
  onEveryView({}, [this] {
    QRect before;
    QString nameBefore;
    auto* pageWidget = window->findChild<QStackedWidget*>()->currentWidget();
    for (QWidget* at = pageWidget->nextInFocusChain(); at != pageWidget;
         at = at->nextInFocusChain()) {
      // What is scrolled out of sight has no place among what is seen.
      const bool stop = at->isVisible() && isFocusable(*at) && !at->visibleRegion().isEmpty() &&
                        (at->focusPolicy() & Qt::TabFocus) != 0;
      if (!stop || !pageWidget->isAncestorOf(at)) continue;
      const QRect here(at->mapTo(window.get(), QPoint(0, 0)), at->size());
      const bool above = here.bottom() <= before.top();
      const bool toTheRight = here.left() >= before.right();
      EXPECT_TRUE(!above || toTheRight)
          << nameBefore.toStdString() << " -> " << at->objectName().toStdString();
      before = here;
      nameBefore = at->objectName();
    }
    const bool closed = window->here().job == model::JobId{1};
    EXPECT_TRUE(closed || !nameBefore.isEmpty());
  });
}

TEST_F(Pages, APageThatIsNotThereIsNamed) {
  openWindow();
  const auto shown = showPage(*window, "nowhere", {});
  ASSERT_FALSE(shown);
  EXPECT_EQ(shown.error().key, "ui.no_page");
  EXPECT_FALSE(showPage(*window, "sheet", {}));
}

TEST_F(Pages, APictureIsScaled) {
  openWindow();
  ASSERT_TRUE(showPage(*window, "start", {}));
  EXPECT_EQ(pictureOf(*window, {800, 600}, 2.0).size(), QSize(1600, 1200));
}

}  // namespace
}  // namespace sw::ui
