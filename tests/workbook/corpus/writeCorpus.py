"""Writes corpus.json: formulas over the functions people use most, with the values a spreadsheet saves for them.

The values come from LibreOffice Calc (any version from 24.8), and, where that differs from what the format's
documentation says (ECMA-376 part 1, 18.17 "Formulas", and the pages of the functions), from `rules.py`, each with its
reason. Run by hand:

    python3 writeCorpus.py PATH-TO-SOFFICE

The records are invented.
"""

import datetime
import json
import os
import subprocess
import sys
import tempfile

import openpyxl
from openpyxl.styles import numbers
from rules import rules

here = os.path.dirname(os.path.abspath(__file__))

# One column each; None is a blank cell.
columns = {
    "A": [3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8],
    "B": [2, 0.5, -1.25, 3.75, 2.0, 10, 0, 100, 1000, 2.5, -7, 0.1],
    "C": ["scald", "footrot", "CODD", "Scald", "white line", "shelly hoof", None, "scald ", "foot*rot", "a?b", "12", "3.5"],
    "D": [46027, 46034, 46041, 46055, 46081, 46082, 46112, 46113, 46173, 46203, 46357, 46387],
    "E": [1, "2", True, None, "x", False, 7, "3.50", 4, "abc", 0, "1E3"],
    "F": ["ewes", "lambs", "rams", "ewes", "lambs", "ewes", "rams", "ewes", "lambs", "lambs", "ewes", "rams"],
    "G": [1, 2, 4, 7, 11, 16, 22, 29, 37, 46, 56, 67],
    "H": ["alder", "birch", "cedar", "elder", "fir", "gorse", "hazel", "holly", "larch", "maple", "oak", "rowan"],
    "I": [20, 25, 30, 22, 28, 31, 27, 24, 26, 29, 23, 21],
    "J": [0.05, 0.1, 0.2, 0.15, 0.3, 0.25, 0.12, 0.08, 0.4, 0.35, 0.22, 0.18],
}

formulas = []


def add(function, *texts):
    for text in texts:
        formulas.append((function, text))


def each(function, pattern, *lists):
    """The pattern once for every choice from the lists."""
    picks = [[]]
    for values in lists:
        picks = [pick + [value] for pick in picks for value in values]
    for pick in picks:
        text = pattern
        for place, value in enumerate(pick):
            text = text.replace("{%d}" % place, str(value))
        add(function, text)


exec(open(os.path.join(here, "formulas.py")).read())

prefixed = set(
    """IFNA IFS SWITCH XOR CONCAT TEXTJOIN MAXIFS MINIFS DAYS ISOWEEKNUM NUMBERVALUE STDEV.S STDEV.P VAR.S VAR.P
    PERCENTILE.INC PERCENTILE.EXC QUARTILE.INC QUARTILE.EXC RANK.EQ RANK.AVG MODE.SNGL NORM.DIST NORM.INV NORM.S.DIST
    NORM.S.INV T.DIST.2T T.INV.2T BINOM.DIST POISSON.DIST CONFIDENCE.NORM COVARIANCE.P COVARIANCE.S CEILING.MATH
    FLOOR.MATH ARABIC BASE DECIMAL UNICHAR UNICODE XLOOKUP XMATCH FORECAST.LINEAR SKEW.P CHISQ.TEST CHISQ.DIST.RT
    COMBINA ISFORMULA SHEETS SHEET LET AGGREGATE""".split()
)


def stored(text):
    """The formula as it stands in a file: newer functions with their prefix."""
    out, at, quoted = "", 0, False
    while at < len(text):
        if text[at] == '"':
            quoted = not quoted
        if not quoted and (text[at].isalpha()) and (at == 0 or not (text[at - 1].isalnum() or text[at - 1] in "._$")):
            end = at
            while end < len(text) and (text[end].isalnum() or text[end] in "._"):
                end += 1
            name = text[at:end]
            if end < len(text) and text[end] == "(" and name in prefixed:
                out += "_xlfn." + name
                at = end
                continue
        out += text[at]
        at += 1
    return out


def main():
    soffice = sys.argv[1]
    book = openpyxl.Workbook()
    data = book.active
    data.title = "Data"
    for letter, values in columns.items():
        for row, value in enumerate(values, 1):
            if value is None:
                continue
            cell = data[f"{letter}{row}"]
            cell.value = value
            if isinstance(value, str):
                cell.number_format = numbers.FORMAT_GENERAL
                cell.data_type = "s"
    # Rows taken out of sight by hand, for the functions that leave them out.
    data.row_dimensions[3].hidden = True
    data.row_dimensions[6].hidden = True
    sheet = book.create_sheet("Formulas")
    for row, (_, text) in enumerate(formulas, 1):
        sheet[f"A{row}"] = "=" + stored(text)
    with tempfile.TemporaryDirectory() as folder:
        given = os.path.join(folder, "corpus.xlsx")
        book.save(given)
        out = os.path.join(folder, "out")
        subprocess.run(
            [soffice, f"-env:UserInstallation=file://{folder}/profile", "--headless", "--convert-to", "xlsx", "--outdir", out, given],
            check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )
        worked = openpyxl.load_workbook(os.path.join(out, "corpus.xlsx"), data_only=True)["Formulas"]
    cases, used = [], set()
    for row, (function, text) in enumerate(formulas, 1):
        value = worked[f"A{row}"].value
        if isinstance(value, datetime.datetime):
            value = (value - datetime.datetime(1899, 12, 30)).total_seconds() / 86400
        elif isinstance(value, datetime.timedelta):
            value = value.total_seconds() / 86400
        elif isinstance(value, datetime.time):
            value = (value.hour * 3600 + value.minute * 60 + value.second) / 86400
        elif value is None:
            value = ""
        case = {"function": function, "formula": stored(text), "value": value}
        if text in rules:
            used.add(text)
            case = {**case, "value": rules[text][0], "rule": rules[text][1]}
        cases.append(case)
    unused = set(rules) - used
    if unused:
        sys.exit(f"rules for formulas that are not there: {unused}")
    with open(os.path.join(here, "corpus.json"), "w") as file:
        file.write('{\n"columns": ' + json.dumps(columns) + ',\n"hidden": [3, 6],\n"cases": [\n')
        file.write(",\n".join(json.dumps(case, ensure_ascii=False) for case in cases))
        file.write("\n]\n}\n")
    print(len(cases), "formulas,", len({function for function, _ in formulas}), "functions")


main()
