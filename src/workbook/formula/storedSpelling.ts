import { footName, isForCalc, storedFootName, withoutPrefixes } from "./functionName.ts";
import { isCall, type Token, tokenize } from "./tokenize.ts";

// Functions newer than the file format; in files they carry a prefix, or old and new Excel alike show #NAME?.
// From memory of the published list "functions with an _xlfn. prefix"; those with a second prefix apart.
const newer: ReadonlySet<string> = new Set(
  `ACOT ACOTH AGGREGATE ANCHORARRAY ARABIC ARRAYTOTEXT BASE BETA.DIST BETA.INV BINOM.DIST BINOM.DIST.RANGE BINOM.INV
   BITAND BITLSHIFT BITOR BITRSHIFT BITXOR BYCOL BYROW CEILING.MATH CEILING.PRECISE CHISQ.DIST CHISQ.DIST.RT CHISQ.INV
   CHISQ.INV.RT CHISQ.TEST CHOOSECOLS CHOOSEROWS COMBINA CONCAT CONFIDENCE.NORM CONFIDENCE.T COT COTH COVARIANCE.P
   COVARIANCE.S CSC CSCH DAYS DECIMAL DROP ERF.PRECISE ERFC.PRECISE EXPAND EXPON.DIST F.DIST F.DIST.RT F.INV F.INV.RT
   F.TEST FIELDVALUE FLOOR.MATH FLOOR.PRECISE FORECAST.LINEAR FORMULATEXT GAMMA GAMMA.DIST GAMMA.INV GAMMALN.PRECISE
   GAUSS HSTACK HYPGEOM.DIST IFNA IFS ISFORMULA ISOMITTED ISOWEEKNUM LAMBDA LET LOGNORM.DIST LOGNORM.INV MAKEARRAY MAP
   MAXIFS MINIFS MODE.MULT MODE.SNGL MUNIT NEGBINOM.DIST NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV NUMBERVALUE
   PDURATION PERCENTILE.EXC PERCENTILE.INC PERCENTRANK.EXC PERCENTRANK.INC PERMUTATIONA PHI POISSON.DIST QUARTILE.EXC
   QUARTILE.INC RANDARRAY RANK.AVG RANK.EQ REDUCE RRI SCAN SEC SECH SEQUENCE SHEET SHEETS SINGLE SKEW.P SORTBY STDEV.P
   STDEV.S SWITCH T.DIST T.DIST.2T T.DIST.RT T.INV T.INV.2T T.TEST TAKE TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL
   TOROW UNICHAR UNICODE UNIQUE VALUETOTEXT VAR.P VAR.S VSTACK WEIBULL.DIST WRAPCOLS WRAPROWS XLOOKUP XMATCH XOR Z.TEST`
    .trim()
    .split(/\s+/),
);
const twicePrefixed: ReadonlySet<string> = new Set(["FILTER", "SORT"]);

/**
 * A formula as Excel stores it: FOOT functions in their stored spelling, newer built-ins with their prefix. What
 * already is so comes back unchanged.
 *
 * @example
 * storedSpelling("foot.flockprev(A1,B1)") // → "_xldudf_FOOT_FLOCKPREV(A1,B1)"
 */
export function storedSpelling(formula: string): string {
  const tokens = tokenize(formula);
  if (!tokens) return formula;
  let stored = "";
  for (let at = 0; at < tokens.length; at += 1) {
    const { text } = tokens[at] as Token;
    stored += isCall(tokens, at) ? storedCall(text) : text;
  }
  return stored;
}

function storedCall(written: string): string {
  // A workbook that was made for Calc stays so.
  if (isForCalc(written)) return written;
  const foot = footName(written);
  if (foot !== undefined) return storedFootName(foot);
  const bare = withoutPrefixes(written);
  // Another spreadsheet may have written the name in small letters.
  if (bare !== written) return written.slice(0, -bare.length) + bare.toUpperCase();
  const name = bare.toUpperCase();
  if (twicePrefixed.has(name)) return `_xlfn._xlws.${name}`;
  return newer.has(name) ? `_xlfn.${name}` : written;
}
