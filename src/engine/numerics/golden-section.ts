/** Least value of a function between two places, where it has one valley there (golden section; Kiefer 1953). */
export interface Least {
  at: number;
  value: number;
}

export function goldenSection(
  value: (at: number) => number,
  from: number,
  to: number,
  tolerance: number,
): Least {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let left = { at: high - golden * (high - low), value: 0 };
  let right = { at: low + golden * (high - low), value: 0 };
  left.value = value(left.at);
  right.value = value(right.at);
  while (high - low > tolerance) {
    if (left.value < right.value) {
      high = right.at;
      right = left;
      const at = high - golden * (high - low);
      left = { at, value: value(at) };
    } else {
      low = left.at;
      left = right;
      const at = low + golden * (high - low);
      right = { at, value: value(at) };
    }
  }
  return left.value < right.value ? left : right;
}
