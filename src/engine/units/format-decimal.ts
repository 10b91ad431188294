/** A number to so many decimals, without a trailing zero and never `-0`: 114.30 -> `114.3`. */
export function trimZeros(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}

/** A number to exactly so many decimals, for columns; never `-0.0`. */
export function fixedDecimals(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text;
}
