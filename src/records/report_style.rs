//! Style of the report: one column on a phone, a page or two on paper. No colour carries a meaning alone.

/// The style sheet. Sizes in rem follow the reader's own text size.
pub const STYLE: &str = "\
:root{color-scheme:light;--ink:#25211c;--soft:#635a4f;--line:#d8cfc0;--paper:#fbf8f2;--wood:#c89b5f;--wood-dark:#7b5526;--cut:#e3c79a}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:1rem/1.45 system-ui,'Segoe UI',Roboto,'Helvetica Neue',Arial,sans-serif;overflow-wrap:break-word}
main{max-width:46rem;margin:0 auto;padding:1.25rem 1rem 2rem}
header h1{font-size:1.9rem;line-height:1.15;margin:0}
header p{margin:.25rem 0 0;color:var(--soft);font-size:1.08em}
h2{font-size:1.15rem;margin:1.75rem 0 .5rem;padding-top:.6rem;border-top:2px solid var(--line)}
h3{font-size:1.05em;margin:.9rem 0 .1rem}
p{margin:.2rem 0}
figure{margin:0}
figcaption{color:var(--soft);font-size:.88em;margin-top:.35rem}
img{display:block;max-width:100%;height:auto;border-radius:.4rem}
.top{display:grid;gap:1.25rem;margin-top:1.1rem}
.portrait img{width:100%;max-height:26rem;object-fit:contain}
svg{display:block;width:100%;height:auto}
svg text{font-family:inherit;fill:var(--ink)}
.section svg{max-height:24rem}
dl{margin:0;display:grid;grid-template-columns:minmax(7rem,auto) 1fr;gap:.3rem .9rem}
dt{color:var(--soft)}
dd{margin:0;font-weight:600}
.dates{color:var(--soft);font-size:.92em}
ul{margin:.2rem 0;padding-left:1.15rem}
li{margin:.1rem 0}
.flaw{display:grid;gap:.5rem;margin:.7rem 0}
.photos{display:grid;grid-template-columns:repeat(auto-fill,minmax(8.5rem,1fr));gap:.6rem}
.photos img{width:100%;aspect-ratio:4/3;object-fit:cover}
footer{margin-top:1.75rem;color:var(--soft);font-size:.88em;border-top:1px solid var(--line);padding-top:.6rem}
@media(min-width:40rem){.top{grid-template-columns:1fr 1fr;align-items:start}.top.two>.facts{grid-column:1/-1}.two>.facts dl{grid-template-columns:auto 1fr auto 1fr}}
@media print{
body{background:#fff;font-size:9.5pt;line-height:1.35;-webkit-print-color-adjust:exact;print-color-adjust:exact}
main{max-width:none;padding:0}
header h1{font-size:20pt}
.top{grid-template-columns:1fr 1fr;gap:6mm;margin-top:4mm;align-items:start}
.top.two>.facts{grid-column:1/-1}
.two>.facts dl{grid-template-columns:auto 1fr auto 1fr;gap:1mm 4mm}
.portrait img{max-height:75mm}
.section svg{max-height:75mm}
.curve svg{max-height:52mm}
.story{columns:2;column-gap:8mm}
.chapter,.flaw,figure,dl{break-inside:avoid}
h2{margin-top:5mm;padding-top:2mm;break-after:avoid;font-size:12pt}
h3{break-after:avoid}
.photos{grid-template-columns:repeat(4,1fr)}
footer{margin-top:5mm}
}";
