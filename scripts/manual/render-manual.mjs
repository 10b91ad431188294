/**
 * The manual's Markdown as pages of the program: headings, paragraphs, lists, pictures, links, bold and keys, which is
 * all that docs/manual uses. The repository's reader shows the same files; decision 33 says why this is no library.
 */

/** `readings.md` as a whole page; `pages` are all of them, for the way through. */
export function renderPage(file, markdown, pages) {
  const title = /^# (.+)$/m.exec(markdown)?.[1] ?? 'Manual';
  const at = pages.indexOf(file);
  const next = pages[at + 1];
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(title)} · Fairbend</title><link rel="stylesheet" href="/manual/manual.css"></head><body>`,
    '<nav><a href="/">Shelf</a> <a href="/manual/index.html">Manual</a></nav>',
    `<main>${renderBlocks(markdown)}</main>`,
    next ? `<nav><a href="${htmlName(next)}">Next page</a></nav>` : '',
    '</body></html>\n',
  ].join('\n');
}

/** The manual's first page is the folder's README. */
export function htmlName(file) {
  return file === 'README.md' ? 'index.html' : file.replace(/\.md$/, '.html');
}

export function renderBlocks(markdown) {
  return markdown
    .trim()
    .split(/\n{2,}/)
    .map(renderBlock)
    .join('\n');
}

function renderBlock(block) {
  const heading = /^(#{1,3}) (.+)$/.exec(block);
  if (heading) return `<h${heading[1].length}>${inline(heading[2])}</h${heading[1].length}>`;
  const lines = block.split('\n');
  if (lines.every((line) => line.startsWith('- '))) return list('ul', lines, /^- /);
  if (lines.every((line) => /^\d+\. /.test(line))) return list('ol', lines, /^\d+\. /);
  if (lines.every((line) => line.startsWith('> '))) {
    return `<aside>${inline(lines.map((line) => line.slice(2)).join(' '))}</aside>`;
  }
  if (lines.length === 1 && /^!\[[^\]]*\]\([^)]+\)$/.test(block)) return `<figure>${inline(block)}</figure>`;
  return `<p>${inline(lines.join(' '))}</p>`;
}

function list(tag, lines, mark) {
  return `<${tag}>${lines.map((line) => `<li>${inline(line.replace(mark, ''))}</li>`).join('')}</${tag}>`;
}

function inline(text) {
  return escaped(text)
    .replace(/!\[([^\]]*)\]\(([^)\s]+)\)/g, '<img src="$2" alt="$1">')
    .replace(
      /\[([^\]]+)\]\(([^)\s]+)\)/g,
      (_, words, to) => `<a href="${/^[\w-]+\.md$/.test(to) ? htmlName(to) : to}">${words}</a>`,
    )
    .replace(/\*\*([^*]+)\*\*/g, '<strong>$1</strong>')
    .replace(/`([^`]+)`/g, '<kbd>$1</kbd>');
}

function escaped(text) {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
}
