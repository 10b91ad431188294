import { setTimeout as wait } from 'node:timers/promises';
import { readServerNote } from './data-folder.ts';

/** The folder is held, but by nothing that answers as a server. */
export class FolderHeld extends Error {}

/**
 * The address of the server that holds the data folder. It may be starting at this moment, so its note is
 * waited for. @throws FolderHeld
 */
export async function findRunningServer(folder: string): Promise<string> {
  for (let tries = 0; tries < 50; tries++) {
    const note = readServerNote(folder);
    if (note && (await answers(note.address))) return note.address;
    await wait(100);
  }
  throw new FolderHeld(
    `Another program holds the data folder ${folder} and does not answer. End it, or start with another data folder (--data FOLDER)`,
  );
}

/** The address of a server of another process that says it serves this folder; undefined where none answers. */
export async function serverThatAnswers(folder: string): Promise<string | undefined> {
  const note = readServerNote(folder);
  if (!note || note.pid === process.pid) return undefined;
  return (await answers(note.address, folder)) ? note.address : undefined;
}

async function answers(address: string, folder?: string): Promise<boolean> {
  try {
    const response = await fetch(`${address}/api/info`, { signal: AbortSignal.timeout(2000) });
    const { app, dataFolder } = (await response.json()) as { app?: string; dataFolder?: string };
    return app === 'fairbend' && (folder === undefined || dataFolder === folder);
  } catch {
    return false;
  }
}
