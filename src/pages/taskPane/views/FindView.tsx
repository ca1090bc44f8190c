import { catalogue } from "../../../../functions/catalogue.ts";
import { FunctionDetail } from "../../parts/FunctionDetail.tsx";
import { type Asked, FunctionFinder } from "../../parts/FunctionFinder.tsx";
import { words } from "../../words.ts";
import type { Connection } from "../connection.ts";
import { excelSheet } from "../excel/excelSheet.ts";
import { Later } from "../Later.tsx";
import { laterForm } from "../laterParts.ts";
import { addressOf } from "../place.ts";
import { NeedsExcel } from "./NeedsExcel.tsx";

interface Props {
  readonly connection: Connection;
  /** The function that is shown; the list otherwise. */
  readonly name: string | undefined;
  readonly asked: Asked;
  readonly onAsk: (asked: Asked) => void;
}

/** The functions: found by plain words, read about, and put into the sheet. */
export function FindView({ connection, name, asked, onAsk }: Props) {
  const definition = catalogue.find((known) => known.name === name);
  if (definition)
    return (
      <FunctionDetail key={definition.name} definition={definition} back={addressOf("find")}>
        {connection === "excel" ? (
          <Later load={laterForm} given={{ definition, sheet: excelSheet }} />
        ) : (
          <section class="formula">
            <h3>{words.formula.title}</h3>
            <NeedsExcel connection={connection} />
          </section>
        )}
      </FunctionDetail>
    );
  return (
    <>
      <h2 tabIndex={-1}>{words.find.title}</h2>
      <FunctionFinder definitions={catalogue} asked={asked} onAsk={onAsk} address={(found) => `#${found}`} />
    </>
  );
}
