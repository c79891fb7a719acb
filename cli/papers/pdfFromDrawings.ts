import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Drawing } from '../../src/pipeline/makeBook.ts';

const require = createRequire(import.meta.url);
const POINTS_PER_MM = 72 / 25.4;

type Shape = Drawing['shapes'][number];
type Stroke = Extract<Shape, { kind: 'line' }>['stroke'];
type Pdf = PDFKit.PDFDocument;

function mm(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function setStroke(pdf: Pdf, stroke: Stroke): void {
  pdf.lineWidth(stroke.widthMm).strokeColor('black');
  if (stroke.dashMm.length === 0) pdf.undash();
  // The published type knows one dash and one gap; the method takes them all.
  else pdf.dash([...stroke.dashMm] as never, {});
}

/** A tone from 0 (white) to 1 (black) as PDF's grey written in red, green and blue. */
function grey(tone: number): [number, number, number] {
  const part = Math.round(255 * (1 - tone));
  return [part, part, part];
}

/** A text is one line whose width nobody asks for again: given one, pdfkit does not work it out. */
const ON_ONE_LINE = { lineBreak: false, baseline: 'alphabetic', textWidth: 0, wordCount: 1 } as const;

function drawText(pdf: Pdf, shape: Extract<Shape, { kind: 'text' }>): void {
  pdf.font(shape.weight).fontSize(shape.sizeMm).fillColor('black');
  const before = { start: 0, middle: shape.widthMm / 2, end: shape.widthMm }[shape.anchor];
  const turned = shape.reads === 'up';
  if (turned) {
    pdf.save();
    pdf.rotate(-90, { origin: [mm(shape.x), mm(shape.y)] });
  }
  pdf.text(shape.text, mm(shape.x - before), mm(shape.y), ON_ONE_LINE as PDFKit.Mixins.TextOptions);
  if (turned) pdf.restore();
}

function drawShape(pdf: Pdf, shape: Shape): void {
  switch (shape.kind) {
    case 'line':
      setStroke(pdf, shape.stroke);
      pdf.moveTo(mm(shape.x0), mm(shape.y0)).lineTo(mm(shape.x1), mm(shape.y1)).stroke();
      return;
    case 'lines':
      setStroke(pdf, shape.stroke);
      for (const [x0, y0, x1, y1] of shape.segments) pdf.moveTo(mm(x0), mm(y0)).lineTo(mm(x1), mm(y1));
      pdf.stroke();
      return;
    case 'rect': {
      const { x0, y0, x1, y1 } = shape.box;
      const path = () =>
        shape.radiusMm > 0
          ? pdf.roundedRect(mm(x0), mm(y0), mm(x1 - x0), mm(y1 - y0), shape.radiusMm)
          : pdf.rect(mm(x0), mm(y0), mm(x1 - x0), mm(y1 - y0));
      if (shape.fill !== null) path().fillColor(grey(shape.fill)).fill();
      if (shape.stroke !== null) {
        setStroke(pdf, shape.stroke);
        path().stroke();
      }
      return;
    }
    case 'rects':
      for (const { x0, y0, x1, y1 } of shape.boxes) pdf.rect(mm(x0), mm(y0), mm(x1 - x0), mm(y1 - y0));
      pdf.fillColor(grey(shape.fill)).fill();
      return;
    case 'polygon':
      pdf
        .polygon(...shape.points.map(([x, y]) => [mm(x), mm(y)]))
        .fillColor(grey(shape.fill))
        .fill();
      return;
    case 'circle':
      setStroke(pdf, shape.stroke);
      pdf.circle(mm(shape.x), mm(shape.y), mm(shape.radiusMm)).stroke();
      return;
    case 'text':
      drawText(pdf, shape);
      return;
    default:
      shape satisfies never;
  }
}

function collect(pdf: Pdf): Promise<Uint8Array> {
  return new Promise((settle, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on('end', () => settle(Buffer.concat(chunks)));
    pdf.on('error', reject);
  });
}

/**
 * Drawings as the pages of one PDF file, in true size and as vectors, with the letters used of each font inside. Its
 * date is fixed, so that the same drawings give the same bytes. Takes some 100 ms to load what it needs.
 */
export async function pdfFromDrawings(
  pages: readonly Drawing[],
  about: { readonly title: string; readonly language: string },
): Promise<Uint8Array> {
  const [{ default: PDFDocument }, regular, bold] = await Promise.all([
    import('pdfkit'),
    readFile(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf')),
    readFile(require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf')),
  ]);
  const fixedDate = new Date(Date.UTC(2000, 0, 1));
  const pdf = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    lang: about.language,
    displayTitle: true,
    info: {
      Title: about.title,
      Creator: 'plywright',
      Producer: 'plywright',
      CreationDate: fixedDate,
      ModDate: fixedDate,
    },
    font: null as never,
  });
  const done = collect(pdf);
  pdf.registerFont('regular', regular as never);
  pdf.registerFont('bold', bold as never);
  for (const page of pages) {
    pdf.addPage({ size: [page.widthMm * POINTS_PER_MM, page.heightMm * POINTS_PER_MM], margin: 0 });
    pdf.scale(POINTS_PER_MM);
    for (const shape of page.shapes) drawShape(pdf, shape);
  }
  pdf.end();
  return done;
}
