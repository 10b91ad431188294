import { readFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { imageFound } from '../image/image-kinds.ts';
import { type Decoded, decodeImage, decodeLimits, type Refused } from '../image/index.ts';

/** The picture at a path, decoded; refused at the field `image` with the reason. Never throws on a bad file. */
export function openImage(path: string): Decoded | Refused {
  try {
    const file = fromWhereCalled(path);
    const status = statSync(file);
    if (!status.isFile()) return refuseImage(path, 'is no file');
    if (status.size > decodeLimits.mostBytes) {
      return refuseImage(
        path,
        `has ${Math.round(status.size / 1e6)} MB; at most ${decodeLimits.mostBytes / 1e6} MB are read`,
      );
    }
    return decodeImage(readFileSync(file));
  } catch (error) {
    return refuseImage(path, `cannot be read (${error instanceof Error ? error.message : error})`);
  }
}

/** npm runs commands in the package's folder and says in INIT_CWD where it was called. */
export function fromWhereCalled(path: string): string {
  return resolve(process.env.INIT_CWD ?? process.cwd(), path);
}

function refuseImage(path: string, what: string): Refused {
  return {
    status: 'refused',
    findings: [imageFound('image', 'picture/unopened', { file: path, why: what })],
  };
}
