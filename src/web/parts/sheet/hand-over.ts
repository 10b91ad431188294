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

/** Letters and digits of a title, plain enough for every file system. */
export function fileName(title: string): string {
  const plain = title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return plain || 'build';
}
