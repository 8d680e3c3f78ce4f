# SPDX-License-Identifier: GPL-3.0-or-later
# Makes the demonstration book that tests of the program and of the window copy.
file(REMOVE ${BOOK})
execute_process(COMMAND ${PROGRAM} demo --book ${BOOK} RESULT_VARIABLE result)
if(NOT result EQUAL 0)
  message(FATAL_ERROR "demo: ${result}")
endif()
