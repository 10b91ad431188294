/** The browser shows or saves it, as it is set to. */
export function handOver(content: Uint8Array | string, type: string, name: string): void {
  const address = URL.createObjectURL(
    new Blob([typeof content === 'string' ? content : new Uint8Array(content)], { type }),
  );
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), keptMs);
}
/** Long enough for the slowest tablet to take the file up. */
const keptMs = 60_000;

/** Letters and digits of a title, of whatever alphabet: every file system of today takes them. */
export function fileName(title: string): string {
  const plain = title
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  return [...plain].slice(0, mostLetters).join('').replace(/^-|-$/g, '') || 'build';
}
/** Three bytes a letter, with what is added to it, stay within the 255 that file systems allow. */
const mostLetters = 60;
