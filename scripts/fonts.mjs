import './boot/check-node.mjs';
import { existsSync } from 'node:fs';
import { npmIn } from './boot/npm.mjs';
import { orExplain } from './boot/or-explain.mjs';
import { inRoot, say } from './boot/root.mjs';

const help = `npm run fonts -- NAME …
Adds a font for the papers, beside the one for Latin, Greek, Cyrillic and Hebrew letters:
  jp   Japanese     sc   Chinese, simplified
  kr   Korean       tc   Chinese, traditional
About 80 MB on the disk each; a print embeds only the letters it uses. Start Fairbend anew afterwards.`;
const names = ['jp', 'sc', 'tc', 'kr'];

await orExplain(async () => {
  const wanted = process.argv.slice(2);
  if (wanted.length === 0 || wanted.includes('--help')) return console.log(help);
  const unknown = wanted.find((name) => !names.includes(name));
  if (unknown) throw new Error(`There is no font "${unknown}". There are: ${names.join(', ')}.`);
  for (const name of wanted) {
    const folder = inRoot('packaging', 'fonts', name);
    say(`Fetching the font ${name} …`);
    if (
      !npmIn(folder, 'ci', '--ignore-scripts') ||
      !existsSync(inRoot('packaging', 'fonts', name, 'node_modules'))
    )
      throw new Error('npm did not give it; its message stands above. Check the connection and try again.');
  }
  say('Done. Start Fairbend anew: its page is built with the fonts that are there.');
});
