import { type ChildProcess, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { ServeOptions } from '../../src/server/serve.ts';

/** A server that collects its garbage and tells what is left whenever it is asked. */
export class WatchedServer {
  readonly address: string;
  private readonly child: ChildProcess;

  private constructor(address: string, child: ChildProcess) {
    this.address = address;
    this.child = child;
  }

  static async start(options: ServeOptions): Promise<WatchedServer> {
    const module = fileURLToPath(new URL('../../dist/server/serve.js', import.meta.url));
    const program = `
      const { Server } = await import('node:http');
      const { serve } = await import(${JSON.stringify(module)});
      const kept = (globalThis.kept = []);
      let leaks = false;
      const { emit } = Server.prototype;
      Server.prototype.emit = function (event, request, ...more) {
        if (leaks && event === 'request') kept.push(request);
        return emit.call(this, event, request, ...more);
      };
      const server = await serve(${JSON.stringify({ ...options, port: 0 })});
      process.on('message', (message) => {
        leaks ||= message === 'leak';
        for (let times = 0; times < 3; times++) globalThis.gc();
        const { heapUsed, arrayBuffers } = process.memoryUsage();
        process.send(heapUsed + arrayBuffers);
      });
      process.send(server.address);`;
    const child = spawn(process.execPath, ['--expose-gc', '--input-type=module', '-e', program], {
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    });
    return new WatchedServer((await messageOf(child)) as string, child);
  }

  heldBytes(): Promise<number> {
    return this.tell('look');
  }

  /** From now on it keeps every request, a mistake as they are made. */
  leak(): Promise<number> {
    return this.tell('leak');
  }

  private async tell(message: string): Promise<number> {
    const told = messageOf(this.child);
    this.child.send(message);
    return (await told) as number;
  }

  end(): Promise<unknown> {
    if (this.child.exitCode !== null) return Promise.resolve();
    const gone = new Promise((resolve) => this.child.once('exit', resolve));
    this.child.kill('SIGKILL');
    return gone;
  }
}

function messageOf(child: ChildProcess): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const onExit = (code: number | null) => reject(new Error(`The server ended with ${code}`));
    child.once('exit', onExit);
    child.once('message', (message) => {
      child.off('exit', onExit);
      resolve(message);
    });
  });
}
