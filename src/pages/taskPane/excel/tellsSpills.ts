/** Whether this Excel can be asked which cells an answer fills. */
export const tellsSpills = (): boolean =>
  // Range.getSpillingToRangeOrNullObject and getSpillParentOrNullObject (@types/office-js: ExcelApi 1.12).
  Office.context.requirements.isSetSupported("ExcelApi", "1.12");
