import { printMmShort } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { NestFailure } from '../model/nest.ts';
import type { Demand, StockGroup } from '../model/stock.ts';

function sizeOf(demand: Demand): string {
  return `${printMmShort(demand.lengthUm)} × ${printMmShort(demand.widthUm)} mm`;
}

function namesOf(group: StockGroup, demand: Demand): string {
  const names = demand.parts.map(({ part }) => group.parts.find((p) => p.id === part)?.name ?? part);
  const different = [...new Set(names)];
  return different.slice(0, 3).join(', ') + (different.length > 3 ? ', …' : '');
}

function groupWords(group: StockGroup): string {
  return [group.board, group.finish].filter((word) => word !== '').join(' in ') || 'this board';
}

/** Why a stock group cannot be cut, in words: which panels are in the way, with their sizes. */
export function describeNestFailure(group: StockGroup, failure: NestFailure, file: string): Finding[] {
  switch (failure.kind) {
    case 'too large': {
      const demand = group.demands[failure.demand]!;
      return [
        {
          code: 'panel-too-large',
          severity: 'error',
          message: `No sheet of ${groupWords(group)} is large enough for ${namesOf(group, demand)}.`,
          place: { file },
          found: sizeOf(demand),
          expected: group.sheets
            .map((sheet) => `${printMmShort(sheet.lengthUm)} × ${printMmShort(sheet.widthUm)} mm less trims`)
            .slice(0, 5)
            .join(', '),
          advice: 'Make the panel smaller, let it turn, or list a larger sheet.',
        },
      ];
    }
    case 'cut too long': {
      const demand = group.demands[failure.demand]!;
      const { longestCutUm, name } = group.saw;
      return [
        {
          code: 'cut-too-long',
          severity: 'error',
          message: `${namesOf(group, demand)} cannot be cut from any sheet of ${groupWords(group)} without a cut longer than the saw can make.`,
          place: { file },
          found: sizeOf(demand),
          expected: `no cut, trims included, longer than ${printMmShort(longestCutUm ?? 0)} mm on the ${name}`,
          advice:
            'Make the panel smaller, list a smaller sheet or one that needs no trim, or choose another saw.',
        },
      ];
    }
    case 'sheets run out': {
      const left = failure.unplaced.reduce((sum, { count }) => sum + count, 0);
      const examples = failure.unplaced
        .slice(0, 3)
        .map(({ demand, count }) => {
          const wanted = group.demands[demand]!;
          return `${count} of ${namesOf(group, wanted)} (${sizeOf(wanted)})`;
        })
        .join('; ');
      return [
        {
          code: 'sheets-run-out',
          severity: 'error',
          message: `The sheets of ${groupWords(group)} run out: ${left === 1 ? 'one panel finds' : `${left} panels find`} no place.`,
          place: { file },
          found: examples + (failure.unplaced.length > 3 ? '; …' : ''),
          advice: 'Raise the count of a sheet, or leave it empty when more can be bought.',
        },
      ];
    }
  }
}
