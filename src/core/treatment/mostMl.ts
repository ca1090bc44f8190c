/** The most ml that one sheep is given at one time; above it is a slip of the hand. Common practice, no source. */
export const mostMl = 60;
