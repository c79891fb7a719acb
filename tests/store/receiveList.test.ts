import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeCsv } from '../../src/documents/csv.ts';
import type { BookingLine, Ledger } from '../../src/model/store.ts';
import { receiveListLines } from '../../src/pipeline/receiveList.ts';
import { sameStock } from '../../src/store/applyLine.ts';
import { book, emptyLedger, reversal } from '../../src/store/book.ts';
import { lineOf } from '../../src/store/items.ts';
import { amountIn, draft, edging, fitting, offcut, sheet } from './histories.ts';

const about = { date: '2026-03-02', who: 'M. Beck', why: 'test' };

function lines(text: string, ledger: Ledger = emptyLedger, more = {}): BookingLine[] {
  const read = receiveListLines(text, 'list.csv', ledger, more);
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

function codes(text: string, ledger: Ledger = emptyLedger): string[] {
  return receiveListLines(text, 'list.csv', ledger).findings.map(
    ({ code, place }) => `${code} ${place?.line ?? '-'}`,
  );
}

const board = 'poplar-15,pale-grey,16.2,2500,1250,length';

describe('receiving a list', () => {
  it('books sheets, edging, fittings and offcuts of one list, equal ones together', () => {
    const text = `item,board,finish,thickness,length,width,grain,label,name,place,count,metres
sheet,${board},,,,4,
,${board},,,,2,
offcut,poplar-15,pale-grey,16.2,700,400,length,A17,,rack 1,,
edging,,,,,,,,grey-1,,,12.345
fitting,,,,,,,,hinge,,20,
`;
    expect(lines(text)).toEqual([
      lineOf(sheet, 6, 'in'),
      lineOf(offcut('A17'), 1, 'in'),
      lineOf(edging, 12_345, 'in'),
      lineOf(fitting, 20, 'in'),
    ]);
  });

  it('reads what an order buys in whole rolls and packs, and what it keeps', () => {
    const rolls =
      'edging,description,strips,net metres,overlength,metres to buy,roll,rolls\ngrey-1,Grey,6,2.7,70,3.12,50,2\n';
    expect(lines(rolls)).toEqual([lineOf(edging, 100_000, 'in')]);
    const loose = 'edging,strips,metres to buy,roll,rolls\ngrey-1,6,3.12,,\n';
    expect(lines(loose)).toEqual([lineOf(edging, 3120, 'in')]);
    const packs = 'fitting,description,count,pack,packs\nhinge,"Hinge, 35",29,10,3\n';
    expect(lines(packs)).toEqual([lineOf(fitting, 30, 'in')]);
    const sheets = `group,board,finish,thickness,description,sheet,kind,length,width,grain,count,price each,price,currency
grey,poplar-15,pale-grey,16.2,Grey,large,sheet,2500,1250,length,4,111.50,446.00,EUR
grey,poplar-15,pale-grey,16.2,Grey,A17,offcut,700,400,length,1,0.00,0.00,EUR
`;
    expect(lines(sheets)).toEqual([lineOf(sheet, 4, 'in')]);
    const kept = `name,length,width,grain,count,price,thickness,board,finish,kind,group,sheet,piece,cut by hand from
grey 1 A3,700,400,length,2,,16.2,poplar-15,pale-grey,offcut,grey,1,A3,
`;
    expect(lines(kept, emptyLedger, { place: 'rack 1' })).toEqual([
      lineOf(offcut('grey 1 A3 (1)'), 1, 'in'),
      lineOf(offcut('grey 1 A3 (2)'), 1, 'in'),
    ]);
  });

  it('takes only what one supplier delivers, where one is named', () => {
    const text =
      'fitting,pack,packs,count,supplier\nhinge,10,3,30,north\nlatch,5,2,10,south\nrail,1,,,north\n';
    expect(lines(text, emptyLedger, { supplier: 'north' })).toEqual([lineOf(fitting, 30, 'in')]);
    expect(receiveListLines(text, 'list.csv', emptyLedger, { supplier: 'west' }).findings[0]?.code).toBe(
      'nothing-received',
    );
  });

  it('fills in what the store knew of a size before', () => {
    const known = book(emptyLedger, draft('receive', [lineOf(sheet, 1, 'in')]));
    if (!known.ok) throw new Error('not booked');
    expect(lines('board,count\npoplar-15,3\n', known.value)).toEqual([lineOf(sheet, 3, 'in')]);
  });

  it('names the line of everything that is wrong, and then books nothing', () => {
    expect(codes('item,name,count\nhinge,hinge,2\n')).toEqual(['unknown-word 2']);
    expect(codes('name,count\nx,2\n')).toEqual(['item-missing 2']);
    expect(codes('board,count\noak,3\n')).toEqual(['option-missing 2']);
    expect(codes('fitting,count\nhinge,2.5\n')).toEqual(['wrong-form 2']);
    expect(codes('fitting,count\nhinge,-2\n')).toEqual(['wrong-form 2']);
    expect(codes('edging,metres\ngrey,1.2345\n')).toEqual(['wrong-form 2']);
    expect(codes('fitting,count\nhinge,0\n')).toEqual(['nothing-received -']);
    const twice = `item,label,board,finish,thickness,length,width,grain\noffcut,A1,${board}\noffcut,a1,${board}\n`;
    expect(codes(twice)).toEqual(['offcut-twice 3']);
    expect(codes('')).toEqual(['empty-file 1']);
  });

  it('brings in just what the list says, and is restored by a reversal', () => {
    const row = fc.record({
      what: fc.constantFrom('sheet', 'edging', 'fitting'),
      amount: fc.integer({ min: 0, max: 50 }),
    });
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 12 }), (all) => {
        const head = [
          'item',
          'board',
          'finish',
          'thickness',
          'length',
          'width',
          'grain',
          'name',
          'count',
          'metres',
        ];
        const text = writeCsv(
          head,
          all.map(({ what, amount }) => {
            const of = what === 'sheet' ? board.split(',') : ['', '', '', '', '', ''];
            const name = what === 'sheet' ? '' : what === 'edging' ? 'grey-1' : 'hinge';
            return [
              what,
              ...of,
              name,
              what === 'edging' ? '' : `${amount}`,
              what === 'edging' ? `${amount}` : '',
            ];
          }),
        );
        const sum = (what: string) =>
          all.reduce((total, one) => (one.what === what ? total + one.amount : total), 0);
        const read = receiveListLines(text, 'list.csv', emptyLedger);
        if (!read.ok) {
          expect(all.every(({ amount }) => amount === 0)).toBe(true);
          return;
        }
        const after = book(emptyLedger, draft('receive', read.value));
        if (!after.ok) throw new Error(after.findings[0]!.message);
        expect(amountIn(after.value, sheet)).toBe(sum('sheet'));
        expect(amountIn(after.value, edging)).toBe(sum('edging') * 1000);
        expect(amountIn(after.value, fitting)).toBe(sum('fitting'));
        const back = book(after.value, reversal(after.value, 1, about));
        expect(back.ok && sameStock(back.value.stock, emptyLedger.stock)).toBe(true);
      }),
    );
  });
});
