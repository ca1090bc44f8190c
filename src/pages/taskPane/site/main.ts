import { manifestFor } from "./manifestFor.ts";

/** Puts the manifest for this address behind the link of the page, or says why there is none. */
async function offerManifest(): Promise<void> {
  const link = document.querySelector<HTMLAnchorElement>("#manifest");
  const said = document.querySelector("#said");
  if (!link || !said) return;
  const here = new URL(".", location.href).href.replace(/\/$/, "");
  const answer = await fetch("manifest.xml").catch(() => undefined);
  const manifest = answer?.ok ? manifestFor(await answer.text(), here) : undefined;
  if (manifest === undefined) {
    // With its line, which would stay as a gap.
    (link.parentElement ?? link).hidden = true;
    said.textContent = answer?.ok
      ? "Excel takes an add-in from an address that begins with https:// only. Open this page under such an address."
      : "manifest.xml is not beside this page: copy the whole folder to the address.";
    return;
  }
  link.href = URL.createObjectURL(new Blob([manifest], { type: "application/xml" }));
  said.textContent = `Made for ${here}`;
}

void offerManifest();
