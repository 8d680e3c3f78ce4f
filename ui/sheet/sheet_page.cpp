// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/sheet_page.h"

#include <QComboBox>
#include <QFileDialog>
#include <QGuiApplication>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QShortcut>
#include <QStackedWidget>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "phrasing/error_sentence.h"
#include "report_print/page_set.h"
#include "report_print/pdf.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"
#include "ui/sheet/page_view.h"

namespace sw::ui {

/// Shows embedded pictures only: nothing on a page is ever fetched.
class PaperText final : public QTextBrowser {
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

namespace {

/// A long sheet takes a moment to lay out.
class BusyMark {
 public:
  BusyMark() { QGuiApplication::setOverrideCursor(Qt::WaitCursor); }
  ~BusyMark() { QGuiApplication::restoreOverrideCursor(); }
  BusyMark(const BusyMark&) = delete;
  BusyMark& operator=(const BusyMark&) = delete;
};

}  // namespace

SheetPage::SheetPage(ShopSession& session, QWidget* parent)
    : Page(session, "sheetPage", parent),
      m_title(new TextLabel(TextRole::Heading, this)),
      m_where(new TextLabel(TextRole::Quiet, this)),
      m_what(comboBox("whichDocument", tr("Document"), this)),
      m_paper(comboBox("paper", tr("Paper"), this)),
      m_print(new QPushButton(tr("&Print"), this)),
      m_save(new QPushButton(tr("&Save as PDF"), this)),
      m_whole(new QPushButton(tr("&Whole pages"), this)),
      m_asText(new QPushButton(tr("Read as &text"), this)),
      m_stack(new QStackedWidget(this)),
      m_pages(new PageView(m_stack)),
      m_text(new PaperText(m_stack)) {
  chooseFile = [this](const QString& suggested) {
    return QFileDialog::getSaveFileName(this, tr("Save as PDF"), suggested, tr("PDF (*.pdf)"));
  };
  choosePrinter = [this](QPrinter& printer) {
    QPrintDialog dialog(&printer, this);
    return dialog.exec() == QDialog::Accepted;
  };
  build();
  layOut();
  link();
}

void SheetPage::build() {
  m_what->addItems(
      {tr("Job sheet, workshop copy"), tr("Job sheet, customer copy"), tr("Work card")});
  m_paper->addItems({QStringLiteral("A4"), QStringLiteral("Letter")});
  m_print->setObjectName(QStringLiteral("print"));
  m_print->setToolTip(tr("Print (%1)").arg(QKeySequence(QKeySequence::Print).toString()));
  m_save->setObjectName(QStringLiteral("savePdf"));
  m_whole->setObjectName(QStringLiteral("wholePages"));
  m_whole->setCheckable(true);
  m_asText->setObjectName(QStringLiteral("readAsText"));
  m_asText->setCheckable(true);
  m_asText->setToolTip(tr("The same words as one text, for a screen reader or to copy from"));
  m_where->setObjectName(QStringLiteral("pageInView"));
  m_where->setWordWrap(false);
  m_pages->setObjectName(QStringLiteral("pageView"));
  m_pages->setAccessibleName(tr("Preview; press Read as text to have it read out"));
  m_text->setObjectName(QStringLiteral("paperView"));
  m_text->setAccessibleName(tr("The document as text"));
  m_text->setOpenLinks(false);
  m_text->setPalette(paletteOf(Look::Light));  // paper is white
}

void SheetPage::layOut() {
  m_stack->addWidget(m_pages);
  m_stack->addWidget(m_text);
  auto* head = new FlowLayout;
  head->addWidget(m_title);
  head->addWidget(m_where);
  auto* row = new FlowLayout;
  for (QWidget* widget :
       std::initializer_list<QWidget*>{m_what, m_paper, m_print, m_save, m_whole, m_asText}) {
    row->addWidget(widget);
  }
  auto* column = new QVBoxLayout(this);
  column->addLayout(head);
  column->addLayout(row);
  column->addWidget(m_stack, 1);
}

void SheetPage::link() {
  connect(m_print, &QPushButton::clicked, this, &SheetPage::print);
  auto* key = new QShortcut(QKeySequence(QKeySequence::Print), this);
  connect(key, &QShortcut::activated, this, &SheetPage::print);
  connect(m_save, &QPushButton::clicked, this, &SheetPage::save);
  connect(m_what, &QComboBox::currentIndexChanged, this, &SheetPage::preview);
  connect(m_paper, &QComboBox::currentIndexChanged, this, &SheetPage::preview);
  connect(m_whole, &QPushButton::toggled, this, [this](bool whole) {
    m_pages->setZoom(whole ? PageView::Zoom::Whole : PageView::Zoom::Width);
  });
  connect(m_asText, &QPushButton::toggled, this, [this] {
    preview();
    m_stack->currentWidget()->setFocus();
  });
  connect(m_pages, &PageView::pageShown, this, [this](int page, int of) {
    m_where->setText(of == 0 ? QString() : tr("page %1 of %2").arg(page + 1).arg(of));
  });
  connect(&session(), &ShopSession::changed, this, [this] {
    if (isVisible()) preview();
  });
}

void SheetPage::begin(const Goal& goal) {
  if (!goal.job) return;
  m_job = *goal.job;
  if (goal.step == kWorkCard) {
    const QSignalBlocker quiet(m_what);
    m_what->setCurrentIndex(static_cast<int>(report::JobPaper::WorkCard));
  }
  preview();
  m_what->setFocus();
}

report::Paper SheetPage::paper() const {
  return m_paper->currentIndex() == 0 ? report::Paper::A4 : report::Paper::Letter;
}

Result<report::PaperDocument> SheetPage::make(report::Paper paper) const {
  const workshop::Workshop& workshop = session().workshop();
  const auto job = workshop.job(m_job);
  if (!job) return failAs(job);
  const auto shop = workshop.shopOf(job->entries);
  if (!shop) return failAs(shop);
  const auto what = static_cast<report::JobPaper>(m_what->currentIndex());
  return report::makePaper({what, paper}, *job, *shop, workshop.book(), session().library());
}

void SheetPage::preview() {
  if (!m_job.valid()) return;
  const BusyMark busy;
  m_title->setText(tr("Job %1 on paper").arg(m_job.value));
  const bool asText = m_asText->isChecked();
  m_stack->setCurrentIndex(asText ? 1 : 0);
  m_whole->setEnabled(!asText);
  m_where->setVisible(!asText);
  const auto made = make(paper());
  if (!made) {
    m_pages->show({});
    m_text->clear();
    emit failed(phrasing::sentence(made.error()));
    return;
  }
  if (!asText) {
    m_pages->show(report_print::PageSet(made->document, made->pictures));
    return;
  }
  m_text->setPictures(made->pictures);
  m_text->setHtml(report::toHtml(made->document, report::HtmlTarget::Layout, made->pictures));
}

void SheetPage::save() {
  const auto made = make(paper());
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

void SheetPage::print() {
  auto made = make(paper());
  if (!made) {
    emit failed(phrasing::sentence(made.error()));
    return;
  }
  QPrinter printer(QPrinter::HighResolution);
  printer.setDocName(made->document.title);
  report_print::setPaper(printer, made->document);
  if (!choosePrinter(printer)) return;
  const report::Paper inPrinter = report_print::paperOf(printer, paper());
  if (inPrinter != made->document.paper) made = make(inPrinter);
  if (!made || !report_print::PageSet(made->document, made->pictures).print(printer)) {
    emit failed(
        tr("Nothing was printed: the printer did not take it. Is it on, and has it paper? "
           "Save as PDF and print that instead."));
    return;
  }
  emit said(tr("%1 was sent to the printer.").arg(made->document.title));
}

}  // namespace sw::ui
