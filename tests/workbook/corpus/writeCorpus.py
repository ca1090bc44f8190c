"""Writes corpus.json: formulas over the functions people use most, with the values a spreadsheet saves for them.

The values come from LibreOffice Calc (any version from 24.8), and, where that differs from what the format's
documentation says (ECMA-376 part 1, 18.17 "Formulas", and the pages of the functions), from `rules.py`, each with its
reason. Run by hand:

    python3 writeCorpus.py PATH-TO-SOFFICE

The records are invented.
"""

import json
import os
import sys

from calc import stored, worked
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
# Rows taken out of sight by hand, for the functions that leave them out.
hidden = [3, 6]

formulas = []
formulas1904 = []


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


def in1904(function, *texts):
    """Formulas of a workbook that counts its days from 1904."""
    for text in texts:
        formulas1904.append((function, text))


exec(open(os.path.join(here, "formulas.py")).read())


def cases(soffice, given, used, **options):
    """Each formula with its value, or that of its rule. Rules for 1904 have 1904 before the formula."""
    values = worked(soffice, columns, [text for _, text in given], hidden, **options)
    for (function, text), value in zip(given, values):
        key = ("1904 " if options else "") + text
        case = {"function": function, "formula": stored(text), "value": value}
        if key in rules:
            used.add(key)
            case = {**case, "value": rules[key][0], "rule": rules[key][1]}
        yield json.dumps(case, ensure_ascii=False)


def main():
    used = set()
    lists = {
        "cases": list(cases(sys.argv[1], formulas, used)),
        "cases1904": list(cases(sys.argv[1], formulas1904, used, date1904=True)),
    }
    unused = set(rules) - used
    if unused:
        sys.exit(f"rules for formulas that are not there: {unused}")
    with open(os.path.join(here, "corpus.json"), "w") as file:
        file.write('{\n"columns": ' + json.dumps(columns) + ',\n"hidden": ' + json.dumps(hidden))
        for name, lines in lists.items():
            file.write(f',\n"{name}": [\n' + ",\n".join(lines) + "\n]")
        file.write("\n}\n")
    print(len(formulas) + len(formulas1904), "formulas,", len({function for function, _ in formulas}), "functions")


main()
