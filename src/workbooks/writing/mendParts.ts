import { strFromU8, strToU8 } from "fflate";

type Mend = (text: string) => string;

/**
 * What the library writes against the rules of the format, put right: a file that breaks them can meet a spreadsheet's
 * question whether it should be repaired.
 *
 * @param parts - all parts of the file as the library wrote them
 */
export function mendParts(
  parts: Readonly<Record<string, Uint8Array>>,
): (name: string, content: Uint8Array) => Uint8Array {
  const uses = sharedStringUses(parts);
  const mendings: readonly (readonly [parts: RegExp, mend: Mend])[] = [
    [/^\[Content_Types\]\.xml$/, inFixedOrder],
    [/^xl\/workbook\.xml$/, withModernEngine],
    [/^xl\/styles\.xml$/, withFontsInOrder],
    [/^xl\/sharedStrings\.xml$/, (text) => text.replace(/ count="\d+"/, ` count="${uses}"`)],
    [/^xl\/charts\/chart\d+\.xml$/, (text) => withoutUnnamed(withSeriesInOrder(withValueAxes(text)))],
    [/^xl\/tables\//, withHeaderCount],
  ];
  return (name, content) => {
    const mend = mendings.find(([pattern]) => pattern.test(name))?.[1];
    return mend ? strToU8(mend(strFromU8(content))) : content;
  };
}

// The library counts a text once that stands in many cells.
const sharedStringUses = (parts: Readonly<Record<string, Uint8Array>>): number =>
  Object.entries(parts)
    .filter(([name]) => name.startsWith("xl/worksheets/sheet"))
    .reduce((sum, [, content]) => sum + (strFromU8(content).match(/<c [^>]*\bt="s"/g)?.length ?? 0), 0);

// The library lists the file endings in another order each time.
function inFixedOrder(contentTypes: string): string {
  const entries = contentTypes.match(/<Default [^>]*>(?:<\/Default>)?/g) ?? [];
  const [first = ""] = entries;
  const without = entries.reduce((rest, entry) => rest.replace(entry, ""), contentTypes);
  const index = contentTypes.indexOf(first);
  return without.slice(0, index) + [...entries].sort().join("") + without.slice(index);
}

// A workbook that was worked out by an old engine is worked out anew as soon as it is opened, and then whoever lacks the
// functions loses the answers that were saved in it.
const withModernEngine: Mend = (workbook) => workbook.replace(/ calcId="\d+"/, ' calcId="191029"');

/** The order of a font's parts, ECMA-376 Part 1 §18.8.22 as the vendor's schema has it. */
const fontParts = "b i strike condense extend outline shadow u vertAlign sz color name".split(" ");

const withFontsInOrder: Mend = (styles) =>
  styles.replace(
    /<font>(.*?)<\/font>/g,
    (_, inside: string) => `<font>${inOrder(elementsOf(inside), fontParts)}</font>`,
  );

/** The order of what a series holds, ECMA-376 Part 1 §21.2.2.170 and after. */
const seriesParts = {
  barChart: "idx order tx spPr invertIfNegative dPt dLbls trendline errBars cat val",
  lineChart: "idx order tx spPr marker dPt dLbls trendline errBars cat val smooth",
  scatterChart: "idx order tx spPr marker dPt dLbls trendline errBars xVal yVal smooth",
};

function withSeriesInOrder(chart: string): string {
  return Object.entries(seriesParts).reduce((text, [kind, parts]) => {
    const order = parts.split(" ");
    return text.replace(new RegExp(`<${kind}>.*?</${kind}>`, "g"), (whole) =>
      whole.replace(/<ser>(.*?)<\/ser>/g, (_, inside: string) => {
        const allowed = elementsOf(inside).filter(({ name }) => order.includes(name));
        return `<ser>${withNumbersAcross(inOrder(allowed, order))}</ser>`;
      }),
    );
  }, chart);
}

// The places of points along the axis are numbers; taken for words, they would be counted through.
const withNumbersAcross: Mend = (series) =>
  series.replace(/<xVal><strRef>(<f>[^<]*<\/f>).*?<\/strRef><\/xVal>/, "<xVal><numRef>$1</numRef></xVal>");

// Those of an axis of names; an axis of values has none of them.
const withValueAxes: Mend = (chart) =>
  chart.replace(/<valAx>.*?<\/valAx>/g, (axis) =>
    axis.replace(/<(auto|lblAlgn|lblOffset|noMultiLvlLbl) val="[^"]*"><\/\1>/g, ""),
  );

// The library can give an entry of the legend a font of its own, see `notInLegend`, but cannot leave it out.
const withoutUnnamed: Mend = (chart) =>
  chart.replace(
    /(<legendEntry><idx val="\d+"><\/idx>)<txPr>.*?<\/txPr>(<\/legendEntry>)/g,
    '$1<delete val="1"></delete>$2',
  );

// One heading row is what the format takes for granted; some libraries take none for granted.
const withHeaderCount: Mend = (table) => table.replace(/ ref="/, ' headerRowCount="1" ref="');

interface Element {
  readonly name: string;
  readonly text: string;
}

/** The elements that stand directly in a piece of XML. The library closes each of them with a tag of its own. */
function elementsOf(inside: string): readonly Element[] {
  const elements: Element[] = [];
  let depth = 0;
  let from = 0;
  for (const match of inside.matchAll(/<(\/?)([\w:]+)[^>]*?(\/?)>/g)) {
    const [tag, closes, name = "", closed] = match;
    if (depth === 0) from = match.index;
    if (closes) depth--;
    else if (!closed) depth++;
    if (depth === 0) elements.push({ name, text: inside.slice(from, match.index + tag.length) });
  }
  return elements;
}

function inOrder(elements: readonly Element[], order: readonly string[]): string {
  const placeOf = ({ name }: Element): number => (order.includes(name) ? order.indexOf(name) : order.length);
  return [...elements]
    .sort((one, other) => placeOf(one) - placeOf(other))
    .map(({ text }) => text)
    .join("");
}
