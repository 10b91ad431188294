/** Where the builder puts the guides round a section, by his own rule. */

export interface LineSide {
  /** From the reference mark, as the section is numbered round. */
  angleRad: number;
  /** What stands at 0. */
  reference?: string;
  /** How it was chosen, in the builder's words. */
  method?: string;
}
