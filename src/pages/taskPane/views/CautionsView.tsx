import { catalogue } from "../../../../functions/catalogue.ts";
import { CautionList } from "../../parts/CautionList.tsx";
import { words } from "../../words.ts";

/** Every caution in words. */
export const CautionsView = () => (
  <>
    <p>{words.cautions.intro}</p>
    <CautionList definitions={catalogue} address={(name) => `#${name}`} />
  </>
);
