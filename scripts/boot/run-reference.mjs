import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { inRoot, root } from './root.mjs';

/** Bundles one TypeScript file of reference/ with all it imports, so that it runs as fast as what is shipped. */
export async function importReference(name) {
  process.chdir(root);
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: inRoot('reference', `${name}.ts`),
      outDir: inRoot('dist', 'reference', name),
      target: 'node22',
      minify: false,
    },
  });
  return import(pathToFileURL(inRoot('dist', 'reference', name, `${name}.js`)).href);
}
