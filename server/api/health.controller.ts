import { Controller, Get } from '@nestjs/common';
import { Database } from '../database/database.js';

/** For whoever watches the server. */
@Controller('health')
export class HealthController {
  constructor(private readonly database: Database) {}

  /** Answers once the database does. */
  @Get()
  async health(): Promise<{ readonly status: 'ok' }> {
    await this.database.read.count.count();
    return { status: 'ok' };
  }
}
