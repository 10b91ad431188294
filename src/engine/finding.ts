/**
 * Something odd or wrong in what was given, as data: where it stands, which of the known kinds it is, and the
 * quantities that say it (SI, the unit in the name). src/words makes the sentence, in the reader's units.
 */
export interface Finding {
  /** The field, as the reader knows it: `sections/a1/overlap`, `rod.lengthM`. */
  path: string;
  /** `bench/section-length`: the folder that finds it, and what it finds. */
  code: string;
  values: FindingValues;
}
/** Why a calculation stopped short, or what its answer leans on: a finding that is about no one field. */
export type Reason = Omit<Finding, 'path'>;
export type FindingValue = string | number | boolean | undefined | readonly (string | number)[];
export type FindingValues = Readonly<Record<string, FindingValue>>;

/**
 * Makes findings of the kinds that one folder knows: `Kinds` maps each code to its quantities, and src/words has a
 * sentence for every one of them.
 */
export function findingsOf<Kinds>() {
  return <C extends keyof Kinds & string>(
    path: string,
    code: C,
    values: Kinds[C] & FindingValues,
  ): Finding => ({
    path,
    code,
    values,
  });
}

/** Makes reasons of the kinds that one folder knows, as `findingsOf` does findings. */
export function reasonsOf<Kinds>() {
  return <C extends keyof Kinds & string>(code: C, values: Kinds[C] & FindingValues): Reason => ({
    code,
    values,
  });
}

/** What is wrong with a value where its field says the rest. */
export interface InputKinds {
  /** At least `low` (or more than `over`), at most `high`; `unit`: m, kg, N, rad, or none. */
  'input/out-of-range': {
    value: number;
    unit?: string;
    low?: number;
    over?: number;
    high?: number;
    whole?: boolean;
  };
  'input/one-for-each': { given: number; wanted: number };
  'input/not-a-choice': { value: string; choices: readonly string[] };
}

export const inputFound = findingsOf<InputKinds>();
