import { createRequire } from 'node:module';

const { newEnough } = createRequire(import.meta.url)('./node-versions.cjs');
if (!newEnough(process.versions.node)) {
  console.error(
    `Node ${process.versions.node} is too old to run this by hand. Use npm start, npm test or, for a tool, "npm run --silent tool -- vitest run FILE": they fetch a newer Node.`,
  );
  process.exit(1);
}
