import type { Sweep } from '../../model/sweep.ts';
import { escapeHtml as h } from '../book/bookHtml.ts';
import type { Words } from '../words/words.ts';
import { pageOf, plotsHtml } from './comparisonPage.ts';
import type { PagePlot } from './pagePlot.ts';
import { printFigure } from './printFigure.ts';
import { sheetsFall, stepsText } from './sweepList.ts';

/** What the page of a sweep needs beside the sweep. */
export interface SweepPageParts {
  /** Title of the order. */
  readonly title: string;
  /** SHA-256 in base64 of the UTF-8 of a text. */
  readonly sha256: (text: string) => string;
  readonly plots: readonly PagePlot[];
}

function rowsHtml({ parameters, points }: Sweep): string {
  const rows = points.map((point) => {
    const tried = point.values.map((value) => `<th scope="row">${h(value)}</th>`).join('');
    if (!point.result.ok)
      return `<tr>${tried}<td colspan="6" class="why">${h(point.result.refused)}</td></tr>`;
    const { design } = point.result;
    const sum = (of: 'sheets' | 'leastSheets') =>
      design.groups.reduce((total, group) => total + group[of], 0);
    const falls = sheetsFall(point) ? '▼ ' : '';
    const price = design.pricedBy === 'material' ? design.materialMinor : design.netMinor;
    const cells = [
      String(sum('sheets')),
      String(sum('leastSheets')),
      printFigure('net', price, design.currency),
      printFigure('furniture mass', design.furnitureKg, ''),
      printFigure('yield', design.yield, ''),
    ].map((text) => `<td>${h(text)}</td>`);
    return `<tr>${tried}${cells.join('')}<td class="why">${h(falls + stepsText(point, parameters))}</td></tr>`;
  });
  return rows.join('\n');
}

/** A sweep as one HTML file that needs nothing else: its plots and every point. It has no script. */
export function sweepPage(sweep: Sweep, parts: SweepPageParts, all: Words): string {
  const words = all.compare;
  const says = words.sweep;
  const titles = [...sweep.parameters, ...says.columns];
  const heads = titles.map((text, index) => {
    const isText = index < sweep.parameters.length || index === titles.length - 1;
    return `<th scope="col"${isText ? ' class="why"' : ''}>${h(text)}</th>`;
  });
  const body = `<h1>${h(says.heading)}: ${h(parts.title)}</h1>
<p>${h(says.intro(sweep.parameters.join(', '), sweep.points.length))}</p>
${plotsHtml(parts.plots, words)}<section><h2>${h(says.points)}</h2>
<div class="scroll" role="group" tabindex="0" aria-label="${h(says.points)}">
<table><thead><tr>${heads.join('')}</tr></thead><tbody>
${rowsHtml(sweep)}
</tbody></table></div>
</section>
`;
  return pageOf(says.heading, body, parts.sha256, all);
}
