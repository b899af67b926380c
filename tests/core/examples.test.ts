import { readdirSync, readFileSync } from 'node:fs';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';

const core = new URL('../../server/core/', import.meta.url);
const files = ['agree', 'consensus', 'math'].flatMap((folder) =>
  readdirSync(new URL(`${folder}/`, core), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => `${folder}/${file}`),
);

/** The examples of a file: `@example expression // its value`, both as JavaScript. */
function examplesOf(file: string): { expression: string; value: string }[] {
  const text = readFileSync(new URL(file, core), 'utf8');
  return [...text.matchAll(/@example (.+) \/\/ (.+)$/gm)].map(
    ([, expression = '', value = '']) => ({
      expression,
      value,
    }),
  );
}

describe('examples in the comments of the core give what they say', () => {
  const withExamples = files.filter((file) => examplesOf(file).length > 0);

  it('finds them', () => {
    expect(withExamples.length).toBeGreaterThan(20);
  });

  it.each(withExamples)('%s', async (file) => {
    const module = (await import(new URL(file, core).href)) as Record<string, unknown>;
    for (const { expression, value } of examplesOf(file)) {
      const found: unknown = runInNewContext(expression, { ...module, Float64Array });
      const said: unknown = runInNewContext(`(${value})`);
      if (typeof said === 'number') {
        const digits = value.includes('Math') ? 12 : (value.split('.')[1]?.length ?? 0);
        expect(found, expression).toBeCloseTo(said, Math.min(digits, 12));
      } else {
        // Through JSON, as objects of another context have other prototypes.
        expect(JSON.parse(JSON.stringify(found)), expression).toEqual(
          JSON.parse(JSON.stringify(said)),
        );
      }
    }
  });
});
