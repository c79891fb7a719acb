import { careInWords } from '../stepsInWords.ts';
import type { Words } from '../words/words.ts';
import type { TextBlock, Tick } from './book.ts';
import type { Entry, Flow } from './flow.ts';
import { layTable } from './flowTable.ts';

function tickEntry(tick: Tick): Entry {
  return { mark: 'box', lines: [{ text: tick.text, weight: 'regular' }] };
}

function stepEntries(block: Extract<TextBlock, { kind: 'steps' }>, words: Words): Entry[] {
  return block.steps.map((step) => {
    const { number, sentence, outcomes } = step;
    const care = careInWords(step, words);
    return {
      mark: String(number),
      lines: [
        { text: care === null ? sentence : `${sentence} ▲ ${care}`, weight: 'regular' },
        ...outcomes.map((text) => ({ text, weight: 'bold' as const })),
      ],
    };
  });
}

/** Lays a block of texts where the flow has come to. */
export function layBlock(flow: Flow, block: TextBlock, words: Words): void {
  switch (block.kind) {
    case 'paragraph':
      flow.paragraph(block.text, block.strong ? 'bold' : 'regular');
      return;
    case 'heading':
      flow.heading(block.text);
      return;
    case 'list':
      flow.list(block.items);
      return;
    case 'ticks':
      flow.entries(block.items.map(tickEntry));
      return;
    case 'steps':
      flow.entries(stepEntries(block, words), words.steps);
      return;
    case 'table':
      layTable(flow, block);
      return;
    default:
      block satisfies never;
  }
}
