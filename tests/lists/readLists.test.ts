import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainCell } from '../../src/basics/csvCells.ts';
import { composed, unreadablePart } from '../../src/basics/visibleText.ts';
import { readPanelList, readSheetList } from '../../src/lists/index.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Part } from '../../src/model/part.ts';
import type { SheetSupply } from '../../src/model/stock.ts';
import { mutations } from '../helpers/mutateText.ts';

function parts(text: string): readonly Part[] {
  const read = readPanelList(text, 'panels.csv');
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

function sheets(text: string): readonly SheetSupply[] {
  const read = readSheetList(text, 'sheets.csv');
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

function panelFindings(...rows: string[]): readonly Finding[] {
  return readPanelList(['name,length,width,count,grain', ...rows].join('\n'), 'panels.csv').findings;
}

describe('panels', () => {
  test('the fewest columns', () => {
    expect(parts('name,length,width\nside,600,300.5\n')).toEqual([
      {
        id: 'line-2',
        name: 'side',
        unit: '',
        order: '',
        board: '',
        finish: '',
        thicknessUm: 0,
        finishedLengthUm: 600_000,
        finishedWidthUm: 300_500,
        cutLengthUm: 600_000,
        cutWidthUm: 300_500,
        grain: 'none',
        edging: { alongLength: [null, null], alongWidth: [null, null] },
        count: 1,
      },
    ]);
  });

  test('all columns, in any order and case', () => {
    const text = [
      'Unit,EDGING_LENGTH_1,edging length 2,edging-width-1,edging width 2,finish,board,Thickness,grain,count,width,length,Name',
      'cupboard,oak,none,grey,-,pale  grey,birch ply,"3/4""",length,12,"11 13/16 in",600,side',
    ].join('\r\n');
    expect(parts(text)).toMatchObject([
      {
        unit: 'cupboard',
        board: 'birch ply',
        finish: 'pale grey',
        thicknessUm: 19_050,
        // 11 13/16 in = 300.0375 mm, to the nearest 0.1 mm
        cutLengthUm: 600_000,
        cutWidthUm: 300_000,
        grain: 'length',
        edging: { alongLength: ['oak', null], alongWidth: ['grey', null] },
        count: 12,
      },
    ]);
  });

  test('grain along the width swaps the figures, so that the length runs with the grain', () => {
    const text = 'name,length,width,grain,edging length 1,edging width 2\ndoor,400,700,width,a,b\n';
    expect(parts(text)).toMatchObject([
      {
        cutLengthUm: 700_000,
        cutWidthUm: 400_000,
        grain: 'length',
        edging: { alongLength: [null, 'b'], alongWidth: ['a', null] },
      },
    ]);
  });

  test('names that try the papers', () => {
    const names = ['6" "box"', '<b>&amp;', 'a,b;c', 'two\nlines', '=HYPERLINK("x")', "it's", '@x', '𝄞 ñ'];
    const rows = names.map((name) => `"${name.replaceAll('"', '""')}",1,1`);
    expect(parts(['name,length,width', ...rows].join('\r\n')).map((part) => part.name)).toEqual(names);
  });

  test('inch marks need no quotes', () => {
    expect(parts('name,length,width\nside,24",23 5/8"\n')).toMatchObject([
      { cutLengthUm: 609_600, cutWidthUm: 600_100 },
    ]);
  });

  test('line numbers count lines within quotes and blank lines', () => {
    const text = '\ufeffname,length,width\r\n"a\r\nb",1,1\r\n\r\n,,\r\nc,1,1\r\n';
    expect(parts(text).map((part) => part.id)).toEqual(['line-2', 'line-6']);
  });

  test('every kind of line end', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      expect(parts(['name,length,width', 'a,1,2', 'b,3,4'].join(end))).toHaveLength(2);
    }
  });

  test('semicolons and tabs are read with a warning', () => {
    for (const mark of [';', '\t']) {
      const read = readPanelList(`name;length;width\na, b;600.5;3\n`.replaceAll(';', mark), 'p.csv');
      expect(read.ok && read.value[0]).toMatchObject({ name: 'a, b', cutLengthUm: 600_500 });
      expect(read.findings).toMatchObject([{ code: 'csv-separator', severity: 'warning' }]);
    }
  });

  test.each<readonly [string, string, Partial<Finding>]>([
    ['no length', 'a,,1,,', { code: 'empty-cell' }],
    ['text for a length', 'a,six,1,,', { code: 'wrong-form', found: 'six' }],
    ['decimal comma', 'a,"600,5",1,,', { code: 'wrong-form', advice: expect.stringContaining('600.5') }],
    ['negative', 'a,-1,1,,', { code: 'out-of-range', found: '-1' }],
    ['zero', 'a,1,0,,', { code: 'out-of-range' }],
    ['too small to saw', 'a,1,0.04,,', { code: 'out-of-range' }],
    ['too long', 'a,100001,1,,', { code: 'out-of-range' }],
    ['exponent', 'a,1e3,1,,', { code: 'wrong-form' }],
    ['formula', 'a,=1+1,1,,', { code: 'wrong-form', found: '=1+1' }],
    ['count 0', 'a,1,1,0,', { code: 'out-of-range', message: expect.stringContaining('take the row out') }],
    ['count -2', 'a,1,1,-2,', { code: 'out-of-range' }],
    ['count 1.5', 'a,1,1,1.5,', { code: 'wrong-form' }],
    ['count many', 'a,1,1,100001,', { code: 'out-of-range' }],
    ['count very many', 'a,1,1,99999999999999999999,', { code: 'wrong-form' }],
    ['grain', 'a,1,1,1,lenght', { code: 'unknown-word', nearest: 'length' }],
    ['no name', ',1,1,1,', { code: 'empty-cell' }],
    ['long name', `${'x'.repeat(201)},1,1,1,`, { code: 'out-of-range' }],
    ['escape', 'a\u001b[2J,1,1,1,', { code: 'wrong-form' }],
    ['direction', 'a\u202eb,1,1,1,', { code: 'wrong-form' }],
    ['too many cells', 'a,600,5,300,1,length', { code: 'csv-cells' }],
    ['too few cells', 'a,600,5', { code: 'csv-cells' }],
    ['open quote', '"a,600,5,,', { code: 'csv-quote' }],
  ])('%s', (_, row, finding) => {
    const found = panelFindings('fine,1,1,1,', row, 'fine,1,1,1,');
    expect(found.map((each) => each.code)).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity: 'error', ...finding });
    expect(found[0]!.place).toMatchObject({ file: 'panels.csv', line: 3 });
  });

  test('all that is wrong is told at once', () => {
    expect(
      panelFindings('a,x,y,z,w', ',-1,0,0,').map((each) => [each.place?.line, each.place?.field]),
    ).toEqual([
      [2, 'length'],
      [2, 'width'],
      [2, 'grain'],
      [2, 'count'],
      [3, 'length'],
      [3, 'width'],
      [3, 'name'],
      [3, 'count'],
    ]);
  });
});

describe('the header', () => {
  const findings = (text: string) => readPanelList(text, 'p.csv').findings;

  test('missing columns, with the one that may be meant', () => {
    expect(findings('name,lenght,width\na,1,1')).toMatchObject([
      { code: 'missing-column', nearest: 'lenght' },
    ]);
    const all = findings('part,long,broad\na,1,1');
    expect(all.filter((each) => each.code === 'missing-column').map((each) => each.message)).toEqual([
      'The list has no column `name`.',
      'The list has no column `length`.',
      'The list has no column `width`.',
    ]);
  });

  test('doubled columns', () => {
    expect(findings('name,length,width,Width\na,1,1,1')).toMatchObject([{ code: 'duplicate-column' }]);
  });

  test('columns that are not read are said to be', () => {
    const read = readPanelList('name,length,width,colour,tickness\na,1,1,red,3', 'p.csv');
    expect(read.ok).toBe(true);
    expect(read.findings).toMatchObject([
      { code: 'unread-column', severity: 'warning' },
      { code: 'unread-column', nearest: 'thickness' },
    ]);
  });

  test('empty lists', () => {
    for (const text of ['', '\ufeff', ' \n \n'])
      expect(findings(text)).toMatchObject([{ code: 'empty-file' }]);
    expect(findings('name,length,width\n\n')).toMatchObject([{ code: 'empty-file' }]);
    expect(findings(',,\n')).toMatchObject([{ code: 'empty-file' }]);
  });

  test('files that are no lists', () => {
    expect(findings('name,length,width\n\u0000')).toMatchObject([{ code: 'not-text', place: { line: 2 } }]);
    expect(findings('x'.repeat(40_000_001))).toMatchObject([{ code: 'file-too-large' }]);
  });
});

describe('sheets', () => {
  test('all columns', () => {
    const text = [
      'name,length,width,grain,count,price,thickness,board,finish,kind',
      'full,2500.06,1220.09,length,,92.5,15.2,birch,oak,',
      ',800,400,none,2,,15.2,birch,oak,Offcut',
    ].join('\n');
    expect(sheets(text)).toEqual([
      {
        id: 'full',
        lengthUm: 2_500_000,
        widthUm: 1_220_000,
        grain: 'length',
        count: null,
        priceMinor: 9250,
        thicknessUm: 15_200,
        board: 'birch',
        finish: 'oak',
        kind: 'sheet',
      },
      {
        id: 'offcut of line 3',
        lengthUm: 800_000,
        widthUm: 400_000,
        grain: 'none',
        count: 2,
        priceMinor: null,
        thicknessUm: 15_200,
        board: 'birch',
        finish: 'oak',
        kind: 'offcut',
      },
    ]);
  });

  test('without prices', () => {
    expect(sheets('length,width\n1,1\n2,2')).toMatchObject([
      { id: 'sheet of line 2', priceMinor: null, count: null },
      { id: 'sheet of line 3' },
    ]);
  });

  test.each<readonly [string, string, Partial<Finding>]>([
    ['price for some', 'b,1,1,,', { code: 'missing-price' }],
    ['price with a sign', 'b,1,1,€5,', { code: 'wrong-form' }],
    ['negative price', 'b,1,1,-5,', { code: 'wrong-form', message: expect.stringContaining('negative') }],
    ['price with a comma', 'b,1,1,"9,50",', { code: 'wrong-form', advice: expect.stringContaining('9.50') }],
    ['three decimals', 'b,1,1,9.505,', { code: 'wrong-form' }],
    ['kind', 'b,1,1,9,ofcut', { code: 'unknown-word', nearest: 'offcut' }],
    ['name', 'a,1,1,9,', { code: 'duplicate-name' }],
  ])('%s', (_, row, finding) => {
    const { findings } = readSheetList(`name,length,width,price,kind\na,1,1,9.50,\n${row}\n`, 's.csv');
    expect(findings).toMatchObject([{ severity: 'error', place: { file: 's.csv', line: 3 }, ...finding }]);
  });
});

test('200,000 rows are read, one more is refused', () => {
  const rows = Array.from({ length: 200_000 }, (_, i) => `part ${i},${100 + (i % 900)},300`);
  const text = ['name,length,width', ...rows].join('\n');
  const start = performance.now();
  expect(parts(text)).toHaveLength(200_000);
  expect(performance.now() - start).toBeLessThan(20_000);
  expect(readPanelList(`${text}\nz,1,1`, 'p.csv').findings).toMatchObject([{ code: 'too-many-rows' }]);
});

test('many wrong rows are told about briefly', () => {
  const text = `name,length,width\n${'a,x,y\n'.repeat(5000)}`;
  const { findings } = readPanelList(text, 'p.csv');
  expect(findings).toHaveLength(51);
  expect(findings[0]?.message).toContain('50 of 10000');
});

test('more than a million pieces are refused', () => {
  const text = `name,length,width,count\n${'a,1,1,100000\n'.repeat(11)}`;
  expect(readPanelList(text, 'p.csv').findings).toMatchObject([{ code: 'too-many-panels' }]);
});

test('a list changed at random is read or refused in words, and never throws', () => {
  const panels =
    'name,length,width,count,grain,board\n"a ""b"",c",600.5,24",2,length,birch\nd,3 1/2 in,30,,width,oak\n';
  const stock = 'name,length,width,price,count,kind\na,2500,1220,92.50,,sheet\nb,800,400,,1,offcut\n';
  fc.assert(
    fc.property(mutations, (mutate) => {
      for (const read of [readPanelList(mutate(panels), 'p.csv'), readSheetList(mutate(stock), 'p.csv')]) {
        expect(read.ok).toBe(read.findings.every((finding) => finding.severity !== 'error'));
        for (const finding of read.findings) {
          expect(finding.place?.file).toBe('p.csv');
          expect(finding.place?.line).toBeGreaterThan(0);
          expect(finding.message).toMatch(/^[^\p{Cc}\p{Cs}]{5,}\.$/u);
        }
      }
    }),
    { numRuns: 2000 },
  );
});

test('any cells survive being written as RFC 4180 and read back', () => {
  const cell = fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 30 })
    .map((text) => `x${text}x`.replace(/[\s\ufffd]+/g, ' '))
    // What cannot be seen is refused, and what the program itself has disarmed is given back.
    .filter((text) => unreadablePart(text) === undefined)
    .map((text) => composed(plainCell(text)));
  fc.assert(
    fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 10 }), (rows) => {
      const quoted = rows.map((row) => row.map((each) => `"${each.replaceAll('"', '""')}"`).join(','));
      const text = ['name,unit,length,width', ...quoted.map((row) => `${row},1,1`)].join('\r\n');
      expect(parts(text).map((part) => [part.name, part.unit])).toEqual(rows);
    }),
  );
});
