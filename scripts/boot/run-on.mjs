import { spawn } from 'node:child_process';
import { fetchedNpm } from './fetched-node.mjs';

/** Goes on in another Node, in this process's place as far as can be: its input, output, signals and end. */
export function runOn(node, parameters) {
  const environment = { ...process.env, npm_execpath: fetchedNpm, npm_node_execpath: node };
  const child = spawn(node, parameters, { stdio: 'inherit', env: environment });
  // Ctrl-C reaches both; the child decides what it means.
  process.on('SIGINT', () => undefined);
  for (const signal of ['SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code, signal) => {
      process.exitCode = code ?? 1;
      if (signal) console.error(`Ended by ${signal}.`);
      resolve();
    });
  });
}
