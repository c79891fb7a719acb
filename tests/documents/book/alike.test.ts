import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { bookOf, demoJob } from './demoBook.ts';

describe('the job book of two vans alike', () => {
  const made = demoJob(['count: 1', 'count: 2']);
  const page = new JSDOM(bookOf(made).html).window.document;
  const { furniture, library } = made.job.ordered!;

  it('counts the fittings of each unit as it counts its panels: for both', () => {
    for (const [index, unit] of furniture.units.entries()) {
      const section = page.querySelector(`#unit-${index + 1}`)!;
      for (const { fitting, count } of unit.fittings) {
        const title = library.fittings.get(fitting)!.title;
        // Where it goes may follow on its title.
        const row = [...section.querySelectorAll('tr')].find(
          (candidate) => candidate.querySelector('td')?.textContent?.split('; ')[0] === title,
        );
        expect(row?.querySelectorAll('td')[1]?.textContent, `${unit.name}: ${title}`).toBe(String(2 * count));
      }
    }
  });

  it('weighs one of them', () => {
    const rows = [...page.querySelectorAll('#mass tr')].map((row) =>
      [...row.querySelectorAll('td')].map((cell) => cell.textContent!),
    );
    const all = rows.find(([name]) => name === 'all together')!;
    const panels = furniture.units.flatMap((unit) => unit.panels);
    const panelsKg = panels.reduce((sum, panel) => sum + panel.massKg, 0);
    // Boards and edging.
    expect(Number(all[1]) + Number(all[2])).toBeCloseTo(panelsKg, 0);
  });
});
