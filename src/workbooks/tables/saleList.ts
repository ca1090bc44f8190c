import { defineTable } from "./defineTable.ts";

/** The tags of the animals that are to go. */
export const saleList = defineTable("SaleList", 600, {
  tag: { heading: "Tag", width: 26, look: "typedText" },
});
