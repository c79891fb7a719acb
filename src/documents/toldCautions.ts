import { type CautionedOrder, cautionsOf } from '../basics/orderCautions.ts';
import type { CautionText } from '../model/cautions.ts';
import type { CutGuide } from '../model/stock.ts';
import type { CautionWords } from './words/cautionWords.ts';

/** A caution in words, with the units that bring it. */
export interface ToldCaution extends CautionText {
  readonly caution: string;
  readonly units: readonly string[];
}

/** The program's points of a caution; those of the saw also say what its guide asks for, after how to begin. */
function pointsOf(caution: string, text: CautionText, guides: readonly CutGuide[], words: CautionWords) {
  if (caution !== 'saw') return text.points;
  const [first, ...others] = text.points;
  return [first!, ...guides.flatMap((guide) => words.guided[guide]), ...others];
}

/**
 * The cautions of a job in words. What a library says under a word of the program is added to the program's points and
 * never takes their place. The saw's points are those for the guides of the cuts, which a plan knows. Throws for a caution
 * that neither of them knows, which reading the library refuses.
 */
export function toldCautions(
  ordered: CautionedOrder | undefined,
  words: CautionWords,
  guides: readonly CutGuide[] = ['fence', 'rail'],
): ToldCaution[] {
  const texts: ReadonlyMap<string, CautionText> = new Map(Object.entries(words.texts));
  return cautionsOf(ordered).map(({ caution, units }) => {
    const own = ordered?.library.cautions?.get(caution);
    const text = texts.get(caution) ?? own;
    if (text === undefined) throw new Error(`there are no words for the caution ${caution}`);
    const points = texts.has(caution)
      ? [...pointsOf(caution, text, guides, words), ...(own?.points ?? [])]
      : text.points;
    return { caution, title: text.title, points, units };
  });
}
