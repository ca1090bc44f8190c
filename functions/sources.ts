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
  roganGladen1978: {
    cite: "Rogan WJ, Gladen B (1978) Estimating prevalence from the results of a screening test. American Journal of Epidemiology 107:71–76",
    checked: "from memory",
  },
  langReiczigel2014: {
    cite: "Lang Z, Reiczigel J (2014) Confidence limits for prevalence of disease adjusted for estimated sensitivity and specificity. Preventive Veterinary Medicine 113:13–22",
    checked: "read",
  },
  newcombe1998two: {
    cite: "Newcombe RG (1998) Interval estimation for the difference between independent proportions: comparison of eleven methods. Statistics in Medicine 17:873–890",
    checked: "from memory",
  },
  fisher1935: { cite: "Fisher RA (1935) The Design of Experiments. Edinburgh: Oliver & Boyd", checked: "from memory" },
  armitage1955: {
    cite: "Armitage P (1955) Tests for linear trends in proportions and frequencies. Biometrics 11:375–386",
    checked: "from memory",
  },
  casagrande1978: {
    cite: "Casagrande JT, Pike MC, Smith PG (1978) An improved approximate formula for calculating sample sizes for comparing two binomial distributions. Biometrics 34:483–486",
    checked: "from memory",
  },
  gelmanBda: {
    cite: "Gelman A, Carlin JB, Stern HS, Rubin DB, Bayesian Data Analysis, 5.3: several binomial shares from one beta distribution",
    checked: "from memory",
  },
  goldsteinSpiegelhalter1996: {
    cite: "Goldstein H, Spiegelhalter DJ (1996) League tables and their limitations. Journal of the Royal Statistical Society A 159:385–443",
    checked: "from memory",
  },
  cochran1977: {
    cite: "Cochran WG (1977) Sampling Techniques, 3rd edition. New York: Wiley",
    checked: "from memory",
  },
  kornGraubard1998: {
    cite: "Korn EL, Graubard BI (1998) Confidence intervals for proportions with small expected number of positive counts estimated from survey data. Survey Methodology 24:193–201",
    checked: "from memory",
  },
  armitageBerry: {
    cite: "Armitage P, Berry G, Matthews JNS (2002) Statistical Methods in Medical Research, 4th edition: direct standardisation",
    checked: "from memory",
  },
  zouDonner2008: {
    cite: "Zou GY, Donner A (2008) Construction of confidence limits about effect measures: a general approach. Statistics in Medicine 27:1693–1702",
    checked: "from memory",
  },
  angell2018: {
    cite: "Angell JW, Grove-White DH, Duncan JS (2018) Veterinary Record 182:293, abstract: footrot prevalence varied widely within and between six farms, and with season",
    checked: "read",
  },
  mcCullaghNelder1989: {
    cite: "McCullagh P, Nelder JA (1989) Generalized Linear Models, 2nd edition, 4.5: dispersion beyond the binomial",
    checked: "from memory",
  },
  tango1998: {
    cite: "Tango T (1998) Equivalence test and confidence interval for the difference in proportions for the paired-sample design. Statistics in Medicine 17:891–908",
    checked: "from memory",
  },
  mcNemar1947: {
    cite: "McNemar Q (1947) Note on the sampling error of the difference between correlated proportions or percentages. Psychometrika 12:153–157",
    checked: "from memory",
  },
  cohen1960: {
    cite: "Cohen J (1960) A coefficient of agreement for nominal scales. Educational and Psychological Measurement 20:37–46",
    checked: "from memory",
  },
  fleiss1969: {
    cite: "Fleiss JL, Cohen J, Everitt BS (1969) Large sample standard errors of kappa and weighted kappa. Psychological Bulletin 72:323–327",
    checked: "from memory",
  },
  gwet2008: {
    cite: "Gwet KL (2008) Computing inter-rater reliability and its variance in the presence of high agreement. British Journal of Mathematical and Statistical Psychology 61:29–48",
    checked: "from memory",
  },
  agrestiCoull1998: {
    cite: "Agresti A, Coull BA (1998) Approximate is better than exact for interval estimation of binomial proportions. American Statistician 52:119–126",
    checked: "from memory",
  },
  shewhart1931: {
    cite: "Shewhart WA (1931) Economic Control of Quality of Manufactured Product. New York: Van Nostrand",
    checked: "from memory",
  },
  laney2002: {
    cite: "Laney DB (2002) Improved control charts for attributes. Quality Engineering 14:531–537",
    checked: "from memory",
  },
  westernElectric1956: {
    cite: "Western Electric Company (1956) Statistical Quality Control Handbook. Indianapolis",
    checked: "from memory",
  },
  nistProportions: {
    cite: "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.2: proportions control charts",
    checked: "from memory",
  },
  nistMovingAverage: {
    cite: "NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4: EWMA control charts",
    checked: "from memory",
  },
  roberts1959: {
    cite: "Roberts SW (1959) Control chart tests based on geometric moving averages. Technometrics 1:239–250",
    checked: "from memory",
  },
  garwood1936: {
    cite: "Garwood F (1936) Fiducial limits for the Poisson distribution. Biometrika 28:437–442",
    checked: "from memory",
  },
  przyborowskiWilenski1940: {
    cite: "Przyborowski J, Wilenski H (1940) Homogeneity of results in testing samples from Poisson series. Biometrika 31:313–323",
    checked: "from memory",
  },
  cannonRoe1982: {
    cite: "Cannon RM, Roe RT (1982) Livestock Disease Surveys: a field manual for veterinarians. Canberra: Australian Government Publishing Service",
    checked: "from memory",
  },
  cameronBaldock1998: {
    cite: "Cameron AR, Baldock FC (1998) A new probability formula for surveys to substantiate freedom from disease. Preventive Veterinary Medicine 34:1–17",
    checked: "from memory",
  },
  macDiarmid1988: {
    cite: "MacDiarmid SC (1988) Future options for brucellosis surveillance in New Zealand beef herds. New Zealand Veterinary Journal 36:39–42",
    checked: "from memory",
  },
  martin2007: {
    cite: "Martin PAJ, Cameron AR, Greiner M (2007) Demonstrating freedom from disease using multiple complex data sources 1: a new methodology based on scenario trees. Preventive Veterinary Medicine 79:71–97",
    checked: "from memory",
  },
  spiegelhalter2005: {
    cite: "Spiegelhalter DJ (2005) Funnel plots for comparing institutional performance. Statistics in Medicine 24:1185–1202",
    checked: "from memory",
  },
  griffiths1973: {
    cite: "Griffiths DA (1973) Maximum likelihood estimation for the beta-binomial distribution and an application to the household distribution of the total number of cases of a disease. Biometrics 29:637–648",
    checked: "from memory",
  },
  martuzziElliott1996: {
    cite: "Martuzzi M, Elliott P (1996) Empirical Bayes estimation of small area prevalence of non-rare conditions. Statistics in Medicine 15:1867–1873",
    checked: "from memory",
  },
  donnerKoval1980: {
    cite: "Donner A, Koval JJ (1980) The estimation of intraclass correlation in the analysis of family data. Biometrics 36:19–25",
    checked: "from memory",
  },
  ridout1999: {
    cite: "Ridout MS, Demétrio CGB, Firth D (1999) Estimating intraclass correlation for binary data. Biometrics 55:137–148",
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
    cite: "Kaler J and others (2010) J Vet Intern Med 24:420 (from memory), trial in sheep with footrot: 70 % recovered by day 5 after injection and spray, 10 % after trimming and spray",
    checked: "read about",
  },
  promptTreatment: {
    cite: "Published advice on lame sheep: treat within 3 days of seeing them lame; cull after two cases in a season",
    checked: "read",
  },
  smith2014: {
    cite: "Smith EM and others (2014) Veterinary Journal 201:295–301, abstract: horn of sheep at pasture keeps its own length; overgrown horn came after lameness and not before it",
    checked: "read",
  },
  laven2012: {
    cite: "Laven RA (2012) New Zealand Veterinary Journal 60:213, abstract: in the trial of Kaler and others 2010 trimming delayed healing, and should not be used to treat footrot",
    checked: "read",
  },
  footrotAdvice: {
    cite: "Sheep Veterinary Society: advice on treating and controlling footrot (inspect and treat within 3 days, no trimming, clean between the claws and spray, spray alone for lambs with interdigital dermatitis, cull repeat offenders, vaccination helpful)",
    checked: "read",
  },
  coddAdvice: {
    cite: "NADIS and published interviews with the Liverpool group on contagious ovine digital dermatitis: starts at the top of the hoof, hard to tell from footrot, injection rather than bath, formalin painful on raw feet, horn may not grow back",
    checked: "read",
  },
  footbathAdvice: {
    cite: "Farmers Weekly: step-by-step guide to foot-bathing sheep (a place with scald of lambs, no cure of footrot; standing times differ from product to product)",
    checked: "read",
  },
  antibioticBaths: {
    cite: "Department of Agriculture, Ireland: warning against antibiotic footbaths for cattle (off label, residues, resistance, environment)",
    checked: "read",
  },
  west1983: {
    cite: "West DM (1983) New Zealand Veterinary Journal 31:152–156, abstract: foot abscess of the heel is an infection of the joint within the hoof; permanent damage, walking again after about two months",
    checked: "read",
  },
  granulomas: {
    cite: "UK-Vet Livestock: lameness in sheep, a practical guide to non-contagious foot diseases (first part): granulomas are very painful, and overgrown horn may hide them",
    checked: "read",
  },
  footAndMouth: {
    cite: "GOV.UK and gov.scot: foot and mouth disease, how to spot and report it (lameness is the main sign in sheep; blisters are small; tell the authority at once)",
    checked: "read",
  },
  bluetongue: {
    cite: "Irish Farmers Journal: the clinical signs of bluetongue (sores in mouth and nose, feet hot and tender where skin meets horn, lame; must be reported)",
    checked: "read",
  },
  orfAdvice: {
    cite: "NADIS: non-parasitic skin conditions in sheep, and Virginia Tech: fact sheet on contagious ecthyma (orf infects people, sores at coronary band and teats, virus lives in dried scabs; wear gloves)",
    checked: "read",
  },
  transport2005: {
    cite: "Regulation (EC) No 1/2005, Annex I Chapter I point 2(a), as quoted by the EU Reference Centre for Animal Welfare: unfit when unable to move independently without pain or to walk unassisted",
    checked: "read",
  },
  reportableFootrot: {
    cite: "Local Land Services, New South Wales: virulent footrot must be notified there",
    checked: "read",
  },
  organicWithdrawal: {
    cite: "Regulation (EU) 2018/848, Annex II Part II point 1.5.2.5, as quoted in the Official Journal C 126 of 21.3.2022: organic withdrawal is longer than the product's own",
    checked: "read",
  },
  zincSalts: {
    cite: "Standard atomic weights (IUPAC, abridged): Zn 65.38, S 32.06, O 15.999, H 1.008; hence zinc sulphate heptahydrate 287.541 and monohydrate 179.451 g/mol, checked with the library mf-parser",
    checked: "from memory",
  },
  zincHeptahydrate: {
    cite: "Primary Industries and Regions, South Australia (2014) Footrot treatment using zinc sulphate: the 10 % is of heptahydrate",
    checked: "read",
  },
  copperBath2004: {
    cite: "Acute sheep poisoning from a copper sulfate footbath (2004) Veterinary and Human Toxicology 46:315–318, abstract: a 5 % bath, drunk by thirsty sheep, killed 12 of 27",
    checked: "read",
  },
  copperRange: {
    cite: "Copper sulphate footbaths are published at up to 5 %",
    checked: "from memory",
  },
  northernIreland: {
    cite: "Regulation (EU) 2019/6 applies in Northern Ireland (Windsor Framework, Annex 2)",
    checked: "from memory",
  },
  kaplanMeier1958: {
    cite: "Kaplan EL, Meier P (1958) Nonparametric estimation from incomplete observations. Journal of the American Statistical Association 53:457–481",
    checked: "from memory",
  },
  aalenJohansen1978: {
    cite: "Aalen OO, Johansen S (1978) An empirical transition matrix for non-homogeneous Markov chains based on censored observations. Scandinavian Journal of Statistics 5:141–150",
    checked: "from memory",
  },
  therneauMultiState: {
    cite: "Therneau T, Crowson C, Atkinson E, Multi-state models and competing risks, delivered with the survival package of R: the Aalen–Johansen estimate",
    checked: "read",
  },
  turnbull1976: {
    cite: "Turnbull BW (1976) The empirical distribution function with arbitrarily grouped, censored and truncated data. Journal of the Royal Statistical Society B 38:290–295",
    checked: "from memory",
  },
  hudgens2001: {
    cite: "Hudgens MG, Satten GA, Longini IM (2001) Nonparametric maximum likelihood estimation for competing risks survival data subject to interval censoring and truncation. Biometrics 57:74–80",
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
  footbathHazards: {
    cite: "Published safety advice: formalin above 3 % harms feet; formaldehyde is toxic, a skin sensitiser and carcinogenic; zinc sulphate damages eyes and is very toxic to life in water",
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
  whiteLineDisease2021: {
    cite: "Prevalence and temporal dynamics of white line disease in sheep (2021) Veterinary Sciences 8:116, abstract: white line disease of sheep is also known as shelly hoof",
    checked: "read",
  },
  iso11784: { cite: "ISO 11784: Radio frequency identification of animals, code structure", checked: "read" },
  iso3166: { cite: "ISO 3166-1: country codes", checked: "from memory" },
  ecma376dates: {
    cite: "ECMA-376 Office Open XML Part 1, §18.17.4.1: dates as serial numbers",
    checked: "read",
  },
} as const satisfies Readonly<Record<string, Source>>;
