/**
 * The share lame to stay below where a flock has no target of its own.
 *
 * @source FAWC 2011: at most 2 % lame by 2021
 */
export const usualTarget = 0.02;
