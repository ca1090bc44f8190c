import jstat from "jstat";

// The library is a CommonJS module whose names Node cannot see.
export const { jStat } = jstat;
