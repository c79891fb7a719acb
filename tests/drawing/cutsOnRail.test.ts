import { describe, expect, it } from 'vitest';
import { wordsOf } from '../../src/documents/words/index.ts';
import { drawCutPlan } from '../../src/drawing/index.ts';
import type { CutGuide } from '../../src/model/stock.ts';
import { measure } from './drawingTools.ts';
import { stripPlan } from './planFixtures.ts';

/** All texts of a cut plan with a strip of 149.9 mm and one of 180 mm, sawn with a saw that is guided in this way. */
function textsOf(guidedBy: CutGuide | undefined, language: 'en' | 'de' = 'en'): string[] {
  const { group, sheet } = stripPlan([
    { name: 'side', size: [720, 560] },
    { name: 'wide bar', size: [720, 180] },
    { name: 'bar', size: [720, 149.9] },
  ]);
  if (guidedBy !== undefined) group.saw.guidedBy = guidedBy;
  const words = wordsOf(language).drawings;
  const pages = drawCutPlan(group, sheet, { measure, words, job: 'box' });
  return pages.flatMap(({ shapes }) =>
    shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])),
  );
}

describe('a cut plan for a saw on a rail', () => {
  it('speaks of the rail and never of fence or push stick, in both languages', () => {
    const en = textsOf('rail').join(' ');
    expect(en).toContain('rail from left or lower edge as drawn');
    expect(en).toContain('Lay the rail on the side measured from');
    expect(en).not.toMatch(/fence|push/i);
    const de = textsOf('rail', 'de').join(' ');
    expect(de).toContain('Schiene ab der linken oder unteren Kante im Bild');
    expect(de).toContain('Schiene auf die Seite legen, von der gemessen wird');
    expect(de).not.toMatch(/Anschlag|Schieb/i);
  });

  it('marks what is too narrow to bear the rail', () => {
    const marked = (guidedBy: CutGuide) => textsOf(guidedBy).filter((text) => /^▲ \d/.test(text));
    expect(marked('fence')).toEqual(['▲ 149.9']);
    expect(marked('rail')).toEqual(['▲ 180.0', '▲ 149.9']);
    expect(textsOf('rail').join(' ')).toContain('2 such cuts here.');
  });

  it('is drawn for a fence where a plan does not say what guides the saw', () => {
    expect(textsOf(undefined)).toEqual(textsOf('fence'));
    expect(textsOf(undefined).join(' ')).not.toMatch(/rail/);
  });

  it('breaks no heading of the table of cuts', () => {
    expect(textsOf('rail', 'de')).toEqual(expect.arrayContaining(['Nr.', 'Schnitt', 'Schiene', 'ergibt']));
    expect(textsOf('fence', 'de')).toContain('Anschlag');
  });
});
