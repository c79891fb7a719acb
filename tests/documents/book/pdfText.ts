import { inflateSync } from 'node:zlib';

/** Objects of a PDF file as this project writes it, by number: their text, with streams inflated. */
function objectsOf(pdf: Uint8Array): Map<number, string> {
  const raw = Buffer.from(pdf).toString('latin1');
  const objects = new Map<number, string>();
  for (const match of raw.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) {
    const body = match[2]!;
    const at = body.indexOf('stream\n');
    if (at < 0) objects.set(Number(match[1]), body);
    else {
      const bytes = Buffer.from(body.slice(at + 7, body.lastIndexOf('\nendstream')), 'latin1');
      const data = body.includes('/FlateDecode') ? inflateSync(bytes) : bytes;
      objects.set(Number(match[1]), `${body.slice(0, at)}stream\n${data.toString('latin1')}`);
    }
  }
  return objects;
}

/** Letters by glyph number of one font, from its ToUnicode map (ISO 32000-1, 9.10.3). */
function lettersOf(map: string): string[] {
  const letters: string[] = [];
  for (const range of map.matchAll(/<([0-9a-f]{4})> <[0-9a-f]{4}> \[((?:<[0-9a-f ]+> ?)+)\]/g)) {
    [...range[2]!.matchAll(/<([0-9a-f ]+)>/g)].forEach((found, index) => {
      const units = found[1]!.split(' ').map((unit) => Number.parseInt(unit, 16));
      letters[Number.parseInt(range[1]!, 16) + index] = String.fromCharCode(...units);
    });
  }
  return letters;
}

/** The texts of each page of a PDF file as this project writes it, one line a text, in the order they are drawn. */
export function pdfText(pdf: Uint8Array): string[] {
  const objects = objectsOf(pdf);
  const ref = (text: string, key: string) => Number(new RegExp(`/${key} (\\d+) 0 R`).exec(text)?.[1]);
  const pages = [...objects.values()].filter((body) => /\/Type \/Page\b(?!s)/.test(body));
  return pages.map((page) => {
    const resources = objects.get(ref(page, 'Resources'))!;
    const fonts = new Map(
      [...resources.matchAll(/\/(F\d+) (\d+) 0 R/g)].map((found) => {
        const font = objects.get(Number(found[2]))!;
        return [found[1]!, lettersOf(objects.get(ref(font, 'ToUnicode'))!)] as const;
      }),
    );
    let letters: string[] = [];
    const lines: string[] = [];
    const content = objects.get(ref(page, 'Contents'))!;
    for (const found of content.matchAll(/\/(F\d+) [\d.]+ Tf|\[([^\]]*)\] TJ/g)) {
      if (found[1] !== undefined) letters = fonts.get(found[1]) ?? [];
      else {
        const glyphs = [...found[2]!.matchAll(/<([0-9a-f]+)>/g)].flatMap(
          (hex) => hex[1]!.match(/.{4}/g) ?? [],
        );
        lines.push(glyphs.map((glyph) => letters[Number.parseInt(glyph, 16)] ?? '').join(''));
      }
    }
    return lines.join('\n');
  });
}
