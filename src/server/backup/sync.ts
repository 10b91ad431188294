import { closeSync, fsyncSync, openSync } from 'node:fs';

/** What the file holds is on the disk when this returns. */
export function syncFile(file: string): void {
  const opened = openSync(file, 'r+');
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}

/** A new or changed name of the folder is on the disk; where folders cannot be opened (Windows), that is its own doing. */
export function syncFolder(folder: string): void {
  try {
    const opened = openSync(folder, 'r');
    try {
      fsyncSync(opened);
    } finally {
      closeSync(opened);
    }
  } catch (error) {
    if (!['EISDIR', 'EPERM', 'EINVAL', 'EACCES'].includes((error as NodeJS.ErrnoException).code ?? ''))
      throw error;
  }
}
