import { afterAll, beforeAll, expect, it } from 'vitest';
import { readPdf } from '../support/read-pdf.js';
import { TestApp } from '../support/start-app.js';
import { planTestCount, type TestCount } from '../support/test-count.js';

let app: TestApp;
let count: TestCount;
let sheet: string;

beforeAll(async () => {
  app = await TestApp.start();
  count = await planTestCount(app, { assignments: [['ola', ['s1', 's2']]] });
  const { count: planned } = await count.as.ola.ask<{ count: { assignments: { id: string }[] } }>(
    'query ($id: ID!) { count(id: $id) { assignments { id } } }',
    { id: count.id },
  );
  sheet = `/field-sheets/${planned.assignments[0]?.id ?? ''}.pdf`;
});

afterAll(() => app.stop());

const bytesOf = async (response: Response) => new Uint8Array(await response.arrayBuffer());

it('an observer prints the sheet of their own assignment, on A4 unless they say letter', async () => {
  const response = await count.as.ola.get(sheet);
  expect(response.status).toBe(200);
  expect(response.headers.get('content-type')).toBe('application/pdf');
  expect(response.headers.get('cache-control')).toContain('private');
  const [page] = readPdf(await bytesOf(response));
  expect([page?.width, page?.height]).toEqual([595.28, 841.89]);
  expect(page?.texts).toContain('North Bay, Mill Reach');
  expect(page?.texts).toContain('Ola Ferrant');
  const [letter] = readPdf(await bytesOf(await count.as.ola.get(`${sheet}?paper=letter`)));
  expect([letter?.width, letter?.height]).toEqual([612, 792]);
});

it('is in the language that the link says, else in the browser’s, else in English', async () => {
  const titleOf = async (query: string, accepted?: string): Promise<string | undefined> => {
    const headers = accepted === undefined ? {} : { 'accept-language': accepted };
    const response = await count.as.ola.get(sheet + query, headers);
    expect(response.headers.get('vary')).toContain('Accept-Language');
    return readPdf(await bytesOf(response))[0]?.texts[0];
  };
  expect(await titleOf('')).toBe('Field sheet');
  expect(await titleOf('?lang=fr', 'en')).toBe('Fiche de terrain');
  expect(await titleOf('?lang=en', 'fr')).toBe('Field sheet');
  // RFC 9110, 12.5.4: the weights decide, and a range without its region stands for all of them.
  expect(await titleOf('', 'en;q=0.4, fr-CA, fr;q=0.9')).toBe('Fiche de terrain');
  expect(await titleOf('', 'de, fr;q=0.2, en;q=0.7')).toBe('Field sheet');
  expect(await titleOf('', 'de')).toBe('Field sheet');
});

it('so does the leader of the count, and nobody else', async () => {
  expect((await count.as.lea.get(sheet)).status).toBe(200);
  const others = await count.as.pia.get(sheet);
  expect(others.status).toBe(404);
  expect(await others.text()).toContain('whose field sheet is yours to print');
  const compiler = await count.as.kim.get(sheet);
  expect(compiler.status).toBe(403);
  expect(await compiler.text()).toBe(
    'You may not print field sheets of this count: you take part as compiler.',
  );
  const nobody = await app.client().get(sheet);
  expect(nobody.status).toBe(401);
  expect(await nobody.text()).toContain('Nobody is signed in');
});

it('an unknown assignment, paper or language is refused in words, and never answered with a page of the app', async () => {
  const unknown = await count.as.ola.get('/field-sheets/none.pdf');
  expect(unknown.status).toBe(404);
  expect(unknown.headers.get('content-type')).toContain('text/plain');
  const paper = await count.as.ola.get(`${sheet}?paper=a5`);
  expect(paper.status).toBe(400);
  expect(await paper.text()).toBe('There is no field sheet for paper "a5". Expected a4 or letter.');
  const language = await count.as.ola.get(`${sheet}?lang=de`);
  expect(language.status).toBe(400);
  expect(await language.text()).toBe(
    'There is no field sheet in the language "de". Expected en or fr.',
  );
  expect((await count.as.ola.get('/field-sheets/none.txt')).status).toBe(404);
});
