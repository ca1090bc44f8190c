/** Behind and ahead of Greenwich, half hours, clocks that change at midnight, and one that lost a day. */
export const zones = [
  "Europe/Helsinki",
  "America/Santiago",
  "Pacific/Apia",
  "Pacific/Pago_Pago",
  "Africa/Cairo",
  "Asia/Tehran",
  "Australia/Lord_Howe",
] as const;
