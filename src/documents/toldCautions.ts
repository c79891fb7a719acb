import { type CautionedOrder, cautionsOf } from '../basics/orderCautions.ts';
import type { CautionText } from '../model/cautions.ts';
import type { CautionWords } from './words/cautionWords.ts';

/** A caution in words, with the units that bring it. */
export interface ToldCaution extends CautionText {
  readonly caution: string;
  readonly units: readonly string[];
}

/**
 * The cautions of a job in words. What a library says under a word of the program is added to the program's points and
 * never takes their place. Throws for a caution that neither of them knows, which reading the library refuses.
 */
export function toldCautions(ordered: CautionedOrder | undefined, words: CautionWords): ToldCaution[] {
  const texts: ReadonlyMap<string, CautionText> = new Map(Object.entries(words.texts));
  return cautionsOf(ordered).map(({ caution, units }) => {
    const own = ordered?.library.cautions?.get(caution);
    const text = texts.get(caution) ?? own;
    if (text === undefined) throw new Error(`there are no words for the caution ${caution}`);
    const points = texts.has(caution) ? [...text.points, ...(own?.points ?? [])] : text.points;
    return { caution, title: text.title, points, units };
  });
}
