/**
 * Drawings. A cut plan comes in as it stands in the plan file and goes out as pages in page millimetres, free of any
 * file format (`drawing.ts`); `svg.ts` writes a page as SVG. Positions are found by sawing the plan again step by
 * step, so what is drawn is what the steps say. Texts never lie on each other, nothing lies outside the frame, and
 * the same plan gives the same bytes.
 */
export { drawContactSheet } from './contactSheet.ts';
export { type DrawingOptions, drawCutPlan } from './cutPlan.ts';
export type { Drawing, Shape, TextMeasurer } from './drawing.ts';
export type { DrawingWords } from './drawingWords.ts';
export type { Units } from './lengthsInWords.ts';
export { drawOverview } from './overview.ts';
export type { PageSize } from './page.ts';
export { drawPanels } from './panelDrawing.ts';
export type { DrawnPanel, PanelDrawingOptions } from './panelFigure.ts';
export type { PanelWords } from './panelWords.ts';
export { pictureAlone } from './pictureAlone.ts';
export type { FurnitureDrawingOptions } from './unitTitle.ts';
export { drawUnit, drawUnitOnOnePage } from './unitViews.ts';
export { drawLayout } from './vehicleViews.ts';
