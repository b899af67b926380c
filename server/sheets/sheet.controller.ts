import { Controller, Get, Header, Param, Query, Req, StreamableFile } from '@nestjs/common';
import type { RequestOfViewer } from '../api/session.middleware.js';
import { SHEET_LANGUAGES } from './field-sheet.js';
import { SheetService } from './sheet.service.js';

/** Paper for the field: plain pages, since a browser opens and prints them by itself. */
@Controller('field-sheets')
export class SheetController {
  constructor(private readonly sheets: SheetService) {}

  @Get(':assignment.pdf')
  @Header('Cache-Control', 'private, no-cache')
  @Header('Vary', 'Accept-Language')
  async fieldSheet(
    @Req() request: RequestOfViewer,
    @Param('assignment') assignment: string,
    @Query('paper') paper = 'a4',
    @Query('lang') asked?: string,
  ): Promise<StreamableFile> {
    // Where the browser asks for no language that there is, English.
    const language = asked ?? (request.acceptsLanguages(Object.keys(SHEET_LANGUAGES)) || 'en');
    const pdf = await this.sheets.fieldSheet(request.viewer ?? null, assignment, paper, language);
    return new StreamableFile(pdf, {
      type: 'application/pdf',
      disposition: 'inline; filename="field-sheet.pdf"',
      length: pdf.length,
    });
  }
}
