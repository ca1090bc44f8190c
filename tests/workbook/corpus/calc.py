"""What LibreOffice Calc works out, and how a formula stands in a file; for writeCorpus.py and writeRandom.py."""

import datetime
import os
import subprocess
import tempfile

import openpyxl
from openpyxl.styles import numbers
from openpyxl.utils.datetime import CALENDAR_MAC_1904

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


def worked(soffice, columns, texts, hidden=(), date1904=False):
    """The values that LibreOffice saves for formulas over records: `columns` by letter, None for a blank, a text that
    begins with = for a formula. Rows in `hidden` are out of sight."""
    book = openpyxl.Workbook()
    if date1904:
        book.epoch = CALENDAR_MAC_1904
    data = book.active
    data.title = "Data"
    for letter, values in columns.items():
        for row, value in enumerate(values, 1):
            if value is None:
                continue
            cell = data[f"{letter}{row}"]
            cell.value = value
            if isinstance(value, str) and not value.startswith("="):
                cell.number_format = numbers.FORMAT_GENERAL
                cell.data_type = "s"
    for row in hidden:
        data.row_dimensions[row].hidden = True
    sheet = book.create_sheet("Formulas")
    for row, text in enumerate(texts, 1):
        sheet[f"A{row}"] = "=" + stored(text)
    with tempfile.TemporaryDirectory() as folder:
        given = os.path.join(folder, "corpus.xlsx")
        book.save(given)
        out = os.path.join(folder, "out")
        subprocess.run(
            [soffice, f"-env:UserInstallation=file://{folder}/profile", "--headless", "--convert-to", "xlsx", "--outdir", out, given],
            check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )
        read = openpyxl.load_workbook(os.path.join(out, "corpus.xlsx"), data_only=True)
    sheet = read["Formulas"]
    start = datetime.datetime(1904, 1, 1) if date1904 else datetime.datetime(1899, 12, 30)
    return [plain(sheet[f"A{row}"].value, start) for row in range(1, len(texts) + 1)]


def plain(value, start):
    """The number of a day or an hour, since the reader makes those of what is shown as one."""
    if isinstance(value, datetime.datetime):
        days = (value - start).total_seconds() / 86400
        # The reader counts the days before 1 March 1900 so that the 29 February of that year is none.
        return days - 1 if start.year == 1899 and days < 61 else days
    if isinstance(value, datetime.timedelta):
        return value.total_seconds() / 86400
    if isinstance(value, datetime.time):
        return (value.hour * 3600 + value.minute * 60 + value.second) / 86400
    return "" if value is None else value
