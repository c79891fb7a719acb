/**
 * What is not panels, as a share of the sheets and as a share of the panels. Both are called waste in the trade, and they
 * differ, so that neither is told without its base. Any unit of area; 0 where there are no sheets or no panels.
 */
export function wasteOf(
  sheetArea: number,
  panelArea: number,
): { readonly ofSheets: number; readonly ofPanels: number } {
  const waste = sheetArea - panelArea;
  return {
    ofSheets: sheetArea === 0 ? 0 : waste / sheetArea,
    ofPanels: panelArea === 0 ? 0 : waste / panelArea,
  };
}
