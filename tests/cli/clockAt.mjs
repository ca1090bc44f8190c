// Loaded before a program whose clock is to stand elsewhere: as if the program had been started at the moment in
// SOUNDFOLD_TEST_MOMENT, by setting off the clock of its JavaScript. The time zone is the one in TZ, as ever.
const Running = globalThis.Date;
const ahead = Running.parse(process.env.SOUNDFOLD_TEST_MOMENT) - Running.now();

globalThis.Date = class extends Running {
  constructor(...given) {
    super(...(given.length === 0 ? [Running.now() + ahead] : given));
  }
  static now() {
    return Running.now() + ahead;
  }
};
