import type { PlannedStep } from "./plannedStep.ts";

/** How an injection is given, for every plan that has one. */
export const injectionSites: PlannedStep = {
  what: "Inject by the route, at the place and over as many sites as the data sheet or your vet says. Draw back before you inject into a muscle.",
  why: "Route, place and the most in one site belong to the product; given otherwise, its withdrawal days no longer hold.",
  caution:
    "Keep away from major nerves. Blood in the syringe: take the needle out and choose another place. If you prick yourself, get medical help and take the data sheet along.",
  medicine: true,
};
