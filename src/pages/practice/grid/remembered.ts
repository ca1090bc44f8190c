const most = 20_000;

/** A question of a text that is answered once for each text, as long as they are not too many. */
export function remembered(ask: (text: string) => boolean): (text: string) => boolean {
  const answers = new Map<string, boolean>();
  return (text) => {
    const known = answers.get(text);
    if (known !== undefined) return known;
    if (answers.size >= most) answers.clear();
    const answer = ask(text);
    answers.set(text, answer);
    return answer;
  };
}
