import { npmOutput } from './npm.mjs';

/**
 * What the registry knows against the packages that are shipped; those of development run on no builder's machine.
 * `answer` is undefined where the registry gave none.
 */
export function auditDependencies() {
  const { stdout = '' } = npmOutput('audit', '--omit=dev', '--json');
  return readAudit(stdout);
}

/** @param {string} text npm's own JSON, or whatever came in its place */
export function readAudit(text) {
  try {
    const { metadata, vulnerabilities } = JSON.parse(text);
    const { high, critical, total } = metadata.vulnerabilities;
    const named = Object.values(vulnerabilities).map(({ name, severity }) => `${name} (${severity})`);
    return { answer: `${total} known: ${named.join(', ') || 'none'}`, high: high + critical };
  } catch {
    return { answer: undefined, high: 0 };
  }
}
