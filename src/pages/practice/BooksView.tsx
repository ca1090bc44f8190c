import { offeredBooks } from "./offeredBooks.ts";
import { sheetWords } from "./sheetWords.ts";

interface Props {
  readonly onStart: (file: string) => void;
}

/** The workbooks that the sheet brings, to start from. */
export const BooksView = ({ onStart }: Props) => (
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
  </>
);
