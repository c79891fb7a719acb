/** The looks of a page of designs on screens and on paper. Contrast at least 4.5 : 1. */
export const comparisonStyle = `
:root{color-scheme:light;--ink:#1b1b19;--soft:#55524b;--line:#b9b4a8;--ground:#f3f1ec}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:1rem/1.5 'DejaVu Sans','Segoe UI',Roboto,Arial,sans-serif}
main{max-width:100rem;margin:0 auto;padding:1rem}
h1{margin:.5rem 0;font-size:1.9rem}
h2{font-size:1.4rem;margin:.25rem 0 .75rem}
h3{font-size:1.05rem;margin:.25rem 0;overflow-wrap:anywhere}
p{margin:.4rem 0}
.soft{color:var(--soft)}
section{background:#fff;border:1px solid var(--line);border-radius:.6rem;padding:.75rem 1rem 1rem;margin:1rem 0}
.cards{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(34rem,100%),1fr));gap:1rem}
.card{border:1px solid var(--line);border-radius:.4rem;padding:.5rem .75rem;min-width:0}
.card svg{display:block;width:100%;height:auto}
.scroll{overflow:auto}
:focus-visible{outline:3px solid #0b5c4a;outline-offset:2px}
table{border-collapse:collapse;font-size:.9375rem}
th,td{padding:.35rem .75rem;border-bottom:1px solid var(--line);text-align:right;vertical-align:top;font-variant-numeric:tabular-nums}
thead th{vertical-align:bottom;max-width:13rem;overflow-wrap:anywhere;border-bottom:2px solid var(--ink)}
td{white-space:nowrap}
.why,thead .why{text-align:left;white-space:normal}
tbody th,thead th:first-child{text-align:left;font-weight:normal}
tbody th:first-child,thead th:first-child{position:sticky;left:0;background:#fff;min-width:11rem}
.of th{padding-left:1.75rem}
.differs th{font-weight:bold}
.equal th,.equal td{color:var(--soft)}
.best{font-weight:bold;background:#dcefe6;outline:1px solid #0b5c4a;outline-offset:-2px}
.least{display:block;font-size:.8125rem;font-weight:normal;color:var(--soft)}
.plots{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(40rem,100%),1fr));gap:1rem}
figure{margin:0;min-width:0}
figcaption{font-weight:bold}
figcaption span{font-weight:normal}
.plot{display:block;width:100%;height:auto;font-size:12px;font-family:'DejaVu Sans','Segoe UI',Roboto,Arial,sans-serif}
.tones{list-style:none;display:flex;flex-wrap:wrap;gap:.25rem 1.25rem;margin:.25rem 0;padding:0;font-size:.875rem}
.tones svg{vertical-align:-.1rem;margin-right:.35rem}
@media print{@page{size:A3 landscape;margin:12mm}body{background:#fff;font-size:9.5pt}section{border:0;padding:0}.scroll{overflow:visible}.card,figure,tr{break-inside:avoid}.best{background:none}}
`;
