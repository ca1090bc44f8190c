/**
 * How many lines a text takes that is broken between its words, and within a word that is too long for a line.
 *
 * @param room - characters in a line
 * @example
 * wrappedLines("days to wait", 9) // → 2
 */
export const wrappedLines = (text: string, room: number): number =>
  text.split("\n").reduce((lines, paragraph) => lines + linesOf(paragraph, Math.max(1, Math.floor(room))), 0);

function linesOf(paragraph: string, room: number): number {
  let lines = 1;
  let used = 0;
  for (const { length } of paragraph.split(" ")) {
    const after = used === 0 ? length : used + 1 + length;
    if (after <= room) {
      used = after;
      continue;
    }
    if (used > 0) lines += 1;
    lines += Math.max(0, Math.ceil(length / room) - 1);
    used = length % room || Math.min(length, room);
  }
  return lines;
}
