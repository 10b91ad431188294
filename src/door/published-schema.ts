import { z } from 'zod';
import { operations } from './operations.ts';
import { failed, refused } from './shapes/measures.ts';

/** The request of any operation, and its answer, as JSON Schema (draft 2020-12): docs/schema/engine-*.schema.json. */
export function publishedSchemas(): { request: object; answer: object } {
  const all = Object.entries(operations);
  const request = z.union(all.map(([, { request: shape }]) => shape) as [z.ZodType, z.ZodType]);
  const definitions = Object.fromEntries(
    all.map(([name, { answer: shape }]) => [name, toJson(z.union([shape, refused, failed]))]),
  );
  return {
    request: {
      ...toJson(request),
      title: 'Fairbend engine request',
      description:
        'One line of input. SI units. Tables ascend in fromTipM; guides run from the tip down; see the engine door’s page for what is refused beyond this shape.',
    },
    answer: {
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: 'Fairbend engine answer',
      description: 'One line of output, by the operation it answers.',
      $defs: definitions,
      anyOf: all.map(([name]) => ({ $ref: `#/$defs/${name}` })),
    },
  };
}

function toJson(shape: z.ZodType): object {
  return z.toJSONSchema(shape, { unrepresentable: 'any', io: 'input' });
}
