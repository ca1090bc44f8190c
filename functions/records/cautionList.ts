import { defineFunction } from "../../src/definition/defineFunction.ts";
import { problem } from "../../src/definition/problemExamples.ts";
import { type Topic, topics } from "../../src/definition/topics.ts";
import { oneOrNone } from "../../src/reading/parameter.ts";
import { choice } from "../../src/reading/words.ts";
import { table } from "../../src/writing/result.ts";
import { type Caution, cautions } from "../cautions.ts";
import { sources } from "../sources.ts";

const topicNames = Object.keys(topics) as [Topic, ...Topic[]];
const inOrderOfTopic: readonly Caution[] = topicNames.flatMap((topic) =>
  Object.values<Caution>(cautions).filter((caution) => caution.topic === topic),
);

export const cautionListFunction = defineFunction({
  name: "CAUTIONS",
  summary: "The cautions in words, all of them or those of one topic.",
  questions: ["what must I be careful about", "warnings about medicines", "print the cautions"],
  notes: [`The topics: ${topicNames.join(", ")}. Without a topic every caution is listed.`],
  parameters: { topic: oneOrNone(choice(...topicNames), "One topic, such as dates") },
  result: table<Caution>(
    "no cautions on this topic",
    ["topic", "text", ({ topic }) => topic],
    ["caution", "text", ({ words }) => words],
  ),
  caution: undefined,
  sources: [sources.practice],
  compute: ({ topic }) => inOrderOfTopic.filter((caution) => topic === undefined || caution.topic === topic),
  examples: [
    {
      shows: "One topic",
      call: ["Records"],
      gives: [
        ["topic", "caution"],
        ["records", cautions.recordCheck.words],
      ],
    },
    {
      shows: "A topic without cautions",
      call: ["planning"],
      gives: [
        ["topic", "caution"],
        ["no cautions on this topic", ""],
      ],
    },
    {
      call: ["sheep"],
      gives: problem(
        `topic: "sheep" is not a choice here; enter one of: ${topicNames.map((name) => `"${name}"`).join(", ")}`,
      ),
    },
  ],
});
