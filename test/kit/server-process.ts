import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Compiles the server where a source is newer; what other folders lack does not matter here. */
export function compileServer(): void {
  const compiler = `${root}node_modules/typescript/bin/tsc`;
  spawnSync(process.execPath, [compiler, '-b', 'src/server'], { cwd: root });
  if (!existsSync(`${root}dist/server/serve.js`)) throw new Error('dist/server/serve.js was not compiled');
}

export interface ServerProcess {
  address: string;
  child: ChildProcess;
  /** Ends it by the signal and waits until it is gone; answers its exit code. */
  end(signal: NodeJS.Signals): Promise<number | null>;
}

/** A server in a process of its own, on a free port. */
export function startServer(
  dataFolder: string,
  options: { databaseUrl?: string } = {},
): Promise<ServerProcess> {
  const program = `
    const { serve } = await import(${JSON.stringify(`${root}dist/server/serve.js`)});
    const server = await serve(${JSON.stringify({ dataFolder, port: 0, ...options })});
    console.log('listening ' + server.address);
    process.once('SIGTERM', async () => { await server.close(); process.exit(0); });
  `;
  const child = spawn(process.execPath, ['--input-type=module', '-e', program], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const gone = new Promise<number | null>((resolve) => child.once('exit', resolve));
  return new Promise((resolve, reject) => {
    let errors = '';
    child.stderr!.on('data', (text) => {
      errors += text;
    });
    child.stdout!.on('data', (text) => {
      const [, address] = /listening (\S+)/.exec(String(text)) ?? [];
      if (!address) return;
      const end = (signal: NodeJS.Signals) => {
        child.kill(signal);
        return gone;
      };
      resolve({ address, child, end });
    });
    void gone.then((code) => reject(new Error(`The server ended with ${code}: ${errors}`)));
  });
}

/** Random numbers in [0, 1) from a seed (mulberry32, Tommy Ettinger, public domain). */
export function seededRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
