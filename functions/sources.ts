import type { Source } from "../src/definition/source.ts";

/** Every source once. A function names those that it rests on. */
export const sources = {
  practice: { cite: "Common practice in sheep foot care", checked: "common practice, no source" },
  wilson1927: {
    cite: "Wilson EB (1927) Probable inference, the law of succession, and statistical inference. Journal of the American Statistical Association 22:209–212",
    checked: "from memory",
  },
  clopperPearson1934: {
    cite: "Clopper CJ, Pearson ES (1934) The use of confidence or fiducial limits illustrated in the case of the binomial. Biometrika 26:404–413",
    checked: "from memory",
  },
  brownCaiDasGupta2001: {
    cite: "Brown LD, Cai TT, DasGupta A (2001) Interval estimation for a binomial proportion. Statistical Science 16:101–133",
    checked: "from memory",
  },
  newcombe1998single: {
    cite: "Newcombe RG (1998) Two-sided confidence intervals for the single proportion: comparison of seven methods. Statistics in Medicine 17:857–872",
    checked: "from memory",
  },
  buonaccorsi1987: {
    cite: "Buonaccorsi JP (1987) A note on confidence intervals for proportions in finite populations. American Statistician 41:215–218",
    checked: "from memory",
  },
  fawc2011: {
    cite: "Farm Animal Welfare Council (2011) Opinion on lameness in sheep",
    checked: "read",
  },
  kaler2009: {
    cite: "Kaler J, Wassink GJ, Green LE (2009) The inter- and intra-observer reliability of a locomotion scoring scale for sheep. Veterinary Journal 180:189–194",
    checked: "from memory",
  },
  fimeaWithdrawal: {
    cite: "Finnish Medicines Agency: how a withdrawal period is counted (a 6-day period ends so that the 7th day after the last dose is the first free one)",
    checked: "read",
  },
  eu2019art115: {
    cite: "Regulation (EU) 2019/6 on veterinary medicinal products, Article 115",
    checked: "read",
  },
  eu2019rounding: {
    cite: "Regulation (EU) 2019/6, Article 115: a fraction of a day is rounded up to whole days",
    checked: "from memory",
  },
  gbCascadeMilk: {
    cite: "Veterinary Medicines Regulations 2013 (Great Britain), Schedule 4 paragraph 2(3)(b), milk, as amended by SI 2024/567 from May 2024",
    checked: "read",
  },
  gbCascadeMeat: {
    cite: "Veterinary Medicines Regulations 2013 (Great Britain), Schedule 4 paragraph 2(3), meat of mammals, as amended by SI 2024/567: longest period × 1.5, and 28 days",
    checked: "read about",
  },
  quarantineWeeks: {
    cite: "Published advice on bought-in sheep: keep them apart for 28 days, or for 21 to 28 days",
    checked: "read",
  },
  kaler2010: {
    cite: "Kaler J and others (2010), trial in sheep with footrot: 70 % recovered by day 5 after injection and spray, 10 % after trimming and spray",
    checked: "read about",
  },
  promptTreatment: {
    cite: "Published advice on lame sheep: treat within 3 days of seeing them lame; cull after two cases in a season",
    checked: "read",
  },
  kaplanMeier1958: {
    cite: "Kaplan EL, Meier P (1958) Nonparametric estimation from incomplete observations. Journal of the American Statistical Association 53:457–481",
    checked: "from memory",
  },
  logLogLimits: {
    cite: "Kalbfleisch JD, Prentice RL (1980) The statistical analysis of failure time data: limits on the log(−log) scale",
    checked: "from memory",
  },
  freireich1963: {
    cite: "Freireich EJ and others (1963) Blood 21:699–716, times of 21 patients as reprinted in textbooks: the example",
    checked: "from memory",
  },
  footbathMixes: {
    cite: "Published footbath mixes: 10 kg of zinc sulphate in 100 litres; 3 litres of formalin as bought in 100 litres, which is about 1.1 to 1.2 % formaldehyde",
    checked: "read about",
  },
  esvacWeights: {
    cite: "European Medicines Agency, ESVAC: weights in the population correction unit, 75 kg for a living sheep and 20 kg for a slaughter sheep",
    checked: "read about",
  },
  davies2017: {
    cite: "Davies P and others (2017) Veterinary Record 181:511: 207 sheep flocks, mean 11.38 and median 5.95 mg/PCU",
    checked: "read",
  },
  iso11784: { cite: "ISO 11784: Radio frequency identification of animals, code structure", checked: "read" },
  iso3166: { cite: "ISO 3166-1: country codes", checked: "from memory" },
  ecma376dates: {
    cite: "ECMA-376 Office Open XML Part 1, §18.17.4.1: dates as serial numbers",
    checked: "read",
  },
} as const satisfies Readonly<Record<string, Source>>;
