import { Injectable } from '@nestjs/common';
import type * as Api from '../api/generated/schema.js';
import { saidIn } from '../core/model/saying.js';
import { countChain } from '../database/audit-log.js';
import { Database } from '../database/database.js';
import { personView } from '../plans/plan.view.js';
import { allowedIn, type CountAccess } from '../plans/count-access.js';
import { checkAudit } from './audit-check.js';
import { auditText } from './audit-text.js';

const MOST_ENTRIES = 500;

@Injectable()
export class AuditService {
  constructor(private readonly database: Database) {}

  /**
   * A page of a count's audit trail, newest first, and whether the whole of it is intact.
   *
   * @param before only entries with a lower seq
   * @throws Refusal NOT_ALLOWED, NOT_NOW
   */
  async trail(access: CountAccess, first: number, before: number | null): Promise<Api.AuditTrail> {
    allowedIn(access, 'SEE_AUDIT');
    const { record } = access;
    const entries = await this.database.read.auditEntry.findMany({
      where: { chain: countChain(record.id) },
      orderBy: { seq: 'asc' },
    });
    const findings = await checkAudit(this.database.read, record.id, entries);
    const page = entries
      .filter(({ seq }) => before === null || seq < before)
      .reverse()
      .slice(0, Math.min(Math.max(first, 0), MOST_ENTRIES));
    return {
      size: entries.length,
      intact: findings.length === 0,
      entries: page.map((entry) => ({
        seq: entry.seq,
        at: entry.at,
        by: entry.byId === null ? null : personView(record, entry.byId),
        act: entry.act,
        text: saidIn(auditText(record, entry), access.viewer.wording),
        body: entry.body,
        hash: entry.hash,
        previous: entry.previous,
      })),
    };
  }
}
