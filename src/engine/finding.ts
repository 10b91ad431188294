/** Something in the input that makes no sense: where it stands, and what to do about it. */
export interface Finding {
  /** The field, as the reader knows it: `sections/a1/overlap`, `rod.lengthM`. */
  path: string;
  /** Names the value and the remedy, in the reader's units. */
  message: string;
}

export type Require = (holds: boolean, path: string, message: string) => void;
