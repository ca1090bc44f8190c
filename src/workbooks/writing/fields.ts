import type { Look } from "./looks.ts";
import { rules } from "./rules.ts";
import type { Content, Rule } from "./sheetAuthor.ts";
import type { Field } from "./writeFields.ts";

/** A cell to fill: its name for formulas, the words before it, what stands in it, the words behind it. */
type FieldOf = (name: string, label: string, value: Content | undefined, words: string, rule?: Rule) => Field;

/** Fields that look alike, and into which the same may be typed where a field has no rule of its own. */
export const fieldOf =
  (look: Look, usual?: Rule): FieldOf =>
  (name, label, value = null, words, rule = usual) => ({ name, label, value, look, words, ...(rule && { rule }) });

export const textField = fieldOf("fieldText");
export const yesNoField = fieldOf("fieldText", rules.yesNo);
export const dateField = fieldOf("fieldDate", rules.day);
export const shareField = fieldOf("fieldShare", rules.innerShare);
export const numberField = fieldOf("fieldNumber");
export const daysField = fieldOf("fieldNumber", rules.days);
export const sheepField = fieldOf("fieldNumber", rules.sheep);
export const amountField = fieldOf("fieldNumber", rules.amount);
