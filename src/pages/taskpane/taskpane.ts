import { catalogue } from "../../../functions/catalogue.ts";
import { connection } from "./connection.ts";
import { functionList } from "./functionList.ts";

// The script is loaded as early as it comes, so the page may not be there yet.
if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", show);
else show();

function show(): void {
  document.getElementById("functions")?.append(...functionList(catalogue));
  // A help link from the sheet names a function that was not on the page when the browser looked for it.
  if (location.hash !== "") document.getElementById(location.hash.slice(1))?.scrollIntoView();
  void connection().then((words) => {
    const status = document.getElementById("status");
    if (status) status.textContent = words;
  });
}
