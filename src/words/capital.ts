/** As a sentence or a label begins, after an opening quote as well. */
export const capital = (words: string): string => words.replace(/^“?\p{L}/u, (start) => start.toUpperCase());
