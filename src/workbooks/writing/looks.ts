import type { Style } from "excelize-wasm";

const family = "Calibri";
export const ink = "1F2A24";
export const green = "2F5D50";
const paleGreen = "E4EFE9";
const paleYellow = "FFF8DC";
export const grey = "5F6B66";

const top = { Vertical: "top", WrapText: true };
const headingFill = { Type: "pattern", Pattern: 1, Color: [green] };
const inputFill = { Type: "pattern", Pattern: 1, Color: [paleYellow] };
const workedFill = { Type: "pattern", Pattern: 1, Color: [paleGreen] };
const thin = (["left", "top", "right", "bottom"] as const).map((Type) => ({ Type, Color: "C9CFCB", Style: 1 }));

const edge = [{ Type: "left", Color: ink, Style: 2 }];
const centre = { Horizontal: "center" };
const left = { Horizontal: "left" };
const unlocked = { Protection: { Locked: false } };
/** Excel's number for "text": zeros at the front of a tag stay. */
const asText = 49;

const dateFormat = "d mmm yyyy";
const monthFormat = "mmm yyyy";

/** How cells of the sample workbooks look, by what they hold. Yellow is typed by hand, green is worked out. */
export const looks = {
  title: { Font: { Family: family, Bold: true, Size: 18, Color: green } },
  subtitle: { Font: { Family: family, Size: 12, Color: grey } },
  words: { Font: { Family: family, Color: ink }, Alignment: top },
  /** Words of several lines beside figures that stand at the foot of their cells. */
  wordsBeside: { Font: { Family: family, Color: ink }, Alignment: { Vertical: "bottom", WrapText: true } },
  /** A number beside words of several lines. */
  wordsCentre: { Font: { Family: family, Color: ink }, Alignment: { Vertical: "top", Horizontal: "center" } },
  strong: { Font: { Family: family, Bold: true, Color: ink }, Alignment: { Vertical: "top" } },
  note: { Font: { Family: family, Italic: true, Color: grey } },
  wrappedNote: { Font: { Family: family, Italic: true, Color: grey }, Alignment: top },
  question: { Font: { Family: family, Bold: true, Size: 12, Color: green } },
  label: { Font: { Family: family, Color: ink }, Alignment: { Vertical: "top" } },
  heading: {
    Font: { Family: family, Bold: true, Color: "FFFFFF" },
    Fill: headingFill,
    Alignment: { Vertical: "center", WrapText: true },
  },
  headingCentre: {
    Font: { Family: family, Bold: true, Color: "FFFFFF" },
    Fill: headingFill,
    Alignment: { Horizontal: "center", Vertical: "center", WrapText: true },
  },
  workedHeading: {
    Font: { Family: family, Bold: true, Color: green },
    Fill: workedFill,
    Border: thin,
    Alignment: { Vertical: "center", WrapText: true },
  },
  /** Over a column of numbers, which stand on the right. */
  workedHeadingRight: {
    Font: { Family: family, Bold: true, Color: green },
    Fill: workedFill,
    Border: thin,
    Alignment: { Horizontal: "right", Vertical: "center", WrapText: true },
  },
  workedHeadingCentre: {
    Font: { Family: family, Bold: true, Color: green },
    Fill: workedFill,
    Border: thin,
    Alignment: { Horizontal: "center", Vertical: "center", WrapText: true },
  },
  input: { Fill: inputFill, Border: thin },
  inputDate: { Fill: inputFill, Border: thin, CustomNumFmt: dateFormat, Alignment: { Horizontal: "left" } },
  inputShare: { Fill: inputFill, Border: thin, CustomNumFmt: "0%", Alignment: { Horizontal: "left" } },
  inputNumber: { Fill: inputFill, Border: thin, CustomNumFmt: "0", Alignment: { Horizontal: "left" } },
  /** A date a person may also type as text; text stays on the left, where it shows. */
  date: { CustomNumFmt: dateFormat, Alignment: { Horizontal: "left" } },
  /** All 15 digits of an electronic tag, never 9.99E+14. */
  tag: { CustomNumFmt: "0" },
  plain: {},
  centred: { Alignment: { Horizontal: "center" } },
  worked: { Font: { Family: family, Color: ink } },
  workedDate: { Font: { Family: family, Color: ink }, CustomNumFmt: dateFormat, Alignment: { Horizontal: "left" } },
  workedShare: { Font: { Family: family, Color: ink }, CustomNumFmt: "0.0%" },
  workedAtLeft: { Font: { Family: family, Color: ink }, CustomNumFmt: "0", Alignment: left },
  workedShareAtLeft: { Font: { Family: family, Color: ink }, CustomNumFmt: "0.0%", Alignment: left },
  workedCount: { Font: { Family: family, Color: ink }, CustomNumFmt: "0", Alignment: centre },
  workedPercent: { Font: { Family: family, Color: ink }, CustomNumFmt: "0.0%", Alignment: centre },
  workedMl: { Font: { Family: family, Color: ink }, CustomNumFmt: "0.0##", Alignment: centre },
  workedRate: { Font: { Family: family, Color: ink }, CustomNumFmt: "0.00", Alignment: centre },
  workedNumber: { Font: { Family: family, Color: ink }, CustomNumFmt: "0.000", Alignment: centre },
  /** A p value: less than can be shown is said so. */
  workedChance: {
    Font: { Family: family, Color: ink },
    CustomNumFmt: '[<0.0005]"<0.001";0.000',
    Alignment: centre,
  },
  workedMonth: { Font: { Family: family, Color: ink }, CustomNumFmt: monthFormat, Alignment: { Horizontal: "left" } },
  /** A cell of a form that is filled with a pen. */
  penned: { Border: thin },
  /** Numbers beside words of several lines. */
  besidePercent: {
    Font: { Family: family, Color: ink },
    CustomNumFmt: "0.0%",
    Alignment: { ...centre, Vertical: "top" },
  },
  besideRate: { Font: { Family: family, Color: ink }, CustomNumFmt: "0.00", Alignment: { ...centre, Vertical: "top" } },
  besideCount: { Font: { Family: family, Color: ink }, CustomNumFmt: "0", Alignment: { ...centre, Vertical: "top" } },
  /** One figure that is looked at first. */
  figure: { Font: { Family: family, Bold: true, Size: 14, Color: ink }, Alignment: { Horizontal: "left" } },
  figureShare: {
    Font: { Family: family, Bold: true, Size: 14, Color: ink },
    CustomNumFmt: "0.0%",
    Alignment: { Horizontal: "left" },
  },
  /** A verdict beside figures. */
  figureWords: {
    Font: { Family: family, Bold: true, Size: 12, Color: ink },
    Alignment: { Horizontal: "left", Vertical: "bottom", WrapText: true },
  },
  figureDate: {
    Font: { Family: family, Bold: true, Size: 14, Color: ink },
    CustomNumFmt: dateFormat,
    Alignment: { Horizontal: "left" },
  },
  link: { Font: { Family: family, Bold: true, Underline: "single", Color: green }, Alignment: { Vertical: "top" } },
  /** What must not be overlooked. */
  careHeading: { Font: { Family: family, Bold: true, Color: ink }, Alignment: { Vertical: "top" } },
  care: { Font: { Family: family, Color: ink }, Border: edge, Alignment: { ...top, Horizontal: "left", Indent: 1 } },
  /** Cells and columns for a person to type in, on a sheet whose other cells are locked. */
  typed: { ...unlocked, Font: { Family: family, Color: ink } },
  typedText: { ...unlocked, Font: { Family: family, Color: ink }, NumFmt: asText },
  typedDate: { ...unlocked, Font: { Family: family, Color: ink }, CustomNumFmt: dateFormat, Alignment: left },
  typedCount: { ...unlocked, Font: { Family: family, Color: ink }, Alignment: { Horizontal: "center" } },
  /** What is longer than its cell is made smaller, since words stand beside it. */
  fieldText: {
    ...unlocked,
    Fill: inputFill,
    Border: thin,
    Font: { Family: family, Color: ink },
    Alignment: { ...left, ShrinkToFit: true },
  },
  fieldWords: {
    ...unlocked,
    Fill: inputFill,
    Border: thin,
    Font: { Family: family, Color: ink },
    Alignment: { ...top, Horizontal: "left" },
  },
  fieldDate: {
    ...unlocked,
    Fill: inputFill,
    Border: thin,
    Font: { Family: family, Color: ink },
    CustomNumFmt: dateFormat,
    Alignment: left,
  },
  fieldShare: {
    ...unlocked,
    Fill: inputFill,
    Border: thin,
    Font: { Family: family, Color: ink },
    CustomNumFmt: "0.0%",
    Alignment: left,
  },
  /** A number in a column of numbers. */
  fieldCount: { ...unlocked, Fill: inputFill, Border: thin, Font: { Family: family, Color: ink }, Alignment: centre },
  fieldPercent: {
    ...unlocked,
    Fill: inputFill,
    Border: thin,
    Font: { Family: family, Color: ink },
    CustomNumFmt: "0.0%",
    Alignment: centre,
  },
  fieldTag: { ...unlocked, Fill: inputFill, Border: thin, Font: { Family: family, Color: ink }, NumFmt: asText },
  fieldNumber: { ...unlocked, Fill: inputFill, Border: thin, Font: { Family: family, Color: ink }, Alignment: left },
} as const satisfies Record<string, Style>;

export type Look = keyof typeof looks;

/** Whether what stands in a cell of that look stands in its middle; then its heading does too. */
export function isCentred(look: Look): boolean {
  const style = looks[look];
  const alignment = "Alignment" in style ? style.Alignment : undefined;
  return alignment !== undefined && "Horizontal" in alignment && alignment.Horizontal === "center";
}

const underline = [{ Type: "bottom" as const, Color: "C9CFCB", Style: 1 }];

/** How cells stand out by what they hold: always by weight or line too, so that it shows without colour. */
export const emphases = {
  /** A filled row of a list. */
  line: { Border: underline },
  /** Where the next record goes. */
  next: { Fill: { Type: "pattern", Pattern: 1, Color: [paleYellow] }, Border: thin },
  /** Needs something done. */
  strong: {
    Font: { Bold: true, Color: ink },
    Fill: { Type: "pattern", Pattern: 1, Color: ["E2DED2"] },
    Border: [
      { Type: "top", Color: ink, Style: 1 },
      { Type: "bottom", Color: ink, Style: 1 },
    ],
  },
  /** Settled: nothing to do. */
  weak: { Font: { Italic: true, Color: grey }, Border: underline },
} as const satisfies Record<string, Style>;

export type Emphasis = keyof typeof emphases;
