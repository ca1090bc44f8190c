import { BringView } from "./bring/BringView.tsx";
import type { Bringing } from "./bring/useBringing.ts";
import { offeredBooks } from "./offeredBooks.ts";
import { sheetWords } from "./sheetWords.ts";

interface Props {
  readonly onStart: (file: string) => void;
  readonly bringing: Bringing;
}

/** The workbooks that the sheet brings, to start from, empty or with records of one's own. */
export const BooksView = ({ onStart, bringing }: Props) => (
  <>
    <h2 tabIndex={-1}>{sheetWords.books.title}</h2>
    <p>{sheetWords.books.intro}</p>
    <ul class="books">
      {offeredBooks.map(({ file, title, about }) => (
        <li key={file}>
          <h3>{title}</h3>
          <p>{about}</p>
          <button type="button" aria-label={sheetWords.books.startNamed(title)} onClick={() => onStart(file)}>
            {sheetWords.books.start}
          </button>
        </li>
      ))}
    </ul>
    <BringView {...bringing} />
  </>
);
