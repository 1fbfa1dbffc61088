/** Style of the report page: one column of text and tables, hairlines, no colour that carries meaning alone. */
export const PAGE_STYLE = `
*{box-sizing:border-box}
html{font:400 15px/1.45 'Source Sans 3','Helvetica Neue',Arial,sans-serif;color:#1a1a1a;background:#fff}
body{margin:0}
main{max-width:52rem;margin:0 auto;padding:1.5rem 1.25rem 3rem;overflow-wrap:anywhere}
header{border-top:4px solid #1a1a1a;padding-top:.75rem;display:grid;grid-template-columns:minmax(0,1fr) auto;column-gap:2rem}
h1{font-size:2rem;line-height:1.15;font-weight:600;margin:0}
.subtitle{font-size:1.25rem;margin:.15rem 0 0;grid-column:1}
.made{grid-column:2;grid-row:1/span 2;margin:.35rem 0 0;text-align:right;font-size:.85rem;color:#4a4a4a;max-width:17rem}
h2{font-size:1.15rem;font-weight:600;margin:2rem 0 .6rem;padding-bottom:.2rem;border-bottom:1px solid #1a1a1a;break-after:avoid}
p{margin:.4rem 0}
ul{margin:.4rem 0;padding-left:1.1rem}
li{margin:.15rem 0}
.simulated{display:flex;flex-wrap:wrap;align-items:baseline;column-gap:.8rem;border:3px solid #a3161a;color:#a3161a;padding:.4rem .8rem;margin:0 0 1.25rem;font-size:1rem;print-color-adjust:exact}
.simulated strong{font-size:1.6rem;letter-spacing:.12em;line-height:1.2}
dl{display:grid;grid-template-columns:minmax(11rem,30%) 1fr;margin:0}
dt,dd{margin:0;padding:.28rem 0;border-bottom:1px solid #d5d5d5}
dt{color:#4a4a4a;padding-right:1rem}
dd{font-feature-settings:'tnum'}
dd.blank{border-bottom:1px solid #1a1a1a}
.table{overflow-x:auto}
table{border-collapse:collapse;width:100%;font-size:.9rem;font-feature-settings:'tnum'}
thead{display:table-header-group}
th{font-weight:600;text-align:left;vertical-align:bottom;border-bottom:1.5px solid #1a1a1a;padding:.25rem .9rem .25rem 0;line-height:1.2}
td{vertical-align:top;border-bottom:1px solid #d5d5d5;padding:.28rem .9rem .28rem 0}
th:last-child,td:last-child{padding-right:0}
th,td{overflow-wrap:normal}
td.wide{overflow-wrap:anywhere;min-width:9rem}
td.long,th.long{overflow-wrap:anywhere;min-width:5rem}
.right{text-align:right}
.code{font:.72rem/1.35 'DejaVu Sans Mono','Liberation Mono',monospace;overflow-wrap:anywhere;min-width:17rem}
tr{break-inside:avoid}
tr.out td{color:#555;font-style:italic}
.dwells{display:grid;grid-template-columns:1fr 1fr;gap:1rem;margin:.8rem 0}
.dwell{border:1.5px solid #1a1a1a;padding:.6rem .9rem .7rem;break-inside:avoid}
.dwell h3{font-size:.95rem;font-weight:600;margin:0}
.dwell .value{font-size:2.4rem;line-height:1.15;font-weight:600;margin:.1rem 0}
.dwell .worth{margin:.15rem 0;font-size:.9rem}
figure{margin:1rem 0;break-inside:avoid}
figure svg{display:block;width:100%;height:auto}
figcaption{font-size:.85rem;color:#4a4a4a;margin-top:.25rem}
.signatures{display:grid;grid-template-columns:1fr 1fr 1fr;gap:1.5rem;break-inside:avoid;margin-top:1rem}
.signature p{margin:0;font-size:.85rem;color:#4a4a4a}
.signature .role{font-weight:600;color:#1a1a1a;font-size:.95rem}
.signature .line{border-bottom:1px solid #1a1a1a;height:2.6rem}
footer{margin-top:2.5rem;border-top:1px solid #d5d5d5;font-size:.8rem;color:#4a4a4a}
@media (max-width:34rem){header,.dwells,.signatures,dl{grid-template-columns:1fr}.made{grid-column:1;grid-row:auto;text-align:left}dt{border-bottom:0;padding-bottom:0}}
@media print{html{font-size:10.2pt}main{max-width:none;padding:0}.table{overflow:visible}h2{margin-top:1.4rem}section{break-inside:auto}}
`;
