"""Writes records and answers with XlsxWriter, and about all else that it can write.

    python3 xlsxWriter.py OUT.xlsx [1904] <plan.json
"""

import base64
import datetime
import io
import json
import sys

import xlsxwriter

out, *words = sys.argv[1:]
plan = json.load(sys.stdin)
picture = base64.b64decode(plan["picture"])
book = xlsxwriter.Workbook(out, {"date_1904": "1904" in words, "use_future_functions": True})
book.set_properties({"title": "Invented records", "author": "Nobody", "created": datetime.datetime(2026, 1, 2)})
book.set_custom_property("invented", True)
book.set_calc_mode("auto")

sheet = book.add_worksheet("Records")
answers = book.add_worksheet("Answers")
pictures = book.add_worksheet("Pictures")
hidden = book.add_worksheet("Hidden")
head = book.add_format({"bold": True, "bg_color": "#E0EBF5", "border": 1, "text_wrap": True})
date = book.add_format({"num_format": "d mmm yyyy"})
days = book.add_format({"num_format": '0 "days"', "locked": False})
red = book.add_format({"font_color": "#9A0511", "bold": True})
italic = book.add_format({"italic": True})

sheet.write_row("A1", plan["headings"] + ["Clear", "By hand"], head)
last = len(plan["records"]) + 1
for row, (tag, treated, withdrawal, lesion, lame, seen) in enumerate(plan["records"], 1):
    sheet.write_string(row, 0, tag)
    # As a date, which XlsxWriter counts in the date system of the workbook.
    sheet.write_datetime(row, 1, datetime.datetime(1899, 12, 30) + datetime.timedelta(treated), date)
    sheet.write_number(row, 2, withdrawal, days)
    sheet.write_string(row, 3, lesion)
    sheet.write_number(row, 4, lame)
    sheet.write_number(row, 5, seen)
    for column, formula in enumerate(plan["beside"][row - 1], 6):
        sheet.write_formula(row, column, formula)
sheet.add_table("M1:N4", {
    "name": "More", "style": "Table Style Dark 3", "total_row": True,
    "data": [["ewes", 3], ["lambs", 4]],
    "columns": [{"header": "Group", "total_string": "all"}, {"header": "Number", "total_function": "sum"}],
})
# XlsxWriter's own total names the column alone, which LibreOffice does not read.
sheet.write_formula("N4", "=SUBTOTAL(109,More[Number])")
sheet.write_rich_string("J1", "not ", italic, "real", " sheep  ")
sheet.write_url("J2", "https://example.org/a?b=1&c=2", string="a page", tip="a page")
sheet.write_url("J3", "internal:Answers!A1")
sheet.write_url("J8", "external:other-book.xlsx#Sheet1!A1")
sheet.merge_range("J4:K5", "<joined> & 'kept'", head)
sheet.write_boolean("J6", True)
sheet.write_blank("J7", None, head)
sheet.write_comment("D1", "what was seen", {"author": "Invented", "visible": True})
sheet.data_validation("D2:D5", {"validate": "list", "source": ["footrot", "shelly hoof", "toe granuloma"]})
sheet.data_validation("C2:C5", {"validate": "integer", "criteria": "between", "minimum": 0, "maximum": 365})
sheet.conditional_format("E2:E5", {"type": "cell", "criteria": ">", "value": 3, "format": red})
sheet.conditional_format("E2:E5", {"type": "formula", "criteria": "=$E2>$F2/4", "format": red})
sheet.conditional_format("F2:F5", {"type": "data_bar", "data_bar_2010": True, "bar_solid": True})
sheet.conditional_format("C2:C5", {"type": "3_color_scale"})
sheet.conditional_format("C2:C5", {"type": "icon_set", "icon_style": "3_arrows", "reverse_icons": True})
sheet.conditional_format("A2:A5", {"type": "duplicate", "format": red})
sheet.conditional_format("B2:B5", {"type": "time_period", "criteria": "last week", "format": red})
sheet.autofilter("A1:F%d" % last)
sheet.filter_column("F", "x > 1")
sheet.freeze_panes(1, 1)
sheet.set_landscape()
sheet.set_paper(9)
sheet.fit_to_pages(1, 0)
sheet.print_area("A1:H%d" % last)
sheet.repeat_rows(0)
sheet.set_header("&L&G&C&A&R&D", {"image_left": "p.png", "image_data_left": io.BytesIO(picture)})
sheet.set_footer("&CPage &P of &N")
sheet.set_margins(left=0.5)
sheet.set_h_pagebreaks([20])
sheet.ignore_errors({"number_stored_as_text": "A2:A5"})
sheet.set_tab_color("#00AA55")
sheet.protect("invented", {"sort": True})

for cell, formula in plan["answers"].items():
    answers.write_formula(cell, formula)
answers.write_array_formula("K1:K4", "{=Records!E2:E5+Records!F2:F5}")
answers.write_array_formula("L1", "{=SUM(Records!E2:E5*Records!F2:F5)}")
answers.write_dynamic_array_formula("P1", '=FILTER(Records!A2:A5,Records!D2:D5="footrot")')
answers.write_dynamic_array_formula("R1", "=SORT(UNIQUE(Records!D2:D5))")
answers.write_formula("N1", "=SUM(More[Number])")
answers.write_formula("N3", "=LameSheep*2")
answers.write_formula("N4", "=Here+1")
answers.write_formula("N5", "=MAXIFS(Records!C2:C5,Records!E2:E5,\">0\")")
answers.set_column("Z:Z", 12, None, {"level": 1, "hidden": True})
answers.set_row(29, 30, None, {"level": 1, "collapsed": True})
answers.add_sparkline("T1", {"range": "Records!E2:F2", "markers": True, "type": "column"})
answers.outline_settings(visible=True, symbols_below=False)
book.define_name("LameSheep", "=SUM(Records!$E$2:$E$5)")
book.define_name("Answers!Here", "=Answers!$A$4")

def chart(kind, **more):
    made = book.add_chart({"type": kind, **more})
    made.add_series({"name": "=Records!$E$1", "categories": "=Records!$D$2:$D$5", "values": "=Records!$E$2:$E$5"})
    made.set_title({"name": "Lame"})
    return made

for place, kind in enumerate(["column", "line", "pie", "doughnut", "area", "bar", "radar", "scatter"]):
    pictures.insert_chart(place * 16, 0, chart(kind))
both = chart("column")
both.combine(chart("line"))
pictures.insert_chart("J1", both)
pictures.insert_image("J20", "p.png", {"image_data": io.BytesIO(picture), "url": "https://example.org/", "object_position": 3})
pictures.insert_textbox("J30", "a box", {"width": 90, "height": 40, "fill": {"color": "#FFEECC"}})
pictures.insert_button("J40", {"caption": "nothing"})
alone = book.add_chartsheet("Chart")
alone.set_chart(chart("column"))
hidden.write("A1", "hidden")
hidden.very_hidden() if hasattr(hidden, "very_hidden") else hidden.hide()
book.close()
