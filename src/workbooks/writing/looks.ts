import type { Style } from "excelize-wasm";

const family = "Calibri";
export const ink = "1F2A24";
export const green = "2F5D50";
const paleGreen = "E4EFE9";
const paleYellow = "FFF8DC";
export const grey = "5F6B66";

const headingFill = { Type: "pattern", Pattern: 1, Color: [green] };
const inputFill = { Type: "pattern", Pattern: 1, Color: [paleYellow] };
const workedFill = { Type: "pattern", Pattern: 1, Color: [paleGreen] };
const thin = (["left", "top", "right", "bottom"] as const).map((Type) => ({ Type, Color: "C9CFCB", Style: 1 }));
const edge = [{ Type: "left", Color: ink, Style: 2 }];

const centre = { Horizontal: "center" };
const left = { Horizontal: "left" };
const top = { Vertical: "top" };
const wrapped = { ...top, WrapText: true };
const headed = { Vertical: "center", WrapText: true };

const plain = { Font: { Family: family, Color: ink } };
const bold = { Font: { Family: family, Bold: true, Color: ink } };
const slanted = { Font: { Family: family, Italic: true, Color: grey } };
const first = { Font: { Family: family, Bold: true, Size: 14, Color: ink }, Alignment: left };
const heading = { Font: { Family: family, Bold: true, Color: "FFFFFF" }, Fill: headingFill };
const workedHeading = { Font: { Family: family, Bold: true, Color: green }, Fill: workedFill, Border: thin };
const input = { Fill: inputFill, Border: thin };
const typed = { ...plain, Protection: { Locked: false } };
const field = { ...typed, ...input };

/** Excel's number for "text": zeros at the front of a tag stay. */
const asText = 49;
const dateFormat = "d mmm yyyy";

/** How cells of the sample workbooks look, by what they hold. Yellow is typed by hand, green is worked out. */
export const looks = {
  title: { Font: { Family: family, Bold: true, Size: 18, Color: green } },
  subtitle: { Font: { Family: family, Size: 12, Color: grey } },
  words: { ...plain, Alignment: wrapped },
  /** Words of several lines beside figures that stand at the foot of their cells. */
  wordsBeside: { ...plain, Alignment: { Vertical: "bottom", WrapText: true } },
  /** A number beside words of several lines. */
  wordsCentre: { ...plain, Alignment: { ...top, ...centre } },
  strong: { ...bold, Alignment: top },
  note: slanted,
  wrappedNote: { ...slanted, Alignment: wrapped },
  question: { Font: { Family: family, Bold: true, Size: 12, Color: green } },
  label: { ...plain, Alignment: top },
  heading: { ...heading, Alignment: headed },
  headingCentre: { ...heading, Alignment: { ...headed, ...centre } },
  workedHeading: { ...workedHeading, Alignment: headed },
  /** Over a column of numbers, which stand on the right. */
  workedHeadingRight: { ...workedHeading, Alignment: { ...headed, Horizontal: "right" } },
  workedHeadingCentre: { ...workedHeading, Alignment: { ...headed, ...centre } },
  input,
  inputDate: { ...input, CustomNumFmt: dateFormat, Alignment: left },
  inputShare: { ...input, CustomNumFmt: "0%", Alignment: left },
  inputNumber: { ...input, CustomNumFmt: "0", Alignment: left },
  /** A date a person may also type as text; text stays on the left, where it shows. */
  date: { CustomNumFmt: dateFormat, Alignment: left },
  /** All 15 digits of an electronic tag, never 9.99E+14. */
  tag: { CustomNumFmt: "0" },
  plain: {},
  centred: { Alignment: centre },
  worked: plain,
  workedDate: { ...plain, CustomNumFmt: dateFormat, Alignment: left },
  workedShare: { ...plain, CustomNumFmt: "0.0%" },
  workedAtLeft: { ...plain, CustomNumFmt: "0", Alignment: left },
  workedShareAtLeft: { ...plain, CustomNumFmt: "0.0%", Alignment: left },
  workedCount: { ...plain, CustomNumFmt: "0", Alignment: centre },
  workedPercent: { ...plain, CustomNumFmt: "0.0%", Alignment: centre },
  workedMl: { ...plain, CustomNumFmt: "0.0##", Alignment: centre },
  workedRate: { ...plain, CustomNumFmt: "0.00", Alignment: centre },
  workedNumber: { ...plain, CustomNumFmt: "0.000", Alignment: centre },
  /** A p value: less than can be shown is said so. */
  workedChance: { ...plain, CustomNumFmt: '[<0.0005]"<0.001";0.000', Alignment: centre },
  workedMonth: { ...plain, CustomNumFmt: "mmm yyyy", Alignment: left },
  /** A cell of a form that is filled with a pen. */
  penned: { Border: thin },
  /** Numbers beside words of several lines. */
  besidePercent: { ...plain, CustomNumFmt: "0.0%", Alignment: { ...centre, ...top } },
  besideRate: { ...plain, CustomNumFmt: "0.00", Alignment: { ...centre, ...top } },
  besideCount: { ...plain, CustomNumFmt: "0", Alignment: { ...centre, ...top } },
  /** One figure that is looked at first. */
  figure: first,
  figureShare: { ...first, CustomNumFmt: "0.0%" },
  figureDate: { ...first, CustomNumFmt: dateFormat },
  /** A verdict beside figures. */
  figureWords: {
    Font: { ...first.Font, Size: 12 },
    Alignment: { Horizontal: "left", Vertical: "bottom", WrapText: true },
  },
  link: { Font: { Family: family, Bold: true, Underline: "single", Color: green }, Alignment: top },
  /** What must not be overlooked. */
  careHeading: { ...bold, Alignment: top },
  care: { ...plain, Border: edge, Alignment: { ...wrapped, ...left, Indent: 1 } },
  /** Cells and columns for a person to type in, on a sheet whose other cells are locked. */
  typed,
  typedText: { ...typed, NumFmt: asText },
  typedDate: { ...typed, CustomNumFmt: dateFormat, Alignment: left },
  typedCount: { ...typed, Alignment: centre },
  /** What is longer than its cell is made smaller, since words stand beside it. */
  fieldText: { ...field, Alignment: { ...left, ShrinkToFit: true } },
  fieldWords: { ...field, Alignment: { ...wrapped, ...left } },
  fieldDate: { ...field, CustomNumFmt: dateFormat, Alignment: left },
  fieldShare: { ...field, CustomNumFmt: "0.0%", Alignment: left },
  /** A number in a column of numbers. */
  fieldCount: { ...field, Alignment: centre },
  fieldPercent: { ...field, CustomNumFmt: "0.0%", Alignment: centre },
  fieldNumber: { ...field, Alignment: left },
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
