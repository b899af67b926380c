import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sealed, trail } from '../support/sealed-count.js';
import { TestApp } from '../support/start-app.js';

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

const sha256 = (bytes: Uint8Array | string): Buffer => createHash('sha256').update(bytes).digest();

describe('the audit trail', () => {
  it('tells every act in order, each entry naming the one before', async () => {
    const { count } = await sealed(app);
    const { entries, size } = await trail(count.as.lea, count.id);
    const inOrder = [...entries].reverse();
    expect(inOrder.map(({ act }) => act)).toEqual([
      'count.plan',
      'assignment.make',
      'assignment.make',
      'tally.submit',
      'tally.submit',
      'window.close',
      'ruling.give',
      'count.sign-off',
      'count.sign-off',
      'count.seal',
    ]);
    expect(size).toBe(10);
    inOrder.forEach((entry, index) => {
      expect(entry.previous).toBe(inOrder[index - 1]?.hash ?? '0'.repeat(64));
      expect(entry.hash).toBe(sha256(entry.body).toString('hex'));
      expect(JSON.parse(entry.body)).toMatchObject({ seq: index + 1, previous: entry.previous });
    });
    expect(inOrder[3]?.text).toMatch(/^Ola Ferrant submitted tally .+ for s1 in window w1\.$/);
  });

  it('comes in pages', async () => {
    const { count } = await sealed(app);
    const { count: found } = await count.as.lea.ask<{
      count: { auditTrail: { entries: { seq: number }[] } };
    }>(
      'query ($id: ID!) { count(id: $id) { auditTrail(first: 3, before: 9) { entries { seq } } } }',
      { id: count.id },
    );
    expect(found.auditTrail.entries.map(({ seq }) => seq)).toEqual([8, 7, 6]);
  });

  // Each of these is what someone with the disk in hand could do, triggers taken off first.
  const tampering = {
    'a changed number': 'UPDATE tally_line SET number = number + 1 WHERE countId = ?',
    'a changed note': "UPDATE tally_line SET note = 'x' WHERE countId = ?",
    'a changed scope': `UPDATE tally SET scope = '{"kind":"waterfowl"}' WHERE countId = ?`,
    'a changed reason of a ruling': "UPDATE ruling SET reason = 'x' WHERE countId = ?",
    'a changed setting': `UPDATE count SET protocol = replace(protocol, '"mean"', '"median"') WHERE id = ?`,
    'a moved section': "UPDATE section SET name = 'x' WHERE countId = ?",
    'a removed tally line': 'DELETE FROM tally_line WHERE countId = ?',
    'a removed window closing': 'DELETE FROM window_closing WHERE countId = ?',
    'a removed sign-off': "DELETE FROM sign_off WHERE role = 'leader' AND countId = ?",
    'a changed audit entry':
      "UPDATE audit_entry SET act = 'tally.correct' WHERE act = 'tally.submit' AND chain = 'count/' || ?",
    'a removed audit entry': "DELETE FROM audit_entry WHERE seq = 4 AND chain = 'count/' || ?",
    'a cut-off trail': "DELETE FROM audit_entry WHERE seq > 9 AND chain = 'count/' || ?",
    'a changed sealed result':
      "UPDATE seal SET result = replace(result, '900', '901') WHERE countId = ?",
    'a tally without an entry': `INSERT INTO tally SELECT countId, 'forged', 'uma', windowId, vantageId, '["s2"]', '["uma"]', start, "end", scope, coverage, 1, NULL, NULL, submittedAt, contentHash, samples, marks, conditions, seenArea FROM tally WHERE countId = ? LIMIT 1`,
  };
  for (const [what, statement] of Object.entries(tampering)) {
    it(`is not intact after ${what}`, async () => {
      const { count } = await sealed(app);
      expect((await trail(count.as.lea, count.id)).intact).toBe(true);
      app.onDisk((database) => {
        const triggers = database
          .prepare("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")
          .all() as { name: string; sql: string }[];
        for (const { name } of triggers) database.exec(`DROP TRIGGER "${name}"`);
        const { changes } = database.prepare(statement).run(count.id);
        for (const { sql } of triggers) database.exec(sql);
        expect(changes).toBeGreaterThan(0);
      });
      expect((await trail(count.as.kim, count.id)).intact).toBe(false);
    });
  }
});

describe('the tables of record', () => {
  it('refuse to be changed or emptied, and a sealed count takes no more rows', async () => {
    const { count } = await sealed(app);
    app.onDisk((database) => {
      database.pragma('foreign_keys = OFF');
      const tables = database
        .prepare("SELECT tbl_name FROM sqlite_master WHERE name LIKE '%\\_no\\_update' ESCAPE '\\'")
        .pluck()
        .all() as string[];
      expect(tables.sort()).toEqual([
        'audit_entry',
        'count',
        'count_window',
        'observer_query',
        'participant',
        'query_answer',
        'ruling',
        'ruling_second',
        'ruling_withdrawal',
        'seal',
        'section',
        'sign_off',
        'tally',
        'tally_line',
        'vantage',
        'view',
        'window_closing',
      ]);
      for (const table of ['audit_entry', 'count', 'tally', 'tally_line', 'ruling', 'seal']) {
        expect(() => database.exec(`UPDATE "${table}" SET rowid = rowid`)).toThrow('append-only');
        expect(() => database.exec(`DELETE FROM "${table}"`)).toThrow('append-only');
      }
      const insert = database.prepare(
        `INSERT INTO tally SELECT countId, 'late', observerId, windowId, vantageId, sections, party, start, "end", scope, coverage, 1, NULL, NULL, submittedAt, contentHash, samples, marks, conditions, seenArea FROM tally WHERE countId = ? LIMIT 1`,
      );
      expect(() => insert.run(count.id)).toThrow('sealed');
    });
  });
});
