import { type Cell, type Cells, isCellError } from "../../src/cells/cell.ts";
import type { AnyFunction, Example } from "../../src/definition/defineFunction.ts";
import type { Outcome } from "../../src/definition/evaluate.ts";
import type { Parameter } from "../../src/reading/parameter.ts";
import type { Argument } from "../../src/reading/readArguments.ts";
import type { AnswerCell } from "../../src/writing/result.ts";
import { asArgument } from "../functions/exampleCall.ts";
import type { Arrived, Call } from "./excelPage.ts";

/** An example as Excel would send it: ranges as rows, a lone cell as a range where one is asked for, null for what is left out. */
export function excelCall(definition: AnyFunction, { call }: Example): Call {
  const parameters = Object.values(definition.parameters as Record<string, Parameter<unknown>>);
  const given = parameters.map(({ shape }, index) => {
    const argument = call[index] === undefined ? undefined : asArgument(call[index]);
    if (argument === undefined) return null;
    return isRange(argument)
      ? argument.map((row) => row.map(sent))
      : shape === "one"
        ? sent(argument)
        : [[sent(argument)]];
  });
  return { id: definition.name, parameters: [...given, ...call.slice(parameters.length)] };
}

const isRange = (argument: Argument): argument is Cells => Array.isArray(argument);

/** Excel wraps whatever is more than a number, a text or a yes/no as text of its own. */
const sent = (cell: Cell): unknown =>
  isCellError(cell) ? rich({ type: "Error", basicType: "Error", basicValue: cell.error }) : cell;

export const rich = (value: unknown): { readonly value: string } => ({ value: JSON.stringify(value) });

interface FormattedNumber {
  readonly type: "FormattedNumber";
  readonly basicValue: number;
  readonly numberFormat: string;
}

const isFormatted = (value: unknown): value is FormattedNumber =>
  typeof value === "object" && value !== null && (value as FormattedNumber).type === "FormattedNumber";

/** What arrived in Excel in the terms of an outcome, numbers without the formats they brought. */
export function asOutcome(arrived: Arrived): Outcome {
  if (!("value" in arrived)) {
    if (arrived.code !== "#VALUE!" && arrived.code !== "#N/A")
      throw new Error(`${arrived.code} carries no message in Excel`);
    return { ok: false, code: arrived.code, message: arrived.message };
  }
  const cells = rows(arrived.value).map((row) =>
    row.map((cell) => (isFormatted(cell) ? cell.basicValue : (cell as AnswerCell))),
  );
  return { ok: true, cells, formats: [], headings: false };
}

/** The formats that arrived, cell by cell; undefined where a plain value came. */
export const formatsArrived = ({ value }: { readonly value: unknown }): readonly (readonly (string | undefined)[])[] =>
  rows(value).map((row) => row.map((cell) => (isFormatted(cell) ? cell.numberFormat : undefined)));

const rows = (value: unknown): readonly (readonly unknown[])[] => (Array.isArray(value) ? value : [[value]]);
