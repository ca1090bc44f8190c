import { useState } from "preact/hooks";
import { type Day, momentFromText } from "../../../cells/day.ts";
import type { Source } from "../../../workbooks/bring/bringRecords.ts";
import type { BroughtInWords } from "../../../workbooks/bring/broughtInWords.ts";
import type { DateOrder } from "../../../workbooks/bring/dateIn.ts";
import { plainHeading } from "../../../workbooks/bring/matchHeadings.ts";
import { NoRecords } from "../../../workbooks/bring/noRecords.ts";
import { cases } from "../../../workbooks/tables/cases.ts";
import { gathers } from "../../../workbooks/tables/gathers.ts";
import { type Book, offeredBook } from "../books.ts";
import { bringIntoBook, type OwnHeading } from "./bringIntoBook.ts";
import { bringWords } from "./bringWords.ts";

const emptyFootBook = "flock-foot-book-empty.xlsx";

/** What the person asks for, as it stands in the form. */
interface BringForm {
  readonly files: readonly File[];
  readonly farm: string;
  readonly from: string;
  readonly order: DateOrder | "";
  /** What headings mean, by the heading as it is compared. */
  readonly meanings: ReadonlyMap<string, string>;
}

export interface Bringing {
  readonly form: BringForm;
  readonly change: (change: Partial<BringForm>) => void;
  readonly fault: string | undefined;
  readonly report: BroughtInWords | undefined;
  readonly headings: readonly OwnHeading[];
  readonly bring: () => Promise<void>;
}

const nothingAsked: BringForm = { files: [], farm: "", from: "", order: "", meanings: new Map() };
const allHeadings = [...new Set([...cases.headings, ...gathers.headings])];

/** Keeps what is asked for and what came of it while the person looks at something else. */
export function useBringing(today: () => Day, show: (book: Book) => Promise<void>): Bringing {
  const [form, setForm] = useState(nothingAsked);
  const [fault, setFault] = useState<string>();
  const [report, setReport] = useState<BroughtInWords>();
  const [headings, setHeadings] = useState<readonly OwnHeading[]>([]);
  return {
    form,
    fault,
    report,
    headings,
    change(change) {
      // What was said of headings is of the files before.
      setForm((before) => ({ ...before, ...change, ...(change.files && { meanings: new Map() }) }));
      if (!change.files) return;
      setReport(undefined);
      setHeadings([]);
      setFault(undefined);
    },
    async bring() {
      setReport(undefined);
      setFault(undefined);
      try {
        const from = form.from === "" ? undefined : momentFromText(form.from);
        if (form.files.length === 0) return setFault(bringWords.noFiles);
        if (form.from !== "" && from === undefined) return setFault(bringWords.noDay);
        const asked = {
          matches: form.meanings,
          order: form.order === "" ? undefined : form.order,
          from,
          farm: form.farm.trim() === "" ? undefined : form.farm.trim(),
        };
        const sources = await Promise.all(form.files.map(sourceOf));
        const empty = await offeredBook(emptyFootBook);
        const brought = bringIntoBook(sources, asked, empty.bytes, today());
        setReport(brought.words);
        setHeadings(brought.headings);
        await show({ name: bringWords.book, bytes: brought.bytes });
      } catch (error) {
        setFault((error as Error).message);
        if (error instanceof NoRecords)
          setHeadings(
            error.headings.map((heading) => ({
              heading,
              taken: form.meanings.get(plainHeading(heading)) ?? "",
              choices: allHeadings,
            })),
          );
      }
    },
  };
}

async function sourceOf(file: File): Promise<Source> {
  try {
    return { file: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
  } catch {
    throw new Error(bringWords.unreadable(file.name));
  }
}
