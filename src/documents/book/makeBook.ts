import { numberPanels, panelsToFinish } from '../cuttingList.ts';
import { appliancesChapter } from './appliances.ts';
import type { Book } from './book.ts';
import { cautionsChapter } from './cautions.ts';
import { drillingChapter } from './drilling.ts';
import { fittingsChapter } from './fittings.ts';
import { lastChecks, titleChapter } from './frontMatter.ts';
import { sawnChapter, spoiledChapter } from './later.ts';
import { cutOutChapter, cuttingListChapter, edgingChapter, offcutChapter } from './lists.ts';
import { massChapter } from './mass.ts';
import { cutPlanChapters } from './plans.ts';
import type { BookFacts, BookSubject } from './subject.ts';
import { layoutChapter, unitChapters } from './units.ts';

function factsOf(subject: BookSubject): BookFacts {
  const panels = numberPanels(subject.plan);
  const numbers = new Map(panelsToFinish(subject.plan).map(({ panel, number }) => [panel.id, number]));
  const library = subject.ordered?.library;
  const title = (id: string) =>
    (library?.boards.get(id) ?? library?.finishes.get(id) ?? library?.edgings.get(id))?.title ?? id;
  return {
    ...subject,
    panels,
    numberOf: (panel) => {
      const number = numbers.get(panel);
      if (number === undefined) throw new Error(`panel ${panel} is not in the cutting list`);
      return number;
    },
    isAbout: ({ id }) => numbers.has(id),
    title,
    groupWords: (group) =>
      [title(group.board), title(group.finish)].filter((word) => word !== '').join(', ') || group.id,
  };
}

/**
 * The job book of a plan that was replayed: all that a joiner needs beside the saw, in the order of the work. It is
 * written as a page for a screen by `bookHtml` and as pages of paper by `bookPages`. Throws when the plan does not hold
 * together.
 */
export function makeBook(subject: BookSubject): Book {
  const facts = factsOf(subject);
  const whole = subject.plan.recut === undefined;
  return {
    title: subject.plan.job,
    words: subject.words,
    sections: [
      titleChapter(facts),
      ...spoiledChapter(facts),
      ...(whole ? layoutChapter(facts) : []),
      cautionsChapter(facts),
      ...(whole ? massChapter(facts) : []),
      ...sawnChapter(facts),
      cuttingListChapter(facts),
      ...cutPlanChapters(facts),
      edgingChapter(facts),
      cutOutChapter(facts),
      ...drillingChapter(facts),
      ...(whole ? [...unitChapters(facts), ...fittingsChapter(facts), ...appliancesChapter(facts)] : []),
      offcutChapter(facts),
      lastChecks(facts),
    ],
  };
}
