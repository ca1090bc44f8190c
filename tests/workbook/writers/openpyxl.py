"""Writes records and answers with openpyxl, and about all else that it can write.

    python3 openpyxl.py OUT.xlsx [1904] <plan.json
"""

import base64
import datetime
import io
import json
import sys

# This file has the name of the library, so its folder must not be looked into first.
sys.path = [folder for folder in sys.path if folder and not folder.endswith("writers")]

import openpyxl
from openpyxl.chart import AreaChart, BarChart, BubbleChart, DoughnutChart, LineChart, PieChart, RadarChart, Reference
from openpyxl.chart import ScatterChart, Series, StockChart, SurfaceChart
from openpyxl.comments import Comment
from openpyxl.drawing.image import Image
from openpyxl.formatting.rule import CellIsRule, ColorScaleRule, DataBarRule, FormulaRule, IconSetRule
from openpyxl.styles import Alignment, Border, Font, GradientFill, NamedStyle, PatternFill, Protection, Side
from openpyxl.utils.datetime import CALENDAR_MAC_1904
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.hyperlink import Hyperlink
from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.table import Table, TableStyleInfo

out, *words = sys.argv[1:]
plan = json.load(sys.stdin)
book = openpyxl.Workbook()
if "1904" in words:
    book.epoch = CALENDAR_MAC_1904
book.properties.title, book.properties.creator = "Invented records", "Nobody"
book.properties.created = book.properties.modified = datetime.datetime(2026, 1, 2)

sheet = book.active
sheet.title = "Records"
answers, pictures, hidden = (book.create_sheet(name) for name in ("Answers", "Pictures", "Hidden"))
head = NamedStyle("head", font=Font(bold=True), border=Border(bottom=Side("thin")), fill=PatternFill("solid", "E0EBF5"))
book.add_named_style(head)

sheet.append(plan["headings"] + ["Clear", "By hand"])
for cell in sheet[1]:
    cell.style = "head"
for row, (tag, treated, *rest) in enumerate(plan["records"], 2):
    # As a date, which openpyxl counts in the date system of the workbook.
    sheet.append([tag, datetime.datetime(1899, 12, 30) + datetime.timedelta(treated), *rest])
    sheet.cell(row, 2).number_format = "d mmm yyyy"
    sheet.cell(row, 3).number_format = '0 "days"'
    sheet.cell(row, 3).protection = Protection(locked=False)
    for column, formula in enumerate(plan["beside"][row - 2], 7):
        sheet.cell(row, column).value = "=" + formula
last = len(plan["records"]) + 1
table = Table(displayName="Cases", ref="A1:F%d" % last)
table.tableStyleInfo = TableStyleInfo("TableStyleMedium9", showRowStripes=True)
sheet.add_table(table)
sheet["J2"] = "a page"
sheet["J2"].hyperlink = "https://example.org/a?b=1&c=2"
sheet["J3"] = "inside"
sheet["J3"].hyperlink = Hyperlink("J3", location="Answers!A1", tooltip="inside")
sheet["J4"] = "<joined> & 'kept'  "
sheet["J4"].alignment = Alignment("center", wrap_text=True, text_rotation=45)
sheet["J4"].fill = GradientFill(stop=("FFFFFF", "E0EBF5"))
sheet.merge_cells("J4:K5")
sheet["J6"], sheet["J7"] = True, "#N/A"
sheet["J7"].data_type = "e"
sheet["D1"].comment = Comment("what was seen", "Invented")
words_allowed = DataValidation("list", formula1='"footrot,shelly hoof,toe granuloma"', showErrorMessage=True)
words_allowed.add("D2:D%d" % last)
sheet.add_data_validation(words_allowed)
sheet.conditional_formatting.add("E2:E5", CellIsRule("greaterThan", ["3"], font=Font(bold=True)))
sheet.conditional_formatting.add("E2:E5", FormulaRule(["$E2>$F2/4"], fill=PatternFill(bgColor="FFEECC")))
sheet.conditional_formatting.add("F2:F5", DataBarRule("min", None, "max", None, "638EC6"))
sheet.conditional_formatting.add("C2:C5", ColorScaleRule("min", None, "F8696B", end_type="max", end_color="63BE7B"))
sheet.conditional_formatting.add("C2:C5", IconSetRule("3Arrows", "percent", [0, 33, 67]))
sheet.freeze_panes = "B2"
sheet.print_area, sheet.print_title_rows = "A1:H%d" % last, "1:1"
sheet.page_setup.orientation, sheet.page_setup.fitToHeight = "landscape", 0
sheet.sheet_properties.pageSetUpPr = openpyxl.worksheet.properties.PageSetupProperties(fitToPage=True)
sheet.sheet_properties.tabColor = "00AA55"
sheet.oddHeader.center.text, sheet.oddFooter.center.text = "&A", "Page &P of &N"
sheet.HeaderFooter.differentFirst, sheet.firstHeader.left.text = True, "first"
sheet.row_breaks.append(Break(20))
sheet.protection.sheet, sheet.protection.password = True, "invented"

for cell, formula in plan["answers"].items():
    answers[cell] = "=" + formula
answers["N1"] = "=SUM(Cases[Lame])"
answers["N3"] = "=LameSheep*2"
answers["K1"] = "=Records!E2:E5+Records!F2:F5"
answers.formula_attributes["K1"] = {"t": "array", "ref": "K1:K4"}
answers.column_dimensions.group("Y", "Z", hidden=True)
answers.row_dimensions.group(30, 32, outline_level=1)
answers.auto_filter.ref = "V1:W3"
answers.auto_filter.add_filter_column(0, ["x"])
answers.auto_filter.add_sort_condition("W2:W3")
answers.sheet_view.showGridLines = False
book.defined_names.append(DefinedName("LameSheep", attr_text="SUM(Records!$E$2:$E$5)", comment="all of them"))
book.defined_names.append(DefinedName("Here", attr_text="Answers!$A$4", localSheetId=1))

values, names = Reference(sheet, min_col=5, min_row=1, max_row=last), Reference(sheet, min_col=4, min_row=2, max_row=last)
for place, kind in enumerate([BarChart, LineChart, PieChart, DoughnutChart, AreaChart, RadarChart, StockChart, SurfaceChart]):
    chart = kind()
    chart.title = "Lame"
    for _ in range(3 if kind is StockChart else 1):
        chart.add_data(values, titles_from_data=True)
    chart.set_categories(names)
    pictures.add_chart(chart, "A%d" % (1 + place * 16))
numbers = Reference(sheet, min_col=6, min_row=2, max_row=last)
for place, kind in enumerate([ScatterChart, BubbleChart]):
    chart = kind()
    sizes = {"zvalues": numbers} if kind is BubbleChart else {}
    chart.series.append(Series(values=numbers, xvalues=numbers, **sizes))
    pictures.add_chart(chart, "J%d" % (1 + place * 16))
bars, line = BarChart(), LineChart()
bars.add_data(values, titles_from_data=True)
line.add_data(Reference(sheet, min_col=6, min_row=1, max_row=last), titles_from_data=True)
bars += line
pictures.add_chart(bars, "J40")
pictures.add_image(Image(io.BytesIO(base64.b64decode(plan["picture"]))), "T1")
alone = book.create_chartsheet("Chart")
whole = BarChart()
whole.add_data(values, titles_from_data=True)
alone.add_chart(whole)
hidden.sheet_state = "veryHidden"
book.save(out)
