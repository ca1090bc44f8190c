import { functionsFor } from "./functionsFor.ts";
import { manifestFor } from "./manifestFor.ts";

/** Puts the manifest for this address behind the link of the page, or says why there is none. */
async function offerManifest(): Promise<void> {
  const link = document.querySelector<HTMLAnchorElement>("#manifest");
  const said = document.querySelector("#said");
  if (!link || !said) return;
  const none = (why: string): void => {
    // With its line, which would stay as a gap.
    (link.parentElement ?? link).hidden = true;
    said.textContent = why;
  };
  // A page from the disk may not read the file beside it.
  if (location.protocol === "file:")
    return none(
      "This page was opened from the disk. Put the whole folder on a web server, under an address that begins with https://, and open index.html there: it then makes manifest.xml for that address.",
    );
  const here = new URL(".", location.href).href.replace(/\/$/, "");
  const built = await textOf("manifest.xml");
  if (built === undefined) return none("manifest.xml is not beside this page: copy the whole folder to the address.");
  const manifest = manifestFor(built, here);
  if (manifest === undefined)
    return none(
      "Excel takes an add-in from an address that begins with https:// only. Open this page under such an address.",
    );
  link.href = URL.createObjectURL(new Blob([manifest], { type: "application/xml" }));
  said.textContent = `Made for ${here}`;
  await offerFunctions(here);
}

/** Puts the list of functions with its help at this address behind its link, where it was built for another. */
async function offerFunctions(here: string): Promise<void> {
  const link = document.querySelector<HTMLAnchorElement>("#functions");
  const built = await textOf("functions.json");
  const made = built === undefined ? undefined : functionsFor(built, here);
  if (!link?.parentElement || made === undefined || made === built) return;
  link.href = URL.createObjectURL(new Blob([made], { type: "application/json" }));
  link.parentElement.hidden = false;
}

async function textOf(file: string): Promise<string | undefined> {
  const answer = await fetch(file).catch(() => undefined);
  return answer?.ok ? answer.text() : undefined;
}

void offerManifest();
