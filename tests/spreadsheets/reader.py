"""Opens workbooks inside Calc and sends back their cells: a request a line in, a JSON object a line out.

Files keep fifteen digits of a number; only the program itself can be asked for all of them. It is a component of a
second extension, which only the tests have, and is started by `soffice service:soundfold.test.Reader`.
"""

import json
import os
import socket
import time
import traceback

import uno
import unohelper
from com.sun.star.beans import PropertyValue

SERVICE = "soundfold.test.Reader"
NAMES = {32767: "#N/A", 519: "#VALUE!", 525: "#NAME?", 524: "#REF!", 532: "#DIV/0!", 503: "#NUM!"}


def setting(name, value):
    made = PropertyValue()
    made.Name, made.Value = name, value
    return made


def cells_of(sheet):
    cursor = sheet.createCursor()
    cursor.gotoEndOfUsedArea(False)
    end = cursor.RangeAddress
    data = sheet.getCellRangeByPosition(0, 0, end.EndColumn, end.EndRow).getDataArray()
    cells = [list(row) for row in data]
    # 4 asks for the formulas that end in an error; the data hold nothing in their place.
    for area in sheet.queryFormulaCells(4).RangeAddresses:
        for row in range(area.StartRow, area.EndRow + 1):
            for column in range(area.StartColumn, area.EndColumn + 1):
                error = sheet.getCellByPosition(column, row).getError()
                cells[row][column] = {"error": NAMES.get(error, "Err:%d" % error)}
    return cells


def descriptions_of(context, name):
    listed = context.ServiceManager.createInstanceWithContext("com.sun.star.sheet.FunctionDescriptions", context)
    described = {entry.Name: entry.Value for entry in listed.getByName(name)}
    return {
        "description": described["Description"],
        "arguments": [
            {"name": argument.Name, "description": argument.Description, "optional": argument.IsOptional}
            for argument in described["Arguments"] or ()
        ],
    }


def read(desktop, request):
    url = uno.systemPathToFileUrl(request["path"])
    document = desktop.loadComponentFromURL(url, "_blank", 0, (setting("Hidden", True),))
    if document is None:
        raise RuntimeError("Calc does not open %s" % request["path"])
    try:
        # Worked out once, when all is typed.
        document.enableAutomaticCalculation(not request["typed"])
        for sheet, cell, value in request["typed"]:
            target = document.Sheets.getByName(sheet).getCellRangeByName(cell)
            if isinstance(value, str):
                target.setString(value)
            else:
                target.setValue(value)
        started, processor = time.perf_counter(), time.process_time()
        document.calculateAll()
        seconds, processor = time.perf_counter() - started, time.process_time() - processor
        for copy in request["copies"]:
            target = uno.systemPathToFileUrl(copy["saveAs"])
            document.storeToURL(target, (setting("FilterName", copy["filter"]),))
        sheets = document.Sheets
        return {
            "sheets": {name: cells_of(sheets.getByName(name)) for name in sheets.ElementNames},
            "seconds": seconds,
            "processorSeconds": processor,
        }
    finally:
        document.close(True)


def serve(context, *_):
    desktop = context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
    with socket.socket(socket.AF_UNIX) as line:
        line.connect(os.environ["SOUNDFOLD_TEST_SOCKET"])
        with line.makefile("rwb") as requests:
            for request in requests:
                try:
                    asked = json.loads(request)
                    answer = descriptions_of(context, asked["describe"]) if "describe" in asked else read(desktop, asked)
                except Exception:
                    answer = {"fault": traceback.format_exc()}
                requests.write(json.dumps(answer).encode("ascii") + b"\n")
                requests.flush()
    # Nothing may be saved or shown on the way out.
    os._exit(0)


g_ImplementationHelper = unohelper.ImplementationHelper()
g_ImplementationHelper.addImplementation(serve, SERVICE, (SERVICE,))
