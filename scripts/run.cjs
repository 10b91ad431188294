'use strict';
// `node scripts/run.cjs NAME …` runs scripts/NAME.mjs on a Node that is new enough: this one, or one from npm.
// Plain old syntax: an old Node must be able to read this file.
const path = require('node:path');
const { newEnough, words } = require('./boot/node-versions.cjs');

async function run(name, parameters) {
  const script = path.join(__dirname, `${name}.mjs`);
  if (newEnough(process.versions.node)) {
    process.argv.splice(1, 2, script);
    return import(require('node:url').pathToFileURL(script).href);
  }
  if (parseInt(process.versions.node, 10) < 18) throw new Error(words(process.versions.node));
  const { fetchedNode } = await import('./boot/fetched-node.mjs');
  const { runOn } = await import('./boot/run-on.mjs');
  await runOn(await fetchedNode(), [script].concat(parameters));
}

run(process.argv[2], process.argv.slice(3)).catch((error) => {
  console.error(process.env.DEBUG ? error : `\n${error.message}`);
  process.exitCode = 1;
});
