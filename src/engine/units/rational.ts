/**
 * Exact fractions, so that 3/64 in is 3 × 0.396875 mm and nothing else.
 * Denominators are positive and the fraction is in lowest terms.
 */
export interface Rational {
  numerator: bigint;
  denominator: bigint;
}

/** @throws RangeError for a zero denominator. */
export function rational(numerator: bigint, denominator = 1n): Rational {
  if (denominator === 0n) throw new RangeError(`a fraction ${numerator}/0 has no value`);
  const sign = denominator < 0n ? -1n : 1n;
  const divisor = greatestCommonDivisor(abs(numerator), abs(denominator));
  return { numerator: (sign * numerator) / divisor, denominator: (sign * denominator) / divisor };
}

export function rationalAdd(a: Rational, b: Rational): Rational {
  return rational(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);
}

export function rationalMultiply(a: Rational, b: Rational): Rational {
  return rational(a.numerator * b.numerator, a.denominator * b.denominator);
}

export function rationalDivide(a: Rational, b: Rational): Rational {
  return rational(a.numerator * b.denominator, a.denominator * b.numerator);
}

/** Digits with at most one point, `12`, `0.25` or `.5`, read exactly. */
export function rationalFromDigits(digits: string): Rational {
  const [whole = '', part = ''] = digits.split('.');
  return rational(BigInt(whole + part || '0'), 10n ** BigInt(part.length));
}

/** The nearest double while both parts stay below 2⁵³, as every length a person types does. */
export function rationalToNumber(value: Rational): number {
  return Number(value.numerator) / Number(value.denominator);
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x === 0n ? 1n : x;
}

function abs(value: bigint): bigint {
  return value < 0n ? -value : value;
}
