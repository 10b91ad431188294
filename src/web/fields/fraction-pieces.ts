/** A text cut at its fractions, which stand at the odd places. A size such as 1/0 is no fraction. */
export function fractionPieces(text: string): string[] {
  return text.split(/(?<![\d.])(\d+[/⁄][1-9]\d*)(?![\d.])/);
}
