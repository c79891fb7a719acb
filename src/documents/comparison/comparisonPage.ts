import type { Drawing } from '../../drawing/index.ts';
import type { ComparedRow, Comparison } from '../../model/comparison.ts';
import { escapeHtml as h, pictureOnly } from '../book/bookHtml.ts';
import type { Words } from '../words/words.ts';
import { comparisonStyle } from './comparisonStyle.ts';
import { type PagePlot, PLOT_TONES } from './pagePlot.ts';
import { printFigure } from './printFigure.ts';

/** What the page needs that only the edge can give, and what is drawn for it. */
export interface ComparisonPageParts {
  /** A drawing as the text of an SVG file. */
  readonly svgOf: (drawing: Drawing) => string;
  /** SHA-256 in base64 of the UTF-8 of a text. */
  readonly sha256: (text: string) => string;
  /** The layout of each design, in their order. */
  readonly layouts: readonly Drawing[];
  readonly plots: readonly PagePlot[];
}

/** What a row is called: its figure, or the board and finish of sheets. */
export function rowName({ figure, of }: ComparedRow, words: Words['compare']): string {
  return of === null ? words.figure[figure] : words.sheetsOf(of.board, of.finish);
}

function rowHtml(row: ComparedRow, { designs }: Comparison, words: Words['compare']): string {
  const cells = row.values.map((value, index) => {
    const isBest = row.best.includes(index);
    const text = h(printFigure(row.figure, value, designs[index]!.currency));
    const least = row.least?.[index];
    const below =
      least === undefined || least === null || least === value
        ? ''
        : `<span class="least">${h(words.least(String(least)))}</span>`;
    return `<td${isBest ? ' class="best"' : ''}>${isBest ? '▲ ' : ''}${text}${below}</td>`;
  });
  const classes = [row.differs ? 'differs' : 'equal', ...(row.of === null ? [] : ['of'])].join(' ');
  return `<tr class="${classes}"><th scope="row">${h(rowName(row, words))}</th>${cells.join('')}</tr>`;
}

function plotHtml({ title, svg, tones, note, wide }: PagePlot): string {
  const swatch = (tone: number) =>
    `<svg width="14" height="14" aria-hidden="true"><rect width="13" height="13" x=".5" y=".5" fill="${PLOT_TONES[tone]}" stroke="#333"/></svg>`;
  const list = tones.map((text, index) => `<li>${swatch(index)}${h(text)}</li>`).join('');
  const said = note === null ? '' : ` <span>(${h(note)})</span>`;
  const key = list === '' ? '' : `<ul class="tones">${list}</ul>\n`;
  const inside = wide
    ? `<div class="scroll" role="group" tabindex="0" aria-label="${h(title)}">\n${svg}\n</div>`
    : svg;
  return `<figure${wide ? ' class="wide"' : ''}>\n<figcaption>${h(title)}${said}</figcaption>\n${key}${inside}\n</figure>`;
}

/** What a design costs in sheets, money and mass. */
function inShort({ designs, rows }: Comparison, index: number, words: Words['compare']): string {
  const { currency, pricedBy } = designs[index]!;
  const figures = ['sheets', pricedBy === 'material' ? 'material' : 'net', 'furniture mass'] as const;
  const told = figures.map((figure) => {
    const value = rows.find((row) => row.figure === figure)?.values[index] ?? null;
    return `<div><dt>${h(words.figure[figure])}</dt><dd>${h(printFigure(figure, value, currency))}</dd></div>`;
  });
  return `<dl>${told.join('')}</dl>`;
}

/** The section of plots; nothing where there are none. */
export function plotsHtml(plots: readonly PagePlot[], words: Words['compare']): string {
  if (plots.length === 0) return '';
  const figures = plots.map(plotHtml).join('\n');
  return `<section><h2>${h(words.plots)}</h2>\n<div class="plots">\n${figures}\n</div></section>\n`;
}

/** A page that needs nothing else, around what its main part holds; its content security policy allows only its own style. */
export function pageOf(title: string, body: string, sha256: (text: string) => string, all: Words): string {
  const policy = [
    "default-src 'none'",
    `style-src 'sha256-${sha256(comparisonStyle)}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="${all.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${h(title)}</title>
<style>${comparisonStyle}</style>
</head>
<body>
<main>
${body}</main>
</body>
</html>
`;
}

/**
 * Designs side by side as one HTML file that needs nothing else: drawings, figures and plots. Its content security policy
 * forbids everything but its own style; it has no script. The same comparison gives the same bytes.
 */
export function comparisonPage(comparison: Comparison, parts: ComparisonPageParts, all: Words): string {
  const words = all.compare;
  const { designs, rows } = comparison;
  const cards = designs.map(({ name, title, layout, vehicle }, index) => {
    const drawing = parts.layouts[index]!;
    const svg = pictureOnly(parts.svgOf(drawing).replace(/^<\?xml[^>]*\?>\s*/, ''), drawing);
    return [
      `<article class="card"><h3>${h(name)}</h3>`,
      ...(title === `${layout}, ${vehicle}` ? [] : [`<p>${h(title)}</p>`]),
      `<p class="soft">${h(words.layout)}: ${h(layout)}. ${h(words.vehicle)}: ${h(vehicle)}</p>`,
      inShort(comparison, index, words),
      `<details><summary>${h(words.larger)}</summary></details>`,
      `<div class="drawing" role="group" tabindex="0" aria-label="${h(`${words.drawing}: ${name}`)}">`,
      svg,
      '</div></article>',
    ].join('\n');
  });
  const notes = [
    ...words.notes,
    ...(designs.some(({ pricedBy }) => pricedBy === 'material') ? [words.materialOnly] : []),
  ];
  const body = `<h1>${h(words.heading)}</h1>
<p>${h(words.intro(designs.length))}</p>
<section><h2>${h(words.table)}</h2>
<div class="scroll" role="group" tabindex="0" aria-label="${h(words.table)}">
<table><thead><tr><th scope="col">${h(words.figureHead)}</th>${designs.map(({ name }) => `<th scope="col">${h(name)}</th>`).join('')}</tr></thead><tbody>
${rows.map((row) => rowHtml(row, comparison, words)).join('\n')}
</tbody></table></div>
<p><span class="best">▲</span> ${h(words.best)}. <span class="soft">${h(words.equal)}</span></p>
${notes.map((note) => `<p class="soft">${h(note)}</p>`).join('\n')}
</section>
${plotsHtml(parts.plots, words)}<section><h2>${h(words.designs)}</h2>
<div class="cards">
${cards.join('\n')}
</div></section>
`;
  return pageOf(words.heading, body, parts.sha256, all);
}
