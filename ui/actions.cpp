// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/actions.h"

#include <QtGlobal>
#include <algorithm>
#include <array>

namespace sw::ui {

namespace {

#define SW_TEXT(text) QT_TRANSLATE_NOOP("Actions", text)

constexpr std::array kActions{
    ActionRow{ActionId::Start, "goStart", SW_TEXT("Start"), SW_TEXT("Open jobs and what is due"),
              "Alt+0", PageId::Start},
    ActionRow{ActionId::NewJob, "goNewJob", SW_TEXT("New job"), SW_TEXT("Open a job"), "Ctrl+N",
              PageId::NewJob},
    ActionRow{ActionId::Find, "goFind", SW_TEXT("Find"),
              SW_TEXT("Plate, VIN, owner's words, part or note"), "Ctrl+F"},
    ActionRow{ActionId::Undo, "undo", SW_TEXT("Undo"),
              SW_TEXT("Take the last entry of this job back; both stay on record"), "Ctrl+Z"},
    ActionRow{ActionId::Mode, "mode", SW_TEXT("Gloves"),
              SW_TEXT("Large targets and figures, for gloves and two metres"), "F8"},
    ActionRow{ActionId::Look, "look", SW_TEXT("Look"), SW_TEXT("Light, dark, high contrast"), "F9"},
    ActionRow{ActionId::Instruments, "goInstruments", SW_TEXT("Instruments"),
              SW_TEXT("Scales, gauges and wrenches of the shop"), "Ctrl+I", PageId::Instruments},
    ActionRow{ActionId::Bench, "goBench", SW_TEXT("Bench"),
              SW_TEXT("Calculations: shims, discs, bolts, bearings, wheels, geometry"), "Ctrl+B",
              PageId::Bench},
    ActionRow{ActionId::Vehicle, "goVehicle", SW_TEXT("Vehicle"),
              SW_TEXT("The vehicle, its spec sheet and its jobs"), "Alt+1", PageId::Vehicle},
    ActionRow{ActionId::Complaint, "goComplaint", SW_TEXT("Complaint"),
              SW_TEXT("What the owner says, and when it shakes"), "Alt+2", PageId::Complaint},
    ActionRow{ActionId::Causes, "goCauses", SW_TEXT("Causes"),
              SW_TEXT("What makes it shake, and which check next"), "Alt+3", PageId::Causes},
    ActionRow{ActionId::Kit, "goKit", SW_TEXT("Kit"),
              SW_TEXT("Tools, parts and consumables the plan needs"), "Alt+4", PageId::Kit},
    ActionRow{ActionId::Work, "goWork", SW_TEXT("Work"), SW_TEXT("Step by step"), "Alt+5",
              PageId::Work},
    ActionRow{ActionId::Quick, "goQuick", SW_TEXT("Copy in"),
              SW_TEXT("Copy a filled-in work card into the job"), "Alt+6", PageId::Quick},
    ActionRow{ActionId::Sheet, "goSheet", SW_TEXT("Paper"),
              SW_TEXT("Job sheet and work card: look, print, save"), "Alt+7", PageId::Sheet},
    ActionRow{ActionId::Finish, "goFinish", SW_TEXT("Finish"),
              SW_TEXT("What is still open, and the sign-off"), "Alt+8", PageId::Finish},
    ActionRow{ActionId::Help, "goHelp", SW_TEXT("Help"), SW_TEXT("Help on this page, and all keys"),
              "F1", PageId::Help},
};

#undef SW_TEXT

}  // namespace

std::span<const ActionRow> actionTable() {
  return kActions;
}

const ActionRow& actionRow(ActionId id) {
  return *std::find_if(kActions.begin(), kActions.end(),
                       [id](const ActionRow& row) { return row.id == id; });
}

}  // namespace sw::ui
