import { Controller, Get, Header, Param, Query, Req, StreamableFile } from '@nestjs/common';
import type { RequestOfViewer } from '../api/session.middleware.js';
import { SheetService } from './sheet.service.js';

/** Paper for the field: plain pages, since a browser opens and prints them by itself. */
@Controller('field-sheets')
export class SheetController {
  constructor(private readonly sheets: SheetService) {}

  @Get(':assignment.pdf')
  @Header('Cache-Control', 'private, no-cache')
  async fieldSheet(
    @Req() request: RequestOfViewer,
    @Param('assignment') assignment: string,
    @Query('paper') paper?: string,
  ): Promise<StreamableFile> {
    const pdf = await this.sheets.fieldSheet(request.viewer ?? null, assignment, paper ?? 'a4');
    return new StreamableFile(pdf, {
      type: 'application/pdf',
      disposition: 'inline; filename="field-sheet.pdf"',
      length: pdf.length,
    });
  }
}
