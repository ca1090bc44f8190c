import { decodeText } from "../xml/escapeXml.ts";
import { walkXml } from "../xml/walkXml.ts";

/** The texts that cells share, by number. Reading aids (phonetic runs) are not part of a text. */
export function readSharedStrings(part: string, text: string): readonly string[] {
  const strings: string[] = [];
  let pieces = "";
  let inText = false;
  let inPhonetic = false;
  walkXml(part, text, {
    open({ name }) {
      if (name === "si") pieces = "";
      else if (name === "rPh") inPhonetic = true;
      else if (name === "t") inText = !inPhonetic;
    },
    text(piece) {
      if (inText) pieces += piece;
    },
    close(name) {
      if (name === "si") strings.push(decodeText(pieces));
      else if (name === "rPh") inPhonetic = false;
      else if (name === "t") inText = false;
    },
  });
  return strings;
}
