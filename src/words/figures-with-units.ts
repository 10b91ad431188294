const number = String.raw`[−+±-]?(?:\d[\d.,]*(?: \d+[/⁄]\d+)?|\d+[/⁄]\d+)`;
const unit = '(?:N·m²|N·m|in·lb|1/m|mm|ml|min|m|in|ft|yd|kg|kB|MB|g|gr|oz|lb|Hz|h|s|d|dpi|°F|°C|%)';
const together = new RegExp(String.raw`(?<![\p{L}\d.,/⁄])(${number} ${unit})(?![\p{L}\d·²/⁄])`, 'u');

/** A text cut at its figures with their units, which are at the odd places: no line may end between the two. */
export function figuresWithUnits(text: string): string[] {
  return text.split(together);
}
