import type { AnyFunction } from "../../definition/defineFunction.ts";

interface Props {
  readonly definitions: readonly AnyFunction[];
  /** Where a function's own page is. */
  readonly address: (name: string) => string;
}

/** Functions by name, each with what it answers. */
export const FunctionList = ({ definitions, address }: Props) => (
  <ul class="functions">
    {definitions.map(({ name, summary }) => (
      <li key={name}>
        <a href={address(name)}>
          <span class="name">{name}</span>
          <span class="summary">{summary}</span>
        </a>
      </li>
    ))}
  </ul>
);
