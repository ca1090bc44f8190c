import type { AnyFunction } from "../../definition/defineFunction.ts";
import { signature } from "../../definition/formulaText.ts";
import { type Topic, topics } from "../../definition/topics.ts";

/** Every function under its topic: how it is typed, what it answers, what to take care of. */
export const functionList = (definitions: readonly AnyFunction[]): readonly HTMLElement[] =>
  (Object.keys(topics) as Topic[]).flatMap((topic) => {
    const inTopic = definitions.filter((definition) => definition.topic === topic);
    if (inTopic.length === 0) return [];
    const section = document.createElement("section");
    section.append(element("h2", topics[topic]), ...inTopic.map(entry));
    return [section];
  });

function entry(definition: AnyFunction): HTMLElement {
  const article = document.createElement("article");
  article.id = definition.name;
  article.append(element("h3", `=${signature(definition)}`), element("p", definition.summary));
  if (definition.caution) {
    const caution = element("p", `Take care: ${definition.caution.words}`);
    caution.className = "caution";
    article.append(caution);
  }
  return article;
}

function element(name: "h2" | "h3" | "p", text: string): HTMLElement {
  const made = document.createElement(name);
  made.textContent = text;
  return made;
}
