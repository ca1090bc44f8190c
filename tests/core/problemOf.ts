import { Problem } from "../../src/cells/problem.ts";

/** The problem with which something is refused; a test fails when it is not. */
export function problemOf(act: () => unknown): Problem {
  try {
    act();
  } catch (problem) {
    if (problem instanceof Problem) return problem;
    throw problem;
  }
  throw new Error("nothing was refused");
}
