/** The looks of a page of designs on screens and on paper. Contrast at least 4.5 : 1. */
export const comparisonStyle = `
:root{color-scheme:light;--paper:#fff;--ink:#1b1b19;--soft:#55524b;--line:#b9b4a8;--ground:#f3f1ec;--mark:#0b5c4a;--done:#dcefe6}
@media (prefers-color-scheme:dark){:root{color-scheme:dark;--paper:#23241f;--ground:#161713;--ink:#f1efe8;--soft:#c0bcb0;--line:#5b5a51;--mark:#7fdcbb;--done:#21443a}}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:1rem/1.5 'DejaVu Sans','Segoe UI',Roboto,Arial,sans-serif}
main{max-width:100rem;margin:0 auto;padding:1rem}
h1{margin:.5rem 0;font-size:1.9rem}
h2{font-size:1.4rem;margin:.25rem 0 .75rem}
h3{font-size:1.05rem;margin:.25rem 0;overflow-wrap:anywhere}
p{margin:.4rem 0}
.soft{color:var(--soft)}
section{background:var(--paper);border:1px solid var(--line);border-radius:.6rem;padding:.75rem 1rem 1rem;margin:1rem 0}
.cards{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(34rem,100%),1fr));gap:1rem}
.card{border:1px solid var(--line);border-radius:.4rem;padding:.5rem .75rem;min-width:0}
.card dl{display:flex;flex-wrap:wrap;gap:.1rem 1.25rem;margin:.4rem 0}
.card dl div{display:flex;gap:.4rem}
.card dt{color:var(--soft)}
.card dd{margin:0;font-weight:bold}
.drawing{overflow:auto;background:#fff;border:1px solid var(--line)}
.drawing svg{display:block;width:100%;height:auto}
summary{display:flex;align-items:center;min-height:44px;color:var(--mark);cursor:pointer}
summary::before{content:'▸';width:1.2rem}
details[open]>summary::before{content:'▾'}
.card:has(details[open]){grid-column:1/-1}
.card:has(details[open]) .drawing svg{min-width:80rem}
.scroll{overflow:auto}
:focus-visible{outline:3px solid var(--mark);outline-offset:2px}
table{border-collapse:collapse;font-size:.9375rem}
th,td{padding:.35rem .75rem;border-bottom:1px solid var(--line);text-align:right;vertical-align:top;font-variant-numeric:tabular-nums}
thead th{vertical-align:bottom;max-width:13rem;overflow-wrap:break-word;border-bottom:2px solid var(--ink)}
td{white-space:nowrap}
.why,thead .why{text-align:left;white-space:normal}
td.why{min-width:9rem}
tbody th,thead th:first-child{text-align:left;font-weight:normal}
tbody th:first-child,thead th:first-child{position:sticky;left:0;background:var(--paper);min-width:11rem}
.of th{padding-left:1.75rem}
.differs th{font-weight:bold}
.equal th,.equal td{color:var(--soft)}
.best{font-weight:bold;background:var(--done);outline:1px solid var(--mark);outline-offset:-2px}
.least{display:block;font-size:.8125rem;font-weight:normal;color:var(--soft)}
.plots{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(22rem,100%),1fr));gap:1rem}
.plots .wide{grid-column:1/-1}
.wide .plot{width:auto;max-width:none}
figure{margin:0;min-width:0}
figcaption{font-weight:bold}
figcaption span{font-weight:normal}
.plot{display:block;width:100%;height:auto;background:#fff;color:#1b1b19;font-size:12px;font-family:'DejaVu Sans','Segoe UI',Roboto,Arial,sans-serif}
.tones{list-style:none;display:flex;flex-wrap:wrap;gap:.25rem 1.25rem;margin:.25rem 0;padding:0;font-size:.875rem}
.tones svg{vertical-align:-.1rem;margin-right:.35rem}
@media (max-width:40rem){section{padding:.5rem .6rem .75rem}th,td{padding:.3rem .4rem}table{font-size:.8125rem}tbody th:first-child,thead th:first-child{min-width:7.5rem}thead th{max-width:8rem}.of th{padding-left:1rem}figure:not(.wide) .plot{font-size:14px}h1{font-size:1.6rem}}
@media print{:root{color-scheme:light;--paper:#fff;--ground:#fff;--ink:#000;--soft:#333;--line:#777;--mark:#000;--done:#fff}details{display:none}.card .drawing svg{min-width:0}@page{size:A3 landscape;margin:12mm}body{background:#fff;font-size:9.5pt}section{border:0;padding:0}.scroll{overflow:visible}.card,figure,tr{break-inside:avoid}}
`;
