import { realpathSync } from 'node:fs';
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
    const address = await serverSaidToRun(folder);
    if (address) return address;
    await wait(100);
  }
  throw new FolderHeld(
    `Another program holds the data folder ${folder} and does not answer. End it, or start with another data folder (--data FOLDER)`,
  );
}

/** The address that the folder's note gives, where a server of this very folder answers there. */
export async function serverSaidToRun(folder: string): Promise<string | undefined> {
  const note = readServerNote(folder);
  if (!note) return undefined;
  try {
    const response = await fetch(`${note.address}/api/info`, { signal: AbortSignal.timeout(2000) });
    const { app, dataFolder } = (await response.json()) as { app?: string; dataFolder?: string };
    const same = dataFolder !== undefined && realpathSync(dataFolder) === realpathSync(folder);
    return app === 'fairbend' && same ? note.address : undefined;
  } catch {
    return undefined;
  }
}
