import { guidesOf } from '../../basics/cutGuide.ts';
import { toldCautions } from '../toldCautions.ts';
import type { Block, Section } from './book.ts';
import type { BookFacts } from './subject.ts';

/** What to take care with: only what applies to this job, with the units that bring it. */
export function cautionsChapter({ words, ordered, plan }: BookFacts): Section {
  const says = words.cautions;
  const blocks: Block[] = [
    { kind: 'paragraph', text: says.intro, strong: true },
    ...toldCautions(ordered, says, guidesOf(plan.groups)).flatMap(({ title, points, units }): Block[] => [
      { kind: 'heading', text: title },
      ...(units.length === 0 ? [] : [{ kind: 'paragraph' as const, text: says.broughtBy(units) }]),
      { kind: 'list', items: points },
    ]),
  ];
  return { id: 'cautions', heading: says.heading, level: 2, startsPage: true, blocks };
}
