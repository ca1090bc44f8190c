"""Writes random.json: random formulas of common worksheets with the values that LibreOffice saves for them. Run by hand:

    python3 writeRandom.py PATH-TO-SOFFICE [COUNT SEED]

Formulas of which it is known that LibreOffice answers otherwise than the format's documentation are left out by their
text, before their values are looked at; corpus.json has such formulas, each with its rule.
"""

import json
import os
import re
import sys

from calc import stored, worked
from randomFormulas import columns, formulas

here = os.path.dirname(os.path.abspath(__file__))
conditional = r"(?:COUNTIF|SUMIF|AVERAGEIF|COUNTIFS|SUMIFS|AVERAGEIFS|MAXIFS|MINIFS)"

left_out = [
    (r"TRUE|FALSE|true|Data!\$?[GK]", "LibreOffice holds TRUE and FALSE as numbers"),
    (r"ISNUMBER\((?:EXACT|NOT|AND|OR|XOR|IS)", "the same"),
    (r"14 Mar 2026|Data!D6\b|Data!B12\b|Data!\$?D\$?\d*:\$?D.*Mar", "LibreOffice takes no month in letters for a date"),
    (r"(?:SUM|AVERAGE|COUNT|COUNTA|MAX|MIN|MEDIAN|PRODUCT|STDEV|SUMSQ|VAR|MAXA|AVERAGEA)\([^()]*\"", "a typed text that is a number counts"),
    (conditional + r"\([^()]*Data!(?:\$?B|[AC]\d+:[DE]|\$?[A-D]:\$?)", "a criterion that is a number fits a text that is the number too"),
    (r"\"[<>=]*1/2\"", "a text that is two days is refused"),
    (conditional + r"\(.*\"[<>=]*[^\"]*[*?][^\"]*\"", "a wildcard fits no number"),
    (conditional + r".*Data!C15|" + conditional + r".*Data!C[78]\b", "the same, from a cell"),
    (conditional + r".*\"[<>]=?\"(?:,|\)|&Data!\w?(?:17|[A-Z]17))", "a criterion that is a sign alone"),
    (r"Data!J13", "numbers are compared to 15 digits"),
    (r"XLOOKUP\((?:Data!\w+17|.*,-1\)|.*,1\))", "LibreOffice looks for the next among texts and blanks too"),
    (r"LOOKUP\(\"[\d.]|LOOKUP\(\(?Data!B", "a text is not equal to a number"),
    (r"(?:MATCH|LOOKUP)\(Data!\w17", "a blank is looked up as 0"),
    (r"(?:EDATE|EOMONTH|WORKDAY)\(Data!D1[456]", "a day before 1900 is #NUM!"),
    (r"Data!(?:[A-F]:[H-J]|[H-J]:[A-F])\b", "the column of TRUE and FALSE lies between"),
    (r"DAYS\(.*Data!D8|Data!D8.*DAYS", "DAYS counts whole days"),
    (r"IF\(\"", "a text is no truth"),
    (r"TEXT\(Data!(?:[BCDEI]|F[269])", "a text that is a number takes the format of a number"),
    (r"FIND\(Data!C[56]", "a blank is found at the start"),
    (r"ROUNDUP\(SUMPRODUCT.*Data!\$J", "rounding of what has more than 15 digits"),
    (r"MOD\(", "a remainder of a number above 10^12 is #NUM!"),
]


def main():
    count, seed = (int(word) for word in (sys.argv[2:4] or (3000, 1)))
    made = list(formulas(count, seed))
    kept = [text for text in made if not any(re.search(pattern, text) for pattern, _ in left_out)]
    values = worked(sys.argv[1], columns, kept)
    lines = [json.dumps({"formula": stored(text), "value": value}, ensure_ascii=False) for text, value in zip(kept, values)]
    with open(os.path.join(here, "random.json"), "w") as file:
        file.write('{\n"columns": ' + json.dumps(columns) + ',\n"cases": [\n' + ",\n".join(lines) + "\n]\n}\n")
    print(len(made), "made,", len(kept), "kept")


main()
