import { firstRecord, type PlacedRecords } from "./placedRecords.ts";

/** A question in a farmer's words and the formula that answers it. */
export interface Answer {
  readonly question: string;
  /** Without `=`, as it is typed. */
  readonly formula: string;
}

/** An answer that fills a table, with the rows kept free for it. */
interface TableAnswer extends Answer {
  readonly rows: number;
}

export interface Answers {
  /** One or two cells each, one under the other. */
  readonly figures: readonly Answer[];
  /** Short tables of the flock and answers of several parts, one under the other. */
  readonly tables: readonly TableAnswer[];
  /** Lists of animals and days, of any length, side by side. */
  readonly lists: readonly Answer[];
  /** What to mend in the records, on a sheet of its own. */
  readonly check: Answer;
}

/** Everything that the sample workbook answers. */
export const answersFor = ({ besideCases, besideGathers }: PlacedRecords): Answers => ({
  figures: [
    {
      question: "Share lame at the latest gathers",
      formula: `FOOT.FLOCKPREV(${besideGathers.range("latestLame")},${besideGathers.range("latestSeen")})`,
    },
    {
      question: "The whole flock lies between (95 %)",
      formula: `FOOT.PREVRANGE(${besideGathers.range("latestLame")},${besideGathers.range("latestSeen")},0.95,flock_now)`,
    },
    {
      question: "Against the target",
      formula: `FOOT.TARGETCHECK(${besideGathers.range("latestLame")},${besideGathers.range("latestSeen")},target,0.95,flock_now)`,
    },
    { question: "Share lame over the whole year", formula: "FOOT.FLOCKPREV(Gathers[Lame],Gathers[Seen])" },
  ],
  tables: [
    {
      question: "Which group is worst now",
      formula: `FOOT.PREVBY(${besideGathers.range("latestGroup")},${besideGathers.range("latestLame")},${besideGathers.range("latestSeen")})`,
      rows: 8,
    },
    {
      question: "Which group was worst over the year",
      formula: "FOOT.PREVBY(Gathers[Group],Gathers[Lame],Gathers[Seen])",
      rows: 8,
    },
    { question: "What makes them lame", formula: "FOOT.LESIONMIX(Cases[Lesion])", rows: 13 },
    {
      question: "How long lame sheep wait for treatment (in time: within 3 days)",
      formula: "FOOT.TREATLAG(Cases[Seen lame],Cases[Treated],3,as_of)",
      rows: 2,
    },
    {
      question: "How many are sound 14 days after treatment",
      formula: "FOOT.SOUNDBY(Cases[Treated],Cases[Sound on],as_of,14)",
      rows: 2,
    },
    {
      question: "How much medicine was used in the year",
      formula: "FOOT.MEDICINEUSE(Cases[Medicine],Cases[Dose ml],Cases[Strength mg/ml],breeding_sheep,slaughter_lambs)",
      rows: 5,
    },
  ],
  lists: [
    {
      question: "Who is not clear today",
      formula: "FOOT.NOTCLEAR(as_of,Cases[Tag],Cases[Treated],Cases[Withdrawal days])",
    },
    {
      question: "Can they go to the sale",
      formula: "FOOT.SALECHECK(sale_tags,sale_date,Cases[Tag],Cases[Treated],Cases[Withdrawal days])",
    },
    {
      question: "Whom to look at this week",
      formula: `FOOT.DUELIST(as_of,Cases[Tag],${besideCases.range("lookAgain")},Cases[Looked again],7,Cases[Treated])`,
    },
    {
      question: "Whom to keep apart at the next housing",
      formula: 'FOOT.KEEPAPART(housing_date,Cases[Tag],Cases[Seen lame],"lame",7,Cases[Sound on])',
    },
    { question: "Who was lame again and again", formula: "FOOT.REPEATS(Cases[Tag],Cases[Seen lame])" },
    {
      question: "How fast they get sound after treatment",
      formula: "FOOT.SOUNDCURVE(Cases[Treated],Cases[Sound on],as_of)",
    },
  ],
  check: {
    question: "What to mend in the case records",
    formula: `FOOT.RECORDCHECK(Cases[#Headers],Cases[#Data],as_of,${firstRecord + 1})`,
  },
});
