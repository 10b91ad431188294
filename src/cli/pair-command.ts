import { resolve } from 'node:path';
import { CommandError, exitCodes } from './exit-codes.ts';

/** Asks the server of a data folder, on this computer, for a code that lets one device in. Answers what to say. */
export async function pair({ data }: { data?: string }): Promise<string> {
  const { defaultDataFolder, readServerNote } = await import('../server/data-folder.ts');
  const folder = data ? resolve(data) : defaultDataFolder(process.env, process.platform);
  const note = readServerNote(folder);
  if (!note) throw new CommandError(`No server uses ${folder}. Start it first`, exitCodes.input);
  const headers = { 'content-type': 'application/json' };
  const answer = await fetch(`${note.address}/api/sharing/code`, {
    method: 'POST',
    headers,
    body: '{}',
  }).catch(() => {
    throw new CommandError(`The server at ${note.address} does not answer. Start it again`, exitCodes.input);
  });
  if (answer.status === 404)
    throw new CommandError(
      `The server at ${note.address} lets no phones in. Switch it on: Settings, Phones and tablets`,
      exitCodes.input,
    );
  const { code, expiresAt } = (await answer.json()) as { code: string; expiresAt: string };
  const sharing = (await (await fetch(`${note.address}/api/sharing`)).json()) as {
    addresses: string[];
    fingerprint?: string;
  };
  const places = sharing.addresses.map((address) => `${address}/pair`).join(' or ');
  const certificate = sharing.fingerprint ? `SHA-256 of the certificate: ${sharing.fingerprint}\n` : '';
  return `Code ${code}, for one device until ${expiresAt}${places && `, at ${places}`}\n${certificate}`;
}
