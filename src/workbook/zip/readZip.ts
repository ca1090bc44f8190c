import crc32 from "crc-32";
import { inflateSync, type UnzipFileInfo, unzipSync } from "fflate";
import type { Limits } from "../limits.ts";
import { WorkbookProblem } from "../workbookProblem.ts";
import { directoryIn } from "./directoryIn.ts";
import type { Packing } from "./packing.ts";

/** One part of the file, in the order of the original. */
export interface Entry {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** It was not packed in the original, as pictures usually are not. */
  readonly stored: boolean;
}

/**
 * Unpacks a zip into memory. Names are only labels: nothing is ever written under them, so a name such as
 * `../../x` does no harm.
 *
 * @param wanted - which parts are unpacked; the others are listed without their bytes
 * @param packing - what unpacks them where it is not to be the library
 * @throws WorkbookProblem when it is no zip, is damaged, or unpacks to more than the limits allow; a part that is not
 * what its checksum says is named
 */
export function readZip(
  bytes: Uint8Array,
  limits: Limits,
  wanted: (name: string) => boolean = () => true,
  packing?: Packing,
): readonly Entry[] {
  const seen = lookThrough(bytes, limits);
  const unpacked = packing ? unpackedBy(packing, bytes, wanted) : unzip(bytes, ({ name }) => wanted(name));
  refuseDamaged(unpacked, [...seen.keys()], bytes, packing?.checksum ?? checksumOf);
  return [...seen].map(([name, { compression }]) => ({
    name,
    stored: compression === stored,
    bytes: unpacked[name] ?? new Uint8Array(),
  }));
}

/**
 * The parts of a zip by name, each unpacked when it is asked for and not kept. Its directory is gone through once,
 * however many parts there are.
 *
 * @throws WorkbookProblem as readZip does
 */
export function unpackOnDemand(
  bytes: Uint8Array,
  limits: Limits,
  packing?: Packing,
): ReadonlyMap<string, () => Uint8Array> {
  const seen = [...lookThrough(bytes, limits)];
  const listed = seen.length === 0 ? [] : directoryIn(bytes);
  return new Map(
    seen.map(([name, part], index) => [
      name,
      () => {
        const { start, checksum } = listed[index] ?? {};
        if (part.compression !== deflated || start === undefined)
          return readZip(bytes, limits, (candidate) => candidate === name, packing)[index]?.bytes ?? new Uint8Array();
        const packed = bytes.subarray(start, start + part.size);
        const unpacked = whole(() =>
          packing
            ? packing.inflate(packed, part.originalSize)
            : inflateSync(packed, { out: new Uint8Array(part.originalSize) }),
        );
        if ((packing?.checksum ?? checksumOf)(unpacked) !== checksum) throw damaged(name);
        return unpacked;
      },
    ]),
  );
}

/**
 * What a zip holds, by name and in its order, looked through before anything is unpacked, since many entries may share
 * one packed part.
 */
function lookThrough(bytes: Uint8Array, limits: Limits): ReadonlyMap<string, UnzipFileInfo> {
  const seen = new Map<string, UnzipFileInfo>();
  const keys = new Set<string>();
  let total = 0;
  unzip(bytes, (info) => {
    const { name, size, originalSize } = info;
    // The names of parts do not depend on capitals (ECMA-376 Part 2 §6.2.2), so two such would be one.
    const key = name.toLowerCase();
    if (keys.has(key)) throw new WorkbookProblem(`The file is damaged: it holds the part ${name} twice.`);
    keys.add(key);
    seen.set(name, info);
    total += originalSize;
    if (seen.size > limits.parts) throw tooBig(`more than ${limits.parts} parts`);
    if (total > limits.bytes) throw tooBig(`more than ${Math.round(limits.bytes / 1e6)} MB`);
    if (packsTooWell(originalSize, size, limits))
      throw tooBig(`${Math.round(originalSize / Math.max(size, 1))} times its packed size`);
    // Under this name an object keeps no value of its own, so the part would be lost on the way.
    if (name === "__proto__") throw new WorkbookProblem(`The file holds a part called ${name}; it was not opened.`);
    return false;
  });
  return seen;
}

const checksumOf = (part: Uint8Array): number => crc32.buf(part) >>> 0;

const packsTooWell = (originalSize: number, size: number, { ratio, ratioFrom }: Limits): boolean =>
  originalSize > ratioFrom && originalSize > size * ratio;

/** Whether no part of a file is packed so well that it would be taken for one made to do harm. */
export function packsWithin(bytes: Uint8Array, limits: Limits): boolean {
  let within = true;
  unzip(bytes, ({ originalSize, size }) => {
    within &&= !packsTooWell(originalSize, size, limits);
    return false;
  });
  return within;
}

/** A damaged part may unpack without complaint into other figures, and nobody would know. */
function refuseDamaged(
  unpacked: Readonly<Record<string, Uint8Array>>,
  names: readonly string[],
  bytes: Uint8Array,
  checksumIn: Packing["checksum"],
): void {
  if (Object.keys(unpacked).length === 0) return;
  const listed = directoryIn(bytes);
  names.forEach((name, index) => {
    const part = unpacked[name];
    if (part !== undefined && checksumIn(part) !== listed[index]?.checksum) throw damaged(name);
  });
}

const damaged = (part: string): WorkbookProblem =>
  new WorkbookProblem(
    `The file is damaged: its part ${part} does not match its checksum; use another copy of the file.`,
  );

// The ways of packing that workbooks use (APPNOTE 4.4.5).
const stored = 0;
const deflated = 8;

/** Unpacks what is packed as it usually is; what is not, the library unpacks. */
function unpackedBy(
  packing: Packing,
  bytes: Uint8Array,
  wanted: (name: string) => boolean,
): Readonly<Record<string, Uint8Array>> {
  const unpacked: Record<string, Uint8Array> = {};
  let listed: ReturnType<typeof directoryIn> | undefined;
  let index = -1;
  const others = unzip(bytes, ({ name, size, originalSize, compression }) => {
    index += 1;
    if (!wanted(name)) return false;
    listed ??= directoryIn(bytes);
    const start = listed[index]?.start;
    if (compression !== deflated || start === undefined) return true;
    unpacked[name] = packing.inflate(bytes.subarray(start, start + size), originalSize);
    return false;
  });
  return { ...unpacked, ...others };
}

const tooBig = (what: string): WorkbookProblem =>
  new WorkbookProblem(`The file unpacks to ${what}, which no flock workbook does; it was not opened.`);

type Filter = NonNullable<NonNullable<Parameters<typeof unzipSync>[1]>["filter"]>;

const unzip = (bytes: Uint8Array, filter: Filter): Record<string, Uint8Array> =>
  whole(() => unzipSync(bytes, { filter }));

/** @throws WorkbookProblem where the file is cut short or damaged */
function whole<T>(unpack: () => T): T {
  try {
    return unpack();
  } catch (error) {
    if (error instanceof WorkbookProblem) throw error;
    throw new WorkbookProblem("The file is damaged or cut short: its contents cannot be unpacked.", { cause: error });
  }
}
