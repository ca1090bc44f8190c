# The formulas of the corpus; read by writeCorpus.py, which gives `add` and `each`. The functions are those of common
# worksheets: sums and counts, lookups, texts, days, choices, rounding, statistics (a choice of common practice).

A, B, C, D, E, F, G, H, I, J = (f"Data!${c}$1:${c}$12" for c in "ABCDEFGHIJ")

# Sums, counts, extremes.
for f in ["SUM", "AVERAGE", "COUNT", "COUNTA", "MAX", "MIN", "PRODUCT", "SUMSQ", "MEDIAN", "STDEV.S", "STDEV.P", "VAR.S", "VAR.P", "STDEV", "VAR", "STDEVP", "VARP", "AVERAGEA", "MAXA", "MINA", "GEOMEAN", "AVEDEV", "DEVSQ"]:
    each(f, f + "({0})", [A, G, J, "Data!B1:B6", "Data!E1:E12", "Data!A1,Data!A5,7", '2,"3",TRUE', "Data!A1:B3,5", "Data!C1:C10", "Data!K1:K3"])
each("COUNTBLANK", "COUNTBLANK({0})", [A, C, E, "Data!K1:K9", "Data!A1:E12"])
each("SUMPRODUCT", "SUMPRODUCT({0})", [f"{A},{B}", f"{A}*{B}", f"({A}>3)*{B}", f'--({F}="ewes")', f'({F}="ewes")*({A}>2)*{I}', f"{A}", f"{E},{A}", f'({C}="scald")*1', f"{A}^2", f"({A}>=3)+0", f'{A},--({F}="rams")', f"({A}+{B})/2", f"ABS({B})", f"ROUND({J},1)", f"LEN({H})", f'--ISNUMBER({E})', f"--ISTEXT({C})", f'--(LEFT({H},1)="h")', f"MOD({A},2)", f"--(MONTH({D})=1)", f"({D}>=DATE(2026,3,1))*({D}<DATE(2026,4,1))", f"({A}=5)/12", f"1/COUNTIF({F},{F})"])
for n in [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 101, 102, 103, 104, 105, 106, 107, 108, 109, 110, 111]:
    each("SUBTOTAL", "SUBTOTAL(%d,{0})" % n, [A, B, "Data!E1:E12"])
for n in [1, 2, 3, 4, 5, 6, 9, 12, 14, 15, 16, 17]:
    for o in [0, 4, 5, 6]:
        add("AGGREGATE", f"AGGREGATE({n},{o},{G}" + (",2)" if n in (14, 15, 17) else ",0.4)" if n == 16 else ")"))
each("LARGE", "LARGE({0},{1})", [A, B, E], [1, 2, 3, 12])
each("SMALL", "SMALL({0},{1})", [A, B, E], [1, 2, 3, 12])
each("RANK", "RANK({0},{1},{2})", [5, 1, 9, 7], [A], [0, 1])
each("RANK.EQ", "RANK.EQ({0},{1})", [5, 1, 9], [A])
each("RANK.AVG", "RANK.AVG({0},{1},{2})", [5, 1, 3], [A], [0, 1])
each("PERCENTILE", "PERCENTILE({0},{1})", [A, B, J], [0, 0.1, 0.25, 0.5, 0.9, 1])
each("PERCENTILE.INC", "PERCENTILE.INC({0},{1})", [A, J], [0.05, 0.33, 0.95])
each("PERCENTILE.EXC", "PERCENTILE.EXC({0},{1})", [A, J], [0.1, 0.33, 0.9, 0.01])
each("QUARTILE", "QUARTILE({0},{1})", [A, B, J], [0, 1, 2, 3, 4])
each("QUARTILE.INC", "QUARTILE.INC({0},{1})", [A], [1, 2, 3])
each("QUARTILE.EXC", "QUARTILE.EXC({0},{1})", [A, J], [1, 2, 3])
each("MODE", "MODE({0})", [A, "Data!A1:A4", B])
each("MODE.SNGL", "MODE.SNGL({0})", [A, B])
each("CORREL", "CORREL({0},{1})", [A, I], [B, G, J])
each("SLOPE", "SLOPE({0},{1})", [A, I], [G, J])
each("INTERCEPT", "INTERCEPT({0},{1})", [A, I], [G, J])
each("RSQ", "RSQ({0},{1})", [A, I], [G, J])
each("FORECAST", "FORECAST({0},{1},{2})", [5, 70], [A, I], [G])
each("SKEW", "SKEW({0})", [A, B, J])
each("KURT", "KURT({0})", [A, B, J])
each("COVARIANCE.P", "COVARIANCE.P({0},{1})", [A], [G, J])
each("COVARIANCE.S", "COVARIANCE.S({0},{1})", [A], [G, J])
each("NORM.S.DIST", "NORM.S.DIST({0},{1})", [-1.96, 0, 1, 2.5], ["TRUE", "FALSE"])
each("NORM.S.INV", "NORM.S.INV({0})", [0.025, 0.5, 0.975])
each("NORM.DIST", "NORM.DIST({0},{1},{2},{3})", [1, 42], [40], [1.5, 4], ["TRUE", "FALSE"])
each("NORM.INV", "NORM.INV({0},40,1.5)", [0.1, 0.908789])
each("BINOM.DIST", "BINOM.DIST({0},{1},{2},{3})", [0, 3], [10, 20], [0.1, 0.5], ["TRUE", "FALSE"])
each("POISSON.DIST", "POISSON.DIST({0},{1},{2})", [0, 2, 5], [1.5, 5], ["TRUE", "FALSE"])
each("TRIMMEAN", "TRIMMEAN({0},{1})", [A, B], [0.1, 0.2, 0.5])

# Conditions.
crit = ['5', '">3"', '">=3"', '"<=2"', '"<>5"', '"=5"', '">=2.0"', '">=.5"', '"1E3"', '">1e0"', '"0.50"', '"5.0"', '">-2"', '"<0"', "Data!A1", '">"&Data!A1', '"<"&Data!B1', "TRUE", '""', '"<>"', '"="']
for r in [A, B, E]:
    each("COUNTIF", "COUNTIF(%s,{0})" % r, crit)
texts = ['"scald"', '"SCALD"', '"sc*"', '"*rot"', '"foot~*rot"', '"a?b"', '"a~?b"', '"?????"', '"<>scald"', '"12"', '12', '"3.50"', '">m"', '"<c"', '"*"', '"="', '"<>"', '""', '"scald "', '"=scald"', '"<>*"', "Data!C1", "Data!C7"]
each("COUNTIF", "COUNTIF(%s,{0})" % C, texts)
for c in ['">3"', '">=2.0"', '5', '"<>1"', "Data!A3"]:
    add("SUMIF", f"SUMIF({A},{c})", f"SUMIF({A},{c},{B})", f"SUMIF({A},{c},Data!B1)", f"SUMIF({B},{c},{A})")
    add("AVERAGEIF", f"AVERAGEIF({A},{c})", f"AVERAGEIF({A},{c},{B})")
for c in ['"ewes"', '"e*"', '"<>rams"', '"LAMBS"', '"?ams"', '"none"', "Data!F2"]:
    add("SUMIF", f"SUMIF({F},{c},{A})", f"SUMIF({F},{c},{E})")
    add("AVERAGEIF", f"AVERAGEIF({F},{c},{A})")
    for d in ['">3"', '">=2.0"', '"<>5"', '">"&Data!A2']:
        add("COUNTIFS", f"COUNTIFS({F},{c},{A},{d})")
        add("SUMIFS", f"SUMIFS({I},{F},{c},{A},{d})")
        add("AVERAGEIFS", f"AVERAGEIFS({I},{F},{c},{A},{d})")
        add("MAXIFS", f"MAXIFS({I},{F},{c},{A},{d})")
        add("MINIFS", f"MINIFS({I},{F},{c},{A},{d})")
add("COUNTIFS", f'COUNTIFS({D},">="&DATE(2026,2,1),{D},"<"&DATE(2026,4,1))', f'COUNTIFS({C},"<>",{A},">1")', f'COUNTIFS({C},"",{A},">1")', f"COUNTIFS({E},TRUE)", f'COUNTIFS({E},"2")', f"COUNTIFS({E},2)", f'COUNTIFS({A},">1",{B},">0",{F},"ewes")', "COUNTIFS(Data!A1:A3,1,Data!B1:B4,2)")
add("SUMIFS", f'SUMIFS({A},{D},">="&46041,{D},"<=46113")', f'SUMIFS({E},{A},">0")', f'SUMIFS({A},{C},"*")', "SUMIFS(Data!A1:A3,Data!B1:B4,2)")

# Choices.
each("IF", "IF({0},{1},{2})", ["Data!A1>2", "Data!A1>=3.0", "Data!B5>=2.00", "TRUE", "FALSE", "0", "1", "Data!K1", 'Data!C1="SCALD"', 'Data!K1=""', "Data!K1=0"], ['"yes"', 1], ['"no"', "Data!K1"])
add("IF", "IF(Data!A1>5,1)", "IF(Data!A1>1,,2)", 'IF("x",1,2)', "IF(1/0,1,2)", 'IF("true",1,2)', "IF(TRUE,1,1/0)", "IF(Data!A1>2,IF(Data!A2>2,1,2),3)", "IF(0.1+0.2=0.3,1,2)", "IF(1.1-1=0.1,1,2)", "IF((43.1-43.2)+1=0.9,1,2)", "IF(1.1*1.1=1.21,1,2)", "IF(0.1*3=0.3,1,2)", "IF(1/3*3=1,1,2)", "IF(0.1*3-0.3=0,1,2)", "IF(Data!J3=0.2,1,2)", "IF(100*1.1=110,1,2)", "IF(4.35*100=435,1,2)", "IF(0.1+0.2>0.3,1,2)", "IF(0.1+0.2<=0.3,1,2)")
each("IFERROR", "IFERROR({0},{1})", ["1/0", "Data!A1/Data!K1", "Data!A1", 'VALUE("x")', f"MATCH(99,{A},0)", '"t"', "Data!K1"], ["0", '""', '"none"', "-1"])
each("IFNA", "IFNA({0},{1})", ["NA()", f"MATCH(99,{A},0)", "Data!A1", "1/0"], ["0", '"none"'])
each("IFS", "IFS({0},1,{1},2,TRUE,3)", ["Data!A1>5", "Data!A1>2", "FALSE"], ["Data!B1>1", "FALSE"])
add("IFS", "IFS(FALSE,1)", "IFS(Data!A1=3,\"three\",1/0,2)")
each("SWITCH", "SWITCH({0},1,\"one\",3,\"three\",\"other\")", ["Data!A1", "Data!A2", "Data!A3", '"3"'])
add("SWITCH", "SWITCH(9,1,2)", 'SWITCH(Data!C1,"SCALD","hit","miss")')
each("CHOOSE", "CHOOSE({0},\"a\",\"b\",\"c\")", [1, 2, 3, 2.9, "Data!A1", 0, 4])
add("CHOOSE", "SUM(CHOOSE(2,Data!A1:A3,Data!B1:B3))")
for f in ["AND", "OR", "XOR"]:
    each(f, f + "({0})", ["TRUE,FALSE", "TRUE,TRUE", "FALSE,FALSE", "Data!A1>2,Data!A2>2", "1,1", "0,1", "Data!A1:A3", "Data!E3,Data!E6", '"TRUE",TRUE', "Data!C1:C3", "1/0,TRUE", "Data!K1"])
each("NOT", "NOT({0})", ["TRUE", "FALSE", "0", "5", "Data!A1>2", "Data!K1", '"FALSE"', '"x"'])

# Comparisons and operators.
each("operators", "{0}{1}{2}", ["Data!A1", "Data!C1", "Data!E2", "Data!E3", "Data!K1"], ["=", "<>", "<", ">", "<=", ">="], ["3", '"scald"', "TRUE", "Data!B1", '""'])
each("operators", "{0}{1}{2}", ["Data!A1", "Data!E2", "Data!E3", "Data!K1", '"3.50"'], ["+", "-", "*", "/", "^"], ["2", "Data!B2", '"4"', "Data!K2"])
add("operators", "5%", "50%%", "200*5%", "-2^2", "2^-1", "2^3^2", "-Data!A1%", "--Data!A1", "+Data!A1", "1+2*3", "(1+2)*3", "10-2-3", "2*3%", '"a"&"b"', '1&2', "1.50&\"\"", "TRUE&\"\"", "Data!K1&\"x\"", "Data!B5&\"\"", "1E3&\"\"", "0.50+0", "2.0", ".5+.5", "1E3", "1e-3*1000", "1.0E+2", "1/3", "2/3&\"\"", "0.1+0.2", "1-0.9", "1E20&\"\"", "123456789012345678", "1E-7&\"\"", "TRUE+1", "-TRUE", '"5"*1', '" 5 "*1', '"1,000"*1', '"5%"*1', '"abc"*1', '""*1', "1=1", "1=1.0", '"a"="A"', '"a"<"B"', '1<"a"', '"a"<TRUE', "TRUE>1", "1=TRUE", "SUM(Data!A1:A3 Data!A2:B2)", "SUM((Data!A1:A3,Data!B1:B3))", "SUM(Data!A1:A3,Data!A1:A3)", "Data!A1:A3 Data!A2:B2", "COUNT((Data!A1:A3,Data!C1:C3))", "AREAS((Data!A1:A3,Data!C1:C3))", '"a\nb"', 'LEN("a\nb")', '"he said ""no"""', "{1,2,3}", "SUM({1,2;3,4})", "INDEX({1,2;3,4},2,1)", "1 + 2", "Data!A1:A3=Data!A1:A3")

# Implicit intersection: a formula for one cell that names many. The formulas stand in row N of their sheet.
for c in "ABEG":
    add("implicit intersection", f"Data!{c}1:{c}3000", f"Data!{c}$1:{c}$3000*2", f"Data!{c}:{c}", f"Data!{c}:{c}+1", f"ABS(Data!{c}1:{c}3000)", f"IF(Data!{c}1:{c}3000>0,1,2)", f"SUM(Data!{c}1:{c}3000*2)", f"MAX(Data!{c}:{c}+1)", f"-Data!{c}:{c}", f"Data!{c}:{c}&\"x\"", f"ROUND(Data!{c}:{c},0)")
add("implicit intersection", f"VLOOKUP(Data!A:A,Data!G1:H12,2)", f"MATCH(Data!A:A,{G},0)", f"COUNTIF({A},Data!A:A)", f"SUM(Data!A1:A5,Data!B:B+1)", "LEFT(Data!C:C,2)", "Data!A1:C1", "SUM(Data!A1:A3*{1;2;3})", "Data!1:1*1")

# Lookups.
each("VLOOKUP", "VLOOKUP({0},{1},{2},{3})", ["5", "4", "7", "0", "100"], ["Data!G1:I12"], ["1", "2", "3"], ["FALSE", "TRUE"])
add("VLOOKUP", "VLOOKUP(11,Data!G1:H12,2)", 'VLOOKUP("birch",Data!H1:I12,2,FALSE)', 'VLOOKUP("BIRCH",Data!H1:I12,2,0)', 'VLOOKUP("h*",Data!H1:I12,2,FALSE)', 'VLOOKUP("?ir",Data!H1:I12,2,FALSE)', 'VLOOKUP("none",Data!H1:I12,2,FALSE)', "VLOOKUP(11,Data!G1:H12,3)", "VLOOKUP(11,Data!G1:H12,0)", 'VLOOKUP("11",Data!G1:H12,2,FALSE)', 'VLOOKUP("fog",Data!H1:I12,2)', "VLOOKUP(2,Data!G:H,2,FALSE)", "VLOOKUP(Data!K1,Data!G1:H12,2,FALSE)", 'VLOOKUP("foot~*rot",Data!C1:D12,2,FALSE)', "VLOOKUP(4,Data!G1:K12,5,FALSE)", 'VLOOKUP("12",Data!C1:D12,2,FALSE)', "VLOOKUP(12,Data!C1:D12,2,FALSE)")
each("HLOOKUP", "HLOOKUP({0},Data!A1:D3,{1},{2})", ["3", "2", '"scald"', "46027", "99"], ["1", "2", "3"], ["FALSE"])
add("HLOOKUP", "HLOOKUP(3,{1,3,5;10,30,50},2)", "HLOOKUP(4,{1,3,5;10,30,50},2,TRUE)", "HLOOKUP(0,{1,3,5;10,30,50},2,TRUE)")
each("MATCH", "MATCH({0},{1},{2})", ["5", "4", "100", "0", "11"], [A, G], ["0", "1"])
add("MATCH", f'MATCH("birch",{H},0)', f'MATCH("BIRCH",{H},0)', f'MATCH("h*",{H},0)', f'MATCH("*k",{H},0)', f'MATCH("fog",{H},1)', f'MATCH("fog",{H})', f"MATCH(40,{G})", "MATCH(25,{50,40,30,20},-1)", "MATCH(40,{50,40,30,20},-1)", f'MATCH("12",{C},0)', f"MATCH(12,{C},0)", f"MATCH(TRUE,{E},0)", f'MATCH("2",{E},0)', f"MATCH(2,{E},0)", f'MATCH("a~?b",{C},0)', f"MATCH(2.0,{B},0)", f"MATCH(Data!K1,{A},0)", f"MATCH(0,{E},0)", "MATCH(4,Data!G:G,0)", "MATCH(50,Data!G:G)", 'MATCH("zz",Data!H:H)')
each("INDEX", "INDEX({0})", [f"{A},3", f"{H},12", f"{A},13", "Data!A1:C5,2,3", "Data!A1:C5,2,4", "Data!A1:A5,0", "Data!A1:C1,2", "Data!A1:C1,1,2", "Data!A:A,4", f"{C},7", "Data!A1:C5,6,1", f"{A},MATCH(9,{A},0)", f"{H},MATCH(11,{G},1)", f"{A},1.9"])
add("INDEX", "SUM(INDEX(Data!A1:C5,0,1))", "SUM(INDEX(Data!A1:B5,2,0))", "SUM(Data!A1:INDEX(Data!A1:A12,4))", "COUNTA(INDEX(Data!A1:C5,0,3))", "INDEX(Data!K1:K3,2)", "ISBLANK(INDEX(Data!K1:K3,2))")
each("LOOKUP", "LOOKUP({0},{1},{2})", ["4", "12", "0", "100"], [G], [H, I])
add("LOOKUP", f'LOOKUP("fog",{H},{I})', f"LOOKUP(12,{G})", f"LOOKUP(2,1/({F}=\"rams\"),{A})", f'LOOKUP(9.99E+307,{A})', 'LOOKUP("zzz",Data!H1:H12)', "LOOKUP(9.99E+307,Data!A:A)", "LOOKUP(0.3,{0,0.2,0.4},{\"low\",\"mid\",\"high\"})")
each("XLOOKUP", "XLOOKUP({0},{1},{2},{3})", ["4", "12", '"x"'], [G], [H, I], ['"none"'])
add("XLOOKUP", f'XLOOKUP("birch",{H},{I})', f'XLOOKUP("BIRCH",{H},{I})', f"XLOOKUP(12,{G},{H},,-1)", f"XLOOKUP(12,{G},{H},,1)", f'XLOOKUP("h*",{H},{I},,2)', f'XLOOKUP("h*",{H},{I},"no",0)', f"XLOOKUP(5,{A},{I},,0,-1)", f"XLOOKUP(99,{G},{H})")
each("XMATCH", "XMATCH({0},{1})", ["4", "12", "5"], [G, A])
add("XMATCH", f"XMATCH(12,{G},-1)", f"XMATCH(12,{G},1)", f'XMATCH("h*",{H},2)', f"XMATCH(5,{A},0,-1)")
each("OFFSET", "{0}(OFFSET(Data!A1,{1},{2},{3},{4}))", ["SUM", "COUNT"], [0, 2], [0, 1], [1, 3], [1, 2])
add("OFFSET", "OFFSET(Data!A1,2,0)", "OFFSET(Data!A1,-1,0)", "SUM(OFFSET(Data!A1:A3,1,1))", "SUM(OFFSET(Data!A1,0,0,COUNT(Data!A1:A12),1))")
each("INDIRECT", "INDIRECT({0})", ['"Data!A1"', '"Data!"&"B"&2', '"\'Data\'!$C$1"', '"Nope!A1"', '"A0"'])
add("INDIRECT", 'SUM(INDIRECT("Data!A1:A3"))', 'SUM(INDIRECT("Data!A"&1&":A"&Data!A1))', 'ROWS(INDIRECT("1:5"))', 'INDIRECT("Data!R2C1",FALSE)')
each("ROW", "ROW({0})", ["Data!A5", "Data!B7:B9", ""])
each("COLUMN", "COLUMN({0})", ["Data!C5", "Data!AA1", ""])
each("ROWS", "ROWS({0})", [A, "Data!A1:C5", "Data!A:A", "{1;2;3}"])
each("COLUMNS", "COLUMNS({0})", [A, "Data!A1:C5", "Data!1:1", "{1,2,3}"])
each("ADDRESS", "ADDRESS({0})", ["2,3", "2,3,4", "2,3,2", "2,3,3", '2,3,1,TRUE,"Data"', "2,28", "2,3,1,FALSE"])
add("HYPERLINK", 'HYPERLINK("https://example.org","text")', 'HYPERLINK("https://example.org")', 'LEN(HYPERLINK("https://example.org","text"))', 'HYPERLINK("#Data!A1",5)')
add("TRANSPOSE", f"SUM(TRANSPOSE({A}))", f"SUMPRODUCT(TRANSPOSE({A})*TRANSPOSE({B}))")
add("AREAS", "AREAS(Data!A1:A3)")

# Texts.
for f in ["LEN", "UPPER", "LOWER", "PROPER", "TRIM", "CLEAN", "T"]:
    each(f, f + "({0})", ["Data!C1", "Data!C5", "Data!C8", "Data!K1", "Data!B2", '"  a  b "', '"O\'brien-smith 2nd"', "TRUE", '"été"', "12.50", '""'])
each("LEFT", "LEFT({0},{1})", ["Data!C1", '"abc"', "12345", "Data!B2", "TRUE"], [0, 1, 2, 99])
each("RIGHT", "RIGHT({0},{1})", ["Data!C1", '"abc"', "12345", "Data!B2"], [0, 1, 2, 99])
each("MID", "MID({0},{1},{2})", ["Data!C5", "12345"], [1, 3, 99], [0, 2, 99])
add("LEFT", 'LEFT("abc")', 'LEFT("abc",-1)', 'RIGHT("abc")', 'MID("abc",0,1)', 'MID("abc",1,-1)')
each("FIND", "FIND({0},{1})", ['"l"', '"o"', '"S"', '""', '"zz"'], ["Data!C1", "Data!C2", "Data!C5"])
each("SEARCH", "SEARCH({0},{1})", ['"L"', '"o"', '"?o"', '"*t"', '"~*"', '"zz"'], ["Data!C1", "Data!C2", "Data!C9"])
add("FIND", 'FIND("o","footrot",3)', 'FIND("o","footrot",9)', 'SEARCH("O","footrot",3)', 'SEARCH("","abc")')
each("SUBSTITUTE", "SUBSTITUTE({0},{1},{2})", ["Data!C1", "Data!C2", '"aaa"', "1212"], ['"o"', '"a"', '"1"', '""'], ['"x"', '""'])
add("SUBSTITUTE", 'SUBSTITUTE("aaa","a","b",2)', 'SUBSTITUTE("aAa","A","b")', 'SUBSTITUTE("aaa","a","b",9)', 'SUBSTITUTE(SUBSTITUTE("a-b c","-","")," ","")')
each("REPLACE", "REPLACE({0},{1},{2},{3})", ["Data!C2", "12345"], [1, 3, 99], [0, 2], ['"X"', '""'])
each("REPT", "REPT({0},{1})", ['"ab"', "5"], [0, 1, 3, 2.9])
each("EXACT", "EXACT({0},{1})", ['"a"', "Data!C1", "1"], ['"A"', '"scald"', '"1"'])
each("CONCATENATE", "CONCATENATE({0})", ['"a","b"', "Data!C1,1", "Data!K1,\"x\"", "TRUE,1", "1.50", "Data!B2,\" %\""])
each("CONCAT", "CONCAT({0})", ['"a","b"', "Data!C1:C3", "Data!A1:B2", "Data!K1:K3,\"x\""])
each("TEXTJOIN", "TEXTJOIN({0},{1},{2})", ['", "', '""'], ["TRUE", "FALSE"], ["Data!C5:C8", "Data!A1:A4", '"a","","b"'])
each("VALUE", "VALUE({0})", ['"5"', '"2.0"', '".5"', '"1E3"', '" 7 "', '"50%"', '"1,234"', '"abc"', "Data!C11", "Data!C1", '""', "5", '"-3"', '"+3"', '"$5"', '"12:00"', '"2026-03-14"'])
each("NUMBERVALUE", "NUMBERVALUE({0})", ['"1.234,5",",","."', '"5%"', '"2.50"', '""', '" 3 4 "'])
each("TEXT", "TEXT({0},{1})", ["1234.567", "0.256", "-5", "0", "46095"], ['"0"', '"0.0"', '"0.00"', '"#,##0"', '"#,##0.00"', '"0%"', '"0.0%"', '"yyyy-mm-dd"', '"dd/mm/yyyy"', '"d mmm yyyy"', '"mmmm"', '"ddd"', '"dddd"', '"yy"', '"000"', '"0.00E+00"', '"@"'])
add("TEXT", 'TEXT(0.5,"hh:mm")', 'TEXT(46095.75,"dd mmm yyyy hh:mm")', 'TEXT("abc","0")', 'TEXT(Data!K1,"0")', 'TEXT(1.5,"0 ""kg""")', 'TEXT(-3,"0;(0)")', 'TEXT(0.75,"# ?/?")', 'TEXT(TRUE,"0")', 'TEXT(3,"")', 'TEXT(46095,"mmm-yy")', 'TEXT(7,"00")', 'TEXT(1234567,"0,,")', 'TEXT(5,"General")')
each("FIXED", "FIXED({0},{1},{2})", ["1234.567", "-0.5"], [0, 1, 3, -2], ["TRUE", "FALSE"])
each("DOLLAR", "DOLLAR({0},{1})", ["1234.567", "-5"], [0, 2])
each("CHAR", "CHAR({0})", [65, 97, 10, 33, 126])
each("CODE", "CODE({0})", ['"A"', '"abc"', '"~"'])
each("UNICHAR", "UNICHAR({0})", [65, 233, 8364])
each("UNICODE", "UNICODE({0})", ['"A"', '"é"', '"€"'])

# Days and times.
for f in ["YEAR", "MONTH", "DAY", "HOUR", "MINUTE", "SECOND"]:
    each(f, f + "({0})", ["Data!D1", "46095", "46095.75", "0.4375", "1", "60", "61", "DATE(2026,2,28)", '"2026-03-14"', "Data!D12", "46095.999988"])
each("DATE", "DATE({0},{1},{2})", [2026, 2024, 26], [1, 2, 13, 0], [1, 29, 31, 0])
each("TIME", "TIME({0},{1},{2})", [0, 10, 25], [0, 75], [0, 30])
each("WEEKDAY", "WEEKDAY({0},{1})", ["Data!D1", "46095", "46096"], [1, 2, 3, 11, 17])
each("WEEKNUM", "WEEKNUM({0},{1})", ["46023", "46095", "46387"], [1, 2, 21])
each("ISOWEEKNUM", "ISOWEEKNUM({0})", ["46023", "46095", "46387", "45292", "44197"])
each("EDATE", "EDATE({0},{1})", ["46053", "46095", "45351"], [1, -1, 12, 0, 1.9])
each("EOMONTH", "EOMONTH({0},{1})", ["46053", "46095", "45351"], [0, 1, -1, 12])
each("DAYS", "DAYS({0},{1})", ["46095", "Data!D3"], ["46000", "Data!D1"])
each("DATEDIF", "DATEDIF({0},{1},{2})", ["45292", "45351"], ["46095", "46112"], ['"d"', '"m"', '"y"', '"ym"', '"yd"', '"md"'])
each("NETWORKDAYS", "NETWORKDAYS({0},{1})", ["46023", "46027", "46095"], ["46053", "46095", "46023"])
add("NETWORKDAYS", "NETWORKDAYS(46023,46053,Data!D1:D3)")
each("WORKDAY", "WORKDAY({0},{1})", ["46023", "46095"], [1, 5, -1, 10, 0])
add("WORKDAY", "WORKDAY(46023,10,Data!D1:D3)")
each("WORKDAY.INTL", "WORKDAY.INTL({0},{1},{2})", ["46023", "Data!D1"], [1, 5, "Data!A1"], [1, 2, 11, '"0000011"', '"1000001"'])
each("NETWORKDAYS.INTL", "NETWORKDAYS.INTL({0},{1},{2})", ["46023", "Data!D1"], ["46053", "Data!D6"], [1, 2, 11, '"0000011"'])
each("DAYS360", "DAYS360({0},{1})", ["46023", "46053"], ["46095", "46387"])
each("YEARFRAC", "YEARFRAC({0},{1},{2})", ["46023", "45292"], ["46095", "46387"], [0, 1, 2, 3, 4])
each("DATEVALUE", "DATEVALUE({0})", ['"2026-03-14"', '"14 Mar 2026"', '"x"'])
each("TIMEVALUE", "TIMEVALUE({0})", ['"10:30"', '"22:15:30"', '"x"'])

# Rounding and plain arithmetic.
for f in ["ROUND", "ROUNDUP", "ROUNDDOWN"]:
    each(f, f + "({0},{1})", ["2.5", "-2.5", "1.005", "2.345", "1234.567", "0.5", "-0.05", "0.285", "1.15"], [0, 1, 2, -2])
for f in ["INT", "TRUNC", "ABS", "SIGN", "EVEN", "ODD", "SQRT", "EXP", "LN", "LOG10", "FACT", "DEGREES", "RADIANS", "SIN", "COS", "TAN", "ATAN"]:
    each(f, f + "({0})", ["Data!A1", "Data!B3", "0", "4", "2.5", '"9"', "Data!K1", "Data!C1", "TRUE", "-7.5"])
each("MOD", "MOD({0},{1})", ["7", "-7", "7.5", "0.3", "Data!A1"], ["3", "-3", "0.1", "0"])
each("QUOTIENT", "QUOTIENT({0},{1})", ["7", "-7", "7.5"], ["3", "-3", "0"])
each("CEILING", "CEILING({0},{1})", ["2.5", "-2.5", "7", "0.234"], ["1", "2", "0.05", "-1"])
each("FLOOR", "FLOOR({0},{1})", ["2.5", "-2.5", "7", "0.234"], ["1", "2", "0.05", "-1"])
each("CEILING.MATH", "CEILING.MATH({0})", ["2.5", "-2.5", "6.7,2", "-5.5,2,-1"])
each("FLOOR.MATH", "FLOOR.MATH({0})", ["2.5", "-2.5", "6.7,2", "-5.5,2,-1"])
each("MROUND", "MROUND({0},{1})", ["10", "7.5", "-10", "1.3"], ["3", "0.2", "-3"])
each("POWER", "POWER({0},{1})", ["2", "9", "-8"], ["3", "0.5", "-1", "0"])
each("LOG", "LOG({0})", ["8,2", "100", "86,2.7182818", "0", "-1"])
each("GCD", "GCD({0})", ["12,18", "5", "7,1", "24,36,60"])
each("LCM", "LCM({0})", ["12,18", "5,2", "24,36"])
each("COMBIN", "COMBIN({0},{1})", ["8", "5"], ["2", "5", "0"])
each("PERMUT", "PERMUT({0},{1})", ["8", "5"], ["2", "5"])
add("PI", "PI()", "PI()*2", "ROUND(PI(),4)")
each("ARABIC", "ARABIC({0})", ['"XIV"', '"mcmxii"'])
each("ROMAN", "ROMAN({0})", ["14", "1999", "0"])
each("BASE", "BASE({0})", ["7,2", "255,16", "7,2,8"])
each("DECIMAL", "DECIMAL({0})", ['"FF",16', '"111",2'])

# What a cell is.
for f in ["ISBLANK", "ISNUMBER", "ISTEXT", "ISERROR", "ISERR", "ISNA", "ISLOGICAL", "ISNONTEXT"]:
    each(f, f + "({0})", ["Data!A1", "Data!C1", "Data!C7", "Data!E3", "1/0", "NA()", '""', "Data!C11", "Data!D1"])
each("ISEVEN", "ISEVEN({0})", ["Data!A1", "2", "0", "-3", "2.9"])
each("ISODD", "ISODD({0})", ["Data!A1", "2", "0", "-3", "2.9"])
each("N", "N({0})", ["Data!A1", "Data!C1", "TRUE", "Data!E3", '"5"'])
each("TYPE", "TYPE({0})", ["Data!A1", "Data!C1", "TRUE", "1/0", "{1,2}"])
each("ERROR.TYPE", "ERROR.TYPE({0})", ["1/0", "NA()", "1"])
add("NA", "NA()", "ISNA(NA())", "IFERROR(NA(),1)")
each("ISREF", "ISREF({0})", ["Data!A1", "5"])

# Money, as in books of account.
each("PMT", "PMT({0},{1},{2})", ["0.05/12", "0.1"], ["12", "60"], ["1000", "-500"])
each("FV", "FV({0},{1},{2})", ["0.05/12"], ["12", "60"], ["-100"])
each("PV", "PV({0},{1},{2})", ["0.05/12"], ["12", "60"], ["-100"])
each("NPV", "NPV({0},{1})", ["0.1"], ["-100,50,60,70", "Data!A1:A5"])
each("IRR", "IRR({0})", ["{-100,50,60,70}"])
each("RATE", "RATE({0})", ["12,-100,1000"])
each("NPER", "NPER({0})", ["0.01,-100,1000"])
each("SLN", "SLN({0})", ["1000,100,5"])

# What is easily missed: references where a text or a number is usual, texts as figures, unions, intersections.
each("WORKDAY.INTL", "WORKDAY.INTL({0},{1},{2},{3})", ["Data!D1", "46095"], ["Data!A3", -3, 12], ["Data!A4", "Data!A1", 7, '"0101011"'], ["Data!D2:D4", "46041"])
each("NETWORKDAYS.INTL", "NETWORKDAYS.INTL({0},{1},{2},{3})", ["Data!D1"], ["Data!D6", "46053"], ["Data!A4", 17, '"1000001"'], ["Data!D2:D4", "46041"])
add("HYPERLINK", 'HYPERLINK(Data!C1,Data!A1)', 'HYPERLINK("#Data!A1")&"x"', 'HYPERLINK("https://example.org",Data!C2)&"!"', 'HYPERLINK("https://example.org",5)+1', 'IF(HYPERLINK("a","b")="b",1,2)')
add("DOLLAR", "DOLLAR(1234.567)", "DOLLAR(1234.567,-2)", "DOLLAR(0.005,2)", 'DOLLAR("12.5",1)', "LEN(DOLLAR(1,2))")
for f in ["STDEV", "STDEV.S", "STDEVP", "VAR", "VAR.P", "AVERAGE", "MEDIAN", "MAX", "SUM", "PRODUCT"]:
    add(f, f'{f}("2","4")', f'{f}("x",1)', f"{f}(Data!C11:C12)", f"{f}(Data!C11,Data!C12)", f"{f}(Data!E1:E2,3)", f'{f}(Data!C1:C10,5,"7")')
add("operators", "Data!A1%%", "50%%%", "-50%%", "2^50%", "(Data!A1+1)%", "Data!A1%*200", "5%&\"\"", "--\"2\"%", "Data!A1:A3 Data!A2:C2", "SUM(Data!A1:C3 Data!B2:D4)", "SUM(Data!A1:A3 Data!B1:B3)", "SUM((Data!A1:A3,Data!B1:B3,5))", "MAX((Data!A1:A3,Data!B1:B3))", "LARGE((Data!A1:A3,Data!B1:B3),2)", "SMALL((Data!A1:A3,Data!B1:B3),1)", "COUNT((Data!A1:A3,Data!A2:A5))", "RANK(3,(Data!A1:A3,Data!B4:B6))", "INDEX((Data!A1:A3,Data!B1:B3),2,1,2)", "SUM(Data!A1:Data!A3)", "SUM(INDEX(Data!A1:A12,2):INDEX(Data!A1:A12,4))", "SUM(Data!A1:A3:Data!B2)", "AREAS((Data!A1:A3,Data!B1,Data!C1))", "COUNTBLANK(Data!C6:C8)", 'SUM(Data!A1:A12 Data!A1:A3,Data!B1:B2)', '"line\nbreak"&Data!A1', 'SUBSTITUTE("a\nb","\n","+")', '"a\nb"="A\nB"', 'FIND("\n","ab\nc")')
add("VALUE", 'VALUE("14 Mar 2026")', 'VALUE("2026-03-14 18:00")', 'VALUE("1E-2")', 'VALUE("5.")', 'VALUE(" -3 ")', 'VALUE("(5)")', 'VALUE("50 %")', 'VALUE("12%%")')

# Text numbers, words and blanks in ranges, for every function that counts numbers alone.
mixed = ["Data!E7:E12", "Data!C8:C12", "Data!E4:E5", "Data!E7:E12,Data!A1", "Data!E8", 'Data!E7,"4"', "Data!E7:E12,"]
for f in ["SUM", "AVERAGE", "COUNT", "COUNTA", "MAX", "MIN", "PRODUCT", "SUMSQ", "MEDIAN", "STDEV.S", "STDEV.P", "VAR.S", "VAR.P", "GEOMEAN", "HARMEAN", "AVEDEV", "DEVSQ", "MODE", "SKEW", "KURT", "AVERAGEA", "MAXA", "MINA", "GCD", "LCM", "MULTINOMIAL", "STDEVA", "VARA"]:
    each(f, f + "({0})", mixed)
for f, given in {"LARGE": [1, 3, 4], "SMALL": [1, 3, 4], "PERCENTILE": [0, 0.5, 0.9], "PERCENTILE.EXC": [0.3, 0.5], "QUARTILE": [1, 2, 3], "QUARTILE.EXC": [1, 2], "TRIMMEAN": [0.1, 0.7], "PERCENTRANK": [4, 5], "RANK": []}.items():
    each(f, f + "({0},{1})", ["Data!E7:E12", "Data!C8:C12"], given)
add("RANK", "RANK(4,Data!E7:E12)", "RANK(3.5,Data!E7:E12)", 'RANK("4",Data!E7:E12)')
for f in ["CORREL", "SLOPE", "INTERCEPT", "RSQ", "COVARIANCE.P", "COVARIANCE.S", "SUMXMY2", "SUMX2MY2", "SUMPRODUCT"]:
    each(f, f + "({0},{1})", ["Data!E7:E12"], ["Data!A7:A12", "Data!B7:B12"])
add("FORECAST", "FORECAST(3,Data!E7:E12,Data!A7:A12)")
add("NPV", "NPV(0.1,Data!E7:E12)", 'NPV(0.1,Data!E7,"5",Data!E8)')
add("FREQUENCY", "SUM(FREQUENCY(Data!E7:E12,Data!A1:A3))")
each("COUNTIF", "COUNTIF({0},{1})", [D, "Data!C1:C12"], ['"2026-01-19"', '"14 Mar 2026"', '"<>14 Mar 2026"', '">=14 Mar 2026"', '"=2026-03-30"', '"18:00"'])

# A workbook that counts its days from 1904.
for text in ["2026-03-14", "14 Mar 2026", "2026-03-14 18:00", "18:00", "1904-01-01", "5", "50%"]:
    in1904("VALUE", f'VALUE("{text}")', f'"{text}"+0', f'"{text}"*1')
in1904("DATEVALUE", 'DATEVALUE("2026-03-14")', 'DATEVALUE("14 Mar 2026")', 'DATEVALUE("2026-03-14")-DATE(2026,3,14)')
in1904("DATE", "DATE(2026,3,14)", "DATE(1904,1,1)", "DATE(1904,1,2)", "DATE(2026,3,14)-DATE(2026,3,1)", "DATE(2026,14,1)")
for f in ["YEAR", "MONTH", "DAY", "WEEKDAY", "ISOWEEKNUM", "WEEKNUM"]:
    in1904(f, f"{f}(DATE(2026,3,14))", f"{f}(44633)", f'{f}("2026-03-14")', f"{f}(1)")
in1904("EDATE", "EDATE(44633,1)", 'EDATE("2026-03-14",1)', "EOMONTH(44633,0)", 'EOMONTH("2026-03-14",-1)')
in1904("TEXT", 'TEXT(44633,"yyyy-mm-dd")', 'TEXT(44633.75,"d mmm yyyy hh:mm")', 'TEXT(DATE(2026,3,14),"dddd")', 'TEXT("2026-03-14","d mmm yyyy")')
in1904("NETWORKDAYS", "NETWORKDAYS(44565,44633)", 'NETWORKDAYS("2026-01-05","2026-03-14")', "WORKDAY(44565,10)", 'WORKDAY("2026-01-05",10)', 'WORKDAY.INTL("2026-01-05",10,11)')
in1904("DAYS", 'DAYS("2026-03-14","2026-03-01")', "DAYS(44633,44620)", 'DATEDIF("2025-03-14","2026-03-14","y")', 'YEARFRAC("2025-03-14","2026-03-14",1)', 'DAYS360("2026-01-05","2026-03-14")')
in1904("COUNTIF", 'COUNTIF(Data!$D$1:$D$12,">="&DATE(2030,3,1))', 'COUNTIF(Data!$D$1:$D$12,">=2030-03-01")', 'COUNTIF(Data!$D$1:$D$12,"2030-01-06")', 'SUMIF(Data!$D$1:$D$12,">2030-06-01",Data!$A$1:$A$12)', 'COUNTIFS(Data!$D$1:$D$12,">=2030-03-01",Data!$A$1:$A$12,">3")')
in1904("IF", 'IF("2026-03-14"+0=44633,1,2)', 'IF(DATE(2026,3,14)=VALUE("2026-03-14"),1,2)', 'IF("2026-03-14"<"2026-03-15",1,2)')
in1904("HOUR", 'HOUR("2026-03-14 18:30")', 'MINUTE("18:30")', "HOUR(44633.75)", 'TIMEVALUE("18:30")')
