/**
 * What the bytes are, by the signature every file of the kind has; undefined for anything else. The name and
 * the type a browser states are not believed. Kinds that can carry scripts (SVG, HTML) are not among these.
 */
export function attachmentType(bytes: Uint8Array): string | undefined {
  const opening = Buffer.from(bytes.subarray(0, 16)).toString('latin1');
  return signatures.find(({ parts }) => parts.every(([at, text]) => opening.startsWith(text, at)))?.type;
}

/** Where which characters (Latin-1) stand, as the formats' standards give it. */
const signatures: { type: string; parts: [at: number, text: string][] }[] = [
  { type: 'image/jpeg', parts: [[0, '\xff\xd8\xff']] },
  { type: 'image/png', parts: [[0, '\x89PNG\r\n\x1a\n']] },
  {
    type: 'image/webp',
    parts: [
      [0, 'RIFF'],
      [8, 'WEBP'],
    ],
  },
  { type: 'application/pdf', parts: [[0, '%PDF-']] },
  { type: 'image/tiff', parts: [[0, 'II*\0']] },
  { type: 'image/tiff', parts: [[0, 'MM\0*']] },
  { type: 'image/heic', parts: [[4, 'ftypheic']] },
  { type: 'image/heic', parts: [[4, 'ftypheix']] },
  { type: 'image/heic', parts: [[4, 'ftypmif1']] },
  { type: 'image/avif', parts: [[4, 'ftypavif']] },
];
