/** Something published that a function rests on, or the plain statement that there is nothing published. */
export interface Source {
  /** As it is printed under a function: who, when, where. */
  readonly cite: string;
  /** How far it was checked for this project. */
  readonly checked: "read" | "read about" | "from memory" | "common practice, no source";
}
