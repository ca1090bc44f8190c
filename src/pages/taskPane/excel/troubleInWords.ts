import { Problem } from "../../../cells/problem.ts";
import { words } from "../../words.ts";

/** Why Excel did not do what was asked, in words for the person. */
export function troubleInWords(error: unknown): string {
  if (error instanceof Problem) return error.message;
  const { code, message } = error as { readonly code?: unknown; readonly message?: unknown };
  const { other, ...known } = words.troubles;
  return (known as Readonly<Record<string, string>>)[String(code)] ?? other(String(message ?? error));
}
