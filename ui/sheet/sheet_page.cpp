// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/sheet_page.h"

#include <QComboBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "phrasing/error_sentence.h"
#include "report_print/pdf.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"

namespace sw::ui {

/// Shows embedded pictures only: nothing on a page is ever fetched.
class PaperView final : public QTextBrowser {
 public:
  using QTextBrowser::QTextBrowser;
  void setPictures(const report::PictureMap& pictures) { m_pictures = pictures; }

 protected:
  QVariant loadResource(int, const QUrl& name) override {
    const QString text = name.toString();
    if (!text.startsWith(QLatin1String("picture:"))) return {};
    const auto found = m_pictures.find(text.mid(8));
    return found == m_pictures.end() ? QVariant{} : QVariant(found->second.bytes);
  }

 private:
  report::PictureMap m_pictures;
};

SheetPage::SheetPage(ShopSession& session, QWidget* parent)
    : Page(session, "sheetPage", parent),
      m_title(new TextLabel(TextRole::Heading, this)),
      m_what(new QComboBox(this)),
      m_paper(new QComboBox(this)),
      m_save(new QPushButton(tr("&Save as PDF"), this)),
      m_view(new PaperView(this)) {
  chooseFile = [this](const QString& suggested) {
    return QFileDialog::getSaveFileName(this, tr("Save as PDF"), suggested, tr("PDF (*.pdf)"));
  };
  m_what->setObjectName(QStringLiteral("whichDocument"));
  m_what->setAccessibleName(tr("Document"));
  m_what->addItems(
      {tr("Job sheet, workshop copy"), tr("Job sheet, customer copy"), tr("Work card")});
  m_paper->setObjectName(QStringLiteral("paper"));
  m_paper->setAccessibleName(tr("Paper"));
  m_paper->addItems({QStringLiteral("A4"), QStringLiteral("Letter")});
  m_view->setObjectName(QStringLiteral("paperView"));
  m_view->setAccessibleName(tr("Preview"));
  m_view->setOpenLinks(false);
  m_view->setPalette(paletteOf(Look::Light));  // paper is white
  m_save->setObjectName(QStringLiteral("savePdf"));

  auto* row = new QHBoxLayout;
  row->addWidget(m_what);
  row->addWidget(m_paper);
  row->addWidget(m_save);
  row->addStretch(1);
  auto* column = new QVBoxLayout(this);
  column->addWidget(m_title);
  column->addLayout(row);
  column->addWidget(m_view, 1);
  connect(m_save, &QPushButton::clicked, this, &SheetPage::save);
  connect(m_what, &QComboBox::currentIndexChanged, this, &SheetPage::preview);
  connect(m_paper, &QComboBox::currentIndexChanged, this, &SheetPage::preview);
}

void SheetPage::begin(const Goal& goal) {
  if (!goal.job) return;
  m_job = *goal.job;
  preview();
  m_what->setFocus();
}

Result<report::PaperDocument> SheetPage::make() const {
  const workshop::Workshop& workshop = session().workshop();
  const auto job = workshop.job(m_job);
  if (!job) return failAs(job);
  const auto shop = workshop.shopOf(job->entries);
  if (!shop) return failAs(shop);
  const auto what = static_cast<report::JobPaper>(m_what->currentIndex());
  const auto paper = m_paper->currentIndex() == 0 ? report::Paper::A4 : report::Paper::Letter;
  return report::makePaper({what, paper}, *job, *shop, workshop.book(), session().library());
}

void SheetPage::preview() {
  if (!m_job.valid()) return;
  m_title->setText(tr("Job %1 on paper").arg(m_job.value));
  const auto made = make();
  if (!made) {
    m_view->setPlainText(phrasing::sentence(made.error()));
    return;
  }
  m_view->setPictures(made->pictures);
  m_view->setHtml(report::toHtml(made->document, report::HtmlTarget::Layout, made->pictures));
}

void SheetPage::save() {
  const auto made = make();
  if (!made) {
    emit failed(phrasing::sentence(made.error()));
    return;
  }
  const QString path = chooseFile(tr("job-%1.pdf").arg(m_job.value));
  if (path.isEmpty()) return;
  const auto pdf = report_print::toPdf(made->document, {made->pictures, std::nullopt});
  if (!pdf) {
    emit failed(phrasing::sentence(pdf.error()));
    return;
  }
  const auto written = report_print::writeFile(path.toStdString(), *pdf);
  if (!written) {
    emit failed(phrasing::sentence(written.error()));
    return;
  }
  emit said(tr("Saved as %1").arg(path));
}

}  // namespace sw::ui
