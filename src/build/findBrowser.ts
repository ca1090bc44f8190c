import { delimiter, join } from "node:path";

/** What the search looks at, so that it can be tried for another system. */
export interface Surroundings {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Whether a program file is there. */
  readonly exists: (path: string) => boolean;
}

// Names under which Chrome, Chromium and Edge are on the PATH (Debian, Fedora, Arch and the makers' own packages; from memory).
const namesOnPath = [
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "chrome",
  "microsoft-edge",
  "microsoft-edge-stable",
  "msedge",
];

const usualPlaces: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  linux: ["/snap/bin/chromium", "/opt/google/chrome/chrome", "/opt/microsoft/msedge/msedge"],
  darwin: [
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
  ],
  win32: [
    "Google\\Chrome\\Application\\chrome.exe",
    "Microsoft\\Edge\\Application\\msedge.exe",
    "Chromium\\Application\\chrome.exe",
  ],
};

/**
 * Finds Chrome, Chromium or Edge.
 *
 * @returns the program file, or undefined where there is none
 * @throws Error with one sentence when CHROME_PATH names a file that is not there
 */
export function findBrowser({ platform, env, exists }: Surroundings): string | undefined {
  const named = env.CHROME_PATH;
  if (named) {
    if (!exists(named)) throw new Error(`CHROME_PATH names ${named}, and there is no such file.`);
    return named;
  }
  return [...onPath(platform, env), ...inUsualPlaces(platform, env)].find(exists);
}

function onPath(platform: NodeJS.Platform, env: Surroundings["env"]): readonly string[] {
  const windows = platform === "win32";
  const folders = (env.PATH ?? env.Path ?? "").split(windows ? ";" : delimiter).filter((folder) => folder !== "");
  return folders.flatMap((folder) =>
    namesOnPath.map((name) => (windows ? `${folder}\\${name}.exe` : join(folder, name))),
  );
}

function inUsualPlaces(platform: NodeJS.Platform, env: Surroundings["env"]): readonly string[] {
  const places = usualPlaces[platform] ?? [];
  if (platform !== "win32") return places;
  const roots = [env.PROGRAMFILES, env["PROGRAMFILES(X86)"], env.LOCALAPPDATA].filter((root) => root !== undefined);
  return roots.flatMap((root) => places.map((place) => `${root}\\${place}`));
}
