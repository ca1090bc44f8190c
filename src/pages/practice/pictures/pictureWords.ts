/** Every text of the pictures. */
export const pictureWords = {
  title: "Picture",
  intro: "Drawn from the tables that functions fill in this workbook. Change a record and the picture follows.",
  none: "No table that can be drawn is filled in this workbook. LAMEWATCH, LESIONMIX, SOUNDCURVE and FUNNEL give such tables.",
  from: (sheet: string, address: string): string => `From ${sheet}, cell ${address}`,
  invented: "From ten invented flocks, as this workbook holds only one",
  figures: "The figures",
  noFigures: "No figures yet.",
  figure: (value: number, isShare: boolean): string =>
    isShare ? `${(value * 100).toFixed(1)} %` : String(Math.round(value * 1000) / 1000),
  chartSaid: (name: string, first: string, last: string, most: string): string =>
    `${name === "" ? "" : `${name}: `}from ${first} to ${last}; the most, ${most}.`,
  pointsSaid: (name: string, count: number, least: string, most: string): string =>
    `${name === "" ? "" : `${name}: `}${count} ${count === 1 ? "point" : "points"}, from ${least} to ${most}.`,
  stackSaid: (names: readonly string[], places: number, first: string, last: string): string =>
    `${names.join(", ")}: bars over ${places} ${places === 1 ? "name" : "names"}, from ${first} to ${last}.`,
  LAMEWATCH: {
    title: "Share lame, with the limits of chance",
    share: "share lame",
    centre: "centre",
    low: "low limit",
    high: "high limit",
  },
  LESIONMIX: { title: "What made them lame", share: "share of cases" },
  SOUNDCURVE: {
    title: "How fast they get sound",
    share: "share still lame",
    low: "low",
    high: "high",
    days: "days after treatment",
  },
  FUNNEL: {
    title: "Flock against flock",
    share: "share lame",
    target: "95 % limits",
    outer: "99.8 % limits",
    seen: "sheep seen",
  },
  said: {
    LAMEWATCH: (rows: number, last: string, when: string): string =>
      `${rows} gatherings; the latest, ${when}, has ${last} lame.`,
    LESIONMIX: (first: string, share: string): string => `Most often ${first}: ${share} of the cases.`,
    SOUNDCURVE: (share: string, day: string, treated: string, watched: string): string =>
      `Counted from the day of treatment, ${treated} treated: after ${day} days ${share} still lame; ${watched} still lame or just sound were watched that long.`,
    FUNNEL: (flocks: number, outside: number): string =>
      `${flocks} flocks, of which ${outside} lie outside the 95 % limits.`,
  },
} as const;
