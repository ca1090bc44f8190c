import { type Caution, cautions } from "../../../functions/cautions.ts";
import type { AnyFunction } from "../../definition/defineFunction.ts";
import { namespace } from "../../definition/formulaText.ts";
import { type Topic, topics } from "../../definition/topics.ts";
import { words } from "../words.ts";

interface Props {
  readonly definitions: readonly AnyFunction[];
  readonly address: (name: string) => string;
}

/** Every caution under its topic, with the functions it is said with. */
export const CautionList = ({ definitions, address }: Props) => (
  <>
    {(Object.keys(topics) as Topic[]).flatMap((topic) => {
      const inTopic = Object.values<Caution>(cautions).filter((caution) => caution.topic === topic);
      if (inTopic.length === 0) return [];
      return [
        <section key={topic}>
          <h3>{topics[topic]}</h3>
          {inTopic.map((caution) => (
            <div class="caution" key={caution.words}>
              <p>{caution.words}</p>
              <p class="concerns">
                {words.cautions.concerns}{" "}
                {definitions
                  .filter((definition) => definition.caution?.words === caution.words)
                  .map(({ name }, index) => (
                    <span key={name}>
                      {index > 0 && ", "}
                      <a href={address(name)}>
                        {namespace}.{name}
                      </a>
                    </span>
                  ))}
              </p>
            </div>
          ))}
        </section>,
      ];
    })}
  </>
);
