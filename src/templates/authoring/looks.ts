import type { Style } from "excelize-wasm";

const family = "Calibri";
const ink = "1F2A24";
const green = "2F5D50";
const paleGreen = "E4EFE9";
const paleYellow = "FFF8DC";
const grey = "5F6B66";

const top = { Vertical: "top", WrapText: true };
const headingFill = { Type: "pattern", Pattern: 1, Color: [green] };
const inputFill = { Type: "pattern", Pattern: 1, Color: [paleYellow] };
const workedFill = { Type: "pattern", Pattern: 1, Color: [paleGreen] };
const thin = (["left", "top", "right", "bottom"] as const).map((Type) => ({ Type, Color: "C9CFCB", Style: 1 }));

const dateFormat = "d mmm yyyy";

/** How cells of the sample workbooks look, by what they hold. Yellow is typed by hand, green is worked out. */
export const looks = {
  title: { Font: { Family: family, Bold: true, Size: 18, Color: green } },
  subtitle: { Font: { Family: family, Size: 12, Color: grey } },
  words: { Font: { Family: family, Color: ink }, Alignment: top },
  strong: { Font: { Family: family, Bold: true, Color: ink }, Alignment: { Vertical: "top" } },
  note: { Font: { Family: family, Italic: true, Color: grey } },
  question: { Font: { Family: family, Bold: true, Size: 12, Color: green } },
  label: { Font: { Family: family, Color: ink }, Alignment: { Vertical: "top" } },
  heading: {
    Font: { Family: family, Bold: true, Color: "FFFFFF" },
    Fill: headingFill,
    Alignment: { Vertical: "center", WrapText: true },
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
  input: { Fill: inputFill, Border: thin },
  inputDate: { Fill: inputFill, Border: thin, CustomNumFmt: dateFormat, Alignment: { Horizontal: "left" } },
  inputShare: { Fill: inputFill, Border: thin, CustomNumFmt: "0%", Alignment: { Horizontal: "left" } },
  inputNumber: { Fill: inputFill, Border: thin, CustomNumFmt: "0", Alignment: { Horizontal: "left" } },
  /** A date a person may also type as text; text stays on the left, where it shows. */
  date: { CustomNumFmt: dateFormat, Alignment: { Horizontal: "left" } },
  /** All 15 digits of an electronic tag, never 9.99E+14. */
  tag: { CustomNumFmt: "0" },
  centred: { Alignment: { Horizontal: "center" } },
  worked: { Font: { Family: family, Color: ink } },
  workedDate: { Font: { Family: family, Color: ink }, CustomNumFmt: dateFormat, Alignment: { Horizontal: "left" } },
  workedShare: { Font: { Family: family, Color: ink }, CustomNumFmt: "0.0%" },
} as const satisfies Record<string, Style>;

export type Look = keyof typeof looks;
