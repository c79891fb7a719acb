import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { pdfFromDrawings } from '../../../cli/papers/pdfFromDrawings.ts';
import type { Drawing } from '../../../src/drawing/drawing.ts';
import { temporaryFolder } from '../../cli/temporaryFolder.ts';
import { plannedOrder } from '../../helpers/demoPlan.ts';
import { pdfText } from '../book/pdfText.ts';
import { codesOn, type GreyPicture, grown, paint, scanned } from './scan.ts';
import { allFormats, draw, stickersOf } from './stickerFixtures.ts';

/** Print resolution of common office printers, in dots per inch. */
const DPI = 300;
const PDF_PAINTER = '/usr/bin/pdftoppm';

const orders = (['demo-long', 'demo-short'] as const).map(
  (name) => [name, stickersOf(plannedOrder(name))] as const,
);
const usual = allFormats[0]!;

function part(page: GreyPicture, box: { x0: number; y0: number; x1: number; y1: number }): GreyPicture {
  const dot = (mm: number) => Math.max(0, Math.round((mm * DPI) / 25.4));
  const [x0, y0] = [dot(box.x0), dot(box.y0)];
  const width = Math.min(page.width, dot(box.x1)) - x0;
  const height = Math.min(page.height, dot(box.y1)) - y0;
  const grey = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    grey.set(page.grey.subarray((y0 + y) * page.width + x0, (y0 + y) * page.width + x0 + width), y * width);
  }
  return { width, height, grey };
}

/** A page of a PDF file as dots, painted by a program that is not ours. */
function paintedPage(pdf: string, page: number): GreyPicture {
  const args = ['-gray', '-r', String(DPI), '-f', String(page), '-l', String(page), pdf];
  const bytes = execFileSync(PDF_PAINTER, args, { maxBuffer: 1 << 28 });
  const [, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'))!;
  const size = Number(width) * Number(height);
  return { width: Number(width), height: Number(height), grey: bytes.subarray(bytes.length - size) };
}

async function writtenPdf(pages: readonly Drawing[]): Promise<string> {
  const path = join(temporaryFolder(), 'labels.pdf');
  writeFileSync(path, await pdfFromDrawings(pages, { title: 'labels', language: 'en' }));
  return path;
}

describe.each(orders)('the codes on the labels of %s', (_, stickers) => {
  const wanted = stickers.map(({ code }) => code);

  it('say which piece it is, every one of them, printed at 300 dpi', () => {
    const read = draw(stickers, usual).flatMap((page) =>
      codesOn(page).map((code) => scanned(paint(page, grown(code, 5), DPI))),
    );
    expect(read).toEqual(wanted);
  });

  it.skipIf(!existsSync(PDF_PAINTER))(
    'are read from the pages of the PDF file as another program paints them',
    async () => {
      const pages = draw(stickers, usual);
      const pdf = await writtenPdf(pages);
      const read = pages.flatMap((page, index) => {
        const painted = paintedPage(pdf, index + 1);
        return codesOn(page).map((code) => scanned(part(painted, grown(code, 5))));
      });
      expect(read).toEqual(wanted);
    },
    60_000,
  );
});

describe.each(allFormats)('a page of labels of $name', (format) => {
  const stickers = orders[1]![1].slice(-Math.min(5, format.columns * format.rows));

  it.skipIf(!existsSync(PDF_PAINTER))('can be scanned label by label, whatever else is on it', async () => {
    const page = draw(stickers, format)[0]!;
    const painted = paintedPage(await writtenPdf([page]), 1);
    const [width, height] = [format.labelMm[0], format.labelMm[1] ?? page.heightMm];
    const read = codesOn(page).map((code) => {
      // The label, as a phone sees it that is held over it.
      const right = code.x1 + (format.columns === 1 ? 0 : 3);
      const top = code.y0 - 3;
      return scanned(part(painted, { x0: right - width, y0: top, x1: right + 3, y1: top + height }));
    });
    expect(read).toEqual(stickers.map(({ code }) => code));
  });
});

describe('the PDF file of labels', () => {
  it('names every panel in letters that can be searched', async () => {
    const [, stickers] = orders[0]!;
    const pages = pdfText(readFileSync(await writtenPdf(draw(stickers, usual))));
    const perPage = usual.columns * usual.rows;
    stickers.forEach((sticker, index) => {
      const said = pages[Math.floor(index / perPage)]!.replace(/\s/g, '');
      for (const text of [sticker.code, sticker.mark + sticker.heading, sticker.lines[2]!.text]) {
        expect(said).toContain(text.replace(/\s/g, ''));
      }
    });
  });

  it('is the same byte for byte when it is made again, and has its letters inside', async () => {
    const [, stickers] = orders[0]!;
    const pdfs = await Promise.all([writtenPdf(draw(stickers, usual)), writtenPdf(draw(stickers, usual))]);
    const [first, second] = pdfs.map((path) => readFileSync(path));
    expect(first!.equals(second!)).toBe(true);
    expect(first!.toString('latin1')).toContain('/FontFile2');
  });
});
