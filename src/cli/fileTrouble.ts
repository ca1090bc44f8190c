import { BadInput } from "./badInput.ts";

type Reasons = Readonly<Record<string, string>>;

const reasons: Reasons = {
  ENOENT: "there is no such file",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of its path is not a folder",
  EACCES: "you are not allowed to",
  EPERM: "you are not allowed to",
  EROFS: "the disk cannot be written to",
  ENOSPC: "the disk is full",
  EBUSY: "another program holds it open",
  ELOOP: "its links lead in a circle",
  ENAMETOOLONG: "its name is too long",
  ERR_FS_FILE_TOO_LARGE: "it is too large",
};

/** What the system's own error means, in words; undefined where it is none. */
export const reasonFor = (error: unknown, here: Reasons = {}): string | undefined =>
  error instanceof Error && "code" in error && typeof error.code === "string"
    ? (here[error.code] ?? reasons[error.code] ?? error.code)
    : undefined;

/**
 * Runs file work and puts what the system says into one sentence.
 *
 * @param what - for example `farm.xlsx cannot be read`
 * @param here - what an error means in this work, by its code, where that is more than usual
 * @throws BadInput in place of the system's own error
 */
export async function withPlainFileErrors<T>(what: string, work: () => Promise<T>, here: Reasons = {}): Promise<T> {
  try {
    return await work();
  } catch (error) {
    const reason = reasonFor(error, here);
    if (reason === undefined) throw error;
    throw new BadInput(`${what}: ${reason}.`);
  }
}
