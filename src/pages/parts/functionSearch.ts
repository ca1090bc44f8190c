import MiniSearch from "minisearch";
import type { ListedFunction } from "../../definition/defineFunction.ts";
import { topics } from "../../definition/topics.ts";
import type { Parameter } from "../../reading/parameter.ts";
import { words } from "../words.ts";

/**
 * Finds functions by what a person would ask.
 *
 * @returns a search that gives the functions that may answer a question, the likeliest first
 * @example
 * functionSearch(catalogue)("when can she be sold")[0]?.name // → "CLEARDATE"
 */
export function functionSearch(
  definitions: readonly ListedFunction[],
): (question: string) => readonly ListedFunction[] {
  const index = new MiniSearch<Entry>({
    idField: "place",
    fields: ["name", "questions", "summary", "parameters", "notes", "topic"],
    searchOptions: {
      // Half-typed words and slips of the finger find something too, but not two-letter words.
      prefix: (term) => term.length > 2,
      fuzzy: (term) => (term.length > 4 ? 0.2 : false),
      boost: { name: 4, questions: 3, summary: 2 },
      processTerm: (term) => (ignored.has(term.toLowerCase()) ? null : term.toLowerCase()),
    },
  });
  index.addAll(definitions.map(entry));
  return (question) => {
    const asked = question.trim().toLowerCase();
    const named = definitions.filter(({ name, questions }) =>
      [name, ...questions].some((known) => known.toLowerCase() === asked),
    );
    const found = index.search(question).flatMap(({ id }) => definitions[id as number] ?? []);
    return [...named, ...found.filter((definition) => !named.includes(definition))];
  };
}

interface Entry {
  readonly place: number;
  readonly name: string;
  readonly questions: string;
  readonly summary: string;
  readonly parameters: string;
  readonly notes: string;
  readonly topic: string;
}

const ignored = new Set(words.search.ignored.split(" "));

const entry = (definition: ListedFunction, index: number): Entry => ({
  place: index,
  name: definition.name,
  questions: definition.questions.join(" . "),
  summary: definition.summary,
  parameters: Object.entries(definition.parameters as Record<string, Parameter<unknown>>)
    .map(([name, { description }]) => `${name.replaceAll("_", " ")} ${description}`)
    .join(" . "),
  notes: definition.notes.join(" . "),
  topic: topics[definition.topic],
});
