import { issueFinding } from './issue-words.ts';
import { operations } from './operations.ts';
import { inWords, type Refused, refuse } from './refusal.ts';

/** Most findings of one request that are reported. */
const mostFindings = 50;

/** The answer to one request, whatever it is; never throws. */
export async function answerRequest(request: unknown): Promise<object> {
  const op = opOf(request);
  if ('status' in op) return op;
  const operation = operations[op.name];
  const shaped = operation.request.safeParse(request);
  if (!shaped.success) {
    const findings = shaped.error.issues.slice(0, mostFindings).map((issue) => issueFinding(issue, request));
    return refuse(findings);
  }
  try {
    return finiteOrFailed(inWords(await operation.run(shaped.data)));
  } catch (error) {
    return { status: 'failed', reason: error instanceof Error ? error.message : String(error) };
  }
}

function opOf(request: unknown): { name: string } | Refused {
  if (request === null || typeof request !== 'object' || Array.isArray(request)) {
    return refuse([{ path: '', message: 'a request is one JSON object a line, such as {"op":"bend",...}' }]);
  }
  const name = (request as { op?: unknown }).op;
  if (typeof name === 'string' && Object.hasOwn(operations, name)) return { name };
  const said = name === undefined ? 'missing' : (JSON.stringify(name) ?? '').slice(0, 60);
  const known = Object.keys(operations).join(', ');
  return refuse([{ path: 'op', message: `op is ${said}; give one of ${known}` }]);
}

/** JSON has no NaN and no infinity: an answer that holds one is no answer. */
function finiteOrFailed(answer: object): object {
  const place = firstNotFinite(answer, '');
  if (place === undefined) return answer;
  const reason = `the numbers of this request overflow (at ${place}); bring its lengths, stiffness and loads nearer to those of a rod`;
  return { status: 'failed', reason };
}

function firstNotFinite(value: unknown, path: string): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : path;
  if (value === null || typeof value !== 'object') return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = firstNotFinite(inner, `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
