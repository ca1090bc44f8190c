"""Values that follow the format's documentation where LibreOffice gives another: formula -> (value, rule).

Sections are those of ECMA-376 part 1; pages are those of the functions in the documentation of the spreadsheet that
made the format, from memory. Each was looked at one by one.
"""

rules = {}

def because(rule, values):
    for formula, value in values.items():
        rules[formula] = (value, rule)


because(
    'TRUE and FALSE are a kind of their own, above texts and numbers: in cells no sum or count of numbers takes them (18.17.2.6, 18.17.7); LibreOffice holds them as numbers',
    {
        'SUM(Data!E1:E12)': 12,
        'AVERAGE(Data!E1:E12)': 3,
        'COUNT(Data!E1:E12)': 4,
        'SUMSQ(Data!E1:E12)': 66,
        'MEDIAN(Data!E1:E12)': 2.5,
        'STDEV.S(Data!E1:E12)': 3.1622776601683795,
        'STDEV.P(Data!E1:E12)': 2.7386127875258306,
        'VAR.S(Data!E1:E12)': 10,
        'VAR.P(Data!E1:E12)': 7.5,
        'STDEV(Data!E1:E12)': 3.1622776601683795,
        'VAR(Data!E1:E12)': 10,
        'STDEVP(Data!E1:E12)': 2.7386127875258306,
        'VARP(Data!E1:E12)': 7.5,
        'GEOMEAN(Data!E1:E12)': '#NUM!',
        'AVEDEV(Data!E1:E12)': 2.5,
        'DEVSQ(Data!E1:E12)': 30,
        'SUMPRODUCT(Data!$E$1:$E$12,Data!$A$1:$A$12)': 37,
        'SUMPRODUCT(--ISNUMBER(Data!$E$1:$E$12))': 4,
        'SUBTOTAL(1,Data!E1:E12)': 3,
        'SUBTOTAL(2,Data!E1:E12)': 4,
        'SUBTOTAL(7,Data!E1:E12)': 3.1622776601683795,
        'SUBTOTAL(8,Data!E1:E12)': 2.7386127875258306,
        'SUBTOTAL(9,Data!E1:E12)': 12,
        'SUBTOTAL(10,Data!E1:E12)': 10,
        'SUBTOTAL(11,Data!E1:E12)': 7.5,
        'SMALL(Data!$E$1:$E$12,2)': 1,
        'SMALL(Data!$E$1:$E$12,3)': 4,
        'COUNTIF(Data!$A$1:$A$12,TRUE)': 0,
        'COUNTIF(Data!$E$1:$E$12,"<=2")': 2,
        'COUNTIF(Data!$E$1:$E$12,">=.5")': 3,
        'COUNTIF(Data!$E$1:$E$12,">-2")': 4,
        'COUNTIF(Data!$E$1:$E$12,"<"&Data!B1)': 2,
        'SUMIF(Data!$F$1:$F$12,"?ams",Data!$E$1:$E$12)': 7,
        'COUNTIFS(Data!$E$1:$E$12,TRUE)': 1,
        'SUMIFS(Data!$E$1:$E$12,Data!$A$1:$A$12,">0")': 12,
        'Data!A1<TRUE': True,
        'Data!A1>TRUE': False,
        'Data!A1<=TRUE': True,
        'Data!A1>=TRUE': False,
        'Data!C1<TRUE': True,
        'Data!C1>TRUE': False,
        'Data!C1<=TRUE': True,
        'Data!C1>=TRUE': False,
        'Data!E2<TRUE': True,
        'Data!E2>TRUE': False,
        'Data!E2<=TRUE': True,
        'Data!E2>=TRUE': False,
        'Data!E3<3': False,
        'Data!E3<"scald"': False,
        'Data!E3<Data!B1': False,
        'Data!E3<""': False,
        'Data!E3>3': True,
        'Data!E3>"scald"': True,
        'Data!E3>Data!B1': True,
        'Data!E3>""': True,
        'Data!E3<=3': False,
        'Data!E3<="scald"': False,
        'Data!E3<=Data!B1': False,
        'Data!E3<=""': False,
        'Data!E3>=3': True,
        'Data!E3>="scald"': True,
        'Data!E3>=Data!B1': True,
        'Data!E3>=""': True,
        'TRUE&""': 'TRUE',
        '"a"<TRUE': True,
        'TRUE>1': True,
        '1=TRUE': False,
        'MATCH(TRUE,Data!$E$1:$E$12,0)': 3,
        'MATCH(0,Data!$E$1:$E$12,0)': 11,
        'LEN(TRUE)': 4,
        'UPPER(TRUE)': 'TRUE',
        'LOWER(TRUE)': 'true',
        'PROPER(TRUE)': 'True',
        'TRIM(TRUE)': 'TRUE',
        'CLEAN(TRUE)': 'TRUE',
        'LEFT(TRUE,1)': 'T',
        'LEFT(TRUE,2)': 'TR',
        'LEFT(TRUE,99)': 'TRUE',
        'CONCATENATE(TRUE,1)': 'TRUE1',
        'ISNUMBER(Data!E3)': False,
        'TYPE(TRUE)': 4,
    },
)


because(
    'a text typed into the formula counts as the number or truth it can be read as (page of SUM)',
    {
        'SUM(2,"3",TRUE)': 6,
        'AVERAGE(2,"3",TRUE)': 2,
        'MAX(2,"3",TRUE)': 3,
        'MIN(2,"3",TRUE)': 1,
        'PRODUCT(2,"3",TRUE)': 6,
        'SUMSQ(2,"3",TRUE)': 14,
        'MEDIAN(2,"3",TRUE)': 2,
        'STDEV.S(2,"3",TRUE)': 1,
        'STDEV.P(2,"3",TRUE)': 0.816496580927726,
        'VAR.S(2,"3",TRUE)': 1,
        'VAR.P(2,"3",TRUE)': 0.6666666666666666,
        'STDEV(2,"3",TRUE)': 1,
        'VAR(2,"3",TRUE)': 1,
        'STDEVP(2,"3",TRUE)': 0.816496580927726,
        'VARP(2,"3",TRUE)': 0.6666666666666666,
        'AVERAGEA(2,"3",TRUE)': 2,
        'MAXA(2,"3",TRUE)': 3,
        'MINA(2,"3",TRUE)': 1,
        'GEOMEAN(2,"3",TRUE)': 1.8171205928321397,
        'AVEDEV(2,"3",TRUE)': 0.6666666666666666,
        'DEVSQ(2,"3",TRUE)': 2,
        'AND("TRUE",TRUE)': True,
        'OR("TRUE",TRUE)': True,
        'XOR("TRUE",TRUE)': False,
    },
)


because(
    'the error that the page of the function names; LibreOffice saves its own errors as #VALUE!',
    {
        'MEDIAN(Data!C1:C10)': '#NUM!',
        'MEDIAN(Data!K1:K3)': '#NUM!',
        'GEOMEAN(Data!B1:B6)': '#NUM!',
        'GEOMEAN(Data!A1:B3,5)': '#NUM!',
        'DEVSQ(Data!C1:C10)': '#NUM!',
        'DEVSQ(Data!K1:K3)': '#NUM!',
        'LARGE(Data!$E$1:$E$12,12)': '#NUM!',
        'SMALL(Data!$E$1:$E$12,12)': '#NUM!',
        'PERCENTILE.EXC(Data!$A$1:$A$12,0.01)': '#NUM!',
        'PERCENTILE.EXC(Data!$J$1:$J$12,0.01)': '#NUM!',
        'VLOOKUP(11,Data!G1:H12,3)': '#REF!',
        'OFFSET(Data!A1,-1,0)': '#REF!',
        'SQRT(Data!B3)': '#NUM!',
        'SQRT(-7.5)': '#NUM!',
        'LN(Data!B3)': '#NUM!',
        'LN(0)': '#NUM!',
        'LN(Data!K1)': '#NUM!',
        'LN(-7.5)': '#NUM!',
        'LOG10(Data!B3)': '#NUM!',
        'LOG10(0)': '#NUM!',
        'LOG10(Data!K1)': '#NUM!',
        'LOG10(-7.5)': '#NUM!',
        'FACT(Data!B3)': '#NUM!',
        'FACT(-7.5)': '#NUM!',
        'QUOTIENT(7,0)': '#DIV/0!',
        'QUOTIENT(-7,0)': '#DIV/0!',
        'QUOTIENT(7.5,0)': '#DIV/0!',
        'CEILING(2.5,-1)': '#NUM!',
        'CEILING(7,-1)': '#NUM!',
        'CEILING(0.234,-1)': '#NUM!',
        'FLOOR(2.5,-1)': '#NUM!',
        'FLOOR(7,-1)': '#NUM!',
        'FLOOR(0.234,-1)': '#NUM!',
        'LOG(0)': '#NUM!',
        'LOG(-1)': '#NUM!',
    },
)


because(
    'a criterion that is a number fits a text that is the number too (page of COUNTIF)',
    {
        'COUNTIF(Data!$E$1:$E$12,TRUE)': 1,
        'COUNTIF(Data!$C$1:$C$12,12)': 1,
        'COUNTIF(Data!$C$1:$C$12,"3.50")': 1,
        'COUNTIFS(Data!$E$1:$E$12,2)': 1,
    },
)


because(
    'numbers are compared to 15 digits: 0.899999999999999 is not 0.9',
    {
        'IF((43.1-43.2)+1=0.9,1,2)': 2,
    },
)


because(
    'a text is not equal to a number (18.17.2.6), and a column beyond the table is #REF!',
    {
        'SWITCH("3",1,"one",3,"three","other")': 'other',
        'VLOOKUP("11",Data!G1:H12,2,FALSE)': '#N/A',
    },
)


because(
    '0^0 is #NUM! (page of POWER)',
    {
        'Data!K1^Data!K2': '#NUM!',
    },
)


because(
    'an exponent has two digits, and stands from 20 zeros on',
    {
        '1E20&""': '1E+20',
    },
)


because(
    'an empty text is found at the start (page of FIND)',
    {
        'FIND("",Data!C1)': 1,
        'FIND("",Data!C2)': 1,
        'FIND("",Data!C5)': 1,
        'SEARCH("","abc")': 1,
    },
)


because(
    'the decimal separator left out is the point; an empty text is 0 (page of NUMBERVALUE)',
    {
        'NUMBERVALUE("2.50")': 2.5,
        'NUMBERVALUE("")': 0,
    },
)


because(
    'the 1900 system: day 0 is 0 January 1900, and 1900 has a 29 February (18.17.4.1)',
    {
        'TEXT(0.256,"yyyy-mm-dd")': '1900-01-00',
        'TEXT(0.256,"dd/mm/yyyy")': '00/01/1900',
        'TEXT(0.256,"d mmm yyyy")': '0 Jan 1900',
        'TEXT(0.256,"mmmm")': 'January',
        'TEXT(0.256,"yy")': '00',
        'TEXT(0,"yyyy-mm-dd")': '1900-01-00',
        'TEXT(0,"dd/mm/yyyy")': '00/01/1900',
        'TEXT(0,"d mmm yyyy")': '0 Jan 1900',
        'TEXT(0,"mmmm")': 'January',
        'TEXT(0,"yy")': '00',
        'YEAR(0.4375)': 1900,
        'YEAR(1)': 1900,
        'MONTH(0.4375)': 1,
        'MONTH(1)': 1,
        'DAY(0.4375)': 0,
        'DAY(1)': 1,
        'DAY(60)': 29,
    },
)


because(
    'TRUE is shown as TRUE',
    {
        'TEXT(TRUE,"0")': 'TRUE',
    },
)


because(
    'DOLLAR shows negative amounts in brackets (18.17.7.94)',
    {
        'DOLLAR(-5,0)': '($5)',
        'DOLLAR(-5,2)': '($5.00)',
    },
)


because(
    'DATE adds 1900 to a year below 1900 (18.17.7.68)',
    {
        'DATE(26,1,1)': 9498,
        'DATE(26,1,29)': 9526,
        'DATE(26,1,31)': 9528,
        'DATE(26,1,0)': 9497,
        'DATE(26,2,1)': 9529,
        'DATE(26,2,29)': 9557,
        'DATE(26,2,31)': 9559,
        'DATE(26,2,0)': 9528,
        'DATE(26,13,1)': 9863,
        'DATE(26,13,29)': 9891,
        'DATE(26,13,31)': 9893,
        'DATE(26,13,0)': 9862,
        'DATE(26,0,1)': 9467,
        'DATE(26,0,29)': 9495,
        'DATE(26,0,31)': 9497,
        'DATE(26,0,0)': 9466,
    },
)


because(
    'the last days of a year are in its week 53; only type 21 counts ISO weeks (18.17.7.343)',
    {
        'WEEKNUM(46387,1)': 53,
        'WEEKNUM(46387,2)': 53,
    },
)


because(
    'a month in letters with day and year is a date',
    {
        'DATEVALUE("14 Mar 2026")': 46095,
    },
)


because(
    'MOD(n,d) is n-d*INT(n/d) (18.17.7.215)',
    {
        'MOD(0.3,0.1)': 0.09999999999999998,
    },
)


because(
    'number and multiple of different signs are #NUM! (18.17.7.217)',
    {
        'MROUND(10,-3)': '#NUM!',
        'MROUND(7.5,-3)': '#NUM!',
        'MROUND(-10,3)': '#NUM!',
        'MROUND(-10,0.2)': '#NUM!',
        'MROUND(1.3,-3)': '#NUM!',
    },
)


because(
    'a text typed into the formula counts as the number it can be read as (page of SUM); in a range it is passed over',
    {
        'STDEV("2","4")': 1.4142135623730951,
        'STDEV(Data!C1:C10,5,"7")': 1.4142135623730951,
        'STDEV.S("2","4")': 1.4142135623730951,
        'STDEV.S(Data!C1:C10,5,"7")': 1.4142135623730951,
        'STDEVP("2","4")': 1,
        'STDEVP(Data!C1:C10,5,"7")': 1,
        'VAR("2","4")': 2,
        'VAR(Data!C1:C10,5,"7")': 2,
        'VAR.P("2","4")': 1,
        'VAR.P(Data!C1:C10,5,"7")': 1,
        'AVERAGE("2","4")': 3,
        'AVERAGE(Data!C1:C10,5,"7")': 6,
        'MEDIAN("2","4")': 3,
        'MEDIAN(Data!C1:C10,5,"7")': 6,
        'MAX("2","4")': 4,
        'MAX(Data!C1:C10,5,"7")': 7,
        'SUM("2","4")': 6,
        'SUM(Data!C1:C10,5,"7")': 12,
        'PRODUCT("2","4")': 8,
        'PRODUCT(Data!C1:C10,5,"7")': 35,
        'SUM(Data!E7,"4")': 11,
        'AVERAGE(Data!E7,"4")': 5.5,
        'MAX(Data!E7,"4")': 7,
        'MIN(Data!E7,"4")': 4,
        'PRODUCT(Data!E7,"4")': 28,
        'SUMSQ(Data!E7,"4")': 65,
        'MEDIAN(Data!E7,"4")': 5.5,
        'STDEV.S(Data!E7,"4")': 2.1213203435596424,
        'STDEV.P(Data!E7,"4")': 1.5,
        'VAR.S(Data!E7,"4")': 4.5,
        'VAR.P(Data!E7,"4")': 2.25,
        'GEOMEAN(Data!E7,"4")': 5.2915026221291805,
        'HARMEAN(Data!E7,"4")': 5.090909090909091,
        'AVEDEV(Data!E7,"4")': 1.5,
        'DEVSQ(Data!E7,"4")': 4.5,
        'MODE(Data!E7,"4")': '#N/A',
        'SKEW(Data!E7,"4")': '#DIV/0!',
        'KURT(Data!E7,"4")': '#DIV/0!',
        'AVERAGEA(Data!E7,"4")': 5.5,
        'MINA(Data!E7,"4")': 4,
        'STDEVA(Data!E7,"4")': 2.1213203435596424,
        'VARA(Data!E7,"4")': 4.5,
        'NPV(0.1,Data!E7,"5",Data!E8)': 10.49586776859504,
    },
)


because(
    'without a number to count, or with one that is not above 0 where the mean asks for it, the page of the function names this error; LibreOffice saves its own errors as #VALUE!',
    {
        'MEDIAN(Data!C11:C12)': '#NUM!',
        'MEDIAN(Data!C11,Data!C12)': '#NUM!',
        'MEDIAN(Data!C8:C12)': '#NUM!',
        'MEDIAN(Data!E4:E5)': '#NUM!',
        'MEDIAN(Data!E8)': '#NUM!',
        'GEOMEAN(Data!E7:E12)': '#NUM!',
        'GEOMEAN(Data!E7:E12,Data!A1)': '#NUM!',
        'GEOMEAN(Data!E7:E12,)': '#NUM!',
        'HARMEAN(Data!E7:E12)': '#NUM!',
        'HARMEAN(Data!E7:E12,Data!A1)': '#NUM!',
        'HARMEAN(Data!E7:E12,)': '#NUM!',
        'DEVSQ(Data!C8:C12)': '#NUM!',
        'DEVSQ(Data!E4:E5)': '#NUM!',
        'DEVSQ(Data!E8)': '#NUM!',
        'LARGE(Data!E7:E12,4)': '#NUM!',
        'LARGE(Data!C8:C12,1)': '#NUM!',
        'LARGE(Data!C8:C12,3)': '#NUM!',
        'LARGE(Data!C8:C12,4)': '#NUM!',
        'SMALL(Data!E7:E12,4)': '#NUM!',
        'SMALL(Data!C8:C12,1)': '#NUM!',
        'SMALL(Data!C8:C12,3)': '#NUM!',
        'SMALL(Data!C8:C12,4)': '#NUM!',
        'PERCENTILE(Data!C8:C12,0)': '#NUM!',
        'PERCENTILE(Data!C8:C12,0.5)': '#NUM!',
        'PERCENTILE(Data!C8:C12,0.9)': '#NUM!',
        'PERCENTILE.EXC(Data!C8:C12,0.3)': '#NUM!',
        'PERCENTILE.EXC(Data!C8:C12,0.5)': '#NUM!',
        'QUARTILE(Data!C8:C12,1)': '#NUM!',
        'QUARTILE(Data!C8:C12,2)': '#NUM!',
        'QUARTILE(Data!C8:C12,3)': '#NUM!',
        'QUARTILE.EXC(Data!C8:C12,1)': '#NUM!',
        'QUARTILE.EXC(Data!C8:C12,2)': '#NUM!',
        'TRIMMEAN(Data!C8:C12,0.1)': '#NUM!',
        'TRIMMEAN(Data!C8:C12,0.7)': '#NUM!',
        'PERCENTRANK(Data!C8:C12,4)': '#NUM!',
        'PERCENTRANK(Data!C8:C12,5)': '#NUM!',
    },
)


because(
    'without a number that stands twice it is #N/A (page of MODE)',
    {
        'MODE(Data!E7:E12)': '#N/A',
        'MODE(Data!C8:C12)': '#N/A',
        'MODE(Data!E4:E5)': '#N/A',
        'MODE(Data!E7:E12,Data!A1)': '#N/A',
        'MODE(Data!E8)': '#N/A',
    },
)


because(
    'a text is #VALUE! (pages of GCD, LCM and MULTINOMIAL)',
    {
        'GCD(Data!E7:E12)': '#VALUE!',
        'GCD(Data!C8:C12)': '#VALUE!',
        'GCD(Data!E4:E5)': '#VALUE!',
        'GCD(Data!E7:E12,Data!A1)': '#VALUE!',
        'GCD(Data!E7:E12,)': '#VALUE!',
        'LCM(Data!E7:E12)': '#VALUE!',
        'LCM(Data!C8:C12)': '#VALUE!',
        'LCM(Data!E4:E5)': '#VALUE!',
        'LCM(Data!E7:E12,Data!A1)': '#VALUE!',
        'LCM(Data!E7:E12,)': '#VALUE!',
        'MULTINOMIAL(Data!E7:E12)': '#VALUE!',
        'MULTINOMIAL(Data!C8:C12)': '#VALUE!',
        'MULTINOMIAL(Data!E4:E5)': '#VALUE!',
        'MULTINOMIAL(Data!E7:E12,Data!A1)': '#VALUE!',
        'MULTINOMIAL(Data!E7:E12,)': '#VALUE!',
    },
)


because(
    'a month in letters with day and year is a date',
    {
        'VALUE("14 Mar 2026")': 46095,
        'COUNTIF(Data!$D$1:$D$12,">=14 Mar 2026")': 6,
        'COUNTIF(Data!C1:C12,">=14 Mar 2026")': 0,
        '1904 VALUE("14 Mar 2026")': 44633,
        '1904 "14 Mar 2026"+0': 44633,
        '1904 "14 Mar 2026"*1': 44633,
        '1904 DATEVALUE("14 Mar 2026")': 44633,
    },
)


because(
    'the share is cut after three digits, not rounded (page of PERCENTRANK)',
    {
        'PERCENTRANK(Data!E7:E12,5)': 0.666,
    },
)


because(
    'pairs with a text are passed over (page of SUMXMY2)',
    {
        'SUMXMY2(Data!E7:E12,Data!A7:A12)': 51,
    },
)


because(
    'pairs with a text are passed over (page of SUMXMY2)',
    {
        'SUMXMY2(Data!E7:E12,Data!B7:B12)': 992114,
    },
)
