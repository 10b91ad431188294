import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { manualFiles } from './scripts/manual/manual-files.mjs';

export default defineConfig({
  root: fileURLToPath(new URL('src/web', import.meta.url)),
  plugins: [react(), manual(), serviceWorker()],
  worker: { format: 'es' },
  build: {
    outDir: fileURLToPath(new URL('dist/web', import.meta.url)),
    emptyOutDir: true,
    // The content security policy takes scripts, fonts and pictures from files of this server alone.
    assetsInlineLimit: 0,
    target: 'es2022',
    // The page comes from this computer or its own network; the PDF writer is a chunk of its own already.
    chunkSizeWarningLimit: 1000,
  },
});

/** The builder's manual, rendered from the same Markdown that the repository shows. */
function manual(): Plugin {
  const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
  return {
    name: 'manual',
    generateBundle() {
      for (const file of manualFiles(at('docs/manual'), at('scripts/manual/manual.css'))) {
        this.emitFile({ type: 'asset', ...file });
      }
    },
  };
}

/** The service worker with the list of what it keeps: all of the page but the fonts that a shop added. */
function serviceWorker(): Plugin {
  const beside = ['/', '/icon.svg', '/icon-192.png', '/icon-512.png', '/manifest.webmanifest'];
  return {
    name: 'service-worker',
    // Last: a chunk that held nothing but styles is gone by then.
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const built = Object.keys(bundle).filter(
          (file) => file.startsWith('assets/') && !/noto-sans/.test(file),
        );
        const files = [...beside, ...built.map((file) => `/${file}`)].sort();
        // The page itself has no hash in its name, but names its files, which have.
        const version = createHash('sha256').update(files.join()).digest('hex').slice(0, 16);
        const source = readFileSync(new URL('src/web/offline/service-worker.js', import.meta.url), 'utf8');
        const filled = source.replace('__FILES__', JSON.stringify(files)).replace('__VERSION__', version);
        this.emitFile({ type: 'asset', fileName: 'service-worker.js', source: filled });
      },
    },
  };
}
