import type { Finding } from '../../src/model/finding.ts';
import type { PreparedJob } from '../cutting/prepareJobs.ts';
import { orderedOf } from './plansOfOrders.ts';

/** A finding for every order whose library has no rates, with what to write. */
export function missingRates(jobs: readonly PreparedJob[]): Finding[] {
  return jobs.flatMap((prepared) => {
    const { library } = orderedOf(prepared);
    if (library.rates !== undefined) return [];
    return [
      {
        code: 'no-rates',
        severity: 'error',
        message: `The library ${library.id} does not say what work costs, so no price can be estimated.`,
        place: { file: prepared.file, field: 'library' },
        expected: 'a file rates.yaml in the folder of the library',
        advice:
          'begin it with a line such as `hour: 50` and what takes how many seconds, such as ' +
          '`sawing: { metre: 7, cut: 6 }` and `assembly: { unit: 25 min }`; the demo library has a whole one, and ' +
          'schemas/rates.schema.json says what it may hold',
      },
    ];
  });
}
