"""Random formulas of common worksheets, from a seed: criteria in every spelling, text numbers, dates as texts, wildcards,
mixed kinds, errors in ranges, blanks, truths in ranges and as arguments. Read by writeRandom.py. The records are
invented."""

import random

# One column each; None is a blank cell, a text that begins with = a formula, ERR one that is an error.
columns = {
    "A": [3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8, 0, -2, 2.5, 10],
    "B": [2, "2", "2.0", None, 0.5, "0.50", "x", -1, 100, "1E2", 7, None, " 7 ", 12, "12%", 3],
    "C": ["scald", "footrot", "CODD", "Scald", None, None, "foot*rot", "a?b", "12", "3.5", "scald ", "~", "TRUE", "codd", "*", "abscess"],
    "D": [46027, 46034, "2026-01-19", 46055, None, "14 Mar 2026", 46112, 46113.5, "x", 46203, 46357, 46387, "2026-12-31", 0, 1, 60],
    "E": ["ewes", "lambs", "rams", "ewes", "lambs", "ewes", "rams", "ewes", "Lambs", "lambs", "ewes", "RAMS", None, "ewe", "lamb*", "tups"],
    "F": [1, 2, "=NA()", 4, 5, "=1/0", 7, 8, None, 10, 11, 12, 13, 14, 15, 16],
    "G": [True, False, 1, 0, "TRUE", None, 2, "a", True, 3, "1", 0.5, False, 4, None, 6],
    "H": [1, 2, 4, 7, 11, 16, 22, 29, 37, 46, 56, 67, 79, 92, 106, 121],
    "I": ["alder", "birch", "cedar", "elder", "fir", "gorse", "hazel", "holly", "larch", "maple", "oak", "rowan", "spruce", "thorn", "willow", "yew"],
    "J": [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.1 + 0.2, 1.1 * 3, 3.3, 43.1 - 43.2 + 1, 0.9, 1e-9, 1e15, 123456789.125],
    "K": ['=""', None, '=""', 5, None, "=A1*2", '="t"&A2', "=A1>2", None, '=""', 6, None, "=B2", "=IF(FALSE,1)", "=C6", "=A4/4"],
}
rows = 16
# Columns that are sure of their kind; the truths in G and K are known to be held another way by LibreOffice.
anyColumn = "ABCDEHIJ"


def formulas(count, seed):
    rng = random.Random(seed)
    pick = rng.choice

    def column(letters=anyColumn):
        return f"Data!${pick(letters)}$1:${'X'}$1".split(":")[0]

    def span(letter, top=None, bottom=None):
        return f"Data!${letter}${top or 1}:${letter}${bottom or rows}"

    def cell(letters=anyColumn + "FK"):
        return f"Data!{pick(letters)}{rng.randint(1, rows + 1)}"

    def area(letters=anyColumn):
        kind = rng.random()
        if kind < 0.6:
            return span(pick(letters))
        if kind < 0.8:
            top = rng.randint(1, rows - 2)
            return span(pick(letters), top, rng.randint(top + 1, rows))
        if kind < 0.9:
            return f"Data!{pick('AC')}{rng.randint(1, 4)}:{pick('DE')}{rng.randint(6, rows)}"
        return f"Data!{pick(letters)}:{pick(letters)}" if rng.random() < 0.2 else span(pick(letters), 1, rows + 4)

    spellings = ["2", "2.0", "02", "+2", "-2", ".5", "0.50", "5.", "1e0", "1E+2", "100", " 2", "2 ", "12%", "50%", "1/2", "0", "-1", "3.3", "0.3", "1,000", "x", "scald", "SCALD", "sc*", "*rot", "?oot*", "foot~*rot", "a~?b", "*", "?", "~~", "~", "e*", "*s", "ewe?", "", "TRUE", "FALSE", "true", "2026-01-19", "2026-03-14", "14 Mar 2026", "12", "3.5", "abc", "m", "zz", "12:00", "0.9"]
    operators = ["", "", "", "=", "<>", ">", "<", ">=", "<="]

    def criterion():
        kind = rng.random()
        if kind < 0.55:
            return f'"{pick(operators)}{pick(spellings)}"'
        if kind < 0.75:
            return f'"{pick(operators[3:])}"&{cell("ABCDEHJ")}'
        if kind < 0.85:
            return cell("ABCDEHJK")
        return pick(["2", "0.5", "-1", "TRUE", "FALSE", "100", "5", "46034", "DATE(2026,1,12)", "0", '"<>"', '"="', '""'])

    def number(depth):
        kind = rng.random()
        if depth <= 0 or kind < 0.3:
            return pick([cell("ABDFHJK"), cell("AHJ"), pick(["0", "1", "2", "0.5", "-3", "2.50", "1e2", "10%", '"3"', '"2.0"', "7", "0.1", "TRUE"])])
        if kind < 0.5:
            return f"({number(depth - 1)}{pick('+-*/+-*')}{number(depth - 1)})"
        if kind < 0.6:
            return f"{pick(['ABS', 'INT', 'SIGN', 'TRUNC', 'N', 'VALUE', 'EVEN', 'LEN'])}({number(depth - 1)})"
        if kind < 0.68:
            return f"{pick(['ROUND', 'ROUNDUP', 'ROUNDDOWN'])}({number(depth - 1)},{pick('0123')})"
        if kind < 0.72:
            return f"MOD({number(depth - 1)},{pick(['3', '2.5', '-3', '7'])})"
        return top(depth - 1, "number")

    def text(depth):
        kind = rng.random()
        if depth <= 0 or kind < 0.35:
            return pick([cell("CEI"), cell("BCEIK"), f'"{pick(["scald", "o", "a", "Foot Rot", "12", " x ", "R"])}"'])
        if kind < 0.5:
            return f"{pick(['UPPER', 'LOWER', 'PROPER', 'TRIM', 'T', 'CLEAN'])}({text(depth - 1)})"
        if kind < 0.6:
            return f"{pick(['LEFT', 'RIGHT'])}({text(depth - 1)},{pick('01234')})"
        if kind < 0.68:
            return f"MID({text(depth - 1)},{pick('123')},{pick('0123')})"
        if kind < 0.78:
            return f"({text(depth - 1)}&{pick([text(depth - 1), number(0)])})"
        if kind < 0.88:
            return f'SUBSTITUTE({text(depth - 1)},"{pick(["o", "a", "s", "", " "])}","{pick(["", "x", "oo"])}")'
        return f'TEXT({number(depth - 1)},"{pick(["0", "0.0", "0.00", "#,##0", "0%", "0.0%", "00"])}")'

    def truth(depth):
        kind = rng.random()
        if depth <= 0 or kind < 0.5:
            compare = pick(["=", "<>", ">", "<", ">=", "<="])
            left = pick([number, text])(depth - 1)
            right = pick([number, text])(depth - 1)
            return f"{left}{compare}{right}"
        if kind < 0.65:
            return f"{pick(['AND', 'OR', 'XOR'])}({truth(depth - 1)},{truth(depth - 1)})"
        if kind < 0.72:
            return f"NOT({truth(depth - 1)})"
        return f"{pick(['ISNUMBER', 'ISTEXT', 'ISBLANK', 'ISERROR', 'ISNA', 'ISNONTEXT'])}({pick([cell(), number(depth - 1), text(depth - 1)])})"

    def day(depth):
        return pick([cell("D"), "46095", '"2026-03-14"', "DATE(2026,2,28)", f"Data!D1+{rng.randint(0, 400)}", "46053", '"14 Mar 2026"'])

    def top(depth, want="any"):
        kind = rng.random()
        if kind < 0.16:
            f = pick(["SUM", "AVERAGE", "COUNT", "COUNTA", "MAX", "MIN", "MEDIAN", "PRODUCT", "STDEV", "SUMSQ", "COUNTBLANK", "VAR", "MAXA", "AVERAGEA"])
            given = [pick([area, area, area, cell])(anyColumn + "F" * (rng.random() < 0.2)) for _ in range(1 if f == "COUNTBLANK" else rng.randint(1, 2))]
            if f != "COUNTBLANK" and rng.random() < 0.3:
                given.append(pick(["2", '"3"', "TRUE", "FALSE", '"2.0"', "", number(0)]))
            return f"{f}({','.join(given)})"
        if kind < 0.30:
            return f"COUNTIF({area('ABCDEHJ' + 'F' * (rng.random() < 0.3))},{criterion()})"
        if kind < 0.42:
            f = pick(["SUMIF", "AVERAGEIF"])
            where = pick("ABCDEHJ")
            return f"{f}({span(where)},{criterion()}{pick(['', ',' + span(pick('AHBJ')), ',Data!H1'])})"
        if kind < 0.56:
            f = pick(["COUNTIFS", "SUMIFS", "AVERAGEIFS", "MAXIFS", "MINIFS"])
            pairs = ",".join(f"{span(pick('ABCDEH'))},{criterion()}" for _ in range(rng.randint(1, 2)))
            return f"{f}({'' if f == 'COUNTIFS' else span(pick('AHBJ')) + ','}{pairs})"
        if kind < 0.66:
            wanted = pick([cell("ABCDEHIJ"), number(0), text(0), criterion()])
            return pick([
                f"MATCH({wanted},{span(pick('ABCEHIJ'))},0)",
                f"MATCH({wanted},{span(pick('HI'))},1)",
                f"VLOOKUP({wanted},Data!$H$1:$J$16,{pick('123')},{pick(['FALSE', 'TRUE', '0'])})",
                f"INDEX({span(pick(anyColumn))},{rng.randint(0, 17)})" if rng.random() < 0.3 else f"INDEX({span(pick(anyColumn))},{rng.randint(1, 16)})",
                f"XLOOKUP({wanted},{span(pick('ABCEHI'))},{span(pick('AHIJ'))},{pick(['', '0', chr(34) + 'none' + chr(34)])}{pick(['', ',0', ',2', ',-1', ',1'])})",
                f"LOOKUP({wanted},{span(pick('HI'))},{span(pick('AHIJ'))})",
            ])
        if kind < 0.74:
            condition = pick([f"({span(pick('ABCEHJ'))}{pick(['=', '<>', '>', '<', '>=', '<='])}{pick([number(0), text(0)])})" for _ in range(2)])
            other = pick(["1", span("A"), span("H"), span("J"), f"({span('E')}={text(0)})"])
            return f"SUMPRODUCT({pick(['--', ''])}{condition}*{other})" if rng.random() < 0.7 else f"SUMPRODUCT(--{condition},{pick([span('A'), span('H'), span('B')])})"
        if kind < 0.82:
            return pick([
                f"IF({truth(depth)},{number(depth - 1)},{text(depth - 1)})",
                f"IFERROR({number(depth)},{pick([number(0), text(0)])})",
                f"IF({number(depth - 1)},1,2)",
                f"IFS({truth(depth - 1)},1,{truth(depth - 1)},2,TRUE,3)",
                f"SWITCH({pick([number, text])(depth - 1)},1,10,\"scald\",20,2,30,40)",
                f"CHOOSE({pick(['1', '2', '3', cell('A')])},{number(0)},{text(0)},{number(0)})",
            ])
        if kind < 0.90:
            return pick([
                f"{pick(['YEAR', 'MONTH', 'DAY', 'WEEKDAY', 'ISOWEEKNUM'])}({day(depth)})",
                f"EDATE({day(depth)},{rng.randint(-13, 13)})",
                f"EOMONTH({day(depth)},{rng.randint(-13, 13)})",
                f"NETWORKDAYS({day(depth)},{day(depth)})",
                f"WORKDAY({day(depth)},{rng.randint(-20, 20)})",
                f"DAYS({day(depth)},{day(depth)})",
                f"{day(depth)}-{day(depth)}",
                f"{day(depth)}{pick(['>', '<=', '='])}{day(depth)}",
                f"DATEVALUE({pick([cell('D'), cell('C'), chr(34) + '2026-02-29' + chr(34)])})",
                f'DATEDIF({day(depth)},{day(depth)},"{pick(["d", "m", "y"])}")',
            ])
        if kind < 0.95:
            return pick([
                f"FIND({text(0)},{text(depth - 1)})",
                f'SEARCH("{pick(["o", "?o", "*t", "~*", "S", "a*b"])}",{text(depth - 1)})',
                f"EXACT({text(0)},{text(depth - 1)})",
                f'TEXTJOIN("{pick([",", ""])}",{pick(["TRUE", "FALSE"])},{area("ACEI")})',
                f"CONCATENATE({text(0)},{number(0)})",
                f"VALUE({pick([cell('BC'), text(0), number(0)])})",
                f"REPT({text(0)},{pick('0123')})",
            ])
        return pick([
            f"{pick(['LARGE', 'SMALL'])}({span(pick('ABHJ'))},{rng.randint(1, 16)})",
            f"{pick(['RANK', 'RANK.EQ', 'RANK.AVG'])}({pick([cell('A'), '5'])},{span('A')},{pick('01')})",
            f"{pick(['PERCENTILE', 'QUARTILE'])}({span(pick('AHJ'))},{pick(['0', '1'])})",
            f"SUBTOTAL({pick(['1', '2', '3', '9', '109', '4', '5'])},{area()})",
            f"AGGREGATE({pick(['1', '4', '5', '9'])},{pick('67')},{span(pick('AFH'))})",
        ])

    seen = set()
    while len(seen) < count:
        kind = rng.random()
        made = top(2) if kind < 0.7 else number(3) if kind < 0.82 else text(3) if kind < 0.92 else truth(2)
        if len(made) < 300 and made not in seen:
            seen.add(made)
            yield made
