/** A trough, measured inside in cm. */
export interface Trough {
  readonly lengthCm: number;
  /** Where the liquid's surface is. */
  readonly topWidthCm: number;
  /** Of the liquid, not of the trough. */
  readonly depthCm: number;
  /** At the bottom; undefined for straight sides. */
  readonly baseWidthCm: number | undefined;
}

/**
 * The litres of liquid in a footbath with straight or slanting sides: mean width × depth × length.
 *
 * @example
 * bathLitres({ lengthCm: 300, topWidthCm: 30, depthCm: 6, baseWidthCm: undefined }) // → 54
 * bathLitres({ lengthCm: 300, topWidthCm: 60, depthCm: 15, baseWidthCm: 40 }) // → 225
 */
export const bathLitres = ({ lengthCm, topWidthCm, depthCm, baseWidthCm = topWidthCm }: Trough): number =>
  ((topWidthCm + baseWidthCm) * depthCm * lengthCm) / 2000;
