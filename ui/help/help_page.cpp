// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/help/help_page.h"

#include <QCoreApplication>
#include <QFile>
#include <QKeySequence>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "ui/actions.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"
#include "ui/common/word_button.h"

namespace sw::ui {

namespace {

/// The part of the help under "## name", without its heading.
QString sectionOf(const QString& help, const QString& name) {
  const QString head = QStringLiteral("## ") + name + QLatin1Char('\n');
  const auto start = help.indexOf(head);
  if (start < 0) return {};
  const auto from = start + head.size();
  const auto end = help.indexOf(QStringLiteral("\n## "), from);
  return help.mid(from, end < 0 ? -1 : end - from).trimmed();
}

QString keysText() {
  QString text =
      QStringLiteral("| %1 | %2 |\n|---|---|\n").arg(HelpPage::tr("key"), HelpPage::tr("does"));
  for (const ActionRow& row : actionTable()) {
    const QKeySequence key(QString::fromLatin1(row.shortcut));
    text += QStringLiteral("| %1 | %2: %3 |\n")
                .arg(key.toString(QKeySequence::NativeText),
                     QCoreApplication::translate("Actions", row.text),
                     QCoreApplication::translate("Actions", row.tip));
  }
  return text;
}

QString titleOf(const ActionRow& row) {
  return QCoreApplication::translate("Actions", row.text);
}

}  // namespace

HelpPage::HelpPage(ShopSession& session, QWidget* parent)
    : Page(session, "helpPage", parent),
      m_back(new WordButton("helpBack", tr("Back"), this)),
      m_text(new QTextBrowser(this)) {
  m_text->setObjectName(QStringLiteral("helpText"));
  m_text->setAccessibleName(tr("Help"));
  m_text->setOpenLinks(false);
  auto* column = new QVBoxLayout(this);
  column->addWidget(new TextLabel(tr("Help"), TextRole::Heading, this));
  column->addWidget(m_back, 0, Qt::AlignLeft);
  column->addWidget(m_text, 1);
  connect(m_back, &QPushButton::clicked, this, [this] { emit goWanted(m_from); });
}

QString HelpPage::markdown() const {
  QFile file(session().resources() + QStringLiteral("/help/window.md"));
  if (!file.open(QIODevice::ReadOnly)) {
    return tr("The help is missing: %1").arg(file.fileName()) + QStringLiteral("\n\n") + keysText();
  }
  const QString help = QString::fromUtf8(file.readAll());
  const auto nameOf = [](PageId page) { return QString::fromLatin1(wordOf(page)); };
  QString text = sectionOf(help, nameOf(m_from.page)) + QStringLiteral("\n\n## ") + tr("Keys") +
                 QStringLiteral("\n\n") + keysText() + QLatin1Char('\n');
  for (const ActionRow& row : actionTable()) {
    if (!row.page || *row.page == m_from.page) continue;
    text += QStringLiteral("\n## ") + titleOf(row) + QStringLiteral("\n\n") +
            sectionOf(help, nameOf(*row.page)) + QLatin1Char('\n');
  }
  return text;
}

void HelpPage::begin(const Goal&) {
  m_text->setMarkdown(markdown());
  m_text->document()->setDocumentMargin(16);
  m_text->moveCursor(QTextCursor::Start);
  m_text->setFocus();
}

}  // namespace sw::ui
