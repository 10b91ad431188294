/**
 * The standard normal distribution. What lies below x to 1.4e-4 (Bowling, Khasawneh, Kaewkuekool & Cho 2009; from
 * memory, tested against an integral): 1 / (1 + e^-(a x + b x³)).
 */
const [a, b] = [1.5976, 0.07056];

export function normalBelow(x: number): number {
  return 1 / (1 + Math.exp(-x * (a + b * x * x)));
}

/** Of a share between 0 and 1: the real root of b x³ + a x = ln(share / (1 - share)), by hyperbolic sines. */
export function normalQuantile(share: number): number {
  const [p, q] = [a / b, Math.log(share / (1 - share)) / b];
  return 2 * Math.sqrt(p / 3) * Math.sinh(Math.asinh(((1.5 * q) / p) * Math.sqrt(3 / p)) / 3);
}

export function normalDensity(x: number): number {
  return Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
}
