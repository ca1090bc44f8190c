import { defineFunction } from "../../src/definition/defineFunction.ts";
import { single } from "../../src/writing/result.ts";
import { version } from "../version.ts";

const words = `Soundfold ${version}: worksheet functions for sheep foot health`;

export const aboutFunction = defineFunction({
  name: "ABOUT",
  summary: "The name and version of these functions; it answers only where they are installed.",
  questions: ["which version is this", "are the functions installed"],
  notes: [],
  parameters: {},
  result: single("name and version", "text"),
  caution: undefined,
  sources: [],
  compute: () => words,
  examples: [{ shows: "Name and version", call: [], gives: words }],
});
