import { useId, useMemo } from "preact/hooks";
import type { ListedFunction } from "../../definition/defineFunction.ts";
import { type Topic, topics } from "../../definition/topics.ts";
import { words } from "../words.ts";
import { FunctionList } from "./FunctionList.tsx";
import { functionSearch } from "./functionSearch.ts";

/** What was asked for; kept by the page, so that it is still there on the way back from a function. */
export interface Asked {
  readonly question: string;
  readonly topic: Topic | "";
}

export const nothingAsked: Asked = { question: "", topic: "" };

interface Props {
  readonly definitions: readonly ListedFunction[];
  readonly asked: Asked;
  readonly onAsk: (asked: Asked) => void;
  readonly address: (name: string) => string;
}

/** Functions found by plain words and by topic. */
export function FunctionFinder({ definitions, asked, onAsk, address }: Props) {
  const search = useMemo(() => functionSearch(definitions), [definitions]);
  const id = useId();
  const question = asked.question.trim();
  const found = (question === "" ? definitions : search(question)).filter(
    ({ topic }) => asked.topic === "" || topic === asked.topic,
  );
  return (
    <>
      <search class="asking">
        <div class="field">
          <label for={`${id}question`}>{words.search.label}</label>
          <input
            id={`${id}question`}
            type="search"
            autocomplete="off"
            aria-describedby={`${id}hint`}
            value={asked.question}
            onInput={({ currentTarget }) => onAsk({ ...asked, question: currentTarget.value })}
          />
          <p class="hint" id={`${id}hint`}>
            {words.search.hint}
          </p>
        </div>
        <div class="field">
          <label for={`${id}topic`}>{words.search.topic}</label>
          <select
            id={`${id}topic`}
            value={asked.topic}
            onChange={({ currentTarget }) => onAsk({ ...asked, topic: currentTarget.value as Topic | "" })}
          >
            <option value="">{words.search.allTopics}</option>
            {topicNames.map((topic) => (
              <option key={topic} value={topic}>
                {topics[topic]}
              </option>
            ))}
          </select>
        </div>
      </search>
      <p role="status" class={question === "" ? "unseen" : "told"}>
        {question === ""
          ? ""
          : found.length === 0
            ? words.search.nothingFound(question)
            : words.search.found(found.length, question)}
      </p>
      {question === "" ? (
        topicNames
          .map((topic) => [topic, found.filter((definition) => definition.topic === topic)] as const)
          .filter(([, inTopic]) => inTopic.length > 0)
          .map(([topic, inTopic]) => (
            <section key={topic}>
              <h3>{topics[topic]}</h3>
              <FunctionList definitions={inTopic} address={address} />
            </section>
          ))
      ) : (
        <FunctionList definitions={found} address={address} />
      )}
    </>
  );
}

const topicNames = Object.keys(topics) as Topic[];
