import { catalogue } from "../../../../functions/catalogue.ts";
import type { Cell } from "../../../cells/cell.ts";
import { evaluate } from "../../../definition/evaluate.ts";
import type { FilledTable } from "../grid/filledTables.ts";
import { Chart } from "./Chart.tsx";
import { inventedFlocks } from "./inventedFlocks.ts";
import { type Drawable, drawable, pictureOf } from "./pictureOf.ts";
import { pictureWords } from "./pictureWords.ts";

interface Props {
  readonly tables: readonly FilledTable[];
  readonly dark: boolean;
}

/** Every table of the workbook that can be drawn, as a picture with its figures. */
export function PictureView({ tables, dark }: Props) {
  const drawn = drawable.flatMap((name) => {
    const found = tables
      .filter(({ functionName }) => functionName === name)
      .map(({ sheet, address, cells }) => ({ name, from: pictureWords.from(sheet, address), cells }));
    return found.length === 0 && name === "FUNNEL"
      ? [{ name: name as Drawable, from: pictureWords.invented, cells: inventedFunnel() }]
      : found;
  });
  return (
    <>
      <h2 tabIndex={-1}>{pictureWords.title}</h2>
      <p>{pictureWords.intro}</p>
      {tables.length === 0 && <p class="told">{pictureWords.none}</p>}
      {drawn.map(({ name, from, cells }) => {
        const picture = pictureOf(name, cells);
        return picture && <Chart key={`${name} ${from}`} picture={picture} from={from} dark={dark} />;
      })}
    </>
  );
}

function inventedFunnel(): readonly (readonly Cell[])[] {
  const definition = catalogue.find(({ name }) => name === "FUNNEL");
  const { flocks, lame, seen } = inventedFlocks;
  const outcome =
    definition &&
    evaluate(
      definition,
      [flocks, lame, seen].map((list) => list.map((cell) => [cell])),
      { dateSystem: 1900 },
    );
  return outcome?.ok ? outcome.cells : [];
}
