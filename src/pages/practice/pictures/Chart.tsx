import { Legend, Plot } from "./Plot.tsx";
import type { Picture } from "./pictureOf.ts";
import { pictureWords } from "./pictureWords.ts";

interface Props {
  readonly picture: Picture;
  readonly from: string;
  readonly dark: boolean;
}

const height = 220;

/** One picture, with the same in words and figures for those who cannot see it. */
export const Chart = ({ picture, from, dark }: Props) => (
  <figure class="picture">
    <figcaption>
      <h3>{picture.title}</h3>
      {/* Before what it says: whose flock is drawn must be known first. */}
      <p class="hint">{from}</p>
      <p>{picture.said}</p>
    </figcaption>
    <Plot picture={picture} dark={dark} height={height} />
    <Legend picture={picture} dark={dark} />
    <details>
      <summary>{pictureWords.figures}</summary>
      <Figures picture={picture} />
    </details>
  </figure>
);

const Figures = ({ picture: { title, across, labels, lines, acrossName } }: { readonly picture: Picture }) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
  <section class="frame" tabIndex={0} aria-label={title}>
    <table>
      <thead>
        <tr>
          <th scope="col">{acrossName ?? ""}</th>
          {lines.map(({ name }, index) => (
            <th key={index} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {across.map((at, row) => (
          <tr key={row}>
            <th scope="row">{labels ? labels(at) : at}</th>
            {lines.map(({ values }, index) => (
              <td key={index}>{figure(values[row] ?? null)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  </section>
);

const figure = (share: number | null): string => (share === null ? "" : pictureWords.figure(share, true));
